import { type Block, stacked } from './block.js';
import { pathMark, textMark } from '../marks.js';
import { rectanglePath } from '../path-data.js';
import type { Hex, LegendEntry, Mark } from '../scene.js';
import { wrapped } from './text-width.js';

export interface LegendLine extends LegendEntry {
  /** Drawn in a square with this upper left corner and side. */
  readonly sign?: (x: number, y: number, side: number) => readonly Mark[];
}

/** Signs and what they mean, one below the other. */
export function legendBlock(entries: readonly LegendLine[], width: number, em: number): Block {
  const size = 0.86 * em;
  const leading = 1.3 * em;
  const indent = 1.7 * em;
  return stacked(
    entries.map(({ key, text, sign }) => {
      const lines = wrapped(text, size, width - indent, 4);
      return {
        height: lines.length * leading,
        marks: (x: number, y: number) => [
          ...(sign?.(x, y + 0.1 * em, 1.1 * em) ?? []),
          ...lines.map((line, index) =>
            textMark(`legend:${key}:${index}`, line, x + indent, y + index * leading + 0.95 * em, {
              size,
              ink: 'quiet',
            }),
          ),
        ],
      };
    }),
    0.12 * em,
  );
}

/** One tone, or several side by side in equal parts. */
export function swatchSign(key: string, ...tones: readonly Hex[]): NonNullable<LegendLine['sign']> {
  return (x, y, side) => {
    const width = side / tones.length;
    const box = { y: y + 0.08 * side, height: 0.84 * side };
    return tones.map((hex, index) =>
      pathMark(
        `legend:${key}:sign${index === 0 ? '' : `:${index + 1}`}`,
        rectanglePath({ ...box, x: x + index * width, width }),
        { fill: hex, stroke: { ink: 'quiet', weight: 'hair' } },
      ),
    );
  };
}
