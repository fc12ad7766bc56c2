import type { Finding } from '../../server/findings/finding.js';
import { checked } from '../support/plan.js';

/** A canvas whose diagonal is 100 cm, so that a centimetre is one per cent of it. */
export const ROOM = `canvas  80 x 60 cm
  ground  N 5/
divide  quarters
focus   lower right
`;

export const LAMP = object('lamp, dominant', 'circle 6 at focus', 'colour N 9/', 'edges hard');

export type Place = readonly [number, number];

export function outline(...places: readonly Place[]): string {
  return `outline ${places.map(([x, y]) => `(${x}, ${y})`).join(' ')}`;
}

export function box(left: number, top: number, wide: number, high: number): string {
  return `rectangle (${left}, ${top}) to (${left + wide}, ${top + high})`;
}

/** An object with its shape and what else is said of it. */
export function object(name: string, shape: string, ...lines: readonly string[]): string {
  return [`object  ${name}`, `  shape   ${shape}`, ...lines.map((line) => `  ${line}`), ''].join('\n');
}

/** What a rule tells of a plan. */
export function found(rule: string, ...parts: readonly string[]): readonly Finding[] {
  return checked(parts.join('')).findings.filter((finding) => finding.rule === rule);
}

export function isTold(rule: string, ...parts: readonly string[]): boolean {
  return found(rule, ...parts).length > 0;
}

/** All that a rule advises. */
export function advice(rule: string, ...parts: readonly string[]): string {
  return found(rule, ...parts)
    .map((finding) => finding.advice ?? '')
    .join(' ');
}
