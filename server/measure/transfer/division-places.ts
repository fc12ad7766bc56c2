import type { DivisionSystem } from '../../../grammar/index.js';
import type { Point } from '../../plan/geometry/point.js';
import type { Plan } from '../../plan/plan.js';

/** Where the lines of a division are drawn; canvas units. */
export interface DivisionPlaces {
  readonly system: DivisionSystem;
  /** From the left edge. */
  readonly uprights: readonly number[];
  /** From the top edge. */
  readonly levels: readonly number[];
  /** Lines that slope, by their ends. */
  readonly slopes: readonly { readonly from: Point; readonly to: Point }[];
}

/** Part of the diagonal by which a line may miss being upright or level. */
const STRAIGHT = 1e-9;

/** The lines of each division of a plan that has any. */
export function systemPlaces({
  divisions,
  canvas,
}: Pick<Plan, 'divisions' | 'canvas'>): readonly DivisionPlaces[] {
  const same = STRAIGHT * canvas.diagonal;
  return divisions.flatMap(({ system, lines }): readonly DivisionPlaces[] => {
    if (lines.length === 0) return [];
    const isUpright = ({ from, to }: (typeof lines)[number]) => Math.abs(from.x - to.x) <= same;
    const isLevel = ({ from, to }: (typeof lines)[number]) => Math.abs(from.y - to.y) <= same;
    return [
      {
        system,
        uprights: inOrder(lines.filter(isUpright).map(({ from }) => from.x)),
        levels: inOrder(lines.filter((line) => !isUpright(line) && isLevel(line)).map(({ from }) => from.y)),
        slopes: lines
          .filter((line) => !isUpright(line) && !isLevel(line))
          .map(({ from, to }) => (from.x <= to.x ? { from, to } : { from: to, to: from })),
      },
    ];
  });
}

function inOrder(places: readonly number[]): readonly number[] {
  return [...places].sort((a, b) => a - b);
}
