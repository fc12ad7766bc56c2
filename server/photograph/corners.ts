import { marked } from '../../grammar/marked.js';
import { reasonOf } from '../../grammar/reason.js';
import type { NoPhotograph, Squaring } from '../measure/photograph/photographs.js';
import type { Corners } from '../plan/geometry/homography.js';
import { type Point, cross, toward } from '../plan/geometry/point.js';
import { pixelAt } from '../plan/picture-places.js';
import type { Size } from './orientation.js';

export type CornersAnswer = { readonly ok: true; readonly corners: Corners } | NoPhotograph;

const names = [marked('upper left'), marked('upper right'), marked('lower right'), marked('lower left')];
/** A corner may lie beside the photograph by this part of its longer side; what is seen at the edge is taken there. */
const BESIDE = 0.02;
/** The shortest side that a canvas may have, in pixels. */
const SHORTEST = 24;
/** Sine of the flattest angle at a corner: about 6 degrees. */
const FLATTEST = 0.1;

/**
 * The corners of the canvas in the upright photograph, in its pixels: its own where none are given. Refused in words
 * are those that are not four, lie beside the photograph, do not go round a canvas, or leave too little of one.
 * @param size of the upright photograph
 */
export function cornersIn({ corners }: Pick<Squaring, 'corners'>, size: Size): CornersAnswer {
  const { width, height } = size;
  if (corners.length === 0) return { ok: true, corners: ownCorners(size) };
  const [p0, p1, p2, p3, ...more] = corners.map((place) => pixelAt(place, size));
  if (!p0 || !p1 || !p2 || !p3 || more.length > 0)
    return refuse(reasonOf(marked('A canvas has four corners; `corners` gives {0}.'), corners.length));
  const round: Corners = [p0, p1, p2, p3];

  const beside = round.findIndex((corner) => liesBeside(corner, size));
  if (beside >= 0)
    return refuse(
      reasonOf(
        marked('The {0} corner lies outside the photograph, which is {1} × {2} pixels.'),
        reasonOf(names[beside] ?? ''),
        width,
        height,
      ),
    );

  const sides = round.map((corner, index) => toward(corner, round[(index + 1) % 4] ?? corner));
  const lengths = sides.map(({ x, y }) => Math.hypot(x, y));
  const shortest = Math.min(...lengths);
  if (shortest < SHORTEST)
    return refuse(
      reasonOf(
        marked(
          'One side of the canvas is only {0} pixels long in this photograph; it takes {1} at the least. Look at `corners`, or take the photograph from nearer.',
        ),
        Math.round(shortest),
        SHORTEST,
      ),
    );

  const turns = sides.map((side, index) => {
    const next = (index + 1) % 4;
    return cross(side, sides[next] ?? side) / ((lengths[index] ?? 1) * (lengths[next] ?? 1));
  });
  if (turns.every((turn) => turn < 0))
    return refuse(
      marked(
        'The corners go round the wrong way. Give them as upper left, upper right, lower right, lower left, as the photograph is seen.',
      ),
    );
  if (turns.some((turn) => turn <= 0))
    return refuse(
      marked(
        'The corners do not go round a canvas. Give them as upper left, upper right, lower right, lower left, as the photograph is seen.',
      ),
    );
  if (turns.some((turn) => turn < FLATTEST))
    return refuse(
      marked(
        'The canvas is seen too much from the side to be measured. Look at `corners`, or take the photograph from before the canvas.',
      ),
    );
  return { ok: true, corners: round };
}

export function ownCorners({ width, height }: Size): Corners {
  return [
    { x: 0, y: 0 },
    { x: width, y: 0 },
    { x: width, y: height },
    { x: 0, y: height },
  ];
}

function liesBeside({ x, y }: Point, { width, height }: Size): boolean {
  const most = BESIDE * Math.max(width, height);
  return !(x >= -most && x <= width + most && y >= -most && y <= height + most);
}

function refuse(reason: NoPhotograph['reason']): NoPhotograph {
  return { ok: false, reason };
}
