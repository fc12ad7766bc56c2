import type { LengthUnit } from '../../grammar/index.js';
import { plainNumber } from './problems.js';

export interface StockSize {
  readonly long: number;
  readonly short: number;
  readonly unit: LengthUnit;
}

type Sides = readonly [short: number, long: number];

/**
 * French stretcher numbers: long side, then short side of figure, paysage and marine, cm. Facts of the trade; three
 * published listings agree.
 */
const FRENCH: readonly (readonly [number, number, number, number, number])[] = [
  [0, 18, 14, 12, 10],
  [1, 22, 16, 14, 12],
  [2, 24, 19, 16, 14],
  [3, 27, 22, 19, 16],
  [4, 33, 24, 22, 19],
  [5, 35, 27, 24, 22],
  [6, 41, 33, 27, 24],
  [8, 46, 38, 33, 27],
  [10, 55, 46, 38, 33],
  [12, 61, 50, 46, 38],
  [15, 65, 54, 50, 46],
  [20, 73, 60, 54, 50],
  [25, 81, 65, 60, 54],
  [30, 92, 73, 65, 60],
  [40, 100, 81, 73, 65],
  [50, 116, 89, 81, 73],
  [60, 130, 97, 89, 81],
  [80, 146, 114, 97, 89],
  [100, 162, 130, 114, 97],
  [120, 195, 130, 114, 97],
];

/**
 * Sizes in inches that stretched canvases are sold in, short side first. Facts of the trade, listed by Color Bay,
 * "Canvas Sizes" (colorbay.com/canvas_size.htm), The Beginning Artist, "What Are The Standard Canvas Sizes For
 * Painting?" (thebeginningartist.com/canvas-sizes), Art History Lab, "Demystifying Canvas Sizes", and Elites, "Choosing
 * the Perfect Canvas Size for Your Art".
 */
const LISTED_INCHES: readonly Sides[] = [
  [4, 6],
  [5, 5],
  [5, 7],
  [6, 6],
  [6, 8],
  [8, 8],
  [8, 10],
  [9, 12],
  [10, 10],
  [11, 14],
  [12, 12],
  [12, 16],
  [16, 20],
  [18, 24],
  [20, 20],
  [20, 24],
  [24, 24],
  [24, 30],
  [24, 36],
  [30, 40],
  [36, 48],
  [48, 60],
  [48, 72],
];

/** From memory: common in US shops as well. */
const OTHER_INCHES: readonly Sides[] = [
  [6, 12],
  [8, 16],
  [10, 20],
  [12, 24],
  [12, 36],
  [14, 18],
  [15, 30],
  [16, 16],
  [18, 36],
  [20, 30],
  [22, 28],
  [24, 48],
  [30, 30],
  [30, 36],
  [30, 48],
  [36, 36],
  [40, 60],
  [48, 48],
];

/** Small ones first. */
const INCHES: readonly Sides[] = [...LISTED_INCHES, ...OTHER_INCHES].sort(
  (one, other) => one[0] - other[0] || one[1] - other[1],
);

const ISO_LARGEST = { a: [841, 1189], b: [1000, 1414] } as const;

/**
 * A canvas or paper by its stock name: `figure 20`, `paysage 12`, `marine 8` (French stretcher numbers), `A3`, `B2`
 * (ISO 216, each size half the one before, whole millimetres), or `16 x 20 in`. `undefined` for any other name.
 */
export function stockSize(name: string): StockSize | undefined {
  const words = name.toLowerCase().trim().split(/\s+/);
  const inches = INCHES.find((sides) => inchName(sides) === words.join(' '));
  if (inches) return { long: inches[1], short: inches[0], unit: 'in' };
  const paper = /^([ab])(\d|10)$/.exec(words.join(''));
  if (paper) return paperSize(paper[1] as 'a' | 'b', Number(paper[2]));
  const row = FRENCH.find(([number]) => String(number) === words[1]);
  if (!row || words.length !== 2) return undefined;
  const [, long, figure, paysage, marine] = row;
  const short = { figure, paysage, marine }[words[0] ?? ''];
  return short === undefined ? undefined : { long, short, unit: 'cm' };
}

/** `73 x 60 cm`, the longer side first. */
export function sidesInWords({ long, short, unit }: StockSize): string {
  return `${long} x ${short} ${unit}`;
}

/** Every stock size that has a name of its own, and those in inches, which are named by their sides. */
export function stockNames(): readonly string[] {
  return [
    ...['figure', 'paysage', 'marine'].flatMap((kind) => FRENCH.map(([number]) => `${kind} ${number}`)),
    ...['A', 'B'].flatMap((series) => Array.from({ length: 11 }, (_, size) => `${series}${size}`)),
    ...INCHES.map(inchName),
  ];
}

function inchName([width, height]: Sides): string {
  return nameBySides({ width, height, unit: 'in' });
}

/** What sizes in inches go by, the shorter side first whichever way the canvas stands: `14 x 18 in`. */
export function nameBySides({
  width,
  height,
  unit,
}: {
  readonly width: number;
  readonly height: number;
  readonly unit: LengthUnit;
}): string {
  return `${plainNumber(Math.min(width, height))} x ${plainNumber(Math.max(width, height))} ${unit}`;
}

function paperSize(series: 'a' | 'b', size: number): StockSize {
  let [short, long]: readonly [number, number] = ISO_LARGEST[series];
  for (let step = 0; step < size; step++) [short, long] = [Math.floor(long / 2), short];
  return { long, short, unit: 'mm' };
}
