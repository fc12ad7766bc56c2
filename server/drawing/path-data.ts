import type { Point } from '../plan/geometry/point.js';
import type { Box } from './scene.js';

/** At most three decimals, no exponent, no negative nought: the same text on every machine. */
export function number(value: number): string {
  return Number.isFinite(value) ? String(rounded(value)) : '0';
}

/** Up to there thousandths are told exactly. */
const LARGE = 1e12;

/** To three decimals as `toFixed` has them, no negative nought. */
export function rounded(value: number): number {
  const thousandths = value * 1000;
  const nearest = Math.round(thousandths);
  // Halfway between two it depends on more digits than there are here.
  const isClear = Math.abs(thousandths - nearest) < 0.499 && Math.abs(nearest) < LARGE;
  return (isClear ? nearest / 1000 : Number(value.toFixed(3))) + 0;
}

export function rectanglePath({ x, y, width, height }: Box): string {
  return `M${number(x)} ${number(y)}H${number(x + width)}V${number(y + height)}H${number(x)}Z`;
}

export function linePath(points: readonly Point[]): string {
  return points.map(({ x, y }, index) => `${index === 0 ? 'M' : 'L'}${number(x)} ${number(y)}`).join('');
}

export function polygonPath(points: readonly Point[]): string {
  return points.length === 0 ? '' : `${linePath(points)}Z`;
}

export function circlePath({ x, y }: Point, radius: number): string {
  const r = number(radius);
  const across = number(2 * radius);
  return `M${number(x - radius)} ${number(y)}a${r} ${r} 0 1 0 ${across} 0a${r} ${r} 0 1 0 -${across} 0Z`;
}
