import { type Outline, type PathCommand, type Ring, pathData } from '../../plan/geometry/path.js';
import { clippedRing } from '../../plan/geometry/polygons.js';
import { number } from '../path-data.js';

/** Where a small picture lies on the sheet, and how much smaller than the canvas it is. */
export interface FramePlace {
  readonly x: number;
  readonly y: number;
  readonly scale: number;
}

/** Finer than this part of an em no one sees. */
const FINEST_EMS = 0.03;

/**
 * The outline of an object as it lies in a small picture, as path data: the curves where all of it is on the canvas, else
 * what the canvas cuts out of it, as nothing else cuts it there.
 */
export function outlineIn(
  outline: Outline,
  canvas: { readonly width: number; readonly height: number },
  { x, y, scale }: FramePlace,
  em: number,
): string {
  const { left, top, right, bottom } = outline.box;
  const decimals = Math.max(0, Math.ceil(-Math.log10(FINEST_EMS * em)));
  const isWhole = left >= 0 && top >= 0 && right <= canvas.width && bottom <= canvas.height;
  if (isWhole) {
    const across = (value: number) => x + scale * value;
    const down = (value: number) => y + scale * value;
    return pathData({ path: outline.path.map((command) => placed(command, across, down)) }, decimals);
  }
  const finest = (FINEST_EMS * em) / scale;
  const window = { left: 0, top: 0, right: canvas.width, bottom: canvas.height };
  return outline.rings
    .map((ring) => ringPath(thinned(clippedRing(ring, window), finest), { x, y, scale }, decimals))
    .join('');
}

function placed(
  command: PathCommand,
  across: (value: number) => number,
  down: (value: number) => number,
): PathCommand {
  switch (command.kind) {
    case 'M':
    case 'L':
      return { kind: command.kind, x: across(command.x), y: down(command.y) };
    case 'C':
      return {
        kind: 'C',
        x1: across(command.x1),
        y1: down(command.y1),
        x2: across(command.x2),
        y2: down(command.y2),
        x: across(command.x),
        y: down(command.y),
      };
    case 'Z':
      return command;
  }
}

/** Without points that lie nearer to the one before than can be seen. */
function thinned(points: Ring, finest: number): readonly number[] {
  const kept: number[] = [];
  for (let index = 0; index + 1 < points.length; index += 2) {
    const [x = 0, y = 0] = [points[index], points[index + 1]];
    const [lastX, lastY] = kept.slice(-2);
    if (lastX !== undefined && lastY !== undefined && Math.hypot(x - lastX, y - lastY) < finest) continue;
    kept.push(x, y);
  }
  return kept.length < 6 ? [] : kept;
}

function ringPath(points: readonly number[], { x, y, scale }: FramePlace, decimals: number): string {
  let d = '';
  const text = (value: number) => number(Number(value.toFixed(decimals)));
  for (let index = 0; index + 1 < points.length; index += 2) {
    d += `${index === 0 ? 'M' : 'L'}${text(x + scale * (points[index] ?? 0))} ${text(y + scale * (points[index + 1] ?? 0))}`;
  }
  return d === '' ? '' : `${d}Z`;
}
