import { differenceCiede2000 } from 'culori/fn';
import 'culori/css';
import type { Colour, Lab } from './model.js';

const ciede2000 = differenceCiede2000();

/**
 * CIEDE2000 difference of two colours with kL = kC = kH = 1 (Sharma, Wu, Dalal 2005). About 1 can just be told
 * apart side by side, 5 at a glance. The order does not matter.
 */
export function difference(one: Colour, other: Colour): number {
  return labDifference(one.lab, other.lab);
}

/** CIEDE2000 difference of two CIELAB (D65) colours. */
export function labDifference([l1, a1, b1]: Lab, [l2, a2, b2]: Lab): number {
  // culori's plain `lab` is D50; `lab65` is taken as it stands, so no conversion happens here.
  return ciede2000({ mode: 'lab65', l: l1, a: a1, b: b1 }, { mode: 'lab65', l: l2, a: a2, b: b2 });
}

/**
 * CIEDE2000 difference of each pixel of two pictures of one size, three numbers a pixel, CIELAB (D65); NaN where a
 * number is none.
 */
export function labDifferences(one: Float32Array, other: Float32Array): Float32Array {
  // Filled anew for each pixel: making two objects a pixel takes longer than the formula.
  const first: Lab65 = { mode: 'lab65', l: 0, a: 0, b: 0 };
  const second: Lab65 = { ...first };
  const differences = new Float32Array(Math.min(one.length, other.length) / 3);
  for (let pixel = 0; pixel < differences.length; pixel++) {
    fill(first, one, 3 * pixel);
    fill(second, other, 3 * pixel);
    differences[pixel] = ciede2000(first, second);
  }
  return differences;
}

interface Lab65 {
  readonly mode: 'lab65';
  l: number;
  a: number;
  b: number;
}

function fill(colour: Lab65, lab: Float32Array, at: number): void {
  colour.l = lab[at] as number;
  colour.a = lab[at + 1] as number;
  colour.b = lab[at + 2] as number;
}
