import type { Outline } from '../../plan/geometry/outline.js';
import { number } from '../path-data.js';

/**
 * Slanting lines that fill a shape, as path data; empty for a shape without area. Lines of all shapes lie on one
 * set of slants, `spacing` apart, that rise to the right, and only those that cross the canvas are drawn.
 */
export function hatchPath(
  outline: Pick<Outline, 'rings' | 'fillRule'>,
  spacing: number,
  canvas: { readonly width: number; readonly height: number },
): string {
  // On a slant x + y stays the same.
  const step = spacing * Math.SQRT2;
  const last = Math.floor((canvas.width + canvas.height) / step);
  const crossings: { readonly x: number; readonly winding: number }[][] = Array.from(
    { length: last + 1 },
    () => [],
  );
  for (const ring of outline.rings) {
    for (let i = 0; i + 1 < ring.length; i += 2) {
      const next = (i + 2) % ring.length;
      const ax = ring[i] ?? 0;
      const bx = ring[next] ?? 0;
      const from = ax + (ring[i + 1] ?? 0);
      const to = bx + (ring[next + 1] ?? 0);
      if (from === to) continue;
      const winding = to > from ? 1 : -1;
      const first = Math.max(0, Math.ceil(Math.min(from, to) / step));
      for (let slant = first; slant <= last && slant * step < Math.max(from, to); slant++) {
        crossings[slant]?.push({ x: ax + ((slant * step - from) / (to - from)) * (bx - ax), winding });
      }
    }
  }
  return crossings.flatMap((across, slant) => strokes(across, slant * step, outline.fillRule)).join('');
}

function strokes(
  across: readonly { readonly x: number; readonly winding: number }[],
  sum: number,
  fillRule: 'evenodd' | undefined,
): string[] {
  const sorted = [...across].sort((a, b) => a.x - b.x);
  const parts: string[] = [];
  let winding = 0;
  let from = 0;
  for (const { x, winding: turn } of sorted) {
    const before = isInside(winding, fillRule);
    winding += turn;
    const after = isInside(winding, fillRule);
    if (!before && after) from = x;
    if (before && !after && x > from) {
      parts.push(`M${number(from)} ${number(sum - from)}L${number(x)} ${number(sum - x)}`);
    }
  }
  return parts;
}

function isInside(winding: number, fillRule: 'evenodd' | undefined): boolean {
  return fillRule === 'evenodd' ? winding % 2 !== 0 : winding !== 0;
}
