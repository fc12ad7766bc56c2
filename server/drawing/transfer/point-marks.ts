import type { KeyPoint, ObjectPoints } from '../../measure/transfer/key-points.js';
import { textWidth } from '../captions/text-width.js';
import { pathMark, textMark } from '../marks.js';
import { circlePath } from '../path-data.js';
import { boxAround, grown } from '../picture/boxes.js';
import { placeLabel } from '../picture/labels.js';
import type { Box, Ink, Mark } from '../scene.js';
import { pointInWords } from './words.js';

const DOT_EMS = 0.15;
const NUMBER_EMS = 0.66;
/** More dots than these would be a drawing of their own. */
const MOST_DOTS = 400;

export interface PointsDrawn {
  readonly marks: readonly Mark[];
  readonly taken: readonly Box[];
  /** Points that are seen but got no number, for want of room or because there are too many. */
  readonly leftOut: number;
}

/** What the dots cover. */
export function dotBoxes(objects: readonly ObjectPoints[], em: number): readonly Box[] {
  const side = 2.4 * DOT_EMS * em;
  return seenPoints(objects)
    .slice(0, MOST_DOTS)
    .map(({ point }) => boxAround(point.at, { width: side, height: side }));
}

function seenPoints(
  objects: readonly ObjectPoints[],
): readonly { readonly object: number; readonly point: KeyPoint }[] {
  return objects
    .flatMap(({ object, pieces }) =>
      pieces.flatMap(({ points }) => points.map((point) => ({ object, point }))),
    )
    .filter(({ point }) => !point.isCovered);
}

/** Key points that nothing covers as dots, each with its number as far as there is room. */
export function pointMarks(
  objects: readonly ObjectPoints[],
  subjectOf: (object: number) => string | undefined,
  nameOf: (object: number) => string,
  {
    em,
    picture,
    taken,
    ink,
    paper,
  }: {
    readonly em: number;
    readonly picture: Box;
    readonly taken: readonly Box[];
    readonly ink: Ink;
    readonly paper: Ink;
  },
): PointsDrawn {
  const radius = DOT_EMS * em;
  const size = NUMBER_EMS * em;
  const seen = seenPoints(objects);
  // Numbers keep clear of all dots, not only of those that came before.
  const avoided: Box[] = [...taken, ...dotBoxes(objects, em)];
  const marks: Mark[] = [];
  const written: Box[] = [];
  let leftOut = Math.max(0, seen.length - MOST_DOTS);
  for (const { object, point } of seen.slice(0, MOST_DOTS)) {
    const subject = subjectOf(object);
    if (subject === undefined) continue;
    const key = `${subject}:point:${point.number}`;
    marks.push(
      pathMark(key, circlePath(point.at, radius), {
        fill: ink,
        stroke: { ink: paper, weight: 'hair' },
        subject,
        tip: `${nameOf(object)}, point ${point.number}: ${pointInWords(point)}.`,
      }),
    );
    const text = String(point.number);
    const extent = { width: textWidth(text, size), height: 0.8 * size };
    const box = placeLabel(extent, [point.at], [1.3 * radius, 2.4 * radius, 4 * radius], avoided, picture);
    if (box === undefined) {
      leftOut++;
      continue;
    }
    avoided.push(grown(box, 0.1 * size));
    written.push(box);
    marks.push(
      textMark(`${key}:number`, text, box.x + box.width / 2, box.y + box.height - 0.04 * size, {
        size,
        ink,
        halo: paper,
        anchor: 'middle',
        subject,
      }),
    );
  }
  return { marks, taken: written, leftOut };
}
