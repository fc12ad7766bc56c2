import { type Polygons, united } from './clipping.js';
import { boxGroups } from './groups.js';
import { type Box, boxOfPoints } from './point.js';

type Path = Polygons[number];

interface KeptUnion {
  readonly paths: Polygons;
  readonly union: Polygons;
}

/** By the first ring of a group. */
const kept = new WeakMap<Path, KeptUnion>();
const boxes = new WeakMap<Path, Box>();

/**
 * What rings hold together, as `united` gives it; where that is several things, ring by ring from the lowest up.
 * Rings that come nowhere near each other are united apart, and what comes of them is the same as long as they are.
 */
export function unitedParts(paths: Polygons): Polygons {
  const around = paths.map(boxOf);
  const groups = boxGroups(around, 0);
  if (groups.length === 1) return unionOf(paths);
  const rings = groups.flatMap((group) => {
    const own = group.map((index) => paths[index] as Path);
    return unionOf(own).map((ring) => {
      const lowest = boxOf(ring).bottom;
      // Of rings that go down as far the one comes first whose part did.
      const place = group.find((index) => around[index]?.bottom === lowest) ?? group[0] ?? 0;
      return { ring, lowest, place };
    });
  });
  return rings.sort((a, b) => b.lowest - a.lowest || a.place - b.place).map(({ ring }) => ring);
}

function unionOf(paths: Polygons): Polygons {
  const [first] = paths;
  if (!first) return [];
  const last = kept.get(first);
  if (last?.paths.length === paths.length && paths.every((path, index) => path === last.paths[index])) {
    return last.union;
  }
  const union = united(paths);
  kept.set(first, { paths, union });
  return union;
}

function boxOf(path: Path): Box {
  let box = boxes.get(path);
  if (!box) {
    box = boxOfPoints(path);
    boxes.set(path, box);
  }
  return box;
}
