import type { RecordObject } from '../../measure/photograph/record.js';
import { type Block, EMPTY_BLOCK } from '../captions/block.js';
import { headingMarks } from '../captions/heading.js';
import { fitted, textWidth } from '../captions/text-width.js';
import { andMore } from '../captions/words.js';
import { pathMark, textMark } from '../marks.js';
import { circlePath, linePath, rectanglePath } from '../path-data.js';
import type { Mark } from '../scene.js';
import type { Reading } from '../views/reading.js';
import { counted } from '../../findings/words/words.js';
import { capitalised } from '../../plan/problems.js';
import { ANOTHER_COLOUR, objectInWords } from './words.js';

const MOST_ROWS = 12;
/** Wider than this, names, signs and words stand in one row. */
const ONE_ROW_FROM_EMS = 34;
const HEAD_EMS = 1.9;
/** Steps to each side that the axis reaches at least, and at most. */
const REACH = { least: 2, most: 5 } as const;
/** A difference of CIEDE2000 that weighs as much as a whole step in the order of what is farthest off. Heuristic. */
const COLOUR_OF_A_STEP = 15;

/** The objects that are held to the plan, the farthest off first: by value, and by colour where that is worse. */
export function farthestFirst(objects: readonly RecordObject[]): readonly RecordObject[] {
  const off = ({ against }: RecordObject) =>
    Math.max(Math.abs(against?.stepsOff ?? 0), (against?.hueAndChroma ?? 0) / COLOUR_OF_A_STEP);
  return objects
    .filter(({ against }) => against !== undefined)
    .sort((one, other) => off(other) - off(one) || one.object - other.object);
}

/** Less is taken for as planned: a tenth of a step is within what a photograph can tell. */
const STEPS_OFF = 0.25;

/** Whether there is something to tell of an object: it is off, or has come nearer or gone away. */
export function isTold({ against, since }: RecordObject): boolean {
  if (against === undefined) return false;
  const { stepsOff, hueAndChroma = 0 } = against;
  const went = since !== undefined && since.went !== 'neither';
  return Math.abs(stepsOff) >= STEPS_OFF || hueAndChroma >= ANOTHER_COLOUR || went;
}

/**
 * How far each object is from the plan: on an axis of steps, with the plan in the middle, where it was in the
 * photograph before (a ring) and where it is now (a dot), and the same in words.
 */
export function objectsBlock(reading: Reading, objects: readonly RecordObject[], width: number): Block {
  const { em } = reading.layout;
  const sorted = farthestFirst(objects);
  if (sorted.length === 0) return EMPTY_BLOCK;
  const told = sorted.filter(isTold);
  const rows = told.slice(0, MOST_ROWS);
  const tail = tailInWords(told.length - rows.length, sorted.length - told.length);
  const isOneRow = width >= ONE_ROW_FROM_EMS * em;
  const rowHeight = (isOneRow ? 1.55 : 2.75) * em;
  const names = rows.map(({ object }) => reading.plan.objects[object]?.name ?? '');
  const longest = Math.max(0, ...names.map((name) => textWidth(name, 0.88 * em)));
  const column = isOneRow ? Math.min(longest + 1 * em, 0.26 * width) : 0.5 * width;
  const axis = isOneRow ? { x: column, width: 0.24 * width } : { x: 0.52 * width, width: 0.48 * width };
  const words = isOneRow ? axis.x + axis.width + 1.2 * em : 0;
  const reach = Math.min(
    REACH.most,
    Math.max(REACH.least, ...rows.map(({ against }) => Math.ceil(Math.abs(against?.stepsOff ?? 0)))),
  );
  return {
    height: HEAD_EMS * em + rows.length * rowHeight + (tail === '' ? 0 : 1.4 * em),
    marks: (x, y) => [
      ...headingMarks('record:objects', 'Objects', 'the farthest from the plan first', { x, y, width, em }),
      ...rows.flatMap((row, index) =>
        rowMarks(reading, row, {
          y: y + HEAD_EMS * em + index * rowHeight,
          x,
          names: column - 0.6 * em,
          axis: { x: x + axis.x, width: axis.width, reach },
          words: { x: x + words, width: width - words, below: !isOneRow },
        }),
      ),
      ...(tail === ''
        ? []
        : [
            textMark('record:objects:more', tail, x, y + HEAD_EMS * em + rows.length * rowHeight + 0.9 * em, {
              size: 0.86 * em,
              ink: 'quiet',
            }),
          ]),
    ],
  };
}

/** `And two more objects are off; seven more are as planned.` */
export function tailInWords(off: number, asPlanned: number): string {
  const are = (count: number) => (count === 1 ? 'is' : 'are');
  const parts = [
    ...(off > 0 ? [`${andMore(off, 'object', 'objects')} ${are(off)} off`] : []),
    ...(asPlanned > 0 ? [`${counted(asPlanned)} more ${are(asPlanned)} as planned`] : []),
  ];
  return capitalised(parts.join('; '));
}

interface RowPlace {
  readonly x: number;
  readonly y: number;
  /** Room for the name. */
  readonly names: number;
  readonly axis: { readonly x: number; readonly width: number; readonly reach: number };
  readonly words: { readonly x: number; readonly width: number; readonly below: boolean };
}

function rowMarks(
  { plan, subjects, layout: { em } }: Reading,
  row: RecordObject,
  { x, y, names, axis, words }: RowPlace,
): readonly Mark[] {
  const object = plan.objects[row.object];
  const subject = subjects.objects[row.object];
  if (object === undefined || subject === undefined || row.against === undefined) return [];
  const key = `record:objects:${subject}`;
  const said = objectInWords(row);
  const tip = `${object.name}: ${said}.`;
  const size = 0.82 * em;
  const middle = y + 0.72 * em;
  const at = (steps: number) =>
    axis.x + axis.width * (0.5 + Math.min(axis.reach, Math.max(-axis.reach, steps)) / (2 * axis.reach));
  const now = at(row.against.stepsOff);
  const before = row.since === undefined ? undefined : at(row.since.stepsOff);
  const line = (from: number, to: number) =>
    linePath([
      { x: from, y: middle },
      { x: to, y: middle },
    ]);
  return [
    textMark(`${key}:name`, fitted(object.name, 0.88 * em, names), x, y + 1.02 * em, {
      size: 0.88 * em,
      ink: 'ink',
      subject,
      tip,
    }),
    pathMark(
      `${key}:near`,
      rectanglePath({ x: at(-0.5), y: middle - 0.5 * em, width: at(0.5) - at(-0.5), height: em }),
      { fill: 'track', subject },
    ),
    pathMark(`${key}:axis`, line(axis.x, axis.x + axis.width), {
      stroke: { ink: 'rule', weight: 'fine' },
      subject,
      tip,
    }),
    pathMark(
      `${key}:plan`,
      linePath([
        { x: at(0), y: middle - 0.5 * em },
        { x: at(0), y: middle + 0.5 * em },
      ]),
      { stroke: { ink: 'wanted', weight: 'medium' }, subject },
    ),
    ...(before === undefined
      ? []
      : [
          pathMark(`${key}:way`, line(before, now), { stroke: { ink: 'ink', weight: 'fine' }, subject }),
          pathMark(`${key}:before`, circlePath({ x: before, y: middle }, 0.26 * em), {
            fill: 'sheet',
            stroke: { ink: 'ink', weight: 'fine' },
            subject,
          }),
        ]),
    pathMark(`${key}:now`, circlePath({ x: now, y: middle }, 0.32 * em), { fill: 'ink', subject, tip }),
    textMark(`${key}:words`, fitted(said, size, words.width), words.x, y + (words.below ? 2.15 : 1.02) * em, {
      size,
      ink: 'quiet',
      subject,
      tip,
    }),
  ];
}
