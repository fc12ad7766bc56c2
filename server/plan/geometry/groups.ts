import type { Box } from './point.js';

/** Things joined into groups; each group goes by the first of its things. */
export class Groups {
  readonly #next: Int32Array;

  constructor(things: number) {
    this.#next = Int32Array.from({ length: things }, (_, thing) => thing);
  }

  firstOf(thing: number): number {
    let first = thing;
    while (this.#next[first] !== first) first = this.#next[first] as number;
    let step = thing;
    while (step !== first) {
      const next = this.#next[step] as number;
      this.#next[step] = first;
      step = next;
    }
    return first;
  }

  join(one: number, other: number): void {
    const a = this.firstOf(one);
    const b = this.firstOf(other);
    this.#next[Math.max(a, b)] = Math.min(a, b);
  }
}

/**
 * Boxes that come within a distance of each other, directly or over others, by their indices: those of each group and
 * the groups themselves in the order of the boxes.
 */
export function boxGroups(boxes: readonly Box[], within: number): readonly (readonly number[])[] {
  const groups = new Groups(boxes.length);
  const across = extentsOf(
    boxes,
    ({ left }) => left,
    ({ right }) => right,
  );
  const down = extentsOf(
    boxes,
    ({ top }) => top,
    ({ bottom }) => bottom,
  );
  if (across.spread <= down.spread) joinNear(groups, across, down, within);
  else joinNear(groups, down, across, within);
  const members = new Map<number, number[]>();
  for (let index = 0; index < boxes.length; index++) {
    const first = groups.firstOf(index);
    const own = members.get(first);
    if (own) own.push(index);
    else members.set(first, [index]);
  }
  return [...members.values()];
}

/** From where to where boxes lie along one axis. */
interface Extents {
  readonly begins: Float64Array;
  readonly ends: Float64Array;
  /** How many of them lie over a place of the axis, on the average. */
  readonly spread: number;
}

function extentsOf(
  boxes: readonly Box[],
  beginOf: (box: Box) => number,
  endOf: (box: Box) => number,
): Extents {
  const begins = new Float64Array(boxes.length);
  const ends = new Float64Array(boxes.length);
  let [sum, first, last] = [0, Infinity, -Infinity];
  for (let index = 0; index < boxes.length; index++) {
    const box = boxes[index] as Box;
    const begin = beginOf(box);
    const end = endOf(box);
    begins[index] = begin;
    ends[index] = end;
    sum += end - begin;
    if (begin < first) first = begin;
    if (end > last) last = end;
  }
  return { begins, ends, spread: last > first ? sum / (last - first) : Infinity };
}

/**
 * Joins what comes within a distance of each other, looked through along the axis on which fewer lie over each other.
 */
function joinNear(groups: Groups, along: Extents, beside: Extents, within: number): void {
  const { begins, ends } = along;
  const order = Int32Array.from(begins, (_, index) => index);
  order.sort((one, other) => (begins[one] as number) - (begins[other] as number));
  for (let at = 0; at < order.length; at++) {
    const one = order[at] as number;
    const end = (ends[one] as number) + within;
    const least = (beside.begins[one] as number) - within;
    const most = (beside.ends[one] as number) + within;
    for (let next = at + 1; next < order.length; next++) {
      const other = order[next] as number;
      if ((begins[other] as number) > end) break;
      if ((beside.begins[other] as number) <= most && least <= (beside.ends[other] as number))
        groups.join(one, other);
    }
  }
}
