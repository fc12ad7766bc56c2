import type { Block } from '../captions/block.js';
import { textWidth } from '../captions/text-width.js';
import { pathMark, textMark } from '../marks.js';
import { rectanglePath } from '../path-data.js';
import type { Band } from './pictures.js';

/** The figures between the bands of a scale, as they are written. */
export const valueEdges: readonly string[] = ['2', '1½', '1', '½', '½', '1', '1½', '2'];
export const colourEdges: readonly string[] = ['2.5', '5', '10', '20'];

/** A scale of differences as a strip of its bands, with the figures between them and what its ends mean. */
export function bandsBlock(
  key: string,
  scale: readonly Band[],
  edges: readonly string[],
  [low, high]: readonly [string, string],
  width: number,
  em: number,
): Block {
  const size = 0.78 * em;
  const cell = width / scale.length;
  const isRoomy = textWidth(`${low}${high}`, size) + em <= width;
  return {
    height: (isRoomy ? 2.75 : 1.75) * em,
    marks: (x, y) => [
      ...scale.map(({ hex }, index) =>
        pathMark(
          `record:${key}:band:${index}`,
          rectanglePath({ x: x + index * cell, y, width: cell, height: 0.75 * em }),
          { fill: hex, stroke: { ink: 'quiet', weight: 'hair' } },
        ),
      ),
      ...edges.map((edge, index) =>
        textMark(`record:${key}:edge:${index}`, edge, x + (index + 1) * cell, y + 1.55 * em, {
          size,
          ink: 'ink',
          anchor: 'middle',
        }),
      ),
      ...(isRoomy
        ? [
            textMark(`record:${key}:low`, low, x, y + 2.55 * em, { size, ink: 'quiet' }),
            textMark(`record:${key}:high`, high, x + width, y + 2.55 * em, {
              size,
              ink: 'quiet',
              anchor: 'end',
            }),
          ]
        : []),
    ],
  };
}
