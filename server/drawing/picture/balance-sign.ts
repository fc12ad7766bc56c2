import { pathMark } from '../marks.js';
import { circlePath, linePath, polygonPath } from '../path-data.js';
import type { Ink, Mark } from '../scene.js';
import type { Reading } from '../views/reading.js';
import { percent } from '../captions/words.js';
import { capitalised } from '../../plan/problems.js';

interface Place {
  /** The point of the fulcrum. */
  readonly x: number;
  readonly y: number;
  /** How far the plumb line hangs from there to the right; negative to the left. */
  readonly off: number;
  /** Height of the fulcrum. */
  readonly high: number;
  /** How far down the plumb line hangs. */
  readonly deep: number;
}

/** A fulcrum in outline, and a plumb line with its bob where the weight is. */
export function balanceSign(
  key: string,
  { x, y, off, high, deep }: Place,
  inks: { readonly fulcrum: Ink; readonly plumb: Ink },
  tip?: string,
): readonly Mark[] {
  const half = 0.6 * high;
  const bob = 0.22 * high;
  const stands = polygonPath([
    { x, y },
    { x: x + half, y: y + high },
    { x: x - half, y: y + high },
  ]);
  const line = linePath([
    { x: x + off, y },
    { x: x + off, y: y + deep },
  ]);
  return [
    pathMark(key, stands, { stroke: { ink: inks.fulcrum, weight: 'fine' }, tip }),
    pathMark(`${key}:plumb`, line, { stroke: { ink: inks.plumb, weight: 'fine' }, tip }),
    pathMark(`${key}:bob`, circlePath({ x: x + off, y: y + deep }, bob), { fill: inks.plumb, tip }),
  ];
}

/** On the mount under the picture: the fulcrum at its vertical middle, the plumb line at its centre of weight. */
export function balanceMarks(reading: Reading): readonly Mark[] {
  const { centre, weights } = reading.measures.balance;
  if (centre === undefined || weights.length === 0) return [];
  const { picture, layout } = reading;
  const { em, mount } = layout;
  const y = picture.height + 0.26 * em;
  const room = mount.y + mount.height - y;
  const middle = picture.width / 2;
  return balanceSign(
    'balance',
    {
      x: middle,
      y,
      off: centre - middle,
      high: Math.min(0.6 * em, 0.5 * room),
      deep: Math.min(em, 0.75 * room),
    },
    { fulcrum: 'quiet', plumb: 'ink' },
    `${capitalised(balanceInWords(reading) ?? '')}.`,
  );
}

/** `centre of weight 3 % of the width left of the middle`; none when no object weighs. */
export function balanceInWords({ measures }: Reading): string | undefined {
  const { offset, weights } = measures.balance;
  if (offset === undefined || weights.length === 0) return undefined;
  if (Math.round(100 * Math.abs(offset)) === 0) return 'centre of weight on the vertical middle';
  return `centre of weight ${percent(Math.abs(offset))} of the width ${offset < 0 ? 'left' : 'right'} of the middle`;
}
