import type { ColourRole } from '../../../grammar/index.js';
import type { Budget } from '../../plan/plan.js';
import { type Block, EMPTY_BLOCK } from '../captions/block.js';
import { headingMarks } from '../captions/heading.js';
import { BOLD_WIDTH, fitted, textWidth } from '../captions/text-width.js';
import { percent } from '../captions/words.js';
import { pathMark, textMark } from '../marks.js';
import { circlePath, linePath, rectanglePath } from '../path-data.js';
import { roleSign } from '../picture/signs.js';
import type { Mark } from '../scene.js';
import type { Reading } from '../views/reading.js';
import { capitalised, inWords } from '../../plan/problems.js';
import type { MeasuredRecord } from './choice.js';
import { sittingName } from './words.js';

/** The share of one group of values or one role of colours over the sittings. */
export interface Series {
  readonly key: string;
  readonly name: string;
  readonly role?: ColourRole;
  /** As it is wanted, or as the plan has it where no budget says. */
  readonly planned: number;
  readonly tolerance?: number;
  readonly shares: readonly number[];
}

const HEAD_EMS = 1.7;
const ROW_EMS = 4.2;

/** One for each group of the value scale. */
export function valueSeries(
  { plan, measures }: Reading,
  records: readonly MeasuredRecord[],
): readonly Series[] {
  return measures.values.groups.map(({ key, name, share }) => {
    return {
      key,
      name,
      ...plannedOf(plan.valueBudget, key, share),
      shares: records.map(({ figures }) => figures.groups.find((group) => group.key === key)?.share ?? 0),
    };
  });
}

/** One for each role that the plan gives to a colour. */
export function colourSeries(
  { plan, measures }: Reading,
  records: readonly MeasuredRecord[],
): readonly Series[] {
  return measures.colours.roles.flatMap(({ role, share }): Series[] => {
    const isTold = records.some(({ figures }) => figures.roles.some((each) => each.role === role));
    if (!isTold) return [];
    return [
      {
        key: role,
        name: role,
        role,
        ...plannedOf(plan.colourBudget, role, share),
        shares: records.map(({ figures }) => figures.roles.find((each) => each.role === role)?.share ?? 0),
      },
    ];
  });
}

function plannedOf(
  budget: Budget | undefined,
  key: string,
  share: number,
): Pick<Series, 'planned' | 'tolerance'> {
  const wanted = budget?.shares.find((entry) => entry.key === key);
  return budget === undefined || wanted === undefined
    ? { planned: share }
    : { planned: wanted.target, tolerance: budget.tolerance };
}

/** Shares over the sittings as lines, each beside the line of what is planned. */
export function sharesBlock(
  reading: Reading,
  records: readonly MeasuredRecord[],
  chosen: number,
  {
    key,
    heading,
    series,
  }: { readonly key: string; readonly heading: string; readonly series: readonly Series[] },
  width: number,
): Block {
  const { em } = reading.layout;
  if (series.length === 0 || records.length === 0) return EMPTY_BLOCK;
  const at = records.findIndex(({ sitting }) => sitting === chosen);
  return {
    height: (HEAD_EMS + ROW_EMS * series.length) * em,
    marks: (x, y) => [
      ...headingMarks(`record:${key}`, heading, 'dashed: planned', { x, y, width, em }),
      ...series.flatMap((each, index) =>
        rowMarks(reading, records, each, `record:${key}:${each.key}`, {
          x,
          y: y + (HEAD_EMS + ROW_EMS * index) * em,
          width,
          at: at < 0 ? records.length - 1 : at,
        }),
      ),
    ],
  };
}

interface RowPlace {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  /** The one whose figure is told. */
  readonly at: number;
}

function rowMarks(
  { plan, layout: { em } }: Reading,
  records: readonly MeasuredRecord[],
  { name, role, planned, tolerance, shares }: Series,
  key: string,
  { x, y, width, at }: RowPlace,
): readonly Mark[] {
  const figures = percent(shares[at] ?? 0);
  const wanted = `planned ${percent(planned)}`;
  const wantedWidth = textWidth(wanted, 0.78 * em) + 0.9 * em;
  const indent = role === undefined ? 0 : 1.05 * em;
  const room = width - indent - wantedWidth - textWidth(figures, 0.9 * em) * BOLD_WIDTH - 0.5 * em;
  const box = { x, y: y + 1.35 * em, width, height: (ROW_EMS - 2.1) * em };
  // To the height of its own greatest share, so that what a sitting has changed is seen.
  const end = Math.max(0.02, planned + (tolerance ?? 0), ...shares);
  const high = (share: number) => box.y + box.height * (1 - 0.88 * (share / end) - 0.06);
  const places = shares.map((share, index) => ({
    x: box.x + box.width * (shares.length === 1 ? 0.5 : 0.04 + (0.92 * index) / (shares.length - 1)),
    y: high(share),
  }));
  const tip = `${capitalised(name)}: ${inWords(
    shares.map(
      (share, index) => `${percent(share)} after ${sittingName(plan, records[index]?.sitting ?? 0)}`,
    ),
  )}; ${wanted}.`;
  return [
    ...(role === undefined
      ? []
      : roleSign(`${key}:role`, role, { x: x + 0.4 * em, y: y + 0.65 * em }, 0.32 * em, {
          ink: 'ink',
          ground: 'sheet',
        })),
    textMark(`${key}:name`, fitted(capitalised(name), 0.88 * em, room), x + indent, y + 0.95 * em, {
      size: 0.88 * em,
      ink: 'ink',
      tip,
    }),
    textMark(`${key}:share`, figures, x + width - wantedWidth, y + 0.95 * em, {
      size: 0.9 * em,
      ink: 'ink',
      anchor: 'end',
      face: 'strong',
    }),
    textMark(`${key}:planned`, wanted, x + width, y + 0.95 * em, {
      size: 0.78 * em,
      ink: 'quiet',
      anchor: 'end',
    }),
    ...(tolerance === undefined
      ? []
      : [
          pathMark(
            `${key}:tolerance`,
            rectanglePath({
              x: box.x,
              y: high(planned + tolerance),
              width: box.width,
              height: high(Math.max(0, planned - tolerance)) - high(planned + tolerance),
            }),
            { fill: 'track' },
          ),
        ]),
    pathMark(`${key}:bed`, rectanglePath(box), { stroke: { ink: 'rule', weight: 'hair' }, tip }),
    pathMark(
      `${key}:wanted`,
      linePath([
        { x: box.x, y: high(planned) },
        { x: box.x + box.width, y: high(planned) },
      ]),
      { stroke: { ink: 'wanted', weight: 'fine', dash: 'dashed' } },
    ),
    ...(places.length < 2
      ? []
      : [pathMark(`${key}:line`, linePath(places), { stroke: { ink: 'ink', weight: 'medium' } })]),
    ...places.map((place, index) =>
      pathMark(`${key}:at:${index}`, circlePath(place, (index === at ? 0.3 : 0.2) * em), {
        fill: index === at ? 'ink' : 'sheet',
        stroke: { ink: 'ink', weight: 'fine' },
      }),
    ),
  ];
}
