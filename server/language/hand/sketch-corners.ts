import { type Coordinates, type Length, type Node, t } from '../../../grammar/index.js';
import { type SketchCorner, sketchCorners, type Spot } from '../../drawing/scene.js';
import { addLine, replace } from '../../findings/edits/edit.js';
import { locate, plainNumber } from '../../plan/problems.js';
import { every } from '../../plan/select.js';
import type { Snapshot } from '../snapshot.js';
import { type Attempt, edits, refusal } from './attempt.js';
import type { HandChange } from './change.js';

type Placed = Extract<HandChange, { kind: 'sketch corner' }>;
type Grey = Extract<HandChange, { kind: 'grey patch' }>;

/** A corner of the canvas put down elsewhere in the sketch under the drawing, or in a photograph. */
export function moveSketchCorner(
  snapshot: Snapshot,
  { corner, sitting, to, width, height }: Placed,
): Attempt {
  const picture =
    sitting === undefined
      ? every(snapshot.plan.statements, 'sketch').at(-1)
      : photographOf(snapshot, sitting);
  if (!picture)
    return refusal(sitting === undefined ? t('The plan has no sketch any more.') : noSuchPhotograph());
  const stated = every(picture.children, 'corners').at(-1);
  if (!stated) return edits([addLine(picture, 'corners', allCorners(corner, to, { width, height }))]);
  const place = stated.statement.points[sketchCorners.indexOf(corner)];
  if (!place || !stated.statement.points.every(isInPicture)) {
    return refusal(
      t('The corners are given otherwise than in pixels or per cent: mend that, and they can be moved.'),
    );
  }
  return edits(placed(stated, place, to, { width, height }));
}

/** The neutral grey put down in a photograph. */
export function placeGreyPatch(snapshot: Snapshot, { sitting, to, width, height }: Grey): Attempt {
  const photograph = photographOf(snapshot, sitting);
  if (!photograph) return refusal(noSuchPhotograph());
  const stated = every(photograph.children, 'grey').at(-1);
  if (!stated)
    return edits([addLine(photograph, 'grey', `(${along(to.x, '%', width)}, ${along(to.y, '%', height)})`)]);
  const { at } = stated.statement;
  if (!isInPicture(at))
    return refusal(
      t('The grey patch is given otherwise than in pixels or per cent: mend that, and it can be moved.'),
    );
  return edits(placed(stated, at, to, { width, height }));
}

function noSuchPhotograph(): string {
  return t('The plan has no such photograph any more.');
}

function photographOf({ plan }: Snapshot, sitting: number) {
  const node = plan.sittings[sitting]?.node;
  return node && every(node.children, 'photo').at(-1);
}

function placed(
  node: Node,
  { x, y }: Coordinates,
  to: Spot,
  { width, height }: { readonly width: number; readonly height: number },
) {
  return [
    replace(locate(node, x), along(to.x, x.unit, width)),
    replace(locate(node, y), along(to.y, y.unit, height)),
  ];
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
