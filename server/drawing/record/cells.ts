import { reasonInWords } from '../../../grammar/index.js';
import type { SittingRecord } from '../../measure/photograph/record.js';
import { type Standing, standingAfter } from '../../measure/sittings/standing.js';
import { computedColour } from '../../plan/colour/model.js';
import type { Point } from '../../plan/geometry/point.js';
import { type Block, stacked } from '../captions/block.js';
import { BOLD_WIDTH } from '../captions/text-width.js';
import { lines } from '../captions/title.js';
import { percent } from '../captions/words.js';
import { imageMark, pathMark, textMark } from '../marks.js';
import { number, rectanglePath } from '../path-data.js';
import { hexOf, lineOn, mix } from '../picture/ink.js';
import { jpegPicture } from '../picture-data.js';
import type { Box, Mark } from '../scene.js';
import { outlineSteps } from '../sittings/frame.js';
import { type Reading, glazedPaintOf, isUnplanned, paintOf } from '../views/reading.js';
import type { MeasuredRecord } from './choice.js';
import { colourBands, type DifferencePicture, differencePictures, valueBands } from './pictures.js';
import { bandsBlock, colourEdges, valueEdges } from './scales.js';
import { focusRing, strongestMarks } from './signs.js';
import { dateOfSitting, sittingName } from './words.js';

/** One of the pictures that stand side by side. */
export interface Cell {
  readonly shapes: (box: Box) => readonly Mark[];
  readonly construction: (box: Box) => readonly Mark[];
  readonly words: (width: number) => Block;
}

/** Plan, photograph, and what is off in values and colours; without a photograph, why there is none. */
export function cellsOf(reading: Reading, record: SittingRecord): readonly Cell[] {
  const plan = planCell(reading, record.sitting);
  if (record.is !== 'measured') return [plan, missingCell(reading, record)];
  const { picture, figures } = record;
  const { values, colours } = differencePictures(picture, figures, reading.plan.scale.steps);
  const cells = [plan, photographCell(reading, record), valueCell(reading, values)];
  return colours === undefined ? cells : [...cells, colourCell(reading, colours)];
}

/** What each object is to show after a sitting; the finished picture where no sitting is known. */
function standing({ plan, measures }: Reading, sitting: number): readonly (Standing | undefined)[] {
  const { schedule, palette } = measures;
  const sittings = schedule?.sittings ?? [];
  const at = sittings.findIndex((each) => each.sitting === sitting);
  return standingAfter(plan, sittings, palette?.mixing)[at] ?? [];
}

function planCell(reading: Reading, sitting: number): Cell {
  const { plan, subjects, layout } = reading;
  const { em } = layout;
  const { canvas } = plan;
  const stands = standing(reading, sitting);
  const isStaged = stands.some((each) => each !== undefined);
  return {
    shapes: (box) => {
      const scale = box.width / canvas.width;
      return [
        pathMark('record:plan:ground', rectanglePath(box), {
          fill: hexOf(canvas.ground.colour),
          subject: subjects.all['ground'] === undefined ? undefined : 'ground',
        }),
        ...plan.coveringOrder.flatMap((index): Mark[] => {
          const object = plan.objects[index];
          const subject = subjects.objects[index];
          const shown = stands[index];
          if (object === undefined || subject === undefined || (isStaged && shown === undefined)) return [];
          const steps = outlineSteps(object.outline, canvas, scale, em);
          if (steps === '') return [];
          const paint = isStaged
            ? (shown?.glazed ?? shown?.colour ?? canvas.ground.colour)
            : isUnplanned(object)
              ? canvas.ground.colour
              : (glazedPaintOf(object, reading) ?? paintOf(object, plan));
          return [
            pathMark(`record:plan:${subject}`, `M${number(box.x)} ${number(box.y)}${steps}`, {
              fill: hexOf(paint),
              fillRule: object.outline.fillRule,
              stroke: { ink: hexOf(mix(paint, lineOn(paint), 0.3)), weight: 'hair' },
              subject,
            }),
          ];
        }),
      ];
    },
    construction: (box) => [edgeMark('record:plan', box), ...focusRing(reading, 'record:plan', box)],
    words: (width) =>
      captionBlock(
        'record:plan',
        'Plan',
        isStaged ? 'as it is to stand after this sitting' : 'the finished picture',
        width,
        em,
      ),
  };
}

function photographCell(reading: Reading, { sitting, picture, figures }: MeasuredRecord): Cell {
  const { plan, subjects, layout } = reading;
  const { em } = layout;
  const { canvas } = plan;
  const subject = subjects.sittings[sitting];
  const name = sittingName(plan, sitting);
  return {
    shapes: (box) => [
      imageMark('record:photograph', jpegPicture(picture.shown.jpeg), box, {
        subject,
        tip: `Photograph of ${name}, squared up.`,
      }),
    ],
    construction: (box) => {
      const scale = box.width / canvas.width;
      const strongest = figures.emphasis?.at;
      return [
        ...plan.coveringOrder.flatMap((index): Mark[] => {
          const object = plan.objects[index];
          const key = subjects.objects[index];
          if (object === undefined || key === undefined) return [];
          const steps = outlineSteps(object.outline, canvas, scale, em);
          if (steps === '') return [];
          const paint = paintOf(object, plan);
          return [
            pathMark(`record:${key}:outline`, `M${number(box.x)} ${number(box.y)}${steps}`, {
              stroke: { ink: hexOf(mix(paint, lineOn(paint), 0.75)), weight: 'hair' },
              subject: key,
            }),
          ];
        }),
        edgeMark('record:photograph', box, subject),
        ...focusRing(reading, 'record:photograph', box),
        ...(strongest === undefined
          ? []
          : strongestMarks(
              'record:strongest',
              { x: box.x + strongest.x * scale, y: box.y + strongest.y * scale },
              em,
              toneAt(picture, strongest, canvas),
            )),
      ];
    },
    words: (width) =>
      captionBlock(
        'record:photograph',
        'Photograph',
        `${name}, ${dateOfSitting(plan, sitting)}`,
        width,
        em,
        subject,
      ),
  };
}

function toneAt(
  { lab, width, height }: MeasuredRecord['picture'],
  at: Point,
  canvas: { readonly width: number; readonly height: number },
) {
  const column = Math.min(width - 1, Math.max(0, Math.floor((at.x / canvas.width) * width)));
  const row = Math.min(height - 1, Math.max(0, Math.floor((at.y / canvas.height) * height)));
  const from = 3 * (row * width + column);
  const [l = 50, a = 0, b = 0] = lab.subarray(from, from + 3);
  return computedColour([l, a, b]);
}

/** In place of a photograph that is not to be seen, why. */
function missingCell(reading: Reading, record: Exclude<SittingRecord, { readonly is: 'measured' }>): Cell {
  const { plan, subjects, layout } = reading;
  const { em } = layout;
  const subject = subjects.sittings[record.sitting];
  const why =
    record.is === 'unreadable'
      ? reasonInWords(record.reason)
      : 'The photograph is on its way: it is being read and measured.';
  return {
    shapes: (box) => [pathMark('record:missing', rectanglePath(box), { fill: 'track', subject })],
    construction: (box) => {
      const width = box.width - 2 * em;
      const words = lines(
        'record:missing:words',
        why,
        Math.max(1, Math.floor((box.height - em) / (1.4 * em))),
        { size: em, leading: 1.4 * em, width },
        (key, text, x, y, size) => textMark(key, text, x, y, { size, ink: 'ink', subject }),
      );
      return [
        edgeMark('record:missing', box, subject),
        ...words.marks(box.x + em, box.y + Math.max(0.5 * em, (box.height - words.height) / 2)),
      ];
    },
    words: (width) =>
      captionBlock(
        'record:photograph',
        'Photograph',
        `${sittingName(plan, record.sitting)}, ${dateOfSitting(plan, record.sitting)}`,
        width,
        em,
        subject,
      ),
  };
}

/** `71 % within half a step, 12 % not painted yet` */
export function valueShareInWords({ shares, unplanned }: DifferencePicture): string {
  const right = valueBands.findIndex(({ from }) => from === -0.5);
  return withUnplanned(`${percent(partOf(shares[right] ?? 0, unplanned))} within half a step`, unplanned);
}

/** `64 % under 5, where it is still the same colour` */
export function colourShareInWords({ shares, unplanned }: DifferencePicture): string {
  const near = colourBands.reduce((sum, { from }, index) => sum + (from < 5 ? (shares[index] ?? 0) : 0), 0);
  return withUnplanned(`${percent(partOf(near, unplanned))} under 5`, unplanned);
}

function partOf(share: number, unplanned: number): number {
  return unplanned >= 1 ? 0 : share / (1 - unplanned);
}

function withUnplanned(words: string, unplanned: number): string {
  if (unplanned >= 0.995) return 'nothing to compare with yet';
  return unplanned < 0.005 ? words : `${words} of what is to be there; ${percent(unplanned)} left out`;
}

function valueCell({ layout: { em } }: Reading, picture: DifferencePicture): Cell {
  return differenceCell('values', em, picture, (width) => [
    captionBlock('record:values', 'Values off', valueShareInWords(picture), width, em),
    bandsBlock('values', valueBands, valueEdges, ['darker than planned', 'lighter'], width, em),
  ]);
}

function colourCell({ layout: { em } }: Reading, picture: DifferencePicture): Cell {
  return differenceCell('colours', em, picture, (width) => [
    captionBlock('record:colours', 'Colours off', colourShareInWords(picture), width, em),
    bandsBlock('colours', colourBands, colourEdges, ['as planned', 'CIEDE2000'], width, em),
  ]);
}

function differenceCell(
  key: string,
  em: number,
  { href }: DifferencePicture,
  blocks: (width: number) => readonly Block[],
): Cell {
  return {
    shapes: (box) => [
      // What nothing is planned for stays as the empty part of a bar is.
      pathMark(`record:${key}:empty`, rectanglePath(box), { fill: 'track' }),
      imageMark(`record:${key}`, href, box),
    ],
    construction: (box) => [edgeMark(`record:${key}`, box)],
    words: (width) => stacked(blocks(width), 0.35 * em),
  };
}

function edgeMark(key: string, box: Box, subject?: string): Mark {
  return pathMark(`${key}:edge`, rectanglePath(box), { stroke: { ink: 'bevel', weight: 'fine' }, subject });
}

function captionBlock(
  key: string,
  title: string,
  words: string,
  width: number,
  em: number,
  subject?: string,
): Block {
  return stacked(
    [
      lines(
        `${key}:title`,
        title,
        1,
        { size: 0.92 * em, leading: 1.25 * em, width: width / BOLD_WIDTH },
        (lineKey, text, x, y, size) =>
          textMark(lineKey, text, x, y, { size, ink: 'ink', face: 'strong', subject }),
      ),
      lines(
        `${key}:words`,
        words,
        2,
        { size: 0.82 * em, leading: 1.14 * em, width },
        (lineKey, text, x, y, size) => textMark(lineKey, text, x, y, { size, ink: 'quiet', subject }),
      ),
    ],
    0,
  );
}
