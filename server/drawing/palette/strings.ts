import { counted } from '../../findings/words/words.js';
import type { GlazeMeasure, MixingMeasure, ValueString } from '../../measure/mixing/mixing.js';
import type { Colour } from '../../plan/colour/colour.js';
import { capitalised, plainNumber } from '../../plan/problems.js';
import { paintOf } from '../views/reading.js';
import { type Block, stacked } from '../captions/block.js';
import { headingMarks } from '../captions/heading.js';
import { fitted, wrapped } from '../captions/text-width.js';
import { pathMark, textMark } from '../marks.js';
import { rectanglePath } from '../path-data.js';
import { hexOf, lineOn } from '../picture/ink.js';
import type { Box, Mark } from '../scene.js';
import type { Reading } from '../views/reading.js';
import { flowed } from './paints.js';
import { partsToWrap, predictedInWords } from './words.js';

export interface Columns {
  readonly count: number;
  readonly width: number;
  readonly gap: number;
}

const MOST_STRINGS = 12;
const MOST_GLAZES = 16;

/** For each hue its mixtures in a row from dark to light, and below it what they are mixed of. */
export function stringsBlock(reading: Reading, { strings }: MixingMeasure, columns: Columns): Block {
  const { em } = reading.layout;
  return underHeading(
    {
      key: 'strings',
      heading: 'Strings of values',
      remark: 'dark to light; above wanted, below as predicted',
      entries: strings
        .slice(0, MOST_STRINGS)
        .map((string, index) => stringEntry(reading, string, `string:${index}`, columns.width)),
      more: strings.length - MOST_STRINGS,
    },
    columns,
    em,
  );
}

function stringEntry(reading: Reading, string: ValueString, key: string, width: number): Block {
  const { em } = reading.layout;
  const { name, steps } = string;
  const size = 0.82 * em;
  const leading = 1.14 * em;
  const cell = Math.min(width / Math.max(1, steps.length), 4.4 * em);
  const high = 2.6 * em;
  const lines = steps.flatMap(({ step, mixture, difference }) =>
    wrapped(
      `step ${plainNumber(step, 1)}: ${
        mixture === undefined
          ? 'nothing on the palette'
          : `${partsToWrap(mixture, reading.plan)}${difference === undefined ? '' : `, ${predictedInWords(difference, mixture)}`}`
      }`,
      size,
      width,
      4,
    ),
  );
  return {
    height: 1.45 * em + high + 0.4 * em + lines.length * leading,
    marks: (x, y) => {
      const top = y + 1.45 * em;
      return [
        textMark(`${key}:name`, fitted(capitalised(name), 0.9 * em, width), x, y + 0.95 * em, {
          size: 0.9 * em,
          ink: 'ink',
          face: 'strong',
        }),
        ...steps.flatMap(({ step, wanted, mixture }, index): Mark[] => {
          const left = x + index * cell;
          const predicted = mixture?.colour ?? wanted;
          return [
            pathMark(`${key}:${index}`, rectanglePath({ x: left, y: top, width: cell, height: high / 2 }), {
              fill: hexOf(wanted),
            }),
            pathMark(
              `${key}:${index}:predicted`,
              rectanglePath({ x: left, y: top + high / 2, width: cell, height: high / 2 }),
              { fill: hexOf(predicted) },
            ),
            textMark(`${key}:${index}:step`, plainNumber(step, 1), left + cell / 2, top + 0.92 * em, {
              size,
              ink: hexOf(lineOn(wanted)),
              anchor: 'middle',
            }),
          ];
        }),
        pathMark(`${key}:frame`, rectanglePath({ x, y: top, width: cell * steps.length, height: high }), {
          stroke: { ink: 'quiet', weight: 'hair' },
        }),
        ...lines.map((line, index) =>
          textMark(`${key}:line:${index}`, line, x, top + high + 1.2 * em + index * leading, {
            size,
            ink: 'quiet',
          }),
        ),
      ];
    },
  };
}

/** What is seen of body colours through the glazes that go over them when they are dry. */
export function glazesBlock(reading: Reading, { glazes }: MixingMeasure, columns: Columns): Block {
  const { em } = reading.layout;
  const there = glazes.flatMap((glaze) => glaze ?? []);
  return underHeading(
    {
      key: 'glazes',
      heading: 'Glazes',
      remark: 'body, glaze over white, what is seen',
      entries: there
        .slice(0, MOST_GLAZES)
        .flatMap((glaze) => glazeEntry(reading, glaze, columns.width) ?? []),
      more: there.length - MOST_GLAZES,
    },
    columns,
    em,
  );
}

function glazeEntry(reading: Reading, glaze: GlazeMeasure, width: number): Block | undefined {
  const { plan, subjects } = reading;
  const { em } = reading.layout;
  const object = plan.objects[glaze.object];
  const subject = subjects.objects[glaze.object];
  if (object === undefined || subject === undefined) return undefined;
  const key = `glaze:${subject}`;
  const indent = 6.3 * em;
  const size = 0.82 * em;
  const room = width - indent;
  const { mixture } = glaze;
  const facts = [
    mixture === undefined
      ? 'the palette can’t give this glaze'
      : `${partsToWrap(mixture, plan)} in ${plainNumber(mixture.medium, 1)}\u00A0medium`,
    ...(glaze.isEstimate ? ['an estimate'] : []),
  ].join(', ');
  const lines = wrapped(facts, size, room, 3);
  const cells: readonly { readonly of: string; readonly colour: Colour; readonly width: number }[] = [
    { of: 'body', colour: paintOf(object, plan), width: 1.6 * em },
    { of: 'over white', colour: glaze.wanted, width: 1.6 * em },
    { of: 'seen', colour: glaze.seen, width: 2.4 * em },
  ];
  return {
    height: Math.max(2.4 * em, (1.35 + 1.14 * lines.length) * em),
    marks: (x, y) => {
      let left = x;
      return [
        ...cells.map(({ of, colour, width: wide }) => {
          const box: Box = { x: left, y: y + 0.1 * em, width: wide, height: 2.1 * em };
          left += wide;
          return pathMark(`${key}:${of}`, rectanglePath(box), {
            fill: hexOf(colour),
            stroke: { ink: 'quiet', weight: 'hair' },
            subject,
          });
        }),
        textMark(`${key}:name`, fitted(object.name, 0.9 * em, room / 1.1), x + indent, y + 0.92 * em, {
          size: 0.9 * em,
          ink: 'ink',
          face: 'strong',
          subject,
        }),
        ...lines.map((line, index) =>
          textMark(`${key}:line:${index}`, line, x + indent, y + (2.06 + 1.14 * index) * em, {
            size,
            ink: 'quiet',
            subject,
          }),
        ),
      ];
    },
  };
}

function underHeading(
  list: {
    readonly key: string;
    readonly heading: string;
    readonly remark: string;
    readonly entries: readonly Block[];
    readonly more: number;
  },
  columns: Columns,
  em: number,
): Block {
  const { key, heading, remark, entries, more } = list;
  if (entries.length === 0) return { height: 0, marks: () => [] };
  const width = columns.count * columns.width + (columns.count - 1) * columns.gap;
  const head: Block = {
    height: 1.5 * em,
    marks: (x, y) => headingMarks(key, heading, remark, { x, y, width, em }),
  };
  const rest: Block = {
    height: 1.2 * em,
    marks: (x, y) => [
      textMark(`${key}:more`, `and ${counted(more)} more`, x, y + 0.9 * em, {
        size: 0.86 * em,
        ink: 'quiet',
      }),
    ],
  };
  const flow = flowed(entries, columns.count, columns.width, columns.gap, 0.6 * em);
  return stacked([head, flow, ...(more > 0 ? [rest] : [])], 0.3 * em);
}
