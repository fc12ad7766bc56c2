import type { ColourRole } from '../../../grammar/index.js';
import type { BarRow, OffBudget } from './budgets.js';
import { type Block, EMPTY_BLOCK } from './block.js';
import { headingMarks } from './heading.js';
import { pathMark, textMark } from '../marks.js';
import { linePath, polygonPath, rectanglePath } from '../path-data.js';
import type { Reading } from '../views/reading.js';
import type { Mark } from '../scene.js';
import { roleSign } from '../picture/signs.js';
import { BOLD_WIDTH, fitted, textWidth } from './text-width.js';
import { percent } from './words.js';
import { capitalised } from '../../plan/problems.js';

interface Bars {
  readonly key: 'value' | 'colour';
  readonly heading: string;
  readonly rows: readonly BarRow[];
  /** The share at the right end of every bar. */
  readonly end: number;
}

const ROW_EMS = 2.85;
const ROLES: ReadonlySet<string> = new Set(['dominant', 'complement', 'discord', 'neutral']);

/** The share at which bars end, so that all of them are drawn to one measure: the next tenth above the longest. */
export function barsEnd(rows: readonly BarRow[]): number {
  const longest = Math.max(
    0,
    ...rows.map(({ share, wanted }) => Math.max(share, (wanted?.target ?? 0) + (wanted?.tolerance ?? 0))),
  );
  return Math.min(1, Math.max(0.1, Math.ceil(longest * 10 - 1e-6) / 10));
}

/**
 * Measured shares as bars in their own colours. What is wanted is a mark over the bar, what the tolerance allows
 * a bracket below it; a share outside has an arrow that says which way, and its figures in bold.
 */
export function barsBlock({ layout, subjects }: Reading, bars: Bars, width: number): Block {
  if (bars.rows.length === 0) return EMPTY_BLOCK;
  const { em } = layout;
  const tolerance = bars.rows.find(({ wanted }) => wanted !== undefined)?.wanted?.tolerance;
  const subject = subjects.all[`budget:${bars.key}`] === undefined ? undefined : `budget:${bars.key}`;
  return {
    height: (1.5 + ROW_EMS * bars.rows.length) * em,
    marks: (x, y) => [
      ...headingMarks(
        `bars:${bars.key}`,
        bars.heading,
        tolerance === undefined ? '% of the picture' : `wanted ± ${percent(tolerance)}`,
        { x, y, width, em },
      ),
      ...bars.rows.flatMap((row, index) =>
        rowMarks(row, `bar:${bars.key}:${row.key}`, {
          x,
          y: y + (1.5 + ROW_EMS * index) * em,
          width,
          em,
          end: bars.end,
          subject,
        }),
      ),
    ],
  };
}

interface RowPlace {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly em: number;
  readonly end: number;
  readonly subject: string | undefined;
}

function rowMarks(row: BarRow, key: string, place: RowPlace): readonly Mark[] {
  const { x, y, width, em, end, subject } = place;
  const at = (share: number) => x + width * Math.min(1, Math.max(0, share / end));
  const top = y + 1.58 * em;
  const high = 0.58 * em;
  let from = 0;
  const parts = row.parts.map(({ hex, share }, index) => {
    const part = pathMark(
      `${key}:part:${index}`,
      rectanglePath({ x: at(from), y: top, width: at(from + share) - at(from), height: high }),
      { fill: hex, subject },
    );
    from += share;
    return part;
  });
  return [
    ...nameMarks(row, key, place),
    pathMark(`${key}:track`, rectanglePath({ x, y: top, width, height: high }), {
      fill: 'track',
      subject,
      tip: sentence(row),
    }),
    ...parts,
    ...(row.share > 0
      ? [
          pathMark(`${key}:frame`, rectanglePath({ x, y: top, width: at(row.share) - x, height: high }), {
            stroke: { ink: 'quiet', weight: 'fine' },
            subject,
          }),
        ]
      : []),
    ...wantedMarks(row, key, { at, top, high, em, subject }),
  ];
}

/** Figures of second rank, beside those that are measured. */
const WANTED_SIZE_EMS = 0.78;
/** Between the two, where a font is wider than was reckoned too. */
const GAP_EMS = 0.6;
/** What the mark of a share that is off takes before its figures, with room where a font is wider than was reckoned. */
const OFF_ROOM_EMS = 1.4;
/** A name that has no room at the usual size is set a little smaller before it is cut. */
const SMALLEST_NAME_EMS = 0.8;

function nameMarks(row: BarRow, key: string, { x, y, width, em, subject }: RowPlace): readonly Mark[] {
  const size = 0.92 * em;
  const baseline = y + 0.95 * em;
  const { wanted } = row;
  const isOff = wanted !== undefined && !wanted.within;
  const asked = wanted === undefined ? '' : `wanted ${percent(wanted.target)}`;
  const askedWidth = asked === '' ? 0 : textWidth(asked, WANTED_SIZE_EMS * em) + GAP_EMS * em;
  const figures = asked === '' ? percent(row.share) : `${percent(row.share)},`;
  const figuresWidth = askedWidth + textWidth(figures, size) * (isOff ? BOLD_WIDTH : 1);
  const isRole = ROLES.has(row.key) && key.startsWith('bar:colour:');
  const indent = isRole ? 1.05 * em : 0;
  const room = width - indent - figuresWidth - (isOff ? OFF_ROOM_EMS : 0.35) * em;
  const fits = (size * room) / textWidth(capitalised(row.name), size);
  const nameSize = Math.max(SMALLEST_NAME_EMS * em, Math.min(size, fits));
  const name = fitted(capitalised(row.name), nameSize, room + 1e-9);
  const signAt = { x: x + 0.36 * em, y: baseline - 0.3 * em };
  const ink = wanted?.off?.severity ?? 'ink';
  const about = wanted?.off?.subject ?? subject;
  return [
    ...(isRole
      ? roleSign(`${key}:sign`, row.key as ColourRole, signAt, 0.32 * em, { ink: 'ink', ground: 'sheet' })
      : []),
    textMark(`${key}:name`, name, x + indent, baseline, { size: nameSize, ink: 'ink', subject }),
    ...(wanted !== undefined && isOff
      ? [
          offMark(`${key}:off`, row.share > wanted.target, wanted.off, {
            x: x + width - figuresWidth - 0.55 * em,
            y: baseline - 0.32 * em,
            radius: 0.34 * em,
            subject: about,
          }),
        ]
      : []),
    textMark(`${key}:figures`, figures, x + width - askedWidth, baseline, {
      size,
      ink,
      face: isOff ? 'strong' : 'text',
      anchor: 'end',
      subject: about,
    }),
    ...(asked === ''
      ? []
      : [
          textMark(`${key}:asked`, asked, x + width, baseline, {
            size: WANTED_SIZE_EMS * em,
            ink: 'quiet',
            anchor: 'end',
            subject: about,
          }),
        ]),
  ];
}

/** An arrow up for more than wanted, down for less. */
function offMark(
  key: string,
  over: boolean,
  off: OffBudget | undefined,
  {
    x,
    y,
    radius,
    subject,
  }: {
    readonly x: number;
    readonly y: number;
    readonly radius: number;
    readonly subject: string | undefined;
  },
): Mark {
  const tip = over ? -radius : radius;
  const d = polygonPath([
    { x, y: y + tip },
    { x: x + radius, y: y - 0.7 * tip },
    { x: x - radius, y: y - 0.7 * tip },
  ]);
  const message = off?.message ?? (over ? 'More than wanted.' : 'Less than wanted.');
  return pathMark(key, d, { fill: off?.severity ?? 'ink', subject, tip: message });
}

function wantedMarks(
  { wanted }: BarRow,
  key: string,
  {
    at,
    top,
    high,
    em,
    subject,
  }: {
    readonly at: (share: number) => number;
    readonly top: number;
    readonly high: number;
    readonly em: number;
    readonly subject: string | undefined;
  },
): readonly Mark[] {
  if (wanted === undefined) return [];
  const { target, tolerance } = wanted;
  const place = at(target);
  const left = at(target - tolerance);
  const right = at(target + tolerance);
  const bracket = top + high + 0.3 * em;
  return [
    pathMark(
      `${key}:tolerance`,
      linePath([
        { x: left, y: bracket - 0.18 * em },
        { x: left, y: bracket },
        { x: right, y: bracket },
        { x: right, y: bracket - 0.18 * em },
      ]),
      { stroke: { ink: 'quiet', weight: 'fine' }, subject },
    ),
    pathMark(
      `${key}:wanted`,
      polygonPath([
        { x: place, y: top + 0.04 * em },
        { x: place - 0.2 * em, y: top - 0.26 * em },
        { x: place + 0.2 * em, y: top - 0.26 * em },
      ]),
      { fill: 'wanted', subject, tip: `Wanted: ${percent(target)}.` },
    ),
    pathMark(
      `${key}:wanted:line`,
      linePath([
        { x: place, y: top + high },
        { x: place, y: bracket },
      ]),
      {
        stroke: { ink: 'wanted', weight: 'medium' },
        subject,
      },
    ),
  ];
}

function sentence({ name, share, wanted }: BarRow): string {
  const measured = `${capitalised(name)} measured ${percent(share)}`;
  if (wanted === undefined) return `${measured}.`;
  return `${measured}, wanted ${percent(wanted.target)} within ${percent(wanted.tolerance)}.`;
}
