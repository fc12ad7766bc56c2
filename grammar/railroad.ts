import { productionsOn, type Expression, type Production } from './production.js';

/** A piece of track: drawn from the left end of its rail, which lies `up` below its top. */
interface Piece {
  readonly width: number;
  readonly up: number;
  readonly down: number;
  /** SVG with the left end of the rail at (`x`, `y`). */
  readonly draw: (x: number, y: number) => string;
}

/** All in px. */
const characterWidth = 7.3;
const boxHeight = 22;
const padding = 8;
const gap = 10;
const bend = 8;
const margin = 12;
const titleHeight = 18;

/**
 * On paper of its own: what is round a diagram may be light or dark, and a media query asks the system, not the page.
 */
const style = [
  'path{fill:none;stroke:#767676;stroke-width:1.5}',
  'rect{fill:none;stroke:#767676}',
  'text{font:12px ui-monospace,Menlo,Consolas,monospace;fill:#3b3b3b}',
  '.part{font-style:italic}.name{font-weight:bold}',
  '.paper{fill:#fff;stroke:none}',
].join('');

/** The rules of a page of the grammar as railroad diagrams, one under the other: a whole SVG document. */
export function railroad(page: string): string {
  let y = margin;
  let width = 0;
  const diagrams = productionsOn(page).map((production) => {
    const { piece, svg } = diagram(production, y);
    y += titleHeight + piece.up + piece.down + margin;
    width = Math.max(width, piece.width);
    return svg;
  });
  const size = `${round(width + 2 * margin)} ${round(y)}`;
  const [across, down] = size.split(' ');
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${across}" height="${down}" viewBox="0 0 ${size}">`,
    `<style>${style}</style>`,
    '<rect class="paper" width="100%" height="100%"/>',
    ...diagrams,
    '</svg>',
    '',
  ].join('\n');
}

function diagram({ name, body }: Production, top: number): { readonly piece: Piece; readonly svg: string } {
  const piece = sequence([stop(true), pieceOf(body), stop(false)]);
  const title = `<text class="name" x="${margin}" y="${round(top + 11)}">${escaped(name)}</text>`;
  const svg = `<g>${title}${piece.draw(margin, top + titleHeight + piece.up)}</g>`;
  return { piece, svg };
}

function pieceOf(expression: Expression): Piece {
  switch (expression.kind) {
    case 'literal':
      return box(expression.text, true);
    case 'sign':
      return box(expression.text, false);
    case 'part':
      return box(expression.name, false, 'part');
    case 'sequence':
      return sequence(expression.items.map(pieceOf));
    case 'choice':
      return stack(expression.items.map(pieceOf));
    case 'optional':
      return stack([rail(0), pieceOf(expression.item)]);
    case 'repeated':
      return stack([rail(0), loop(pieceOf(expression.item), rail(0))]);
    case 'list':
      return loop(pieceOf(expression.item), expression.separator ? pieceOf(expression.separator) : rail(0));
  }
}

function rail(width: number): Piece {
  return { width, up: 0, down: 0, draw: (x, y) => line(x, y, width) };
}

/** The bars where a rule begins and ends. */
function stop(isStart: boolean): Piece {
  const draw = (x: number, y: number): string => {
    const bar = isStart ? x : x + gap;
    return `<path d="M${round(bar)} ${round(y - 6)}v12"/>${line(x, y, gap)}`;
  };
  return { width: gap, up: 6, down: 6, draw };
}

/** What is written as it stands has round ends, what is explained elsewhere has corners. */
function box(text: string, isRound: boolean, className?: string): Piece {
  const width = text.length * characterWidth + 2 * padding;
  const radius = isRound ? boxHeight / 2 : 0;
  const textClass = className === undefined ? '' : ` class="${className}"`;
  const draw = (x: number, y: number): string =>
    `<rect x="${round(x)}" y="${round(y - boxHeight / 2)}" width="${round(width)}" height="${boxHeight}" rx="${radius}"/>` +
    `<text${textClass} x="${round(x + padding)}" y="${round(y + 4)}">${escaped(text)}</text>`;
  return { width, up: boxHeight / 2, down: boxHeight / 2, draw };
}

function sequence(items: readonly Piece[]): Piece {
  const width = items.reduce((sum, item) => sum + item.width, 0) + gap * Math.max(0, items.length - 1);
  const draw = (x: number, y: number): string => {
    let left = x;
    return items
      .map((item, index) => {
        const drawn = (index > 0 ? line(left - gap, y, gap) : '') + item.draw(left, y);
        left += item.width + gap;
        return drawn;
      })
      .join('');
  };
  return {
    width,
    up: Math.max(...items.map((item) => item.up)),
    down: Math.max(...items.map((item) => item.down)),
    draw,
  };
}

/** Tracks under one another; the first goes straight on. */
function stack(items: readonly Piece[]): Piece {
  const inner = Math.max(...items.map((item) => item.width));
  const width = inner + 4 * bend;
  const offsets: number[] = [];
  let below = 0;
  items.forEach((item, index) => {
    offsets.push(index === 0 ? 0 : Math.max(below + item.up + gap / 2, 2 * bend));
    below = (offsets.at(-1) ?? 0) + item.down;
  });
  const draw = (x: number, y: number): string =>
    items
      .map((item, index) => {
        const offset = offsets[index] ?? 0;
        const left = x + 2 * bend;
        const after = line(left + item.width, y + offset, inner - item.width);
        if (index === 0) {
          return line(x, y, 2 * bend) + item.draw(left, y) + after + line(left + inner, y, 2 * bend);
        }
        const fall = offset - 2 * bend;
        return (
          `<path d="M${round(x)} ${round(y)}q${bend} 0 ${bend} ${bend}v${round(fall)}q0 ${bend} ${bend} ${bend}"/>` +
          item.draw(left, y + offset) +
          after +
          `<path d="M${round(left + inner)} ${round(y + offset)}q${bend} 0 ${bend} ${-bend}v${round(-fall)}q0 ${-bend} ${bend} ${-bend}"/>`
        );
      })
      .join('');
  return { width, up: items[0]?.up ?? 0, down: below, draw };
}

/** A track with a way back under it. */
function loop(item: Piece, back: Piece): Piece {
  const inner = Math.max(item.width, back.width);
  const offset = Math.max(item.down + back.up + gap / 2, 2 * bend);
  const width = inner + 4 * bend;
  const draw = (x: number, y: number): string => {
    const left = x + 2 * bend;
    const right = left + inner;
    const fall = round(offset - 2 * bend);
    return (
      line(x, y, 2 * bend) +
      item.draw(left, y) +
      line(left + item.width, y, inner - item.width + 2 * bend) +
      `<path d="M${round(right)} ${round(y)}q${bend} 0 ${bend} ${bend}v${fall}q0 ${bend} ${-bend} ${bend}"/>` +
      back.draw(left, y + offset) +
      line(left + back.width, y + offset, inner - back.width) +
      `<path d="M${round(left)} ${round(y + offset)}q${-bend} 0 ${-bend} ${-bend}v${-fall}q0 ${-bend} ${bend} ${-bend}"/>`
    );
  };
  return { width, up: item.up, down: offset + back.down, draw };
}

function line(x: number, y: number, length: number): string {
  return length > 0 ? `<path d="M${round(x)} ${round(y)}h${round(length)}"/>` : '';
}

function round(value: number): number {
  return Math.round(value * 10) / 10;
}

function escaped(text: string): string {
  return text.replace(/&/g, '&amp;').replace(/</g, '&lt;');
}
