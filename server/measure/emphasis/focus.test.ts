import type { FocusMeasure } from './at-focus.js';
import { describe, expect, it } from 'vitest';
import { checked } from '../../../tests/support/plan.js';

function focusOf(...lines: readonly string[]): FocusMeasure | undefined {
  return checked(['canvas  60 x 40 cm', ...lines].join('\n')).measures.focus;
}

describe('the nearest crossing', () => {
  it.each([
    ['golden, thirds', '(40, 13)', 'thirds', 'upper right'],
    ['golden, diagonals', '(19, 12)', 'diagonals', 'upper left'],
    ['thirds, armature', '(46, 10)', 'armature', 'crossing 5 1'],
    ['root 5, quarters', '(10, 22)', 'root 5', 'lower left'],
    ['quarters, rabatment', '(41, 27)', 'rabatment', 'lower right'],
  ])('of `divide %s` at %s is in %s', (systems, at, system, name) => {
    const nearest = focusOf(`divide  ${systems}`, `focus   ${at}`)?.nearest;
    expect([nearest?.system, nearest?.crossing.name]).toEqual([system, name]);
  });

  it('is told with its distance, also as a part of the diagonal', () => {
    const nearest = focusOf('divide  thirds', 'focus   upper right, 3 cm right, 4 cm up')?.nearest;
    expect(nearest?.distance).toBeCloseTo(5, 9);
    expect(nearest?.distanceShare).toBeCloseTo(5 / Math.hypot(60, 40), 9);
  });

  it.each(['diagonals', 'armature', 'root 2', 'root 3', 'root 4', 'root 5'])(
    'is the one that the focal point is put on: %s',
    (system) => {
      expect(focusOf(`divide  ${system}`, 'focus   lower left')?.nearest?.distance).toBe(0);
    },
  );

  it('of a square by rabatment is none', () => {
    const { measures } = checked('canvas  40 x 40 cm\ndivide  rabatment\nfocus   (10, 10)');
    expect(measures.focus?.nearest).toBeUndefined();
  });
});

describe('the nearest place where lines meet', () => {
  const diagonal = Math.hypot(60, 40);

  it('is one of the armature that has no name, not the named crossing beside it', () => {
    // 2/5 and 1/5 of the sides, where the line from the lower left corner meets that from the upper left.
    const focus = focusOf('divide  thirds, armature', 'focus   (24, 8)');
    expect(focus?.fromMeeting).toBeCloseTo(0, 9);
    // The crossing with a name that is nearest is the upper centre, at 1/2 and 1/4.
    expect(focus?.nearest?.distanceShare).toBeCloseTo(Math.hypot(6, 2) / diagonal, 9);
    const beside = focusOf('divide  thirds, armature', 'focus   (24, 9)');
    expect(beside?.fromMeeting).toBeCloseTo(1 / diagonal, 9);
  });

  it('is the nearest crossing where all have names', () => {
    const focus = focusOf('divide  golden', 'focus   (20, 17)');
    expect(focus?.fromMeeting).toBe(focus?.nearest?.distanceShare);
  });

  it('of a square by rabatment is none', () => {
    const { measures } = checked('canvas  40 x 40 cm\ndivide  rabatment\nfocus   (10, 10)');
    expect(measures.focus?.fromMeeting).toBeUndefined();
  });
});

it('the middle of the canvas is the middle whatever crosses there', () => {
  expect(focusOf('divide  armature', 'focus   centre')?.fromCentre).toBe(0);
});

it('a dominant object of which nothing is seen has no distance to the focal point', () => {
  const hidden =
    'object jug, dominant\n  shape circle 4 at (20, 20)\nobject screen\n  shape circle 6 at (20, 20)';
  expect(focusOf('focus   (20, 20)', hidden)?.dominants).toEqual([{ object: 0, holds: false }]);
});
