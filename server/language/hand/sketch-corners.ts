import type { Coordinates, Length } from '../../../grammar/index.js';
import { type SketchCorner, sketchCorners, type Spot } from '../../drawing/scene.js';
import { addLine, replace } from '../../findings/edits/edit.js';
import { locate, plainNumber } from '../../plan/problems.js';
import { every } from '../../plan/select.js';
import type { Snapshot } from '../snapshot.js';
import { type Attempt, edits, refusal } from './attempt.js';
import type { HandChange } from './change.js';

type Placed = Extract<HandChange, { kind: 'sketch corner' }>;

/** A corner of the canvas put down elsewhere in the sketch under the drawing. */
export function moveSketchCorner({ tree }: Snapshot, { corner, to, width, height }: Placed): Attempt {
  const sketch = every(tree.nodes, 'sketch').at(-1);
  if (!sketch) return refusal('The plan has no sketch any more.');
  const stated = every(sketch.children, 'corners').at(-1);
  if (!stated) return edits([addLine(sketch, 'corners', allCorners(corner, to, { width, height }))]);
  const place = stated.statement.points[sketchCorners.indexOf(corner)];
  if (!place || !stated.statement.points.every(isInPicture)) {
    return refusal(
      'The corners are given otherwise than in pixels or per cent: mend that, and they can be moved.',
    );
  }
  return edits([
    replace(locate(stated, place.x), along(to.x, place.x.unit, width)),
    replace(locate(stated, place.y), along(to.y, place.y.unit, height)),
  ]);
}

/** `(0%, 0%) (100%, 0%) …`: the sketch's own corners but for one. */
function allCorners(
  moved: SketchCorner,
  to: Spot,
  size: { readonly width: number; readonly height: number },
): string {
  return sketchCorners
    .map((corner) => {
      const own = {
        x: corner.endsWith('left') ? 0 : size.width,
        y: corner.startsWith('upper') ? 0 : size.height,
      };
      const { x, y } = corner === moved ? to : own;
      return `(${along(x, '%', size.width)}, ${along(y, '%', size.height)})`;
    })
    .join(' ');
}

function isInPicture({ x, y }: Coordinates): boolean {
  return [x.unit, y.unit].every((unit) => unit === undefined || unit === '%');
}

/** Pixels as whole ones, or a part of a side that tells one pixel from the next. */
function along(pixels: number, unit: Length['unit'], side: number): string {
  if (unit !== '%') return plainNumber(pixels, 0);
  return `${plainNumber((pixels / side) * 100, side > 1_000 ? 2 : 1)}%`;
}
