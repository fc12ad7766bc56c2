import { describe, expect, it } from 'vitest';
import { checked, mended } from '../../../tests/support/plan.js';
import type { Finding } from '../finding.js';

function spots(text: string): readonly Finding[] {
  return checked(text).findings.filter(({ rule }) => rule === 'spots');
}

const FIELD =
  'canvas  100 x 60 cm\nobject  field\n  plane   background\n  shape   rectangle (0, 0) to (100, 60)\n  value   5';

/** A round object of so many cm; 10 cm are 1.3 % of the picture. */
function round(name: string, x: number, y: number, cm = 8, more = ''): string {
  return `object  ${name}\n  shape   circle ${cm} at (${x}, ${y})\n  value   1${more}`;
}

const plan = (...objects: readonly string[]): string => [FIELD, ...objects].join('\n');

// Common practice, no source.
describe('spots', () => {
  it('are three scattered pieces of a tone', () => {
    const text = plan(round('well', 15, 15), round('cart', 50, 45), round('hut', 85, 15));
    const [finding] = spots(text);
    expect(finding?.message).toBe(
      'Three small pieces of the darks lie scattered about the picture, each under 2 % of it: `well` (0.8 %), `cart` (0.8 %) and `hut` (0.8 %).',
    );
    expect(finding?.advice).toBe('Let `hut` sink into `field`, on step 5, or bring them together.');
    expect(spots(mended(text, finding?.fix ?? { edits: [] }))).toEqual([]);
  });

  it.each([
    ['two', plan(round('well', 15, 15), round('cart', 50, 45))],
    ['one of them large', plan(round('well', 15, 15), round('cart', 50, 45), round('hut', 85, 15, 13))],
    ['two of them together', plan(round('well', 15, 15), round('cart', 50, 45), round('wheel', 59, 45))],
    ['one of them a touch', plan(round('well', 15, 15), round('cart', 50, 45), round('hut', 85, 15, 2))],
    [
      'one drawn as a principal',
      plan(round('well', 15, 15), round('cart, dominant', 50, 45), round('hut', 85, 15)),
    ],
    ['a repeated object', plan(round('well', 15, 15, 6, '\n  repeat  4 every (20, 5)'))],
    [
      'one joined to a mass',
      plan(round('well', 15, 15), round('cart', 50, 45), round('hut', 85, 15), round('hill', 85, 30, 30)),
    ],
  ])('are not %s', (_, text) => {
    expect(spots(text)).toEqual([]);
  });

  it('are glimpses neither of an object that is large elsewhere nor of the ground', () => {
    const text = `${FIELD}\nobject  wood\n  shape   rectangle (0, 40) to (100, 60)\n  value   1\n${[
      20, 50, 80,
    ]
      .map((x) => `object  gap-${x}\n  shape   rectangle (${x}, 36) to (${x + 4}, 64)\n  value   5`)
      .join('\n')}\nobject  mist\n  shape   rectangle (0, 44) to (100, 58)\n  value   5`;
    expect(spots(text)).toEqual([]);
  });

  it('that are many are told by the largest three, and are not mended by one', () => {
    const text = plan(...[1, 2, 3, 4, 5].map((n) => round(`hen-${n}`, 18 * n, n % 2 ? 12 : 45, 4 + n)));
    const [finding] = spots(text);
    expect(finding?.message).toContain('Five small pieces');
    expect(finding?.message).toContain('`hen-5` (1.1 %), `hen-4` (0.8 %), `hen-3` (0.6 %) and two more.');
    expect([finding?.advice, finding?.fix]).toEqual([
      'Let `hen-1` sink into `field`, on step 5, and so with others, or bring them together.',
      undefined,
    ]);
  });

  it('can be set aside for one object', () => {
    const text = plan(round('well', 15, 15), round('cart', 50, 45), round('hut', 85, 15));
    const [finding] = spots(`${text}\nallow   spots for hut because "the third beat"`);
    expect(finding?.allowed?.reason).toBe('the third beat');
  });
});
