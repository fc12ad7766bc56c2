import { type Colour, computedColour } from '../../plan/colour/model.js';
import type { Point } from '../../plan/geometry/point.js';
import { pathMark } from '../marks.js';
import { circlePath, polygonPath } from '../path-data.js';
import { accentOn, beddingOn, hexOf, lineOn } from '../picture/ink.js';
import type { Box, Mark } from '../scene.js';
import type { Reading } from '../views/reading.js';

/** The planned focal point, as it is drawn in the other views. */
export function focusRing({ plan, layout: { em } }: Reading, key: string, box: Box): readonly Mark[] {
  const { focus, canvas } = plan;
  if (focus === undefined) return [];
  const scale = box.width / canvas.width;
  const at = { x: box.x + focus.at.x * scale, y: box.y + focus.at.y * scale };
  return focusSign(`${key}:focus`, at, 0.55 * em);
}

export function focusSign(key: string, at: Point, radius: number): readonly Mark[] {
  const dark = computedColour([20, 0, 0]);
  const ring = circlePath(at, radius);
  return [
    pathMark(`${key}:bedding`, ring, {
      stroke: { ink: hexOf(beddingOn(computedColour([90, 0, 0]))), weight: 'heavy' },
      subject: 'focus',
    }),
    pathMark(key, ring, {
      stroke: { ink: hexOf(accentOn(dark)), weight: 'medium' },
      subject: 'focus',
      tip: 'Focal point, as planned.',
    }),
  ];
}

/** A lozenge where the photograph draws the eye most. */
export function strongestMarks(key: string, { x, y }: Point, em: number, on: Colour): readonly Mark[] {
  const half = 0.68 * em;
  const lozenge = polygonPath([
    { x, y: y - half },
    { x: x + half, y },
    { x, y: y + half },
    { x: x - half, y },
  ]);
  return [
    pathMark(`${key}:bedding`, lozenge, { stroke: { ink: hexOf(beddingOn(on)), weight: 'bold' } }),
    pathMark(key, lozenge, {
      stroke: { ink: hexOf(lineOn(on)), weight: 'medium' },
      tip: 'Strongest emphasis in the photograph.',
    }),
  ];
}
