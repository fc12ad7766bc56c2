import { describe, expect, it } from 'vitest';
import { checked, mended } from '../../../tests/support/plan.js';
import type { Finding } from '../finding.js';

/** Warm below, cool above, grey between; parts of a hundred. */
function scene(warm: number, cool: number, role = ''): string {
  return `canvas  100 x 100 cm\ncolour  straw 5YR 6/6${role}\ncolour  air 5B 6/4
object  sky\n  shape   rectangle (0, 0) to (100, ${cool - 4})\n  colour  air
object  pool\n  shape   rectangle (0, ${cool - 4}) to (100, ${cool})\n  colour  air
object  mist\n  shape   rectangle (0, ${cool}) to (100, ${100 - warm})\n  colour  N 7/
object  field\n  shape   rectangle (0, ${100 - warm}) to (100, 94)\n  colour  straw
object  path\n  shape   rectangle (0, 94) to (100, 100)\n  colour  straw`;
}

function found(text: string): readonly Finding[] {
  return checked(text).findings.filter(({ rule }) => rule === 'even temperature');
}

describe('warm and cool', () => {
  it.each([
    [48, 52, true],
    [50, 45, true],
    [51, 45, false],
    [41, 40, true],
    [40, 40, false],
    [70, 30, false],
  ])('of %d and %d %% are at odds: %s', (warm, cool, odd) => {
    expect(found(scene(warm, cool)).length > 0).toBe(odd);
  });

  it('are told with which may lead and the smallest object that makes it lead', () => {
    const [finding] = found(scene(48, 52));
    expect(finding?.message).toBe(
      'Warm colours cover 48 % of the picture and cool ones 52 %: neither leads. One should be ahead by more than 5 %.',
    );
    expect(finding?.advice).toBe(
      'Let the cool colours lead. Give `path` (6 %) the colour `air`, which makes them 58 % against 42 %.',
    );
    expect(finding?.fix && found(mended(scene(48, 52), finding.fix))).toEqual([]);
    expect(found(scene(42, 58))).toEqual([]);
  });

  it('are turned in words where the plan has no colour for it that nothing beside has', () => {
    const alone = scene(48, 52)
      .replace('colour  air 5B 6/4\n', '')
      .replaceAll('colour  air', 'colour  5B 6/4');
    const [finding] = found(alone);
    expect(finding?.advice).toBe(
      'Let the cool colours lead. `path` (6 %) painted cool makes them 58 % against 42 %.',
    );
    expect(finding?.fix).toBeUndefined();
  });

  it('are turned by nothing that would take a budget farther off', () => {
    const within = (tolerance: number) =>
      found(
        `budget  colour complement 52%, discord 48% within ${tolerance}%\n${scene(48, 52, ' discord')}`.replace(
          'air 5B 6/4',
          'air 5B 6/4 complement',
        ),
      ).map(({ fix }) => fix?.title);
    expect(within(7)).toEqual(['Give `path` the colour `air`']);
    expect(within(5)).toEqual([undefined]);
  });

  it('are led by the dominant colour where the plan has one', () => {
    const [finding] = found(scene(48, 52, ' dominant'));
    // The pool of 4 % alone would make it 52 to 48.
    expect(finding?.advice).toBe(
      'Let the warm colours lead, as the dominant colour is. Paint a little more than 4.5 % of the picture warm instead of cool.',
    );
    expect(finding?.fix).toBeUndefined();
  });
});
