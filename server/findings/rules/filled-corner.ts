import { t } from '../../../grammar/index.js';
import type { Measures } from '../../measure/measures.js';
import { CORNER_REACH, type CornerFill } from '../../measure/objects/tangents.js';
import { boxHeight, boxWidth } from '../../plan/geometry/point.js';
import type { Plan } from '../../plan/plan.js';
import type { Rule, RuleFinding } from '../finding.js';
import { exceeds, hasFault } from '../limits.js';
import { shiftsAlong } from '../moves/away.js';
import { firstClear } from '../moves/clear-of-tangents.js';
import { remembered } from '../moves/remembered.js';
import { type Shift, distanceWords, shiftFix, withItsParts } from '../moves/shift.js';
import { cornerWords } from '../words/sides.js';
import { length, quoted } from '../words/words.js';

/** How far beside the corner a border is to end, part of the diagonal: plainly beside it. */
const PLAINLY = 0.02;
/** Part of the canvas, each way, beyond which a shape is a ground. */
const LARGEST = 0.7;

export const filledCorner: Rule = {
  id: 'filled corner',
  severity: 'hint',
  chapter: 'objects',
  limit: { value: 0.002, unit: 'part', of: 'the diagonal', most: CORNER_REACH },
  perObject: true,
  summary: 'The border of an object runs exactly into a corner of the canvas, cuts one off, or fills it.',
  explanation:
    'A line that runs into a corner points out of the picture. A thing that cuts a corner off in one straight line, or fills it as an upright rectangle, takes it from the picture and makes another frame. Let the line end on one of the two edges, plainly beside the corner, or break it. A shape that holds a corner in any other way is not told, nor is one of the background or one that takes more than 70 % of one of the two edges, as grounds and walls do.',
  formula:
    'distance from the corner to the outline / diagonal <= limit, and the shape covers part of the directions from the corner into the canvas, looked at every 10 degrees; or it covers all of them, and the greatest distance of its border from a straight line between the two edges, or from the two other sides of a rectangle in the corner, / diagonal <= limit',
  source: 'common practice, no source',
  check: (plan, measures, limit) =>
    measures.tangents.corners.flatMap((fill): RuleFinding[] => {
      const object = plan.objects[fill.object];
      if (!object || hasFault(plan, object) || exceeds(fill.shareOfDiagonal, limit)) return [];
      return [
        {
          message: messageOf(quoted(object.name), fill),
          remedy: () => {
            const shift = remembered(plan, fill.object, `filled corner ${fill.corner}`, limit, () =>
              wayOut(plan, measures, fill, limit),
            );
            return {
              advice: advice(plan, measures, fill, shift),
              fix: shift && shiftFix(plan, measures.parts, shift),
            };
          },
          location: object.shapeLocation ?? object.location,
          objects: [fill.object],
          at: fill.at,
          excess: limit - fill.shareOfDiagonal,
        },
      ];
    }),
};

function messageOf(name: string, { kind, corner }: CornerFill): string {
  const where = cornerWords(corner);
  switch (kind) {
    case 'run into':
      return t('The border of {0} runs into the {1} corner of the canvas.', name, where);
    case 'cut off':
      return t('{0} cuts off the {1} corner of the canvas in one straight line.', name, where);
    case 'filled':
      return t('{0} fills the {1} corner of the canvas exactly, as a rectangle.', name, where);
  }
}

function wayOut(
  plan: Plan,
  measures: Measures,
  { object, corner }: CornerFill,
  limit: number,
): Shift | undefined {
  if (!isThing(plan, object)) return undefined;
  const ways = [
    { x: corner.endsWith('left') ? 1 : -1, y: 0 },
    { x: 0, y: corner.startsWith('upper') ? 1 : -1 },
  ].flatMap(({ x, y }) => [
    { x, y },
    { x: -x, y: -y },
  ]);
  const shifts = ways.flatMap((way) =>
    shiftsAlong(object, way, Math.max(limit, PLAINLY) * plan.canvas.diagonal, plan.canvas),
  );
  return firstClear(plan, measures, shifts, ({ corners }) =>
    corners.some(
      (left) => left.object === object && left.corner === corner && !exceeds(left.shareOfDiagonal, limit),
    ),
  );
}

/** A ground that runs into the corner is not moved as a whole. */
function isThing({ canvas, objects }: Plan, index: number): boolean {
  const object = objects[index];
  if (!object || object.plane === 'background') return false;
  const { box } = object.outline;
  return boxWidth(box) <= LARGEST * canvas.width && boxHeight(box) <= LARGEST * canvas.height;
}

function advice(
  plan: Plan,
  measures: Measures,
  { object, corner, kind }: CornerFill,
  shift: Shift | undefined,
): string {
  if (shift) {
    return t(
      'Move {0} {1}, which takes it out of the corner.',
      withItsParts(plan, measures.parts, object),
      distanceWords(shift, plan.canvas),
    );
  }
  const beside = length(PLAINLY * plan.canvas.diagonal, plan.canvas);
  const [level, side] = corner.split(' ');
  if (kind === 'cut off') return t('Bend or break that line, by {0} or more.', beside);
  if (kind === 'filled') return t('Bend or break one side of that rectangle, by {0} or more.', beside);
  if (level === 'upper')
    return side === 'left'
      ? t('Let it end {0} or more beside the corner, on the top edge or on the left edge.', beside)
      : t('Let it end {0} or more beside the corner, on the top edge or on the right edge.', beside);
  return side === 'left'
    ? t('Let it end {0} or more beside the corner, on the bottom edge or on the left edge.', beside)
    : t('Let it end {0} or more beside the corner, on the bottom edge or on the right edge.', beside);
}
