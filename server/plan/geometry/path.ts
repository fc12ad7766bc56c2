import { type Box, NO_BOX, type Point } from './point.js';

/** One step of a drawn outline. All numbers absolute, canvas units. `C` is a cubic with its two handles. */
export type PathCommand =
  | { readonly kind: 'M'; readonly x: number; readonly y: number }
  | { readonly kind: 'L'; readonly x: number; readonly y: number }
  | {
      readonly kind: 'C';
      readonly x1: number;
      readonly y1: number;
      readonly x2: number;
      readonly y2: number;
      readonly x: number;
      readonly y: number;
    }
  | { readonly kind: 'Z' };

/** A closed polygon as x0, y0, x1, y1 ...; the last point joins the first without being repeated. */
export type Ring = Float64Array;

/** A shape, drawn (`path`) and measured (`rings`, the path with its curves flattened). */
export interface Outline {
  readonly path: readonly PathCommand[];
  /** Rings of three points or more; none for a shape without area. */
  readonly rings: readonly Ring[];
  /** Of all flattened points; `NO_BOX` when there are none. */
  readonly box: Box;
  /** What counts as inside. Missing: nonzero, wherever the border winds round a place. */
  readonly fillRule?: 'evenodd';
}

/** The shape that is nowhere. */
export const EMPTY_OUTLINE: Outline = { path: [], rings: [], box: NO_BOX };

/** Smallest box around all points of the rings, `NO_BOX` for none. */
export function boxOfRings(rings: readonly Ring[]): Box {
  let left = Infinity;
  let top = Infinity;
  let right = -Infinity;
  let bottom = -Infinity;
  for (const ring of rings) {
    for (let i = 0; i + 1 < ring.length; i += 2) {
      const x = ring[i] as number;
      const y = ring[i + 1] as number;
      if (x < left) left = x;
      if (x > right) right = x;
      if (y < top) top = y;
      if (y > bottom) bottom = y;
    }
  }
  return left <= right ? { left, top, right, bottom } : NO_BOX;
}

/**
 * SVG path data for drawing, `decimals` (0 to 12) after the point, shortest spelling: `M0 0L10.5 0...Z`.
 * Empty for an empty outline.
 */
export function pathData(outline: { readonly path: readonly PathCommand[] }, decimals: number): string {
  const places = Math.min(12, Math.max(0, Math.round(decimals)));
  const text = (value: number) => {
    const short = String(Number(value.toFixed(places)));
    return short === '-0' ? '0' : short;
  };
  return outline.path
    .map((command) => {
      switch (command.kind) {
        case 'M':
        case 'L':
          return `${command.kind}${text(command.x)} ${text(command.y)}`;
        case 'C':
          return `C${[command.x1, command.y1, command.x2, command.y2, command.x, command.y].map(text).join(' ')}`;
        case 'Z':
          return 'Z';
      }
    })
    .join('');
}

/** The pieces of a path, each from where its drawing begins. */
export function subpathsOf(path: readonly PathCommand[]): readonly (readonly PathCommand[])[] {
  const subpaths: PathCommand[][] = [];
  for (const command of path) {
    if (command.kind === 'M' || subpaths.length === 0) subpaths.push([]);
    subpaths.at(-1)?.push(command);
  }
  return subpaths;
}

/** Where the steps of a path end, in their order. */
export function endsOf(path: readonly PathCommand[]): readonly Point[] {
  return path.flatMap((command) => (command.kind === 'Z' ? [] : [{ x: command.x, y: command.y }]));
}

/** Handles and ends of the steps of a path, in their order: the path lies in the box round them. */
export function pointsOf(path: readonly PathCommand[]): readonly Point[] {
  return path.flatMap((command): readonly Point[] => {
    switch (command.kind) {
      case 'M':
      case 'L':
        return [command];
      case 'C':
        return [
          { x: command.x1, y: command.y1 },
          { x: command.x2, y: command.y2 },
          { x: command.x, y: command.y },
        ];
      case 'Z':
        return [];
    }
  });
}

/** The corners of a ring, in their order. */
export function ringPoints(ring: Ring): readonly Point[] {
  return Array.from({ length: Math.floor(ring.length / 2) }, (_, index) => ({
    x: ring[2 * index] ?? 0,
    y: ring[2 * index + 1] ?? 0,
  }));
}

/** The area of a ring that does not cross itself, squared units; positive for one that runs clockwise on the canvas. */
export function signedArea(ring: Ring): number {
  const originX = ring[0] ?? 0;
  const originY = ring[1] ?? 0;
  let sum = 0;
  for (let i = 2; i + 3 < ring.length; i += 2) {
    const ax = (ring[i] as number) - originX;
    const ay = (ring[i + 1] as number) - originY;
    sum += ax * ((ring[i + 3] as number) - originY) - ((ring[i + 2] as number) - originX) * ay;
  }
  return sum / 2;
}
