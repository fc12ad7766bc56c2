import { millilitresInWords } from '../../findings/words/paints.js';
import { counted } from '../../findings/words/words.js';
import type { MixingMeasure, Swatch } from '../../measure/mixing/mixing.js';
import { type Block, stacked } from '../captions/block.js';
import { headingMarks } from '../captions/heading.js';
import { BOLD_WIDTH, fitted, textWidth, wrapped } from '../captions/text-width.js';
import { andMore, percent } from '../captions/words.js';
import { pathMark, textMark } from '../marks.js';
import { linePath, rectanglePath } from '../path-data.js';
import { hexOf } from '../picture/ink.js';
import type { Mark } from '../scene.js';
import type { Reading } from '../views/reading.js';
import { flowed } from './paints.js';
import { partsToWrap, predictedInWords, swatchKeys, swatchNames } from './words.js';

/** The smaller ones of more colours than these are counted. */
const MOST_SWATCHES = 30;
const MOST_OBJECTS = 6;

/** The colours of the picture, wanted beside predicted, with what each is mixed of. */
export function mixturesBlock(
  reading: Reading,
  mixing: MixingMeasure,
  columns: { readonly count: number; readonly width: number; readonly gap: number },
): Block {
  const { em } = reading.layout;
  const { swatches } = mixing;
  if (swatches.length === 0) return { height: 0, marks: () => [] };
  const keys = swatchKeys(swatches.map(({ wanted }) => hexOf(wanted)));
  const names = swatchNames(swatches, reading.plan);
  const beyond = new Set(mixing.beyond);
  const entries = swatches.slice(0, MOST_SWATCHES).map((swatch, index) =>
    swatchEntry(reading, swatch, {
      key: keys[index] ?? '',
      name: names[index] ?? '',
      isBeyond: beyond.has(index),
      width: columns.width,
    }),
  );
  const whole = columns.count * columns.width + (columns.count - 1) * columns.gap;
  const heading: Block = {
    height: 1.5 * em,
    marks: (x, y) =>
      headingMarks('mixtures', 'Mixtures', 'parts by volume; wanted, and as predicted', {
        x,
        y,
        width: whole,
        em,
      }),
  };
  const more = swatches.length - MOST_SWATCHES;
  const rest: Block = {
    height: 1.2 * em,
    marks: (x, y) => [
      textMark('mixtures:more', andMore(more, 'colour', 'colours'), x, y + 0.9 * em, {
        size: 0.86 * em,
        ink: 'quiet',
      }),
    ],
  };
  const flow = flowed(entries, columns.count, columns.width, columns.gap, 0.75 * em);
  return stacked([heading, flow, ...(more > 0 ? [rest] : [])], 0.4 * em);
}

interface Entry {
  readonly key: string;
  readonly name: string;
  readonly isBeyond: boolean;
  readonly width: number;
}

function swatchEntry(reading: Reading, swatch: Swatch, { key, name, isBeyond, width }: Entry): Block {
  const { plan, subjects, layout } = reading;
  const { em } = layout;
  const { wanted, mixture, difference, share, objects, isGround } = swatch;
  const subject =
    subjects.objects[objects[0] ?? -1] ??
    (isGround && subjects.all['ground'] !== undefined ? 'ground' : undefined);
  const indent = 4.4 * em;
  const room = width - indent;
  const size = 0.86 * em;
  const figure = share > 0 ? percent(share).replace('under ', '<') : '';
  const parts =
    mixture === undefined
      ? ['no paint of the palette can be mixed for it']
      : wrapped(partsToWrap(mixture, plan), size, room, 3);
  const facts = [
    ...(difference === undefined || mixture === undefined ? [] : [predictedInWords(difference, mixture)]),
    ...(isBeyond ? ['beyond the palette'] : []),
  ].join(', ');
  const told = wrapped(facts, 0.82 * em, room, 3);
  const used = usedIn(reading, swatch, room);
  const leading = 1.16 * em;
  const textHeight = 1.3 * em + (parts.length + told.length + used.height) * leading;
  const half = 1.85 * em;
  const high = 2.4 * em;
  const tip = `${name}: ${parts.join(' ')}${facts === '' ? '' : `, ${facts}`}.`;
  return {
    height: Math.max(high + 0.2 * em, textHeight),
    marks: (x, y): readonly Mark[] => {
      const top = y + 0.12 * em;
      const box = (left: number) => rectanglePath({ x: left, y: top, width: half, height: high });
      return [
        pathMark(key, box(x), { fill: hexOf(wanted), subject, tip }),
        ...(mixture === undefined
          ? []
          : [pathMark(`${key}:predicted`, box(x + half), { fill: hexOf(mixture.colour), subject })]),
        pathMark(`${key}:frame`, rectanglePath({ x, y: top, width: 2 * half, height: high }), {
          stroke: { ink: isBeyond ? 'warning' : 'quiet', weight: isBeyond ? 'medium' : 'hair' },
          subject,
        }),
        ...(isBeyond ? beyondSign(key, x + half, top, em, subject) : []),
        textMark(
          `${key}:name`,
          fitted(name, 0.95 * em, (room - textWidth(figure, 0.92 * em) - 0.5 * em) / BOLD_WIDTH),
          x + indent,
          y + 0.92 * em,
          { size: 0.95 * em, ink: 'ink', face: 'strong', subject },
        ),
        ...(figure === ''
          ? []
          : [
              textMark(`${key}:share`, figure, x + width, y + 0.92 * em, {
                size: 0.92 * em,
                ink: 'ink',
                anchor: 'end',
                subject,
              }),
            ]),
        ...parts.map((line, index) =>
          textMark(`${key}:parts:${index}`, line, x + indent, y + 2.1 * em + index * leading, {
            size,
            ink: 'ink',
            subject,
          }),
        ),
        ...told.map((line, index) =>
          textMark(
            `${key}:facts:${index}`,
            line,
            x + indent,
            y + 2.1 * em + (parts.length + index) * leading,
            { size: 0.82 * em, ink: 'quiet', subject },
          ),
        ),
        ...used.marks(key, x + indent, y + 2.1 * em + (parts.length + told.length) * leading, leading),
      ];
    },
  };
}

/** The triangle that such a colour has on the wheel too. */
function beyondSign(
  key: string,
  x: number,
  y: number,
  em: number,
  subject: string | undefined,
): readonly Mark[] {
  const d = linePath([
    { x, y: y - 0.3 * em },
    { x: x + 0.5 * em, y: y + 0.5 * em },
    { x: x - 0.5 * em, y: y + 0.5 * em },
  ]);
  return [
    pathMark(`${key}:beyond`, `${d}Z`, {
      fill: 'warning',
      stroke: { ink: 'onFinding', weight: 'fine' },
      subject,
      tip: 'Beyond the palette.',
    }),
  ];
}

/** How much paint it takes, and the objects that are painted so, each of which can be gone to. In lines. */
function usedIn(
  { plan, subjects, layout: { em } }: Reading,
  { objects, isGround, millilitres }: Swatch,
  room: number,
): {
  /** Lines. */
  readonly height: number;
  readonly marks: (key: string, x: number, y: number, leading: number) => readonly Mark[];
} {
  const size = 0.82 * em;
  // Letters may be a little broader than they were taken for.
  const space = 2 * textWidth(' ', size);
  const more = objects.length - MOST_OBJECTS;
  const named = objects.slice(0, MOST_OBJECTS).flatMap((index) => {
    const object = plan.objects[index];
    return object === undefined ? [] : [{ text: object.name, subject: subjects.objects[index] }];
  });
  const words = [
    ...named,
    ...(isGround ? [{ text: 'the ground', subject: subjects.all['ground'] && 'ground' }] : []),
    ...(more > 0 ? [{ text: `${counted(more)} more`, subject: undefined }] : []),
  ];
  if (words.length === 0) return { height: 0, marks: () => [] };
  const begin = millilitres > 0 ? `${millilitresInWords(millilitres)} for` : 'for';
  let at = textWidth(begin, size) + space;
  let line = 0;
  const placed = words.map(({ text, subject }, index) => {
    const shown = fitted(`${text}${index < words.length - 1 ? ',' : ''}`, size, room - 1.2 * em);
    const width = textWidth(shown, size);
    if (at + width > room && at > 0) {
      at = 0;
      line += 1;
    }
    const place = { shown, subject, at, line };
    at += width + space;
    return place;
  });
  return {
    height: line + 1,
    marks: (key, x, y, leading) => [
      textMark(`${key}:for`, begin, x, y, { size, ink: 'quiet' }),
      ...placed.map(({ shown, subject, at: left, line: down }, index) =>
        textMark(`${key}:for:${index}`, shown, x + left, y + down * leading, {
          size,
          ink: 'quiet',
          subject,
        }),
      ),
    ],
  };
}
