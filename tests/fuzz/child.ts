import { writeFileSync } from 'node:fs';
import process from 'node:process';
import vm from 'node:vm';
import fc from 'fast-check';
import type { Campaign } from './campaign.js';
import { campaigns } from './campaigns.js';
import type { Fault, News, Order } from './orders.js';

/** A round of a long run: short enough to tell of it now and then. */
const USUAL_ROUND = 10;
const LONGEST_SHRINKING_MILLISECONDS = 120_000;

/** Looks for faults as it is ordered, in a process of its own that can be ended when a case never does. */
async function carryOut(order: Order, tell: (news: News) => void): Promise<void> {
  const campaign = campaigns[order.campaign];
  const hold = watched(campaign, order);
  for (const one of order.kept) {
    const what = await faultOf(hold, one);
    if (what !== undefined) tell({ kind: 'fault', fault: { what, case: one } });
  }
  const runs = order.runs ?? (order.minutes === undefined ? campaign.runs : USUAL_ROUND);
  const end = Date.now() + (order.minutes ?? 0) * 60_000;
  let seed = order.seed;
  do {
    const fault = await round(campaign, hold, seed, runs);
    tell({ kind: 'round', seed, cases: runs });
    if (fault !== undefined) {
      tell({ kind: 'fault', fault });
      return;
    }
    seed++;
  } while (Date.now() < end);
}

type Hold = (one: unknown) => Promise<void>;

/** Notes each case before it is tried, and stops one that never lets go of the process. */
function watched({ hold }: Campaign, { currentFile, patienceMilliseconds }: Order): Hold {
  const global = globalThis as { fuzzedCase?: () => void | Promise<void> };
  const script = new vm.Script('fuzzedCase()');
  return async (one) => {
    writeFileSync(currentFile, JSON.stringify(one) ?? 'null');
    global.fuzzedCase = () => hold(one);
    await script.runInThisContext({ timeout: patienceMilliseconds });
  };
}

async function faultOf(hold: Hold, one: unknown): Promise<string | undefined> {
  try {
    await hold(one);
    return undefined;
  } catch (error) {
    return wordsOf(error);
  }
}

/** Looks until the first fault, then for the smallest case that shows it. */
async function round(
  { cases }: Campaign,
  hold: Hold,
  seed: number,
  runs: number,
): Promise<Fault | undefined> {
  const property = fc.asyncProperty(cases, hold);
  const found = await fc.check(property, { seed, numRuns: runs, endOnFailure: true });
  if (!found.failed) return undefined;
  const shrunk = await fc.check(property, {
    seed,
    path: found.counterexamplePath ?? '0',
    interruptAfterTimeLimit: LONGEST_SHRINKING_MILLISECONDS,
  });
  const { counterexample, errorInstance } = shrunk.failed ? shrunk : found;
  return { what: wordsOf(errorInstance), case: counterexample?.[0], seed };
}

function wordsOf(error: unknown): string {
  return error instanceof Error ? (error.stack ?? error.message) : String(error);
}

// Whoever ordered it is gone.
process.once('disconnect', () => process.exit(1));
const order = JSON.parse(process.argv[2] ?? '{}') as Order;
const send = (news: News): Promise<void> =>
  new Promise((resolve) => void process.send?.(news, () => resolve()));
carryOut(order, (news) => void send(news)).then(
  async () => {
    await send({ kind: 'done' });
    process.exit(0);
  },
  (error: unknown) => {
    console.error(error);
    process.exit(1);
  },
);
