import type { Plan } from '../../plan/plan.js';
import { type Block, stacked } from './block.js';
import { textMark } from '../marks.js';
import { SERIF_WIDTH, wrapped } from './text-width.js';
import { canvasSize, planTitle } from './words.js';

/** Title, what the view shows, and the canvas with what it is made of. */
export function titleBlock(plan: Plan, caption: string, width: number, em: number): Block {
  const title = lines(
    'title',
    planTitle(plan),
    2,
    { size: 1.65 * em, leading: 1.95 * em, width: width / SERIF_WIDTH },
    (key, text, x, y, size) => textMark(key, text, x, y, { size, ink: 'ink', face: 'title' }),
  );
  const view = lines(
    'caption',
    caption,
    3,
    { size: em, leading: 1.35 * em, width: width / SERIF_WIDTH },
    (key, text, x, y, size) => textMark(key, text, x, y, { size, ink: 'quiet', face: 'note' }),
  );
  const canvas = lines(
    'canvas',
    canvasLine(plan),
    2,
    { size: 0.92 * em, leading: 1.3 * em, width },
    (key, text, x, y, size) => textMark(key, text, x, y, { size, ink: 'quiet' }),
  );
  return stacked([title, view, canvas], 0.1 * em);
}

/** `80 × 50 cm, oil on linen, oil primed. By A. N. Painter` */
export function canvasLine({ canvas, by }: Plan): string {
  const { medium, support } = canvas;
  const made =
    medium !== undefined && support !== undefined ? `${medium} on ${support}` : (medium ?? support);
  const size = made === undefined ? canvasSize(canvas) : `${canvasSize(canvas)}, ${made}`;
  return by === undefined ? size : `${size}. By ${by}`;
}

interface Setting {
  readonly size: number;
  readonly leading: number;
  readonly width: number;
}

/** A block of lines; the first line's key is `key`, the next is `key:2`. */
export function lines(
  key: string,
  text: string,
  most: number,
  { size, leading, width }: Setting,
  mark: (key: string, text: string, x: number, y: number, size: number) => ReturnType<typeof textMark>,
): Block {
  const set = wrapped(text, size, width, most);
  return {
    height: set.length * leading,
    marks: (x, y) =>
      set.map((line, index) =>
        mark(
          index === 0 ? key : `${key}:${index + 1}`,
          line,
          x,
          y + index * leading + (leading + 0.68 * size) / 2,
          size,
        ),
      ),
  };
}
