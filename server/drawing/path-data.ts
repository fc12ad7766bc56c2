import type { Point } from '../plan/geometry/point.js';
import type { Box } from './scene.js';

/** At most three decimals, no exponent, no negative nought: the same text on every machine. */
export function number(value: number): string {
  if (!Number.isFinite(value)) return '0';
  const text = value.toFixed(3).replace(/\.?0+$/, '');
  return text === '-0' ? '0' : text;
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
