import { type Block, EMPTY_BLOCK, stacked } from '../captions/block.js';
import { BOLD_WIDTH, SERIF_WIDTH, fitted } from '../captions/text-width.js';
import { lines } from '../captions/title.js';
import { andMore } from '../captions/words.js';
import { pathMark, textMark } from '../marks.js';
import type { Page, PlacedDrawing } from '../page.js';
import { rectanglePath } from '../path-data.js';
import type { Mark } from '../scene.js';
import type { WallCard } from './card.js';
import type { Strip } from './figures.js';

/** A plan on the wall, or one that can't be shown and why. */
export type Hung = {
  /** The name of its file. */
  readonly name: string;
} & (
  | {
      readonly card: WallCard;
      /** What differs from the plan that it builds on. */ readonly differs?: string;
    }
  | { /** A sentence. */ readonly unreadable: string }
);

/** Millimetres. A wall is as large as it has to be. */
const EM = 2.4;
const WIDTH = 62;
const PICTURE_HEIGHT = 46;
const GAP = 9;
const MARGIN = 14;
const STRIP = 2.6;
/** More in a row make pictures too small to be told apart when the whole is looked at. */
const MOST_COLUMNS = 6;

/**
 * Plans side by side as small pictures, each with its light and dark, its colours, its key and what is found in it, to
 * choose from. A pure function.
 * @param left how many more there are, which are not shown
 */
export function wallPage(hung: readonly Hung[], title: string, left = 0): Page {
  const columns = Math.max(1, Math.min(MOST_COLUMNS, Math.ceil(Math.sqrt(1.3 * hung.length))));
  const captions = hung.map(captionBlock);
  const rows = Math.ceil(hung.length / columns);
  const heights = Array.from({ length: rows }, (_, row) =>
    Math.max(0, ...captions.slice(row * columns, (row + 1) * columns).map(({ height }) => height)),
  );
  const width = Math.max(2, columns) * (WIDTH + GAP) - GAP + 2 * MARGIN;
  const heading = stacked(
    [
      lines(
        'title',
        title,
        2,
        { size: 2 * EM, leading: 2.5 * EM, width: (width - 2 * MARGIN) / SERIF_WIDTH },
        (key, text, x, y, size) => textMark(key, text, x, y, { size, ink: 'ink', face: 'title' }),
      ),
      left === 0 ? EMPTY_BLOCK : oneLine('left', andMore(left, 'plan', 'plans'), width - 2 * MARGIN),
    ],
    0.3 * EM,
  );
  const tops: number[] = [];
  let top = MARGIN + heading.height + 2 * EM;
  for (const height of heights) {
    tops.push(top);
    top += PICTURE_HEIGHT + EM + height + GAP;
  }
  const page = { width, height: top - GAP + MARGIN };
  const at = (index: number) => ({
    x: MARGIN + (index % columns) * (WIDTH + GAP),
    y: tops[Math.floor(index / columns)] ?? 0,
  });
  const drawings = hung.flatMap((each, index): readonly PlacedDrawing[] =>
    'card' in each ? [placed(each.card, `plan-${index}`, at(index))] : [],
  );
  return {
    ...page,
    title,
    description: hung
      .map((each) =>
        'card' in each ? `${each.card.title}: ${captionTexts(each).join('; ')}.` : each.unreadable,
      )
      .join(' '),
    em: EM,
    marks: [
      pathMark('paper', rectanglePath({ x: 0, y: 0, ...page }), { fill: 'mount' }),
      ...heading.marks(MARGIN, MARGIN),
      ...drawings.map(({ key, at: box }) =>
        pathMark(`${key}:edge`, rectanglePath(box), { stroke: { ink: 'bevel', weight: 'fine' } }),
      ),
      ...captions.flatMap((block, index) =>
        block
          .marks(at(index).x, at(index).y + PICTURE_HEIGHT + EM)
          .map((mark) => ({ ...mark, key: `${index}:${mark.key}` })),
      ),
    ],
    drawings,
  };
}

/** Standing on the line of its row, as pictures of different heights hang best. */
function placed(
  { scene }: WallCard,
  key: string,
  { x, y }: { readonly x: number; readonly y: number },
): PlacedDrawing {
  const { width, height } = scene.picture;
  const scale = Math.min(WIDTH / width, PICTURE_HEIGHT / height);
  const size = { width: width * scale, height: height * scale };
  return { key, scene, part: 'picture', at: { x, y: y + PICTURE_HEIGHT - size.height, ...size } };
}

function captionBlock(hung: Hung): Block {
  const name = oneLine('name', hung.name, WIDTH);
  if (!('card' in hung)) return stacked([name, paragraph('unreadable', hung.unreadable, 3)], 0.2 * EM);
  const { card, differs } = hung;
  return stacked(
    [
      lines(
        'title',
        card.title,
        1,
        { size: 1.05 * EM, leading: 1.4 * EM, width: WIDTH / BOLD_WIDTH },
        (key, text, x, y, size) => textMark(key, text, x, y, { size, ink: 'ink', face: 'strong' }),
      ),
      oneLine('name', `${hung.name}, ${card.canvas}`, WIDTH),
      ...card.strips.flatMap((strip) => [stripBlock(strip), paragraph(`${strip.of}:words`, strip.words, 2)]),
      oneLine('found', card.found, WIDTH),
      ...(differs === undefined ? [] : [paragraph('differs', differs, 3)]),
    ],
    0.3 * EM,
  );
}

function captionTexts({
  card,
  name,
  differs,
}: Extract<Hung, { readonly card: WallCard }>): readonly string[] {
  return [
    name,
    card.canvas,
    ...card.strips.map(({ words }) => words),
    card.found,
    ...(differs === undefined ? [] : [differs]),
  ];
}

/** Shares beside each other in their tones, over the whole width. */
function stripBlock({ of, parts }: Strip): Block {
  return {
    height: STRIP + 0.4 * EM,
    marks: (x, y) => {
      const top = y + 0.4 * EM;
      let from = x;
      const tones = parts.map(({ share, hex }, index): Mark => {
        const width = WIDTH * Math.min(1, share);
        const mark = pathMark(`${of}:${index}`, rectanglePath({ x: from, y: top, width, height: STRIP }), {
          fill: hex,
        });
        from += width;
        return mark;
      });
      const frame = rectanglePath({ x, y: top, width: WIDTH, height: STRIP });
      return [
        pathMark(`${of}:track`, frame, { fill: 'track' }),
        ...tones,
        pathMark(`${of}:frame`, frame, { stroke: { ink: 'bevel', weight: 'hair' } }),
      ];
    },
  };
}

function oneLine(key: string, text: string, width: number): Block {
  return {
    height: 1.25 * EM,
    marks: (x, y) => [
      textMark(key, fitted(text, 0.9 * EM, width), x, y + 0.92 * EM, { size: 0.9 * EM, ink: 'quiet' }),
    ],
  };
}

function paragraph(key: string, text: string, most: number): Block {
  return lines(
    key,
    text,
    most,
    { size: 0.9 * EM, leading: 1.2 * EM, width: WIDTH },
    (name, line, x, y, size) => textMark(name, line, x, y, { size, ink: 'ink' }),
  );
}
