import type { Colour } from '../../plan/colour/colour.js';
import type { PlanObject } from '../../plan/plan.js';
import {
  constructionBoxes,
  divisionMarks,
  focusMarks,
  horizonMarks,
  leadMarks,
} from '../picture/construction.js';
import { pathMark } from '../marks.js';
import { rectanglePath } from '../path-data.js';
import { hexOf, lineOn, mix } from '../picture/ink.js';
import { nameMarks } from '../picture/names.js';
import {
  type PictureMarks,
  type Reading,
  glazedPaintOf,
  isUnplanned,
  paintOf,
  seenObjects,
} from './reading.js';
import type { Stroke, Weight } from '../scene.js';
import { statedGridLines, statedGridNames } from '../transfer/stated-grid.js';
import { shapeMarks } from '../picture/shapes.js';

/** Colours are laid over the ground this thin, so that the line rules the drawing. */
const WASH = 0.42;

/** The plan as a line drawing on its ground, tinted, with the division, the leads and the names. */
export function drawDrawing(reading: Reading): PictureMarks {
  const ground = reading.plan.canvas.ground.colour;
  const line = hexOf(lineOn(ground));
  const hatch = hexOf(mix(ground, lineOn(ground), 0.55));
  const washed = (colour: Colour) => washedOver(ground, colour);
  const wash = (object: PlanObject | undefined) =>
    object === undefined || isUnplanned(object)
      ? ground
      : washed(glazedPaintOf(object, reading) ?? paintOf(object, reading.plan));
  const shapes = shapeMarks(reading, hexOf(ground), (object) => {
    const glazed = glazedPaintOf(object, reading);
    return {
      fill: hexOf(isUnplanned(object) ? ground : washed(paintOf(object, reading.plan))),
      stroke: outlineStroke(object, line),
      hatch,
      ...(glazed === undefined ? {} : { glaze: hexOf(washed(glazed)) }),
    };
  });
  const clear = constructionBoxes(reading);
  const names = nameMarks(
    reading,
    seenObjects(reading),
    {
      view: 'drawing',
      text: ({ name }) => name,
      face: ({ role }) => (role === 'dominant' ? 'strong' : 'text'),
      tone: wash,
    },
    clear,
  );
  return {
    shapes,
    construction: [
      pathMark('edge', rectanglePath(reading.picture), { stroke: { ink: line, weight: 'fine' } }),
      ...divisionMarks(reading),
      ...statedGridLines(reading, hexOf(mix(ground, lineOn(ground), 0.4))),
      ...horizonMarks(reading),
      ...leadMarks(reading, ground),
      ...focusMarks(reading, wash),
    ],
    ...names,
    names: [...statedGridNames(reading), ...names.names],
    taken: [...names.taken, ...clear.kept, ...clear.spared],
  };
}

const washes = new WeakMap<Colour, { readonly ground: Colour; readonly washed: Colour }>();

/** The same one for a colour as long as the ground is the same. */
function washedOver(ground: Colour, colour: Colour): Colour {
  const known = washes.get(colour);
  if (known?.ground === ground) return known.washed;
  const washed = mix(ground, colour, WASH);
  washes.set(colour, { ground, washed });
  return washed;
}

const ROLE_WEIGHT = { dominant: 'heavy', secondary: 'medium', minor: 'fine' } as const;
const LIGHTER: Readonly<Record<(typeof ROLE_WEIGHT)[keyof typeof ROLE_WEIGHT], Weight>> = {
  heavy: 'medium',
  medium: 'fine',
  fine: 'hair',
};

/** The more an object matters the heavier its line; a soft edge is drawn lighter, a lost one dotted. */
function outlineStroke({ role, edges }: PlanObject, ink: Stroke['ink']): Stroke {
  const weight = ROLE_WEIGHT[role ?? 'minor'];
  switch (edges) {
    case 'hard':
    case 'firm':
      return { ink, weight };
    case 'soft':
      return { ink, weight: LIGHTER[weight] };
    case 'lost':
      return { ink, weight: LIGHTER[weight], dash: 'dotted' };
  }
}
