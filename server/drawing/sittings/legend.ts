import type { ScheduleMeasure } from '../../measure/sittings/schedule.js';
import { computedColour } from '../../plan/colour/model.js';
import { type LegendLine, swatchSign } from '../captions/legend.js';
import { pathMark } from '../marks.js';
import { linePath, rectanglePath } from '../path-data.js';
import { greyOf, hexOf, mix } from '../picture/ink.js';
import type { Reading } from '../views/reading.js';
import { hatched } from './coats.js';

const OCHRE = computedColour([60, 12, 45]);

/** What the signs of small pictures and calendar mean; only what is there is explained. */
export function legendLines({ plan }: Reading, schedule: ScheduleMeasure): readonly LegendLine[] {
  const layers = new Set(schedule.sittings.map(({ layer }) => layer));
  const { ground } = plan.canvas;
  const isWashed = schedule.sittings.some(
    ({ layer, sitting }) => layer === 'imprimatura' && plan.sittings[sitting]?.works.length !== 0,
  );
  const line = (key: string, text: string, sign?: LegendLine['sign']): LegendLine => ({
    key,
    text,
    ...(sign === undefined ? {} : { sign }),
  });
  const isDried = schedule.objects.some(({ coats }) =>
    coats.some(({ day, dryOn }) => day !== undefined && dryOn !== undefined && dryOn > day + 1),
  );
  return [
    line('worked', 'drawn round: what is worked on in that sitting', (x, y, side) => [
      pathMark(
        'legend:worked',
        rectanglePath({ x: x + 0.12 * side, y: y + 0.2 * side, width: 0.76 * side, height: 0.6 * side }),
        { fill: hexOf(OCHRE), stroke: { ink: 'ink', weight: 'fine' } },
      ),
    ]),
    ...(isWashed
      ? [
          line(
            'imprimatura',
            'imprimatura: a thin wash of the colour',
            swatchSign('imprimatura', hexOf(mix(ground.colour, OCHRE, 0.3))),
          ),
        ]
      : []),
    ...(layers.has('underpainting')
      ? [
          line(
            'underpainting',
            'underpainting: the grey of each value',
            swatchSign('underpainting', hexOf(greyOf(3)), hexOf(greyOf(7))),
          ),
        ]
      : []),
    ...(layers.has('block-in') || layers.has('body colour')
      ? [
          line(
            'body',
            `${layers.has('block-in') ? 'block-in and body colour' : 'body colour'}: the colour laid in flat`,
            swatchSign('body', hexOf(OCHRE)),
          ),
        ]
      : []),
    ...(layers.has('scumble') ? [line('scumble', 'scumble: the colour broken over what lies below')] : []),
    ...(layers.has('glaze') ? [line('glaze', 'glaze: what is seen through it')] : []),
    line('coat', 'a coat, on its day', (x, y, side) => [
      pathMark('legend:coat', rectanglePath({ x: x + 0.3 * side, y, width: 0.4 * side, height: side }), {
        fill: hexOf(OCHRE),
        stroke: { ink: 'ink', weight: 'fine' },
      }),
    ]),
    ...(isDried
      ? [
          line('drying', 'until it is dry to the touch', (x, y, side) => {
            const box = { x, y: y + 0.2 * side, width: side, height: 0.6 * side };
            return [
              pathMark('legend:drying', rectanglePath(box), { stroke: { ink: 'quiet', weight: 'hair' } }),
              pathMark('legend:drying:hatch', hatched(box, 0.28 * side), {
                stroke: { ink: 'quiet', weight: 'hair' },
              }),
            ];
          }),
        ]
      : []),
    ...(schedule.conflicts.length > 0
      ? [
          line('conflict', 'dashed: at odds with the layer below it', (x, y, side) => [
            pathMark(
              'legend:conflict',
              rectanglePath({ x: x + 0.2 * side, y: y + 0.1 * side, width: 0.6 * side, height: 0.8 * side }),
              { stroke: { ink: 'warning', weight: 'heavy', dash: 'dashed' } },
            ),
          ]),
        ]
      : []),
    ...(plan.away.length > 0
      ? [
          line('away', 'days that are taken', (x, y, side) => [
            pathMark(
              'legend:away',
              rectanglePath({ x, y: y + 0.1 * side, width: side, height: 0.8 * side }),
              {
                fill: 'track',
                stroke: { ink: 'rule', weight: 'hair', dash: 'dotted' },
              },
            ),
          ]),
        ]
      : []),
    ...(schedule.due === undefined
      ? []
      : [
          line('due', 'the due date', (x, y, side) => [
            pathMark(
              'legend:due',
              linePath([
                { x: x + side / 2, y },
                { x: x + side / 2, y: y + side },
              ]),
              { stroke: { ink: 'wanted', weight: 'heavy' } },
            ),
          ]),
        ]),
  ];
}
