import { describe, expect, it } from 'vitest';
import { checked } from '../../tests/support/plan.js';

/** 100 x 50: a sky over the upper half, a field below it, a barn of 20 x 20 across both, and 10 x 50 left bare. */
const FIELD = `
canvas  100 x 50 cm
  ground  N 7/
focus   (50, 25)
scale   5
budget  value dark 10%, middle 40%, light 50% within 3%
budget  colour dominant 45%, complement 37%, neutral 8% within 1%
colour  haze 5B 7/2 dominant
colour  hay  5Y 7/6 complement
object  sky
  shape   rectangle (0, 0) to (90, 25)
  colour  haze
  value   4
object  field
  shape   rectangle (0, 25) to (90, 50)
  colour  hay
  value   3
object  barn, dominant
  shape   rectangle (40, 15) to (60, 35)
  colour  N 2/
  value   1`;

describe('what is measured on a plan', () => {
  const { plan, measures } = checked(FIELD);

  it('measures the visible share of every object', () => {
    const shares = measures.objects.map(({ share }) => share);
    expect(shares[0]).toBeCloseTo((90 * 25 - 200) / 5000, 9);
    expect(shares[1]).toBeCloseTo((90 * 25 - 200) / 5000, 9);
    expect(shares[2]).toBeCloseTo(400 / 5000, 9);
    expect(measures.areas.bareShare).toBeCloseTo(0.1, 9);
    expect(shares.reduce((sum, share) => sum + share, measures.areas.bareShare)).toBeCloseTo(1, 6);
    expect(measures.objects[0]).toMatchObject({ coveredBy: [2] });
    expect(measures.objects[0]?.hiddenShare).toBeCloseTo(200 / 2250, 9);
  });

  it('shares out the steps, bare ground at the step of its own value', () => {
    const steps = measures.values.steps.map(({ share }) => Math.round(share * 1000) / 1000);
    expect(steps).toEqual([0.08, 0, 0.41, 0.51, 0]);
    expect(measures.values.bareShare).toBeCloseTo(0.1, 9);
    expect(measures.values.groups.map(({ name, share }) => [name, Math.round(share * 100)])).toEqual([
      ['dark', 8],
      ['middle', 41],
      ['light', 51],
    ]);
    expect(measures.values.groups[2]?.objects).toEqual([{ object: 0, share: expect.closeTo(0.41, 9) }]);
  });

  it('weighs the mean value by area', () => {
    // Steps 4, 3 and 1 of five are Munsell values 7, 5 and 1; the ground is at 7.
    expect(measures.values.mean).toBeCloseTo(0.41 * 7 + 0.41 * 5 + 0.08 * 1 + 0.1 * 7, 2);
  });

  it('holds each share against its budget', () => {
    expect(measures.values.budget.map(({ name, within }) => [name, within])).toEqual([
      ['dark', true],
      ['middle', true],
      ['light', true],
    ]);
    expect(measures.colours.budget.map(({ name, within }) => [name, within])).toEqual([
      ['dominant', false],
      ['complement', false],
      ['neutral', false],
    ]);
    expect(measures.colours.budget[0]?.difference).toBeCloseTo(-0.04, 9);
    expect(measures.colours.noRoleShare).toBeCloseTo(0.08, 9);
    expect(measures.colours.bareShare).toBeCloseTo(0.1, 9);
    expect(measures.colours.colours.map(({ share }) => Math.round(share * 100))).toEqual([41, 41]);
  });

  it('measures from the focal point', () => {
    expect(measures.focus?.fromCentre).toBe(0);
    expect(measures.focus?.dominants).toEqual([
      { object: 2, holds: true, distanceShare: expect.closeTo(10 / plan.canvas.diagonal, 6) },
    ]);
    expect(measures.focus?.nearest?.system).toBe('golden');
    const { crossing, distance } = measures.focus?.nearest ?? {
      crossing: { at: { x: 0, y: 0 } },
      distance: 0,
    };
    expect(distance).toBeCloseTo(Math.hypot(crossing.at.x - 50, crossing.at.y - 25), 9);
  });
});

describe('at the limits', () => {
  it('measures a plan of nothing', () => {
    const { measures } = checked('canvas  40 x 30 cm');
    expect(measures.areas.bareShare).toBe(1);
    expect(measures.values.steps.reduce((sum, { share }) => sum + share, 0)).toBe(1);
    expect(measures.focus).toBeUndefined();
  });

  it('counts ground with a role in the colour budget, and a fractional step with the nearest', () => {
    const { measures } = checked(
      `canvas  10 x 10 cm\n  ground  #c8b48a dominant\nobject  dot\n  shape   rectangle (0, 0) to (5, 5)\n  value   2.6`,
    );
    expect(measures.colours.roles[0]).toMatchObject({ role: 'dominant', share: 0.75 });
    expect(measures.colours.bareShare).toBe(0);
    expect(measures.values.steps[2]?.share).toBeCloseTo(0.25, 9);
  });

  it('counts an object without value or colour as unplanned', () => {
    const { measures } = checked('canvas  10 x 10 cm\nobject  dot\n  shape   rectangle (0, 0) to (5, 5)');
    expect(measures.values.unplannedShare).toBeCloseTo(0.25, 9);
    expect(measures.values.steps.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(0.75, 9);
  });

  it('budgets a single step by its number', () => {
    const { measures } = checked(
      'canvas  10 x 10 cm\nscale   9\nbudget  value 9 25%\nobject  dot\n  shape   rectangle (0, 0) to (5, 5)\n  value   9',
    );
    expect(measures.values.budget[0]).toMatchObject({ name: '9', target: 0.25 });
    expect(measures.values.budget[0]?.share).toBeGreaterThanOrEqual(0.25);
  });
});
