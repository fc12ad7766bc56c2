import { t } from '../../../grammar/index.js';
import { GROUND } from '../../measure/borders/borders.js';
import { centreOfInterest, isOwnEdge } from '../../measure/emphasis/centre.js';
import { REACH } from '../../measure/emphasis/grid.js';
import type { Measures } from '../../measure/measures.js';
import type { PlannedPicture } from '../../measure/photograph/record.js';
import type { Point } from '../../plan/geometry/point.js';
import type { Plan } from '../../plan/plan.js';
import { areaName } from '../../measure/areas/area-words.js';
import type { Rule, RuleFinding } from '../finding.js';
import { exceeds, isOff } from '../limits.js';
import { heldToPlan, isReadable, type Judged, latestPhotograph } from '../seen/photographed.js';
import { sittingName } from '../words/days.js';
import { strengthPercent } from '../words/emphasis.js';
import { offInSteps } from '../words/photographs.js';
import { inWords } from '../../plan/problems.js';
import { length, quoted } from '../words/words.js';

/** Steps from which on an object there is said to be off. */
const SAID = 0.4;

export const paintedEmphasis: Rule = {
  id: 'painted emphasis',
  severity: 'hint',
  chapter: 'record',
  limit: { value: 0.8, unit: 'part', of: 'what it has in the plan, against the strongest place', most: 1 },
  perObject: false,
  summary: 'In the latest photograph another place draws the eye more than the focal point.',
  explanation:
    'The photograph has no outlines, so contrasts are looked for from pixel to pixel and gathered as they are in the plan. The plan is looked at in the same way: what is told is that the focal point has lost against it. Nothing is said before all that is seen has been painted, where light glares on the canvas, or of edges of the dominant object at the focal point itself.',
  formula:
    'contrast gathered at the focal point / the most gathered anywhere, in the photograph < limit x the same in the plan',
  source: 'heuristic, as for emphasis',
  check: (plan, measures, limit) => {
    const latest = latestPhotograph(plan, measures);
    const { focus, canvas } = plan;
    if (!latest?.figures.isWhole.values || !focus || isOff(focus.at, canvas) || !isReadable(plan)) return [];
    const { emphasis, doubts } = latest.figures;
    // Glare draws the eye in the photograph and is not on the canvas.
    if (doubts.some(({ about }) => about === 'glare')) return [];
    // In no plan does it have more than the strongest place.
    if (emphasis?.atFocus === undefined || !exceeds(limit, emphasis.atFocus)) return [];
    const near = areasNear(latest.figures.planned, emphasis.at, plan);
    if (isOwn(plan, measures, near, emphasis.fromFocus ?? 0)) return [];
    if (!exceeds(limit * (emphasis.planned?.atFocus ?? 0), emphasis.atFocus)) return [];
    return [found(plan, measures, latest, { ...emphasis, near })];
  },
};

function found(
  plan: Plan,
  measures: Measures,
  latest: Judged,
  {
    at,
    fromFocus = 0,
    atFocus = 0,
    near,
  }: {
    readonly at: Point;
    readonly fromFocus?: number;
    readonly atFocus?: number;
    readonly near: readonly number[];
  },
): RuleFinding {
  const where = inWords(near.slice(0, 2).map((area) => areaName(plan, area)));
  const off = heldToPlan(plan, latest)
    .filter(({ object, against }) => near.includes(object.index) && Math.abs(against.stepsOff) >= SAID)
    .reduce<ReturnType<typeof heldToPlan>[number] | undefined>(
      (one, other) =>
        one && Math.abs(one.against.stepsOff) >= Math.abs(other.against.stepsOff) ? one : other,
      undefined,
    );
  return {
    message:
      t(
        'After {0} a place at {1}, {2} from the focal point, draws the eye most; the focal point has {3} of its contrast, and in the plan {4} of the strongest.',
        sittingName(plan, latest.sitting),
        where,
        length(fromFocus * plan.canvas.diagonal, plan.canvas),
        strengthPercent(atFocus, 1),
        strengthPercent(latest.figures.emphasis?.planned?.atFocus ?? 0, 1),
      ) +
      (off
        ? ` ${t('There {0} is {1} than planned.', quoted(off.object.name), offInSteps(off.against.stepsOff))}`
        : ''),
    advice: off
      ? t('Bring {0} back to its step first, then look again.', quoted(off.object.name))
      : t('Soften the edges there, or sharpen those at the focal point.'),
    location: latest.location,
    at,
    objects: near.filter((area) => area !== GROUND),
    ...latest.gravity,
  };
}

/** What the plan has within the reach of a place, the most seen first. */
function areasNear(
  { width, height, objects }: PlannedPicture,
  at: Point,
  { canvas }: Plan,
): readonly number[] {
  const reach = (REACH * canvas.diagonal * width) / canvas.width;
  const [x, y] = [(at.x * width) / canvas.width, (at.y * height) / canvas.height];
  const counts = new Map<number, number>();
  for (let row = Math.max(0, Math.floor(y - reach)); row < Math.min(height, y + reach); row++) {
    for (let column = Math.max(0, Math.floor(x - reach)); column < Math.min(width, x + reach); column++) {
      if (Math.hypot(column + 0.5 - x, row + 0.5 - y) > reach) continue;
      const area = objects[row * width + column] as number;
      counts.set(area, (counts.get(area) ?? 0) + 1);
    }
  }
  return [...counts].sort(([, one], [, other]) => other - one).map(([area]) => area);
}

/** Whether what draws the eye may be an edge of what is dominant at the focal point. */
function isOwn(plan: Plan, measures: Measures, near: readonly number[], fromFocus: number): boolean {
  if (!exceeds(fromFocus, REACH)) return true;
  const centre = centreOfInterest(plan, measures);
  return near.some((area) => isOwnEdge(area, fromFocus, centre));
}
