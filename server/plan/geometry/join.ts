import { EMPTY_OUTLINE, type Outline, type PathCommand, type Ring, boxOfRings, signedArea } from './path.js';
import { areaOnGrid } from './clipping.js';
import { gridOver, polygonsOf, ringsOf } from './polygons.js';

/**
 * Several shapes as one outline that covers what any of them covers. Curves are kept where a shape winds once round
 * its inside, as most do; one that crosses itself, or is filled by the even-odd rule, is kept as the polygons of
 * its inside, because next to others its winding could cancel theirs and tear a hole.
 */
export function join(outlines: readonly Outline[]): Outline {
  const parts = outlines.filter(({ path }) => path.length > 0);
  const [first] = parts;
  if (!first) return EMPTY_OUTLINE;
  if (parts.length === 1) return first;
  const clockwise = parts.map(windingOnce);
  const rings = clockwise.flatMap((part) => part.rings);
  return {
    path: clockwise.flatMap((part) => part.path),
    rings,
    box: boxOfRings(rings.length > 0 ? rings : parts.map(({ box }) => cornersOf(box))),
  };
}

/** The same inside, wound round exactly once, clockwise on the canvas. */
function windingOnce(outline: Outline): Pick<Outline, 'path' | 'rings'> {
  const grid = gridOver(boxOfRings(outline.rings));
  if (!grid) return { path: outline.path, rings: [] };
  const inside = polygonsOf(outline, grid);
  const area = areaOnGrid(inside) / grid.scale ** 2;
  const signed = outline.rings.reduce((sum, ring) => sum + signedArea(ring), 0);
  if (outline.fillRule !== 'evenodd' && Math.abs(Math.abs(signed) - area) <= 1e-9 * area) {
    if (signed > 0) return outline;
    return { path: reversedPath(outline.path), rings: outline.rings.map(reversedRing) };
  }
  const rings = ringsOf(inside, grid);
  return { path: rings.flatMap(pathOfRing), rings };
}

function reversedRing(ring: Ring): Ring {
  const reversed = new Float64Array(ring.length);
  for (let i = 0; i + 1 < ring.length; i += 2) {
    reversed[i] = ring[ring.length - 2 - i] as number;
    reversed[i + 1] = ring[ring.length - 1 - i] as number;
  }
  return reversed;
}

/** The path drawn backwards, each subpath closed. */
function reversedPath(path: readonly PathCommand[]): readonly PathCommand[] {
  const reversed: PathCommand[] = [];
  let subpath: Exclude<PathCommand, { kind: 'Z' }>[] = [];
  const finish = () => {
    const last = subpath.at(-1);
    if (last && subpath.length > 1) {
      reversed.push({ kind: 'M', x: last.x, y: last.y });
      for (let i = subpath.length - 1; i > 0; i--) {
        const command = subpath[i];
        const target = subpath[i - 1];
        if (command && target) reversed.push(backwards(command, target));
      }
      reversed.push({ kind: 'Z' });
    }
    subpath = [];
  };
  for (const command of path) {
    if (command.kind === 'Z') {
      const [start] = subpath;
      finish();
      if (start) subpath = [{ kind: 'M', x: start.x, y: start.y }];
    } else {
      if (command.kind === 'M') finish();
      subpath.push(command);
    }
  }
  finish();
  return reversed;
}

function backwards(
  command: Exclude<PathCommand, { kind: 'Z' }>,
  { x, y }: { readonly x: number; readonly y: number },
): PathCommand {
  switch (command.kind) {
    case 'C':
      return { kind: 'C', x1: command.x2, y1: command.y2, x2: command.x1, y2: command.y1, x, y };
    case 'L':
    case 'M':
      return { kind: 'L', x, y };
  }
}

function pathOfRing(ring: Ring): readonly PathCommand[] {
  const path: PathCommand[] = [];
  for (let i = 0; i + 1 < ring.length; i += 2) {
    path.push({ kind: i === 0 ? 'M' : 'L', x: ring[i] as number, y: ring[i + 1] as number });
  }
  return [...path, { kind: 'Z' }];
}

function cornersOf({ left, top, right, bottom }: Outline['box']): Ring {
  return Float64Array.of(left, top, right, bottom);
}
