import { describe, expect, it } from 'vitest';
import { checked, mended } from '../../../tests/support/plan.js';
import { resizingFor } from './resizing.js';

/** A tree of `size` cm on a sky over the whole canvas of 100 x 50 cm; its budget and more objects. */
function scene(size: number, budget: string, more = ''): string {
  return `canvas  100 x 50 cm\nbudget  colour ${budget}\ncolour  air #8ea4b8 dominant\ncolour  bark #a8602c complement\nobject  sky\n  plane   background\n  shape   rectangle (0, 0) to (100, 50)\n  colour  air\nobject  tree\n  shape   rectangle ${size} x ${size} at (50, 25)\n  colour  bark${more}`;
}

function resizing(text: string, role: string) {
  const { plan, measures } = checked(text);
  const entry = measures.colours.budget.find(({ key }) => key === role);
  if (!entry) throw new Error(`no budget of ${role}`);
  return resizingFor(plan, measures, 'colour', entry);
}

describe('an object resized for a budget', () => {
  it('brings its role to the target', () => {
    // 20 x 20 is 8 % of the picture; 12 % takes a side 1.22 times as long.
    const text = scene(20, 'complement 12% within 2%');
    const found = resizing(text, 'complement');
    expect(found?.object.name).toBe('tree');
    expect(found?.factor).toBeCloseTo(Math.sqrt(12 / 8), 2);
    expect(found?.share).toBeCloseTo(0.08 * (found?.factor ?? 0) ** 2, 9);
  });

  it('covers in the mended plan what was promised', () => {
    const text = scene(20, 'complement 12% within 2%');
    const found = resizing(text, 'complement');
    const after = checked(mended(text, found?.fix ?? { edits: [] })).measures.colours.budget[0];
    expect(after?.share).toBeCloseTo(found?.share ?? NaN, 4);
    expect(after?.within).toBe(true);
  });

  it('is the same one in the mirrored picture', () => {
    const at = (x: number): string =>
      scene(
        20,
        'complement 12% within 2%',
        `\nobject  gate\n  shape   rectangle 12 x 8 at (${x}, 30)\n  colour  bark`,
      );
    const [one, other] = [at(20), at(80)].map((text) => resizing(text, 'complement'));
    expect(one?.object.name).toBe(other?.object.name);
    expect(one?.factor).toBe(other?.factor);
  });

  it('may be one that lies on the colour of which there is too much', () => {
    const found = resizing(scene(20, 'dominant 86% within 2%'), 'dominant');
    expect(found?.object.name).toBe('tree');
    expect(found?.share).toBeCloseTo(1 - 0.08 * (found?.factor ?? 0) ** 2, 9);
  });

  it('goes as far towards the target as a quarter of a side, where that is within', () => {
    // 14 % takes a side 1.32 times as long; 1.25 times as long it is 12.5 %.
    const found = resizing(scene(20, 'complement 14% within 2%'), 'complement');
    expect(found?.factor).toBe(1.25);
    expect(found?.share).toBeCloseTo(0.125, 9);
  });

  it('is corrected once for what it covers of its own colour', () => {
    // As the tree grows it covers as much of the fence of its own colour again as of the sky.
    const fence =
      '\nobject  fence\n  plane   background\n  shape   rectangle (0, 0) to (50, 50)\n  colour  bark';
    const text = scene(20, 'complement 56% within 0.9%', fence);
    const found = resizing(text, 'complement');
    // 2 % of the picture more, of the tree's 8 %, would take a side 1.12 times as long; half of it counts already.
    expect(found?.factor).toBeGreaterThan(1.2);
    expect(found?.share).toBeCloseTo(0.56, 2);
  });

  it.each([
    ['would have to be more than a quarter larger each way', scene(20, 'complement 15% within 2%')],
    ['would have to be more than a fifth smaller each way', scene(20, 'complement 3% within 2%')],
    [
      'is placed under another',
      scene(
        20,
        'complement 12% within 2%',
        '\nobject  nest\n  shape   circle 2 at top edge of tree\n  colour  #5a3a20',
      ),
    ],
    ['would take another share out of its budget', scene(20, 'complement 12%, dominant 92% within 2%')],
    [
      'would hide another',
      scene(20, 'complement 12% within 2%').replace(
        'object  tree',
        'object  bird\n  shape   rectangle (39, 24) to (39.9, 25)\n  value   1\nobject  tree',
      ),
    ],
  ])('is none that %s', (_, text) => {
    expect(resizing(text, 'complement')).toBeUndefined();
  });
});
