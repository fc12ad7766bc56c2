import path from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { bundleFuzzing, type FuzzingBundle } from './bundle.mjs';
import { campaignNames } from './campaign.js';
import { keptCases } from './corpus.js';
import { watchOver } from './watch.js';

const root = path.resolve(import.meta.dirname, '../..');
/** The same cases every time: `npm run fuzz` looks further. */
const SEED = 20_260;
const PATIENCE_MILLISECONDS = 20_000;
/** Where a fault is found, its smallest case is looked for two minutes more. */
const LIMIT_MILLISECONDS = 300_000;

let bundle: FuzzingBundle;
beforeAll(async () => {
  bundle = await bundleFuzzing();
});
afterAll(() => bundle.remove());

it.each(campaignNames)(
  'finds nothing in the campaign %s, and in what it found once',
  { timeout: LIMIT_MILLISECONDS },
  async (campaign) => {
    const kept = keptCases(root, campaign);
    const order = { campaign, seed: SEED, kept, patienceMilliseconds: PATIENCE_MILLISECONDS };
    const { cases, faults } = await watchOver(bundle.child, order);
    expect(faults).toEqual([]);
    expect(cases).toBeGreaterThan(0);
  },
);
