import { describe, expect, it } from 'vitest';
import { combText } from '../../tests/support/combs.js';
import { marketPlan } from '../../tests/support/market.js';
import { checked, objectNamed, planOf } from '../../tests/support/plan.js';
import { translate } from '../plan/geometry/matrix.js';
import { transform } from '../plan/geometry/outline.js';
import { visibleAreas } from './areas/areas.js';
import { trialOf } from './trial.js';

const market = checked(marketPlan(60));

const bare = checked(`canvas 20 x 10 cm
object wall
  shape rectangle (0, 0) to (10, 10)
object jug
  shape rectangle (8, 4) to (12, 8)
object lid
  shape rectangle (11, 3) to (14, 5)
`);

describe('a plan that is tried with an object moved', () => {
  it.each([
    ['a stall of the market', market, 30, 4, -2],
    ['its dominant', market, 5, -20, 0],
    ['a jug half on bare ground', bare, 1, 3, 1],
    ['a wall, which lays the ground open', bare, 0, -5, 0],
  ])('shows what is seen when it is really moved: %s', (_, { plan, measures }, object, right, down) => {
    const outline = plan.objects[object]?.outline;
    if (!outline) throw new Error('no such object');
    const shape = transform(outline, translate(right, down));
    const { areas } = trialOf(plan, measures.areas, new Map([[object, shape]]));
    const layers = plan.coveringOrder.flatMap((index) =>
      index === object ? { outline: shape } : (plan.objects[index] ?? []),
    );
    const really = visibleAreas(plan.canvas, layers);
    expect(areas.bareShare).toBeCloseTo(really.bareShare, 9);
    really.layers.forEach(({ share, hiddenShare, offCanvasShare }, at) => {
      const tried = areas.layers[at];
      expect(tried?.share).toBeCloseTo(share, 9);
      expect(tried?.hiddenShare).toBeCloseTo(hiddenShare, 6);
      expect(tried?.offCanvasShare).toBeCloseTo(offCanvasShare, 9);
    });
  });

  it('takes over what lies elsewhere as it is', () => {
    const { plan, measures } = market;
    const hat = plan.objects.findIndex(({ name }) => name === 'hat-3');
    const outline = plan.objects[hat]?.outline;
    if (!outline) throw new Error('no hat');
    const shape = transform(outline, translate(1, 0));
    const { areas } = trialOf(plan, measures.areas, new Map([[hat, shape]]));
    const same = areas.layers.filter((layer, at) => layer === measures.areas.layers[at]);
    expect(same.length).toBeGreaterThan(50);
  });

  it('leaves out what would cross too often there, as a plan that says so does', () => {
    const text = (shift: number) => `canvas 80 x 30 cm
object reeds
  shape outline ${combText(170, 'upright')}
object rain
  shape outline ${combText(170, 'level', shift)}
`;
    const apart = planOf(text(40));
    const areas = visibleAreas(apart.canvas, apart.objects);
    const { outline } = objectNamed(apart, 'rain');
    const shape = transform(outline, translate(-40, 0));
    const trial = trialOf(apart, areas, new Map([[1, shape]]));
    const really = planOf(text(0));
    expect(really.problems).toHaveLength(1);
    expect(trial.plan.objects.map(({ outline: { rings } }) => rings.length)).toEqual(
      really.objects.map(({ outline: { rings } }) => rings.length),
    );
    const reallySeen = visibleAreas(really.canvas, really.objects);
    expect(trial.areas.bareShare).toBeCloseTo(reallySeen.bareShare, 9);
    expect(trial.areas.layers.map(({ share }) => share.toFixed(9))).toEqual(
      reallySeen.layers.map(({ share }) => share.toFixed(9)),
    );
  });
});
