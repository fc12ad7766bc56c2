import { marked } from '../../grammar/index.js';
import { PHI } from '../plan/division.js';
import { millimetresPer } from '../plan/lengths.js';
import type { Canvas } from '../plan/plan.js';
import { stockNames, stockSize } from '../plan/stock.js';

/** A proportion of the trade that the canvas has within 1 %, or a size that it has. */
export interface NamedProportion {
  /** `square`, `2 : 3`, `golden section`, `root 2`, `ISO 216 paper`, `A4`, `figure 20`, `16 x 20 in`. */
  readonly name: string;
  readonly kind: 'simple' | 'golden' | 'root' | 'paper' | 'stock';
  /** Long side over short side. */
  readonly ratio: number;
  /** How far the canvas's own ratio is from it, part of it; above nothing the canvas is the longer. */
  readonly difference: number;
  /** Whether the canvas has its size as well: both sides within 2 mm, or 1/16 in of a size in inches. */
  readonly sameSize: boolean;
}

export interface ProportionMeasure {
  /** Long side over short side. */
  readonly ratio: number;
  /** Nearest first; at most one of a kind. */
  readonly named: readonly NamedProportion[];
}

type Kind = NamedProportion['kind'];

const NAMED_WITHIN = 0.01;
const SAME_SIZE_MILLIMETRES = 2;
const SAME_SIZE_INCHES = 1 / 16;
/** Differences below it are rounding. */
const ROUNDING = 1e-9;

interface Shape {
  readonly name: string;
  readonly kind: Kind;
  readonly ratio: number;
}

/** Something sold in one size, its sides in mm. */
interface Size extends Shape {
  readonly long: number;
  readonly short: number;
  readonly tolerance: number;
}

const simpleRatios = [
  [5, 6],
  [4, 5],
  [3, 4],
  [2, 3],
  [3, 5],
  [1, 2],
  [1, 3],
] as const;

const shapes: readonly Shape[] = [
  { name: marked('square'), kind: 'simple', ratio: 1 },
  ...simpleRatios.map(([short, long]): Shape => ({
    name: `${short} : ${long}`,
    kind: 'simple',
    ratio: long / short,
  })),
  { name: marked('golden section'), kind: 'golden', ratio: PHI },
  ...[2, 3, 4, 5].map((n): Shape => ({ name: `root ${n}`, kind: 'root', ratio: Math.sqrt(n) })),
  { name: marked('ISO 216 paper'), kind: 'paper', ratio: Math.SQRT2 },
];

const sizes: readonly Size[] = stockNames().flatMap((name): readonly Size[] => {
  const stock = stockSize(name);
  if (!stock) return [];
  const millimetres = millimetresPer(stock.unit);
  return [
    {
      name,
      kind: stock.unit === 'mm' ? 'paper' : 'stock',
      ratio: stock.long / stock.short,
      long: stock.long * millimetres,
      short: stock.short * millimetres,
      tolerance: stock.unit === 'in' ? SAME_SIZE_INCHES * millimetres : SAME_SIZE_MILLIMETRES,
    },
  ];
});

/**
 * The canvas's own proportion and what the trade calls it, whichever side is up: the few ratios that canvases and
 * sketchbooks are made in, golden section, root 2 to root 5 (J. Hambidge, The Elements of Dynamic Symmetry), paper of
 * ISO 216, and stock sizes, French and in inches. Of each kind the nearest within 1 %; a sheet or stretcher of the
 * canvas's very size goes before those that it is only in proportion with, and of these the one nearest in size.
 *
 * H. R. Poore, Pictorial Composition (1903), says of canvases of 28 x 36 and 18 x 24 in that they are as long as the
 * diagonal of the square on their breadth, which would be root 2. They are 1.286 and 1.333 times as long as broad, so
 * neither is called that here.
 */
export function measureProportion(
  canvas: Pick<Canvas, 'width' | 'height' | 'millimetresPerUnit'>,
): ProportionMeasure {
  const long = Math.max(canvas.width, canvas.height) * canvas.millimetresPerUnit;
  const short = Math.min(canvas.width, canvas.height) * canvas.millimetresPerUnit;
  const ratio = long / short;
  const named = ({ name, kind, ratio: theirs }: Shape, sameSize: boolean): NamedProportion => ({
    name,
    kind,
    ratio: theirs,
    difference: ratio / theirs - 1,
    sameSize,
  });
  const nearestShape = (kind: Kind): Shape | undefined =>
    least(
      shapes.filter((shape) => shape.kind === kind && missing(ratio, shape) <= NAMED_WITHIN + ROUNDING),
      (shape) => missing(ratio, shape),
    );
  const away = (size: Size): number => Math.max(Math.abs(size.long - long), Math.abs(size.short - short));
  const sameSize = (kind: Kind): Size | undefined =>
    least(
      sizes.filter((size) => size.kind === kind && away(size) <= size.tolerance + ROUNDING),
      away,
    );
  const sameProportion = (): Size | undefined => {
    const near = sizes.filter(
      (size) => size.kind === 'stock' && missing(ratio, size) <= NAMED_WITHIN + ROUNDING,
    );
    const miss = Math.min(...near.map((size) => missing(ratio, size)));
    return least(
      near.filter((size) => missing(ratio, size) <= miss + ROUNDING),
      away,
    );
  };
  const oneOf = (size: Size | undefined, shape: Shape | undefined): readonly NamedProportion[] =>
    size ? [named(size, true)] : shape ? [named(shape, false)] : [];
  const all = [
    ...oneOf(undefined, nearestShape('simple')),
    ...oneOf(undefined, nearestShape('golden')),
    ...oneOf(undefined, nearestShape('root')),
    ...oneOf(sameSize('paper'), nearestShape('paper')),
    ...oneOf(sameSize('stock'), sameProportion()),
  ];
  return { ratio, named: all.sort((one, other) => inSteps(one.difference) - inSteps(other.difference)) };
}

function missing(ratio: number, shape: Shape): number {
  return Math.abs(ratio / shape.ratio - 1);
}

/** A difference without its sign and in whole steps of rounding, so that equals keep their order. */
function inSteps(difference: number): number {
  return Math.round(Math.abs(difference) / ROUNDING);
}

/** The first of those that measure least. */
function least<T>(items: readonly T[], measureOf: (item: T) => number): T | undefined {
  return items.reduce<T | undefined>(
    (best, item) => (best === undefined || measureOf(item) < measureOf(best) ? item : best),
    undefined,
  );
}
