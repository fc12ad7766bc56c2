import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Files, tryAll } from '../support/fixes-tried.js';
import { hand } from '../support/hands.js';
import { marketPlan } from '../support/market.js';
import { written } from './picture-text.js';
import { picture, scaled } from './pictures.js';

/** Another seed and more runs from outside, to look further than every test run does. */
const seed = Number(process.env['SEED'] ?? 5);
const runs = Number(process.env['RUNS'] ?? 10);
const PATIENCE = 60_000 + 20_000 * runs;

/** Units of the canvas, and how many of them are a centimetre, or nearly. */
const CANVASES = [
  ['cm', 1],
  ['cm', 1],
  ['mm', 10],
  ['in', 0.4],
  ['m', 0.01],
] as const;

const root = path.resolve(import.meta.dirname, '../..');

function partsIn(folder: string): Files {
  const parts = path.join(root, folder, 'parts');
  const names = existsSync(parts) ? readdirSync(parts) : [];
  return Object.fromEntries(
    names.map((name) => [
      `parts/${name}`,
      { ok: true, text: readFileSync(path.join(parts, name), 'utf8') } as const,
    ]),
  );
}

function plansIn(folder: string): readonly (readonly [name: string, text: string])[] {
  return readdirSync(path.join(root, folder))
    .filter((name) => /(?<!\.keeps)\.mahl$/u.test(name))
    .map((name) => [name, readFileSync(path.join(root, folder, name), 'utf8')] as const);
}

describe('what mends a finding does so, and breaks nothing that the plan states', () => {
  it('in pictures that nobody has thought of, written down in many ways', { timeout: PATIENCE }, async () => {
    const made: string[] = [];
    const offered: string[] = [];
    await fc.assert(
      fc.asyncProperty(picture, fc.constantFrom(...CANVASES), hand, async (one, [unit, times], write) => {
        const { text } = written(scaled(one, times));
        const tried = await tryAll('a picture', write(text.replace(/^(canvas .*) cm$/mu, `$1 ${unit}`)));
        made.push(...tried.made);
        offered.push(...tried.offered);
        expect(tried.failures.join('\n\n')).toBe('');
      }),
      { seed, numRuns: runs, endOnFailure: true },
    );
    // So that they are offered at all.
    expect(new Set(offered).size).toBeGreaterThan(12);
    expect(offered.length).toBeGreaterThan(0.6 * made.length);
  });

  it('in a crowded one', { timeout: PATIENCE }, async () => {
    const tried = await tryAll('a market', marketPlan(30));
    expect(tried.failures.join('\n\n')).toBe('');
    expect(tried.offered.length).toBeGreaterThan(5);
  });

  it.each(['examples', 'server/findings/plans', 'tests/books'])(
    'in the plans of %s',
    { timeout: PATIENCE },
    async (folder) => {
      const files = partsIn(folder);
      for (const [name, text] of plansIn(folder)) {
        const { failures } = await tryAll(name, text, files);
        expect(failures.join('\n\n')).toBe('');
      }
    },
  );
});
