import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { type Checked, checked } from '../../../tests/support/plan.js';
import { standing } from '../check.js';
import { changedText, textChanges } from '../text-changes.js';

const folder = new URL('../plans/', import.meta.url);
/** Whose fixes change lines of objects, of leads, of sittings, of the picture as a whole, and add some. */
const rules = [
  'centred focus',
  'cue not carried',
  'day taken',
  'even count',
  'focus off crossing',
  'lead past focus',
  'merged neighbours',
  'never worked',
  'path order',
  'plane order',
  'sitting without a day',
];

const text = 'based on "base.mahl"\n';
const countOf = ({ findings }: Checked, rule: string): number =>
  standing(findings).filter((finding) => finding.rule === rule).length;

it('what mends a plan mends the one that builds on it, in its own text', () => {
  const unmended: string[] = [];
  for (const rule of rules) {
    const base = readFileSync(new URL(`${rule.replaceAll(' ', '-')}.breaks.mahl`, folder), 'utf8');
    const options = {
      readFile: (file: string) =>
        file === 'base.mahl'
          ? ({ ok: true, text: base } as const)
          : ({ ok: false, reason: 'There is no such file.' } as const),
    };
    const alone = checked(base);
    const heir = checked(text, options);
    const fixOf = (one: Checked) =>
      standing(one.findings).find((finding) => finding.rule === rule && finding.fix)?.fix;
    const [there, here] = [fixOf(alone), fixOf(heir)];
    if (!there || !here) {
      unmended.push(`${rule}: no fix${there ? ' here' : ''}`);
      continue;
    }
    const after = changedText(text.split('\n'), textChanges(here, text.split('\n'), '\n')).text;
    if (countOf(checked(after, options), rule) >= countOf(heir, rule)) unmended.push(`${rule}: ${after}`);
  }
  // A part in the picture can be changed in the plan, not taken away.
  expect(unmended).toEqual(['even count: no fix here']);
});
