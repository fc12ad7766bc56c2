import { describe, expect, it } from 'vitest';
import { checked, mended } from '../../../tests/support/plan.js';
import type { Finding } from '../finding.js';
import { nearTangent } from './near-tangent.js';

/** A canvas with a diagonal of 100 cm. */
const CANVAS = `canvas  80 x 60 cm
object  wall
  plane   background
  shape   rectangle (0, 0) to (80, 60)
  value   4`;

function told(text: string): readonly Finding[] {
  return checked(text).findings.filter(({ rule }) => rule === 'near tangent');
}

function thing(name: string, shape: string, more = ''): string {
  return `\nobject  ${name}\n  shape   ${shape}\n  value   2${more}`;
}

const PAIR = CANVAS + thing('cup', 'circle 12 at (30, 30)') + thing('plum', 'circle 8 at (40.4, 30)');

describe('near tangent', () => {
  it('tells the pair, by how much they miss, and where', () => {
    const [finding, ...others] = told(PAIR);
    expect(others).toEqual([]);
    expect(finding?.message).toBe(
      '`cup` and `plum` just miss each other, by 0.4 cm; more than 0.8 cm (0.8 % of the diagonal) is clear.',
    );
    expect(finding?.at?.x).toBeCloseTo(36.2, 5);
  });

  it('moves the smaller one as far as it takes, and then has nothing to tell', () => {
    const [finding] = told(PAIR);
    expect(finding?.advice).toBe('Move `plum` 0.5 cm to the right, which parts them.');
    expect(finding?.fix).toBeDefined();
    if (finding?.fix) expect(told(mended(PAIR, finding.fix))).toEqual([]);
  });

  it.each([0, 0.002, 0.004, 0.0041, 0.008, 0.012])(
    'finds all that is no farther apart than a limit: %d',
    (limit) => {
      const pairs = [0.2, 0.4, 0.4005, 0.41, 0.4, 0.79, 0.8, 0.9].map(
        (gap, index) =>
          thing(`cup${index}`, `circle 4 at (10, ${4 + 7 * index})`) +
          thing(`plum${index}`, `circle 4 at (${14 + gap}, ${4 + 7 * index})`),
      );
      const { plan, measures } = checked(CANVAS + pairs.join(''));
      const near = measures.tangents.touches.filter(({ shareOfDiagonal }) => shareOfDiagonal <= limit + 1e-9);
      expect(measures.tangents.touches.length).toBeGreaterThan(pairs.length - 1);
      expect(nearTangent.check(plan, measures, limit).map(({ objects }) => objects)).toEqual(
        near.map(({ one, other }) => [one, other]),
      );
    },
  );

  it('tells two straight sides that run along each other, and parts them', () => {
    const jars = (left: number) =>
      CANVAS +
      thing('jar', 'rectangle (20, 15) to (30, 45)') +
      thing('bottle', `rectangle (${left}, 20) to (38, 44)`);
    expect(told(jars(30.81))).toEqual([]);
    const [finding, ...others] = told(jars(30.3));
    expect(others).toEqual([]);
    expect(finding?.message).toBe(
      '`jar` and `bottle` run along each other only 0.3 cm apart; more than 0.8 cm (0.8 % of the diagonal) is clear.',
    );
    expect(finding?.advice).toBe('Move `bottle` 0.6 cm to the right, which parts them.');
    expect(finding?.fix).toBeDefined();
    if (finding?.fix) expect(told(mended(jars(30.3), finding.fix))).toEqual([]);
  });

  it('tells a thing that runs along the border of what it lies on', () => {
    const tray = CANVAS + thing('tray', 'rectangle (20, 15) to (50, 45)');
    expect(told(tray + thing('book, secondary', 'rectangle (20.5, 20) to (34, 38)'))[0]?.message).toBe(
      '`book` runs along the border of `tray` only 0.5 cm inside it; more than 0.8 cm (0.8 % of the diagonal) is clear.',
    );
  });

  it('goes the other way where that would make another tangent', () => {
    const between = PAIR + thing('jar', 'rectangle (45, 10) to (60, 50)');
    const [finding] = told(between);
    expect(finding?.advice).toContain('which lets one plainly cover the other.');
    if (finding?.fix) expect(told(mended(between, finding.fix))).toEqual([]);
  });

  it('moves what lies on a thing along with it, and what is placed by it by itself', () => {
    const laden =
      PAIR +
      thing('shine', 'circle 2 at (41, 29)') +
      thing('stalk', 'rectangle 1 x 5', '\n  at      top edge of plum by bottom');
    const [finding] = told(laden);
    expect(finding?.advice).toContain('Move `plum`, with what lies on it, 0.5 cm to the right');
    expect(finding?.fix?.edits).toHaveLength(2);
    if (finding?.fix) {
      const { plan } = checked(mended(laden, finding.fix));
      const middle = (index: number) => {
        const { left = 0, right = 0 } = plan.objects[index]?.outline.box ?? {};
        return (left + right) / 2;
      };
      expect([2, 3, 4].map(middle).map((x) => Number(x.toFixed(6)))).toEqual([40.9, 41.5, 40.9]);
    }
  });

  it('says nothing of things that the plan places by each other', () => {
    const placed =
      CANVAS +
      thing('cup', 'circle 12 at (30, 30)') +
      thing('plum', 'circle 8', '\n  at      right edge of cup by left');
    expect(told(placed)).toEqual([]);
  });

  it('leaves a thing that is built onto another where it is', () => {
    const house =
      CANVAS +
      thing('house', 'rectangle (20, 30) to (40, 50)') +
      thing('roof', 'outline (18, 30) (30, 20) (42, 30)') +
      thing('wood', 'rectangle (42.3, 10) to (62, 55)');
    const [finding] = told(house);
    expect(finding?.objects).toEqual([2, 3]);
    expect(finding?.advice).toMatch(/^Move `wood`/);
  });

  it('tells the worst three of many and counts the rest, when those that are set aside are left out', () => {
    const many = (aside: readonly number[]) =>
      CANVAS +
      [0, 1, 2, 3, 4]
        .map((row) => {
          const y = 6 + 11 * row;
          const allowed = aside.includes(row) ? '\n  allow   near tangent because "they cling"' : '';
          return (
            thing(`a${row}`, `circle 8 at (20, ${y})`, allowed) +
            thing(`b${row}`, `circle 8 at (${28 + (row + 1) / 10}, ${y})`)
          );
        })
        .join('');
    const findings = told(many([]));
    expect(findings.map(({ objects }) => objects)).toEqual([
      [1, 2],
      [3, 4],
      [5, 6, 7, 8, 9, 10],
    ]);
    expect(findings[2]?.message).toContain('So it is with two more: `a3`, `b3`, `a4` and `b4`.');
    const standing = told(many([0, 1])).filter(({ allowed }) => !allowed);
    expect(standing.map(({ objects }) => objects)).toEqual([
      [5, 6],
      [7, 8],
      [9, 10],
    ]);
  });

  it('is set aside for one object', () => {
    const aside = `${PAIR}\n  allow   near tangent because "they cling"`;
    expect(told(aside).map(({ allowed }) => allowed?.reason)).toEqual(['they cling']);
  });
});
