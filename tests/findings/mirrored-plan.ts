import { mirror } from '../../server/plan/geometry/matrix.js';
import { transform } from '../../server/plan/geometry/outline.js';
import type { Point } from '../../server/plan/geometry/point.js';
import type { Crossing, Plan } from '../../server/plan/plan.js';

/** A plan with left and right changed over in all that is measured; its text stays as it is. */
export function mirroredPlan(plan: Plan): Plan {
  const { width, height } = plan.canvas;
  const middle: Point = { x: width / 2, y: height / 2 };
  const matrix = mirror('left to right', middle);
  const over = ({ x, y }: Point): Point => ({ x: width - x, y });
  const crossing = ({ name, at }: Crossing): Crossing => ({ name: otherSide(name), at: over(at) });
  return {
    ...plan,
    divisions: plan.divisions.map((division) => ({
      ...division,
      lines: division.lines.map(({ from, to }) => ({ from: over(from), to: over(to) })),
      crossings: division.crossings.map(crossing),
    })),
    ...(plan.focus
      ? {
          focus: {
            ...plan.focus,
            at: over(plan.focus.at),
            ...(plan.focus.crossing
              ? { crossing: { ...plan.focus.crossing, name: otherSide(plan.focus.crossing.name) } }
              : {}),
          },
        }
      : {}),
    objects: plan.objects.map((object) => ({ ...object, outline: transform(object.outline, matrix) })),
    leads: plan.leads.map((lead) => ({
      ...lead,
      points: lead.points.map(over),
      ...(lead.along
        ? {
            along: {
              ...lead.along,
              ...(lead.along.side ? { side: otherSide(lead.along.side) as typeof lead.along.side } : {}),
            },
          }
        : {}),
    })),
  };
}

function otherSide(words: string): string {
  return words.replace(/left|right/gu, (word) => (word === 'left' ? 'right' : 'left'));
}
