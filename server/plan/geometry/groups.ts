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
  const isAcross = spreadAlong(boxes, 'left', 'right') <= spreadAlong(boxes, 'top', 'bottom');
  const [from, to] = isAcross ? (['left', 'right'] as const) : (['top', 'bottom'] as const);
  const [low, high] = isAcross ? (['top', 'bottom'] as const) : (['left', 'right'] as const);
  const begins = Float64Array.from(boxes, (box) => box[from]);
  const order = Int32Array.from(boxes, (_, index) => index);
  order.sort((one, other) => (begins[one] as number) - (begins[other] as number));
  for (let at = 0; at < order.length; at++) {
    const one = order[at] as number;
    const box = boxes[one] as Box;
    const [end, least, most] = [box[to] + within, box[low] - within, box[high] + within];
    for (let next = at + 1; next < order.length; next++) {
      const other = order[next] as number;
      if ((begins[other] as number) > end) break;
      const beside = boxes[other] as Box;
      if (beside[low] <= most && least <= beside[high]) groups.join(one, other);
    }
  }
  const members = new Map<number, number[]>();
  for (let index = 0; index < boxes.length; index++) {
    const first = groups.firstOf(index);
    const own = members.get(first);
    if (own) own.push(index);
    else members.set(first, [index]);
  }
  return [...members.values()];
}

/** How many boxes lie over a place of an axis, on the average. */
function spreadAlong(boxes: readonly Box[], from: 'left' | 'top', to: 'right' | 'bottom'): number {
  let [sum, begin, end] = [0, Infinity, -Infinity];
  for (const box of boxes) {
    sum += box[to] - box[from];
    begin = Math.min(begin, box[from]);
    end = Math.max(end, box[to]);
  }
  return end > begin ? sum / (end - begin) : Infinity;
}
