import { textMark } from '../marks.js';
import type { Mark } from '../scene.js';
import { BOLD_WIDTH, textWidth } from './text-width.js';

/** A heading at the left and, where there is room for it, a remark at the right end of the same line. */
export function headingMarks(
  key: string,
  heading: string,
  remark: string,
  {
    x,
    y,
    width,
    em,
  }: { readonly x: number; readonly y: number; readonly width: number; readonly em: number },
): readonly Mark[] {
  const baseline = y + 0.95 * em;
  const size = 0.82 * em;
  const room = width - BOLD_WIDTH * textWidth(heading, 0.95 * em) - 0.6 * em;
  return [
    textMark(`${key}:heading`, heading, x, baseline, { size: 0.95 * em, ink: 'ink', face: 'strong' }),
    ...(textWidth(remark, size) > room
      ? []
      : [textMark(`${key}:remark`, remark, x + width, baseline, { size, ink: 'quiet', anchor: 'end' })]),
  ];
}
