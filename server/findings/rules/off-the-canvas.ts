import type { Box } from '../../plan/geometry/point.js';
import type { Plan } from '../../plan/plan.js';
import { plainNumber } from '../../plan/problems.js';
import type { Rule, RuleFinding } from '../finding.js';
import { exceeds, isOff } from '../limits.js';
import { length, quoted } from '../words.js';

export const offTheCanvas: Rule = {
  id: 'off the canvas',
  severity: 'warning',
  chapter: 'objects',
  perObject: true,
  summary: 'An object lies wholly off the canvas, or the focal point does.',
  explanation:
    'A shape may run over the edge, that is how pictures are cropped. One that lies wholly outside is most often a slip in a number.',
  formula: 'area on the canvas = 0, area of the shape > 0; focal point outside the edges',
  source: 'common practice, no source',
  check: (plan, measures) => [
    ...offFocus(plan),
    ...plan.coveringOrder.flatMap((index, position): RuleFinding[] => {
      const object = plan.objects[index];
      const layer = measures.areas.layers[position];
      if (!object || !layer || layer.ownArea === 0 || layer.onCanvasArea > 0) return [];
      return [
        {
          message: `${quoted(object.name)} lies off the canvas${whereOff(object.outline.box, plan)}.`,
          advice: canvasReaches(plan),
          location: object.shapeLocation ?? object.location,
          objects: [index],
        },
      ];
    }),
  ],
};

function offFocus(plan: Plan): readonly RuleFinding[] {
  const { canvas, focus } = plan;
  if (!focus || !isOff(focus.at, canvas)) return [];
  const { x, y } = focus.at;
  return [
    {
      message: `The focal point lies off the canvas${whereOff({ left: x, top: y, right: x, bottom: y }, plan)}.`,
      advice: canvasReaches(plan),
      location: focus.location,
    },
  ];
}

function canvasReaches({ canvas }: Plan): string {
  return `The canvas reaches from (0, 0) to (${plainNumber(canvas.width)}, ${plainNumber(canvas.height)}); x runs to the right and y down.`;
}

function whereOff({ left, top, right, bottom }: Box, { canvas }: Plan): string {
  const sides: readonly (readonly [number, string])[] = [
    [-right, 'to the left of it'],
    [left - canvas.width, 'to the right of it'],
    [-bottom, 'above it'],
    [top - canvas.height, 'below it'],
  ];
  const off = sides.filter(([gap]) => exceeds(gap, 0));
  return off.map(([gap, side]) => `, ${length(gap, canvas)} ${side}`).join('');
}
