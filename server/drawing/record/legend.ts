import type { SittingRecord } from '../../measure/photograph/record.js';
import { computedColour } from '../../plan/colour/model.js';
import type { LegendLine } from '../captions/legend.js';
import { pathMark } from '../marks.js';
import { circlePath, linePath, rectanglePath } from '../path-data.js';
import type { Reading } from '../views/reading.js';
import { focusSign, strongestMarks } from './signs.js';

const GREY = computedColour([55, 0, 0]);

/** What the signs of the record mean; only what is there is explained. */
export function recordLegend({ plan }: Reading, record: SittingRecord): readonly LegendLine[] {
  const figures = record.is === 'measured' ? record.figures : undefined;
  return [
    ...(plan.focus === undefined
      ? []
      : [
          {
            key: 'focus',
            text: 'focal point, as planned',
            sign: (x: number, y: number, side: number) =>
              focusSign('legend:focus', { x: x + side / 2, y: y + side / 2 }, 0.4 * side),
          },
        ]),
    ...(figures?.emphasis === undefined
      ? []
      : [
          {
            key: 'strongest',
            text: 'where the photograph draws the eye most',
            sign: (x: number, y: number, side: number) =>
              strongestMarks('legend:strongest', { x: x + side / 2, y: y + side / 2 }, 0.75 * side, GREY),
          },
        ]),
    ...(figures === undefined
      ? []
      : [
          {
            key: 'steps',
            text: 'an object: the middle is the plan, the tint half a step to either side; left is darker, right lighter',
            sign: (x: number, y: number, side: number) => [
              pathMark(
                'legend:steps:near',
                rectanglePath({
                  x: x + 0.25 * side,
                  y: y + 0.1 * side,
                  width: 0.5 * side,
                  height: 0.8 * side,
                }),
                { fill: 'track' },
              ),
              pathMark(
                'legend:steps',
                linePath([
                  { x: x + side / 2, y: y + 0.1 * side },
                  { x: x + side / 2, y: y + 0.9 * side },
                ]),
                { stroke: { ink: 'wanted', weight: 'medium' } },
              ),
            ],
          },
          ...(figures.objects.some(({ since }) => since !== undefined)
            ? [
                {
                  key: 'before',
                  text: 'ring: in the photograph before; dot: now',
                  sign: (x: number, y: number, side: number) => [
                    pathMark(
                      'legend:before:way',
                      linePath([
                        { x: x + 0.2 * side, y: y + side / 2 },
                        { x: x + 0.8 * side, y: y + side / 2 },
                      ]),
                      { stroke: { ink: 'ink', weight: 'fine' } },
                    ),
                    pathMark(
                      'legend:before',
                      circlePath({ x: x + 0.2 * side, y: y + side / 2 }, 0.18 * side),
                      { fill: 'sheet', stroke: { ink: 'ink', weight: 'fine' } },
                    ),
                    pathMark('legend:now', circlePath({ x: x + 0.8 * side, y: y + side / 2 }, 0.22 * side), {
                      fill: 'ink',
                    }),
                  ],
                },
              ]
            : []),
          {
            key: 'evened',
            text: 'what is off is evened out over a few pixels, so that the grain of canvas and brush does not show',
          },
        ]),
  ];
}
