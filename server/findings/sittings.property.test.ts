import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checked, mended, type Checked } from '../../tests/support/plan.js';
import { dayOf, isoOf } from '../measure/sittings/days.js';
import { standing } from './check.js';
import type { Finding } from './finding.js';
import { holdsGood } from './fix-trial.js';
import { ruleById } from './rules.js';
import { layers, parse } from '../../grammar/index.js';

const START = dayOf('2027-01-01') ?? 0;
const THINGS = ['wall', 'jug', 'cloth'];
/** Rules about dates: what they are mended by moves dates alone. */
const ABOUT_DAYS = ['over wet paint', 'glaze over wet', 'varnish too soon', 'day taken', 'past the due date'];

const ADDS_A_LAYER = ['never worked', 'idle sitting'];

const day = fc.integer({ min: 0, max: 320 }).map((after) => isoOf(START + after));

const sitting = fc
  .record({
    title: fc.constantFrom('Lay in', 'Body', 'Finish'),
    day: fc.option(day, { freq: 6, nil: undefined }),
    works: fc.subarray(THINGS),
    layer: fc.option(fc.constantFrom(...layers), { nil: undefined }),
    fat: fc.option(fc.constantFrom(0, 5, 20), { nil: undefined }),
    medium: fc.option(fc.constantFrom('alkyd', 'acrylic', 'walnut oil'), { nil: undefined }),
  })
  .map(({ title, day: on, works, layer, fat, medium }) =>
    [
      `sitting "${title}"${on === undefined ? '' : ` on ${on}`}`,
      ...(works.length > 0 ? [`  works   ${works.join(', ')}`] : []),
      ...(layer === undefined ? [] : [`  layer   ${layer}`]),
      ...(fat === undefined ? [] : [`  fat     ${fat}%`]),
      ...(medium === undefined ? [] : [`  medium  ${medium}`]),
    ].join('\n'),
  );

const plan = fc
  .record({
    sittings: fc.array(sitting, { minLength: 1, maxLength: 6 }),
    due: fc.option(day, { nil: undefined }),
    away: fc.array(fc.tuple(day, fc.integer({ min: 0, max: 9 })), { maxLength: 2 }),
  })
  .map(({ sittings, due, away }) =>
    [
      'plan    "Kitchen"',
      'canvas  80 x 60 cm',
      ...THINGS.map(
        (name, i) => `object  ${name}\n  shape   rectangle 8 x 8 at (${10 + 20 * i}, 20)\n  value   3`,
      ),
      ...sittings,
      ...(due === undefined ? [] : [`due     ${due}`]),
      ...away.map(([from, days]) => `away    ${from} to ${isoOf((dayOf(from) ?? 0) + days)}`),
    ].join('\n'),
  );

function ofSittings({ findings }: Checked): readonly Finding[] {
  return standing(findings).filter(({ rule }) => ruleById(rule)?.chapter === 'sittings');
}

/** One finding for each pair of sittings and so on, as it is before those that are many are put together. */
function count(findings: readonly Finding[], rule: string): number {
  return findings.filter((finding) => finding.rule === rule).length;
}

/** More runs from outside, to look further than every test run does. */
const runs = Number(process.env['RUNS'] ?? 25);
const RUNS = { numRuns: runs };

describe('the findings of sittings', { timeout: 60_000 + 3_000 * runs }, () => {
  it('tell whole sentences, whatever is planned', () => {
    fc.assert(
      fc.property(plan, (text) => {
        for (const { message, advice = '', fix } of ofSittings(checked(text))) {
          expect(message).toMatch(/^[“`T].*\.$/su);
          expect(advice).toMatch(/^[A-Z].*\.$/su);
          expect(`${message}${advice}${fix?.title ?? ''}`).not.toMatch(
            /undefined|NaN|Infinity|“”|``| {2}|-\d+ days/u,
          );
        }
      }),
      RUNS,
    );
  });

  it('are gone when they are mended, and where a layer is only moved or changed nothing else is warned of', () => {
    fc.assert(
      fc.property(plan, (text) => {
        const lines = text.split('\n');
        const read = (other: string) => ({ tree: parse(other), ...checked(other) });
        const now = read(text);
        for (const finding of ofSittings(now)) {
          const { fix, rule, message } = finding;
          if (!fix) continue;
          const told = `${message}\n${fix.title}\n${text}`;
          // A new layer may come too soon: then an editor, which tries this, does not offer it.
          if (ADDS_A_LAYER.includes(rule)) {
            const left = ofSittings(checked(mended(text, fix))).map((other) => other.message);
            expect(left, told).not.toContain(message);
          } else expect(holdsGood(finding, fix, now, lines, read), told).toBe(true);
        }
      }),
      RUNS,
    );
  });

  it('about days are mended by other dates alone, and nothing else about days comes of it', () => {
    fc.assert(
      fc.property(plan, (text) => {
        const now = checked(text);
        for (const { rule, fix, message } of ofSittings(now)) {
          if (!fix || !ABOUT_DAYS.includes(rule)) continue;
          const after = mended(text, fix);
          const dateless = (one: string) => one.replaceAll(/(?<=^sitting .*)\d{4}-\d\d-\d\d/gmu, '');
          expect(dateless(after)).toBe(dateless(text));
          const then = ofSittings(checked(after));
          for (const other of ABOUT_DAYS) {
            const more = count(then, other) - count(ofSittings(now), other);
            expect(more, `${message}\n${fix.title}\n${other}\n${text}\n${after}`).toBeLessThanOrEqual(
              other === rule ? -1 : 0,
            );
          }
        }
      }),
      RUNS,
    );
  });
});
