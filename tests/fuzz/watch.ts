import { fork } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Fault, News, Order } from './orders.js';

/** Between two looks at whether it still goes on. */
const LOOK_MILLISECONDS = 500;

/** What came of an order. */
export interface Outcome {
  readonly cases: number;
  readonly faults: readonly Fault[];
}

/**
 * Has an order carried out in a process of its own, which is ended when it has been at one case for three times its
 * patience: then that case is the fault, and so it is when the process ends before it is done.
 * @param child the bundle of `child.ts`
 * @param heard told of what the process tells, as it does
 */
export async function watchOver(
  child: string,
  order: Omit<Order, 'currentFile'>,
  heard: (news: News) => void = () => undefined,
): Promise<Outcome> {
  const folder = mkdtempSync(path.join(tmpdir(), 'mahlstick-fuzz-'));
  const currentFile = path.join(folder, 'case.json');
  const started = fork(child, [JSON.stringify({ ...order, currentFile } satisfies Order)], {
    execArgv: ['--max-semi-space-size=64', '--enable-source-maps'],
    stdio: ['ignore', 'ignore', 'pipe', 'ipc'],
  });
  const faults: Fault[] = [];
  let cases = 0;
  let isDone = false;
  let isHanging = false;
  let seed = order.seed;
  let errors = '';
  started.stderr?.on('data', (part: Buffer) => (errors = (errors + part.toString()).slice(-10_000)));
  started.on('message', (news: News) => {
    heard(news);
    if (news.kind === 'done') isDone = true;
    if (news.kind === 'fault') faults.push(news.fault);
    if (news.kind !== 'round') return;
    cases += news.cases;
    seed = news.seed + 1;
  });
  const begun = Date.now();
  const looking = setInterval(() => {
    const since = statSync(currentFile, { throwIfNoEntry: false })?.mtimeMs ?? begun;
    if (Date.now() - since < 3 * order.patienceMilliseconds) return;
    isHanging = true;
    started.kill('SIGKILL');
  }, LOOK_MILLISECONDS);
  try {
    await new Promise((resolve) => started.once('close', resolve));
    if (!isDone) {
      const what = isHanging ? 'It hangs.' : `The process ended before it was done. ${errors}`;
      faults.push({ what, case: caseIn(currentFile), seed });
    }
    return { cases, faults };
  } finally {
    clearInterval(looking);
    rmSync(folder, { recursive: true, force: true });
  }
}

function caseIn(file: string): unknown {
  try {
    return JSON.parse(readFileSync(file, 'utf8'));
  } catch {
    return undefined;
  }
}
