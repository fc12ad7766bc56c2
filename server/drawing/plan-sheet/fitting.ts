import { type Block, EMPTY_BLOCK, stacked } from '../captions/block.js';
import { headingMarks } from '../captions/heading.js';
import { textMark } from '../marks.js';

/** A list under a heading, of which as much is shown as there is room for. */
export interface List {
  readonly key: string;
  readonly heading: string;
  /** At the right end of the heading's line. */
  readonly remark: string;
  readonly entries: readonly Block[];
  /** Counts what is left out: `and two more colours`. */
  readonly more: (count: number) => string;
}

/**
 * As much of a list as fits into the height, with a line that counts the rest: all of it when not even one entry fits.
 */
export function fittedList(
  { key, heading, remark, entries, more }: List,
  width: number,
  height: number,
  em: number,
): Block {
  if (entries.length === 0) return EMPTY_BLOCK;
  const gap = 0.35 * em;
  const head: Block = {
    height: 1.35 * em,
    marks: (x, y) => headingMarks(key, heading, remark, { x, y, width, em }),
  };
  const whole = stacked([head, ...entries], gap);
  if (whole.height <= height) return whole;
  const countHeight = 1.2 * em;
  let fitting = 0;
  let used = head.height + gap + countHeight;
  for (const entry of entries.slice(0, -1)) {
    used += entry.height + (entry.height > 0 ? gap : 0);
    if (used > height) break;
    fitting += 1;
  }
  const counted: Block = {
    height: countHeight,
    marks: (x, y) => [
      textMark(`${key}:more`, more(entries.length - fitting), x, y + 0.9 * em, {
        size: 0.82 * em,
        ink: 'quiet',
      }),
    ],
  };
  return stacked([head, ...entries.slice(0, fitting), counted], gap);
}

/** The first of some arrangements that is no higher than the height, else the last. */
export function firstFitting(height: number, ...blocks: readonly Block[]): Block {
  return blocks.find((block) => block.height <= height) ?? blocks.at(-1) ?? EMPTY_BLOCK;
}
