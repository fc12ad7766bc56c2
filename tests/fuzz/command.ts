import { spawnSync } from 'node:child_process';
import path from 'node:path';
import process from 'node:process';
import { parseArgs } from 'node:util';
import { type CampaignName, campaignNames } from './campaign.js';
import { keep, keptCases } from './corpus.js';
import { watchOver } from './watch.js';

const root = path.resolve(import.meta.dirname, '../..');
const USUAL_MINUTES = 2;
/** A case that takes so long hangs, however slow the machine. */
const PATIENCE_MILLISECONDS = 60_000;

const EDITS = 100_000;

const usage = `npm run fuzz -- [campaign...] [--minutes N] [--seed S]
       npm run fuzz -- memory [--edits N] [--seed S]
  campaigns: ${campaignNames.join(', ')}; all of them unless said
  memory     edits one plan in one service and looks whether the heap stays flat
  --minutes  for each campaign, ${USUAL_MINUTES} unless said
  --edits    for memory, ${EDITS} unless said
  --seed     of the first round; by the clock unless said`;

/**
 * Looks for faults for a while and tells what it finds. Each fault is written to the corpus as its smallest case.
 * @param bundles of `child.ts` and `memory.ts`
 * @returns the exit code: 1 where something was found
 */
export async function fuzz(
  words: readonly string[],
  bundles: { readonly child: string; readonly memory: string },
): Promise<number> {
  const { values, positionals } = parseArgs({
    args: [...words],
    options: {
      minutes: { type: 'string' },
      edits: { type: 'string' },
      seed: { type: 'string' },
      help: { type: 'boolean', short: 'h' },
    },
    allowPositionals: true,
  });
  const minutes = Number(values.minutes ?? USUAL_MINUTES);
  const seed = Number(values.seed ?? Date.now() % 2 ** 31);
  if (positionals[0] === 'memory') return lookAtMemory(bundles.memory, Number(values.edits ?? EDITS), seed);
  const unknown = positionals.find((name) => !isCampaign(name));
  if (values.help || unknown !== undefined || !(minutes > 0) || !Number.isInteger(seed)) {
    console.error(usage);
    return values.help ? 0 : 2;
  }
  const chosen = positionals.length === 0 ? campaignNames : positionals.filter(isCampaign);
  let found = 0;
  for (const name of chosen) found += await look(name, bundles.child, minutes, seed);
  return found > 0 ? 1 : 0;
}

/** @returns the exit code of the process that looks */
function lookAtMemory(memory: string, edits: number, seed: number): number {
  console.log(`memory: ${edits} edits from seed ${seed}`);
  const words = ['--expose-gc', memory, String(edits), String(seed)];
  return spawnSync(process.execPath, words, { stdio: 'inherit' }).status ?? 1;
}

function isCampaign(name: string): name is CampaignName {
  return campaignNames.some((one) => one === name);
}

/** @returns how many faults were found */
async function look(campaign: CampaignName, child: string, minutes: number, seed: number): Promise<number> {
  console.log(`${campaign}: from seed ${seed}, for ${minutes} minutes`);
  const begun = Date.now();
  let told = begun;
  let cases = 0;
  const order = {
    campaign,
    seed,
    minutes,
    kept: keptCases(root, campaign),
    patienceMilliseconds: PATIENCE_MILLISECONDS,
  };
  const { faults } = await watchOver(child, order, (news) => {
    if (news.kind !== 'round') return;
    cases += news.cases;
    if (Date.now() - told < 10_000) return;
    told = Date.now();
    console.log(`  seed ${news.seed}: ${cases} cases in ${Math.round((told - begun) / 1000)} s`);
  });
  for (const fault of faults) {
    console.error(`  FOUND: ${fault.what}`);
    console.error(`  kept as ${path.relative(root, keep(root, campaign, fault))}`);
  }
  console.log(`${campaign}: ${cases} cases, ${faults.length} faults`);
  return faults.length;
}
