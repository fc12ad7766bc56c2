import { counted } from '../../findings/words/words.js';
import type { ScheduleMeasure, ScheduledSitting } from '../../measure/sittings/schedule.js';
import type { Sitting } from '../../plan/plan.js';
import { clippedRing } from '../../plan/geometry/polygons.js';
import { plainNumber } from '../../plan/problems.js';
import type { BoardPlace } from '../board.js';
import { type Block, EMPTY_BLOCK, stacked } from '../captions/block.js';
import { BOLD_WIDTH } from '../captions/text-width.js';
import { lines } from '../captions/title.js';
import { pathMark, textMark } from '../marks.js';
import { number, rectanglePath } from '../path-data.js';
import { hatchPath } from '../picture/hatch.js';
import { glazeKey } from '../picture/glaze-key.js';
import { hexOf, lineOn, mix } from '../picture/ink.js';
import { type Reading, isUnplanned } from '../views/reading.js';
import type { Box, Mark } from '../scene.js';
import { MOST_FRAMES, type RowsOf, laidInRows, rowsFor } from '../rows.js';
import { shortDate } from './dates.js';
import { outlineSteps } from './frame.js';
import { type Standing, standingAfter } from '../../measure/sittings/standing.js';

const rows: RowsOf = {
  leastCell: 8.4,
  mostCell: 17,
  mostColumns: 6,
  mostHeight: 15,
  gap: 1.1,
  below: 0.45,
};

/** The picture after each sitting, side by side in rows. */
export interface Strip {
  /** Round all of it. */
  readonly box: Box;
  readonly shapes: readonly Mark[];
  readonly construction: readonly Mark[];
  readonly written: readonly Mark[];
}

export function stripOf(reading: Reading, schedule: ScheduleMeasure, place: BoardPlace): Strip {
  const { plan, measures } = reading;
  const { em, inner } = place;
  const shown = schedule.sittings.slice(0, MOST_FRAMES);
  const looks = standingAfter(
    plan,
    schedule.sittings,
    reading.showsGlazes ? measures.palette?.mixing : undefined,
  );
  const fitted = rowsFor(shown.length, plan.canvas, place, rows);
  const { scale } = fitted;
  const outlines = plan.objects.map(({ outline }) => outlineSteps(outline, plan.canvas, scale, em));
  const laid = laidInRows(
    shown.map((sitting, order) => ({
      words: wordsUnder(reading, schedule, sitting, order, fitted.cell),
      draw: (at) =>
        frameMarks(reading, sitting, { look: looks[order] ?? [], outlines, at: { ...at, scale } }),
    })),
    fitted,
    plan.canvas,
    place,
    rows,
    inner.y,
    { key: 'sittings:more', count: schedule.sittings.length - shown.length },
  );
  const { bottom, ...marks } = laid;
  return { box: { ...inner, height: bottom - inner.y }, ...marks };
}

interface FrameParts {
  /** What each object shows. */
  readonly look: readonly (Standing | undefined)[];
  /** Each object's outline in steps from the corner of the picture. */
  readonly outlines: readonly string[];
  readonly at: { readonly x: number; readonly y: number; readonly scale: number };
}

/** One small picture: the ground, what is painted so far, and a line round what is worked on in this sitting. */
function frameMarks(
  reading: Reading,
  { sitting, works }: ScheduledSitting,
  { look, outlines, at }: FrameParts,
): { readonly shapes: readonly Mark[]; readonly edge: readonly Mark[] } {
  const { plan, subjects, layout } = reading;
  const { em } = layout;
  const { canvas } = plan;
  const key = subjects.sittings[sitting] ?? `sitting:${sitting}`;
  const box: Box = { x: at.x, y: at.y, width: canvas.width * at.scale, height: canvas.height * at.scale };
  const worked = new Set(works);
  const objects = plan.coveringOrder.flatMap((index): Mark[] => {
    const object = plan.objects[index];
    const painted = look[index];
    const subject = subjects.objects[index];
    if (object === undefined || painted === undefined || subject === undefined) return [];
    const steps = outlines[index] ?? '';
    if (steps === '') return [];
    const d = `M${number(at.x)} ${number(at.y)}${steps}`;
    const isWorked = worked.has(index);
    const { colour } = painted;
    const mark = pathMark(`${key}:${subject}`, d, {
      fill: hexOf(colour),
      fillRule: object.outline.fillRule,
      stroke: isWorked
        ? { ink: hexOf(mix(colour, lineOn(colour), 0.75)), weight: 'fine' }
        : { ink: hexOf(mix(colour, lineOn(colour), 0.3)), weight: 'hair' },
      // What is worked on can be gone to; the same thing in every picture would be a crowd.
      ...(isWorked ? { subject } : {}),
    });
    const { glazed } = painted;
    if (glazed !== undefined) return [mark, { ...mark, key: glazeKey(mark.key), fill: hexOf(glazed) }];
    if (!isUnplanned(object)) return [mark];
    const window = { left: 0, top: 0, right: canvas.width, bottom: canvas.height };
    const rings = object.outline.rings.map((ring) =>
      clippedRing(ring, window).map((value, place) => (place % 2 === 0 ? at.x : at.y) + value * at.scale),
    );
    const hatch = hatchPath({ ...object.outline, rings }, 0.4 * em, {
      width: box.x + box.width,
      height: box.y + box.height,
    });
    if (hatch === '') return [mark];
    const ink = hexOf(mix(colour, lineOn(colour), 0.5));
    return [mark, pathMark(`${key}:${subject}:hatch`, hatch, { stroke: { ink, weight: 'hair' } })];
  });
  return {
    shapes: [
      pathMark(`${key}:ground`, rectanglePath(box), { fill: hexOf(canvas.ground.colour) }),
      ...objects,
    ],
    edge: [
      pathMark(`${key}:edge`, rectanglePath(box), {
        stroke: { ink: 'bevel', weight: 'fine' },
        subject: subjects.sittings[sitting],
        tip: `${sittingInWords(reading, sitting)}.`,
      }),
    ],
  };
}

/** The sitting in a sentence: title, day, layer and what it works on. */
export function sittingInWords({ plan, measures }: Reading, index: number): string {
  const scheduled = measures.schedule?.sittings.find(({ sitting }) => sitting === index);
  const sitting = plan.sittings[index];
  if (sitting === undefined || scheduled === undefined) return '';
  const names = scheduled.works.flatMap((object) => plan.objects[object]?.name ?? []);
  const day = scheduled.day === undefined ? 'no date yet' : shortDate(scheduled.day);
  return `${sitting.title}, ${day}, ${layerInWords(scheduled, sitting)}: ${names.length === 0 ? 'no object' : names.join(', ')}`;
}

/** `underpainting, lean, 0 % fat` */
function layerInWords({ layer, layerStated, fat, fatFrom }: ScheduledSitting, { body }: Sitting): string {
  const percent = `${plainNumber(100 * fat, 1)} %\u00A0fat`;
  return [
    layerStated ? layer : `${layer}, as no layer is named`,
    ...(body === undefined ? [] : [body]),
    ...(layer === 'varnish' ? [] : [fatFrom === 'share' ? percent : `about ${percent}`]),
  ].join(', ');
}

/** `three objects`, `all over` */
function workInWords({ works }: ScheduledSitting, sitting: Sitting): readonly string[] {
  if (works.length === 0) return [];
  if (sitting.works.length === 0) return ['all over'];
  return [`${counted(works.length)} ${works.length === 1 ? 'object' : 'objects'}`];
}

function wordsUnder(
  reading: Reading,
  schedule: ScheduleMeasure,
  scheduled: ScheduledSitting,
  order: number,
  width: number,
): Block {
  const { plan, subjects, layout } = reading;
  const { em } = layout;
  const sitting = plan.sittings[scheduled.sitting];
  const subject = subjects.sittings[scheduled.sitting];
  if (sitting === undefined || subject === undefined) return EMPTY_BLOCK;
  const { day, dryOn, isIdle, layer } = scheduled;
  const facts = [
    day === undefined ? 'no date yet' : shortDate(day),
    layerInWords(scheduled, sitting),
    ...(isIdle ? ['nothing to do'] : workInWords(scheduled, sitting)),
    ...(dryOn === undefined || layer === 'varnish'
      ? []
      : [`${schedule.isSettled ? '' : 'about '}dry on ${shortDate(dryOn)}`]),
  ];
  const title = lines(
    `${subject}:title`,
    `${order + 1}\u00A0 ${sitting.title}`,
    2,
    { size: 0.9 * em, leading: 1.22 * em, width: width / BOLD_WIDTH },
    (key, text, x, y, size) => textMark(key, text, x, y, { size, ink: 'ink', face: 'strong', subject }),
  );
  return stacked(
    [
      title,
      ...facts.map((fact, index) =>
        lines(
          `${subject}:fact:${index}`,
          fact,
          3,
          { size: 0.82 * em, leading: 1.14 * em, width },
          (key, text, x, y, size) => textMark(key, text, x, y, { size, ink: 'quiet', subject }),
        ),
      ),
    ],
    0,
  );
}
