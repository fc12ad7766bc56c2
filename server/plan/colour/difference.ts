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

/** CIE 1976 difference: the plain distance in CIELAB. Quick, and unfair to strong colours. */
export function deltaAB(one: Colour, other: Colour): number {
  const [l1, a1, b1] = one.lab;
  const [l2, a2, b2] = other.lab;
  return Math.hypot(l1 - l2, a1 - a2, b1 - b2);
}
