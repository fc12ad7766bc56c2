import type { EmphasisField } from '../../measure/emphasis/emphasis.js';
import type { Point } from '../../plan/geometry/point.js';
import { number } from '../path-data.js';

/** Nodes of a grid with the strength at each, row after row. */
interface Nodes {
  readonly xs: readonly number[];
  readonly ys: readonly number[];
  readonly strengths: Float64Array;
}

/**
 * The borders of the places where a field has at least `level`, as closed rings in canvas units, by marching squares
 * with straight interpolation. The field goes straight on over the canvas edge and is ended beyond it, so that every
 * ring is closed there, out of sight.
 */
export function contourRings(
  field: EmphasisField,
  level: number,
  canvas: { readonly width: number; readonly height: number },
): readonly (readonly Point[])[] {
  if (field.columns < 1 || field.rows < 1) return [];
  const nodes = nodesOf(field, level, canvas);
  const next = segmentsOf(nodes, level);
  const rings: Point[][] = [];
  while (next.size > 0) {
    const [start] = next.keys();
    if (start === undefined) break;
    const ring: Point[] = [];
    for (let edge: number | undefined = start; edge !== undefined;) {
      ring.push(crossingOn(edge, nodes, level));
      const to: number | undefined = next.get(edge);
      next.delete(edge);
      edge = to === start ? undefined : to;
    }
    if (ring.length > 2) rings.push(ring);
  }
  return rings;
}

/** What a ring encloses, squared canvas units (shoelace formula). */
export function ringArea(ring: readonly Point[]): number {
  let twice = 0;
  ring.forEach(({ x, y }, index) => {
    const next = ring[(index + 1) % ring.length];
    if (next !== undefined) twice += x * next.y - next.x * y;
  });
  return Math.abs(twice) / 2;
}

/** A ring as a smooth closed line: its points are the handles of curves from middle to middle of its sides. */
export function smoothRingPath(ring: readonly Point[]): string {
  const last = ring.at(-1);
  const first = ring[0];
  if (last === undefined || first === undefined) return '';
  const middle = (one: Point, other: Point) =>
    `${number((one.x + other.x) / 2)} ${number((one.y + other.y) / 2)}`;
  const pieces = ring.map(
    (point, index) =>
      `Q${number(point.x)} ${number(point.y)} ${middle(point, ring[(index + 1) % ring.length] ?? first)}`,
  );
  return `M${middle(last, first)}${pieces.join('')}Z`;
}

/** Middles of the cells, the edges of the canvas, one row beyond them, and one more where every ring is closed. */
function nodesOf(
  field: EmphasisField,
  level: number,
  { width, height }: { readonly width: number; readonly height: number },
): Nodes {
  const along = (count: number) => [
    -2,
    -1,
    0,
    ...Array.from({ length: count }, (_, index) => index + 0.5),
    count,
    count + 1,
    count + 2,
  ];
  const across = along(field.columns);
  const down = along(field.rows);
  const strengths = new Float64Array(across.length * down.length);
  down.forEach((y, row) =>
    across.forEach((x, column) => {
      const isLast = column === 0 || row === 0 || column === across.length - 1 || row === down.length - 1;
      const strength = strengthAt(field, x, y);
      // As far below the level as it would be above it, so that the ring passes midway to the last row.
      strengths[row * across.length + column] = isLast
        ? Math.min(level - 1e-9, 2 * level - strength)
        : strength;
    }),
  );
  return {
    xs: across.map((x) => (x * width) / field.columns),
    ys: down.map((y) => (y * height) / field.rows),
    strengths,
  };
}

/** The strength at a place in cells from the upper left, straight on between the middles of cells and beyond them. */
function strengthAt({ columns, rows, strengths, strongest }: EmphasisField, x: number, y: number): number {
  const column = Math.min(Math.max(0, columns - 2), Math.max(0, Math.floor(x - 0.5)));
  const row = Math.min(Math.max(0, rows - 2), Math.max(0, Math.floor(y - 0.5)));
  const right = columns > 1 ? x - 0.5 - column : 0;
  const lower = rows > 1 ? y - 0.5 - row : 0;
  const at = (i: number, j: number) =>
    strengths[Math.min(rows - 1, row + j) * columns + Math.min(columns - 1, column + i)] ?? 0;
  const above = at(0, 0) + (at(1, 0) - at(0, 0)) * right;
  const below = at(0, 1) + (at(1, 1) - at(0, 1)) * right;
  return Math.min(strongest, Math.max(0, above + (below - above) * lower));
}

/** The sides of a cell: between its upper nodes, its right, its lower and its left ones. */
type SideOfCell = 'top' | 'right' | 'bottom' | 'left';

/**
 * By which of a cell's nodes are inside (1 upper left, 2 upper right, 4 lower right, 8 lower left): from which side to
 * which the border runs, the inside on its right. In the two cases where opposite corners are inside, the pair for a
 * middle that is outside comes first.
 */
const BORDERS: Readonly<Record<number, readonly (readonly [SideOfCell, SideOfCell])[]>> = {
  1: [['top', 'left']],
  2: [['right', 'top']],
  3: [['right', 'left']],
  4: [['bottom', 'right']],
  6: [['bottom', 'top']],
  7: [['bottom', 'left']],
  8: [['left', 'bottom']],
  9: [['top', 'bottom']],
  11: [['right', 'bottom']],
  12: [['left', 'right']],
  13: [['top', 'right']],
  14: [['left', 'top']],
};
const SADDLES: Readonly<
  Record<number, { readonly [inside in 'in' | 'out']: readonly (readonly [SideOfCell, SideOfCell])[] }>
> = {
  5: {
    out: [
      ['top', 'left'],
      ['bottom', 'right'],
    ],
    in: [
      ['top', 'right'],
      ['bottom', 'left'],
    ],
  },
  10: {
    out: [
      ['right', 'top'],
      ['left', 'bottom'],
    ],
    in: [
      ['left', 'top'],
      ['right', 'bottom'],
    ],
  },
};

/** From each edge of the grid that a border crosses to the next; an edge is twice its first node, one more for down. */
function segmentsOf({ xs, ys, strengths }: Nodes, level: number): Map<number, number> {
  const wide = xs.length;
  const next = new Map<number, number>();
  for (let y = 0; y + 1 < ys.length; y++) {
    for (let x = 0; x + 1 < wide; x++) {
      const at = y * wide + x;
      const corners = [at, at + 1, at + wide + 1, at + wide].map((node) => strengths[node] ?? 0);
      const inside = corners.reduce((bits, strength, bit) => bits | (strength >= level ? 1 << bit : 0), 0);
      const edge: Readonly<Record<SideOfCell, number>> = {
        top: 2 * at,
        right: 2 * (at + 1) + 1,
        bottom: 2 * (at + wide),
        left: 2 * at + 1,
      };
      const saddle = SADDLES[inside];
      const mean = corners.reduce((sum, strength) => sum + strength, 0) / 4;
      const pairs = saddle === undefined ? BORDERS[inside] : saddle[mean >= level ? 'in' : 'out'];
      for (const [from, to] of pairs ?? []) next.set(edge[from], edge[to]);
    }
  }
  return next;
}

function crossingOn(edge: number, { xs, ys, strengths }: Nodes, level: number): Point {
  const node = edge >> 1;
  const other = edge % 2 === 0 ? node + 1 : node + xs.length;
  const from = strengths[node] ?? 0;
  const to = strengths[other] ?? 0;
  const part = to === from ? 0.5 : (level - from) / (to - from);
  const place = (index: number): Point => ({
    x: xs[index % xs.length] ?? 0,
    y: ys[Math.floor(index / xs.length)] ?? 0,
  });
  const a = place(node);
  const b = place(other);
  return { x: a.x + (b.x - a.x) * part, y: a.y + (b.y - a.y) * part };
}
