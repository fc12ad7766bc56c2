import type { Coat } from '../../measure/sittings/schedule.js';
import { capitalised } from '../../plan/problems.js';
import { pathMark } from '../marks.js';
import { linePath, rectanglePath } from '../path-data.js';
import { hexOf } from '../picture/ink.js';
import type { Box, Mark } from '../scene.js';
import type { Reading } from '../views/reading.js';
import { shortDate } from './dates.js';
import type { Standing } from '../../measure/sittings/standing.js';

const BAR_EMS = 1.05;

/** `body colour on Fri 22 Jan 2027, dry on Tue 2 Feb 2027` */
export function coatInWords({ plan }: Reading, { layer, day, dryOn, slowest }: Coat): string {
  const on = day === undefined ? 'without a date' : `on ${shortDate(day)}`;
  const paint = plan.palette?.paints[slowest?.paint ?? -1]?.name;
  const dry = dryOn === undefined ? '' : `, dry on ${shortDate(dryOn)}`;
  return `${layer} ${on}${dry}${paint === undefined ? '' : `, for ${paint}`}`;
}

export interface CoatPlace {
  readonly at: (day: number) => number;
  readonly across: number;
  readonly y: number;
  readonly to: number;
  readonly subject: string;
  readonly colour: Standing | undefined;
  readonly isConflict: boolean;
}

/** A coat on its day, and hatching until it is dry. */
export function coatMarks(key: string, reading: Reading, coat: Coat, place: CoatPlace): readonly Mark[] {
  const { em } = reading.layout;
  const { day, dryOn } = coat;
  if (day === undefined) return [];
  const { at, across, y, to, subject, colour, isConflict } = place;
  const left = at(day);
  const laid: Box = { x: left, y, width: Math.max(across, 0.4 * em), height: BAR_EMS * em };
  const right = dryOn === undefined ? left : at(Math.min(dryOn, to + 1));
  const drying: Box = {
    x: laid.x + laid.width,
    y: y + 0.2 * em,
    width: right - laid.x - laid.width,
    height: (BAR_EMS - 0.4) * em,
  };
  return [
    ...(drying.width > 0
      ? [
          pathMark(`${key}:drying`, rectanglePath(drying), {
            stroke: { ink: 'quiet', weight: 'hair' },
            subject,
          }),
          pathMark(`${key}:drying:hatch`, hatched(drying, 0.3 * em), {
            stroke: { ink: 'quiet', weight: 'hair' },
            subject,
          }),
        ]
      : []),
    pathMark(key, rectanglePath(laid), {
      fill: colour === undefined ? 'track' : hexOf(colour.glazed ?? colour.colour),
      stroke: isConflict
        ? { ink: 'warning', weight: 'heavy', dash: 'dashed' }
        : { ink: 'ink', weight: 'fine' },
      subject,
      tip: `${capitalised(coatInWords(reading, coat))}.`,
    }),
  ];
}

/** Slanting lines in a box, `spacing` apart, that rise to the right; those of all boxes lie on one set of slants. */
export function hatched({ x, y, width, height }: Box, spacing: number): string {
  // On a slant x + y stays the same.
  const step = spacing * Math.SQRT2;
  const lines: string[] = [];
  for (let slant = Math.ceil((x + y) / step); slant * step < x + y + width + height; slant++) {
    const sum = slant * step;
    const left = Math.max(x, sum - y - height);
    const right = Math.min(x + width, sum - y);
    if (right <= left) continue;
    lines.push(
      linePath([
        { x: left, y: sum - left },
        { x: right, y: sum - right },
      ]),
    );
  }
  return lines.join('');
}
