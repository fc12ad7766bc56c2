import { t } from '../../../grammar/index.js';
import type { Box, Point } from '../../plan/geometry/point.js';
import type { Plan } from '../../plan/plan.js';
import { inWords, plainNumber } from '../../plan/problems.js';
import { crossingsNear } from '../seen/crossings.js';
import { focusFix } from '../advice/focus.js';
import { moveEdit } from '../edits.js';
import type { Rule, RuleFinding } from '../finding.js';
import { distanceWords } from '../moves/shift.js';
import { type Bearing, fromIt } from '../words/leads.js';
import { exceeds, isOff } from '../limits.js';
import { middleOf, onCanvas } from '../seen/seen.js';
import { gravityOfUnseen } from '../words/principals.js';
import { length, quoted } from '../words/words.js';

/** Part of the diagonal that an object brought back stands clear of the edge. */
const CLEAR = 0.03;

export const offTheCanvas: Rule = {
  id: 'off the canvas',
  severity: 'hint',
  chapter: 'objects',
  perObject: true,
  summary: 'An object lies wholly off the canvas, or the focal point does.',
  explanation:
    'A shape may run over the edge, that is how pictures are cropped. One that lies wholly outside is most often a slip in a number. It is a warning of the focal point, and of an object that is dominant or secondary, for the plan gives them a part in the picture.',
  formula: 'area on the canvas = 0, area of the shape > 0; focal point outside the edges',
  source: 'common practice, no source',
  check: (plan, measures) => [
    ...offFocus(plan),
    ...plan.coveringOrder.flatMap((index, position): RuleFinding[] => {
      const object = plan.objects[index];
      const layer = measures.areas.layers[position];
      if (!object || !layer || layer.ownArea === 0 || layer.onCanvasArea > 0) return [];
      const { x, y } = wayBack(object.outline.box, plan);
      const edits = moveEdit(plan, object, x, y, 'onward');
      return [
        {
          message: offWords(quoted(object.name), object.outline.box, plan),
          advice: `${t('Move it {0}.', distanceWords({ object: index, right: x, down: y }, plan.canvas))} ${canvasReaches(plan)}`,
          ...gravityOfUnseen(object),
          location: object.shapeLocation ?? object.location,
          objects: [index],
          at: onCanvas(middleOf(object), plan.canvas),
          excess: farOff(object.outline.box, plan),
          ...(edits ? { fix: { title: t('Move {0} onto the canvas', quoted(object.name)), edits } } : {}),
        },
      ];
    }),
  ],
};

function offFocus(plan: Plan): readonly RuleFinding[] {
  const { canvas, focus } = plan;
  if (!focus || !isOff(focus.at, canvas)) return [];
  const { x, y } = focus.at;
  const [nearest] = crossingsNear(plan, focus.at);
  const fix = focusFix(plan, nearest?.words);
  return [
    {
      message: offWords(t('The focal point'), { left: x, top: y, right: x, bottom: y }, plan),
      advice: `${nearest ? `${t('The nearest crossing is {0}.', nearest.words)} ` : ''}${canvasReaches(plan)}`,
      severity: 'warning',
      location: focus.location,
      at: onCanvas(focus.at, canvas),
      ...(fix ? { fix } : {}),
    },
  ];
}

function canvasReaches({ canvas }: Plan): string {
  return t(
    'Places are counted from the upper left corner, to the right and down; the lower right one is ({0}, {1}).',
    plainNumber(canvas.width),
    plainNumber(canvas.height),
  );
}

function offWords(what: string, { left, top, right, bottom }: Box, { canvas }: Plan): string {
  const sides: readonly (readonly [number, Bearing])[] = [
    [-right, 'to the left of'],
    [left - canvas.width, 'to the right of'],
    [-bottom, 'above'],
    [top - canvas.height, 'below'],
  ];
  const off = sides.filter(([gap]) => exceeds(gap, 0));
  return off.length === 0
    ? t('{0} lies off the canvas.', what)
    : t(
        '{0} lies off the canvas, {1}.',
        what,
        inWords(off.map(([gap, bearing]) => fromIt(length(gap, canvas), bearing))),
      );
}

/** How far a box that lies off the canvas is from it, part of the diagonal. */
function farOff({ left, top, right, bottom }: Box, { canvas }: Plan): number {
  const across = Math.max(-right, left - canvas.width, 0);
  const down = Math.max(-bottom, top - canvas.height, 0);
  return Math.hypot(across, down) / canvas.diagonal;
}

/** The shortest move that brings a box well onto the canvas, or across it when it is larger. */
function wayBack(box: Box, { canvas }: Plan): Point {
  const clear = CLEAR * canvas.diagonal;
  return {
    x: along(box.left, box.right, canvas.width, clear),
    y: along(box.top, box.bottom, canvas.height, clear),
  };
}

function along(from: number, to: number, side: number, clear: number): number {
  if (to - from > side - 2 * clear) return (side - from - to) / 2;
  if (from < clear) return clear - from;
  return to > side - clear ? side - clear - to : 0;
}
