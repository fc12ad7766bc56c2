import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { checked } from '../../../tests/support/plan.js';

/** Plans that break every rule, and those that people look at first. */
const root = path.resolve(import.meta.dirname, '../../..');
const folders = ['server/findings/plans', 'server/measure/plans', 'tests/books', 'examples'];
const plans = folders.flatMap((folder) =>
  readdirSync(path.join(root, folder))
    .filter((name) => name.endsWith('.mahl'))
    .map((name) => path.join(folder, name)),
);

/** So much is read at a glance in a list of findings. */
const LONGEST = 250;

/** What a painter would stumble over. */
const STUMBLES: readonly (readonly [string, RegExp])[] = [
  ['no number', /NaN|Infinity|undefined/],
  [
    'a blank or a stop twice, but not in what is to be written',
    /(?: {2}|,,|, ,|\.\.)(?=[^`]*(?:`[^`]*`[^`]*)*$)/,
  ],
  ['a space before a stop', / [.,;]/],
  ['nothing as a length to go', /\b0 (?:mm|cm|m|in) (?:or more|farther|nearer|to the|up|down)/],
  ['one thing in the plural', /\b(?:1|one) (?:more )?(?:leads|pairs|rivals|places|steps|stops)\b/],
  ['one thing with more than one last day', /\b(?:1|one) more on their\b/],
  ['more than less than something', /more than under/],
  ['a clause that does not end', /, and the [^,;.]* later it\b/],
  ['one figure twice', /(?<![\d.])([\d.]+ %) and \1/],
  ['one name twice', /(`[^`]+`) (?:and|or) \1(?!`)/],
];

function textOf(plan: string): string {
  return readFileSync(path.join(root, plan), 'utf8');
}

function files(plan: string) {
  return {
    readFile: (file: string) => ({
      ok: true as const,
      text: readFileSync(path.join(root, path.dirname(plan), file), 'utf8'),
    }),
  };
}

describe.each(plans)('%s', (plan) => {
  const { findings } = checked(textOf(plan), files(plan));

  it('is told in whole sentences of a length to read', () => {
    for (const { message, advice } of findings) {
      expect(message).toMatch(/^(?:\p{Lu}|[`“])[^]*[.?]$/u);
      // Where it comes from, when that is another plan, is for who wants to go there.
      const read = message.replace(/ \(from `[^`]+`, line \d+\)(?=[.?]$)/u, '');
      expect(read.length, message).toBeLessThanOrEqual(LONGEST);
      if (advice !== undefined) expect(advice).toMatch(/^(?:\p{Lu}|`)[^]*\.$/u);
    }
  });

  it('is told without stumbling', () => {
    for (const { message, advice = '' } of findings) {
      for (const [what, stumble] of STUMBLES) {
        expect(`${message} ${advice}`, what).not.toMatch(stumble);
      }
    }
  });
});
