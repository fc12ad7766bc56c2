import type { Box } from '../../plan/geometry/point.js';
import type { Plan } from '../../plan/plan.js';
import type { Rule, RuleFinding } from '../finding.js';
import { length, quoted } from '../words.js';

export const offTheCanvas: Rule = {
  id: 'off the canvas',
  severity: 'warning',
  perObject: true,
  summary: 'An object lies wholly off the canvas.',
  explanation:
    'A shape may run over the edge, that is how pictures are cropped. One that lies wholly outside is most often a slip in a number.',
  formula: 'area on the canvas = 0, area of the shape > 0',
  source: 'common practice, no source',
  check: (plan, measures) =>
    plan.coveringOrder.flatMap((index, position): RuleFinding[] => {
      const object = plan.objects[index];
      const layer = measures.areas.layers[position];
      if (!object || !layer || layer.ownArea === 0 || layer.onCanvasArea > 0) return [];
      return [
        {
          message: `${quoted(object.name)} lies off the canvas${whereOff(object.outline.box, plan)}.`,
          advice: `The canvas reaches from (0, 0) to (${plan.canvas.width}, ${plan.canvas.height}); x runs to the right and y down.`,
          location: object.shapeLocation ?? object.location,
          objects: [index],
        },
      ];
    }),
};

function whereOff({ left, top, right, bottom }: Box, { canvas }: Plan): string {
  const sides: readonly (readonly [number, string])[] = [
    [-right, 'to the left of it'],
    [left - canvas.width, 'to the right of it'],
    [-bottom, 'above it'],
    [top - canvas.height, 'below it'],
  ];
  const off = sides.filter(([gap]) => gap >= 0);
  return off.map(([gap, side]) => `, ${length(gap, canvas)} ${side}`).join('');
}
