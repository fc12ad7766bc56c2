import type { LengthUnit } from '../../grammar/index.js';

export interface StockSize {
  readonly long: number;
  readonly short: number;
  readonly unit: LengthUnit;
}

/** French stretcher numbers: long side, then short side of figure, paysage and marine, cm. Facts of the trade; three published listings agree. */
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

const ISO_LARGEST = { a: [841, 1189], b: [1000, 1414] } as const;

/**
 * A canvas or paper by its stock name: `figure 20`, `paysage 12`, `marine 8` (French stretcher numbers) or
 * `A3`, `B2` (ISO 216, each size half the one before, whole millimetres). `undefined` for any other name.
 */
export function stockSize(name: string): StockSize | undefined {
  const words = name.toLowerCase().trim().split(/\s+/);
  const paper = /^([ab])(\d|10)$/.exec(words.join(''));
  if (paper) return paperSize(paper[1] as 'a' | 'b', Number(paper[2]));
  const row = FRENCH.find(([number]) => String(number) === words[1]);
  if (!row || words.length !== 2) return undefined;
  const [, long, figure, paysage, marine] = row;
  const short = { figure, paysage, marine }[words[0] ?? ''];
  return short === undefined ? undefined : { long, short, unit: 'cm' };
}

export function stockNames(): readonly string[] {
  return [
    ...['figure', 'paysage', 'marine'].flatMap((kind) => FRENCH.map(([number]) => `${kind} ${number}`)),
    ...['A', 'B'].flatMap((series) => Array.from({ length: 11 }, (_, size) => `${series}${size}`)),
  ];
}

function paperSize(series: 'a' | 'b', size: number): StockSize {
  let [short, long]: readonly [number, number] = ISO_LARGEST[series];
  for (let step = 0; step < size; step++) [short, long] = [Math.floor(long / 2), short];
  return { long, short, unit: 'mm' };
}
