import { plainNumber } from '../../plan/problems.js';
import { someOf } from '../../findings/words/words.js';
import { type Block, EMPTY_BLOCK } from '../captions/block.js';
import { lines } from '../captions/title.js';
import { BOLD_WIDTH, fitted, textWidth, wrapped } from '../captions/text-width.js';
import { andMore } from '../captions/words.js';
import { pathMark, textMark } from '../marks.js';
import { partsToWrap, swatchKeys, swatchNames } from '../palette/words.js';
import { rectanglePath } from '../path-data.js';
import { hexOf } from '../picture/ink.js';
import { shortDate } from '../sittings/dates.js';
import type { Reading } from '../views/reading.js';
import { cautionsList } from './cautions.js';
import { type List, fittedList } from './fitting.js';

/** Paints and mixtures, sittings and cautions side by side, those of them that a plan has. */
export interface WorkRow {
  /** How many of them there are. */
  readonly count: number;
  /** What it takes to show all of it; nothing without any. */
  readonly natural: number;
  /** What it takes at least, so that no caution is left out. */
  readonly least: number;
  readonly within: (height: number) => Block;
}

/** @param widthOf how much room across there is for so many of them */
export function workRow(reading: Reading, widthOf: (count: number) => number, gap: number): WorkRow {
  const { em } = reading.layout;
  const asked = [paintsList, sittingsList].map((list) => list(reading, 1).entries.length > 0);
  const hasCautions = cautionsList(reading.plan, 1, em).entries.length > 0;
  const count = [...asked, hasCautions].filter(Boolean).length;
  if (count === 0) return { count, natural: 0, least: 0, within: () => EMPTY_BLOCK };
  const column = (widthOf(count) - (count - 1) * gap) / count;
  const cautions = cautionsList(reading.plan, column, em);
  const lists = [paintsList(reading, column), sittingsList(reading, column), cautions].filter(
    ({ entries }) => entries.length > 0,
  );
  const heightOf = (list: List) => fittedList(list, column, Number.POSITIVE_INFINITY, em).height;
  return {
    count,
    natural: Math.max(...lists.map(heightOf)),
    least: hasCautions ? heightOf(cautions) : 0,
    within: (height) => {
      const blocks = lists.map((list) => fittedList(list, column, height, em));
      return {
        height: Math.max(...blocks.map((block) => block.height)),
        marks: (x, y) => blocks.flatMap((block, index) => block.marks(x + index * (column + gap), y)),
      };
    },
  };
}

/** The paints in a line, and what each colour is mixed of. */
function paintsList(reading: Reading, width: number): List {
  const { plan, measures, layout } = reading;
  const { em } = layout;
  const paints = plan.palette?.paints ?? [];
  const mixing = measures.palette?.mixing;
  const swatches = (mixing?.swatches ?? []).filter(({ mixture }) => mixture !== undefined);
  const names = swatchNames(swatches, plan);
  const keys = swatchKeys(swatches.map(({ wanted }) => hexOf(wanted)));
  const told = paints.map(({ name, index, temperature }) =>
    [name, index, temperature === undefined ? undefined : `(${temperature})`].filter(Boolean).join(' '),
  );
  const line = (key: string, text: string, most: number) =>
    lines(key, text, most, { size: 0.82 * em, leading: 1.16 * em, width }, (id, words, x, y, size) =>
      textMark(id, words, x, y, { size, ink: 'quiet' }),
    );
  return {
    key: 'mixtures',
    heading: 'Paints and mixtures',
    remark: swatches.length === 0 ? '' : 'parts; off by',
    entries:
      paints.length === 0
        ? []
        : [
            line('paints', told.join(', '), 5),
            ...(measures.palette !== undefined && mixing === undefined
              ? [line('mixtures:waiting', 'The mixtures are being worked out.', 2)]
              : []),
            ...swatches.flatMap(({ wanted, mixture, difference }, index) =>
              mixture === undefined
                ? []
                : [
                    mixtureEntry(
                      {
                        key: keys[index] ?? '',
                        name: names[index] ?? '',
                        parts: partsToWrap(mixture, plan),
                        off:
                          difference === undefined
                            ? ''
                            : `${mixture.isEstimate ? '≈ ' : ''}${plainNumber(difference, 1)}`,
                        tones: [hexOf(wanted), hexOf(mixture.colour)],
                      },
                      width,
                      em,
                    ),
                  ],
            ),
          ],
    more: (count) => andMore(count, 'mixture', 'mixtures'),
  };
}

interface Entry {
  readonly key: string;
  readonly name: string;
  readonly parts: string;
  readonly off: string;
  readonly tones: readonly ReturnType<typeof hexOf>[];
}

function mixtureEntry({ key, name, parts, off, tones }: Entry, width: number, em: number): Block {
  const size = 0.82 * em;
  const indent = 2.8 * em;
  const figure = textWidth(off, size) + 0.5 * em;
  const shown = fitted(name, size, Math.min(9 * em, 0.55 * (width - indent)) / BOLD_WIDTH);
  const named = BOLD_WIDTH * textWidth(shown, size) + 0.9 * em;
  const beside = width - indent - named - figure;
  // Parts that do not fit beside the name stand below it.
  const isBeside = textWidth(parts, size) <= beside;
  const told = isBeside ? [parts] : wrapped(parts, size, width - indent, 3);
  const leading = 1.16 * em;
  return {
    height: leading * (isBeside ? 1 : 1 + told.length),
    marks: (x, y) => [
      ...tones.map((hex, index) =>
        pathMark(
          `${key}:tone:${index}`,
          rectanglePath({ x: x + index * 1.1 * em, y: y + 0.12 * em, width: 1.1 * em, height: 0.9 * em }),
          { fill: hex, stroke: { ink: 'rule', weight: 'hair' } },
        ),
      ),
      textMark(`${key}:name`, shown, x + indent, y + 0.87 * em, { size, ink: 'ink', face: 'strong' }),
      textMark(`${key}:off`, off, x + width, y + 0.87 * em, { size, ink: 'quiet', anchor: 'end' }),
      ...told.map((words, index) =>
        textMark(
          `${key}:parts:${index}`,
          words,
          isBeside ? x + indent + named : x + indent,
          y + 0.87 * em + (isBeside ? 0 : (index + 1) * leading),
          { size, ink: 'ink' },
        ),
      ),
    ],
  };
}

/** So many objects of a sitting are named, the rest counted. */
const MOST_NAMED = 6;

/** Each sitting with its day, what it works on and when it is dry. */
function sittingsList(reading: Reading, width: number): List {
  const { plan, measures, layout } = reading;
  const { em } = layout;
  const scheduled = measures.schedule?.sittings ?? [];
  const setting = { size: 0.82 * em, leading: 1.14 * em, width };
  return {
    key: 'sittings',
    heading: 'Sittings',
    remark: '',
    entries: scheduled.flatMap(({ sitting, day, layer, works, dryOn }, index): readonly Block[] => {
      const own = plan.sittings[sitting];
      if (own === undefined) return [];
      const names = works.flatMap((object) => plan.objects[object]?.name ?? []);
      const head = `${day === undefined ? 'No date yet' : shortDate(day)}  ${own.title}`;
      const facts = [
        layer,
        ...(own.body === undefined ? [] : [own.body]),
        ...(dryOn === undefined || layer === 'varnish' ? [] : [`dry on ${shortDate(dryOn)}`]),
      ].join(', ');
      const all = own.works.length === 0 && works.length > 0;
      const worked = all ? 'all over' : someOf(names, MOST_NAMED);
      const title = lines(
        `sitting:${index}`,
        head,
        2,
        { ...setting, width: width / BOLD_WIDTH },
        (key, text, x, y, size) => textMark(key, text, x, y, { size, ink: 'ink', face: 'strong' }),
      );
      const told = lines(
        `sitting:${index}:facts`,
        worked === '' ? facts : `${facts}: ${worked}`,
        4,
        setting,
        (key, text, x, y, size) => textMark(key, text, x, y, { size, ink: 'quiet' }),
      );
      return [
        {
          height: title.height + told.height,
          marks: (x, y) => [...title.marks(x, y), ...told.marks(x, y + title.height)],
        },
      ];
    }),
    more: (count) => andMore(count, 'sitting', 'sittings'),
  };
}
