import type { Colour } from '../../plan/colour/colour.js';
import type { PlanObject } from '../../plan/plan.js';
import { hexOf, lineOn } from './ink.js';
import { pathMark, textMark } from '../marks.js';
import { circlePath, linePath } from '../path-data.js';
import type { Leader, Room } from './name-place.js';
import { type Placed, type PlacedNames, type Wanted, placeNames } from './place-names.js';
import type { Reading, SeenObject } from '../views/reading.js';
import type { Box, Face, Hex, Mark, PictureView } from '../scene.js';

/** How a view names its objects. */
export interface NameStyle {
  /** Each view keeps its own places: others name other things, in other words. */
  readonly view: PictureView;
  readonly text: (object: PlanObject) => string;
  readonly face?: (object: PlanObject) => Face;
  /** What is seen at an object, or of the bare ground, so that letters can stand out from it. */
  readonly tone: (object: PlanObject | undefined) => Colour;
  /** A sign before the text, with its middle at a place. */
  readonly sign?: (
    object: PlanObject,
    subject: string,
    at: { readonly x: number; readonly y: number },
    inks: { readonly ink: Hex; readonly ground: Hex },
  ) => readonly Mark[];
}

export interface NamesDrawn {
  readonly names: readonly Mark[];
  readonly taken: readonly Box[];
  /** How many seen objects got no name for want of room. */
  readonly leftOut: number;
}

const NAME_SIZE_EMS = 0.88;

/** Names on the seen objects, which come in the order in which they choose their places. */
export function nameMarks(
  reading: Reading,
  objects: readonly SeenObject[],
  style: NameStyle,
  clear: { readonly kept: readonly Box[]; readonly spared: readonly Box[] },
): NamesDrawn {
  const size = NAME_SIZE_EMS * reading.layout.em;
  const wanted = objects.map(({ object, rings }) => {
    const signed = style.sign !== undefined && object.colour?.role !== undefined;
    return {
      text: style.text(object),
      owner: object.index,
      rings,
      before: signed ? size : 0,
      bold: style.face?.(object) === 'strong',
    };
  });
  const room = { map: reading.cells, picture: reading.picture, size, ...clear };
  const { placed } = reading.memory.recall<PlacedNames>(
    'names',
    style.view,
    placesHangOn(wanted, room),
    (last) => placeNames(wanted, room, last),
  );
  const names = placed.flatMap((name) => {
    const seen = objects[name.index];
    if (seen === undefined) return [];
    const under = style.tone(name.on === undefined ? undefined : reading.plan.objects[name.on]);
    return marksOf(name, seen, style, under, size);
  });
  return { names, taken: placed.map(({ box }) => box), leftOut: objects.length - placed.length };
}

/** All that the places of names hang on, one by one. */
function placesHangOn(
  wanted: readonly Wanted[],
  { map, picture, size, kept, spared }: Room,
): readonly unknown[] {
  const inputs: unknown[] = [map, size, kept.length, spared.length];
  for (const { x, y, width, height } of [picture, ...kept, ...spared]) inputs.push(x, y, width, height);
  for (const { text, owner, rings, before, bold } of wanted) inputs.push(text, owner, rings, before, bold);
  return inputs;
}

function marksOf(
  name: Placed,
  seen: SeenObject,
  style: NameStyle,
  under: Colour,
  size: number,
): readonly Mark[] {
  const { object, subject } = seen;
  const ink = hexOf(lineOn(under));
  const halo = hexOf(under);
  const { box, leader } = name;
  const middle = { x: box.x + 0.42 * size, y: box.y + box.height / 2 };
  return [
    ...(leader === undefined ? [] : leaderMarks(leader, subject, under, style.tone(object), size)),
    ...(style.sign?.(object, subject, middle, { ink, ground: halo }) ?? []),
    textMark(`${subject}:name`, name.text, name.x, name.y, {
      size,
      ink,
      halo,
      face: style.face?.(object) ?? 'text',
      subject,
    }),
  ];
}

function leaderMarks(
  { from, to }: Leader,
  subject: string,
  under: Colour,
  own: Colour,
  size: number,
): readonly Mark[] {
  const line = linePath([from, to]);
  return [
    pathMark(`${subject}:leader:bedding`, line, { stroke: { ink: hexOf(under), weight: 'medium' }, subject }),
    pathMark(`${subject}:leader`, line, { stroke: { ink: hexOf(lineOn(under)), weight: 'hair' }, subject }),
    pathMark(`${subject}:leader:end`, circlePath(to, 0.11 * size), {
      fill: hexOf(lineOn(own)),
      stroke: { ink: hexOf(own), weight: 'hair' },
      subject,
    }),
  ];
}
