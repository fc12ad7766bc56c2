import { pathMark, textMark } from './marks.js';
import { circlePath, linePath } from './path-data.js';
import { type Placed, placeNames } from './place-names.js';
import type { Reading, SeenObject } from './reading.js';
import type { Box, Face, Hex, Mark } from './scene.js';

/** How one object is named in a view. */
export interface NameStyle {
  readonly text: string;
  readonly face?: Face;
  readonly ink: Hex;
  readonly halo: Hex;
  /** A sign before the text: its path data about a place, and how it is filled. */
  readonly sign?: (x: number, y: number) => readonly Mark[];
}

export interface NamesDrawn {
  readonly marks: readonly Mark[];
  readonly taken: readonly Box[];
  /** How many seen objects got no name for want of room. */
  readonly leftOut: number;
}

export const NAME_SIZE_EMS = 0.88;
const SIGN_EMS = 1;

/** Names on the seen objects, which come in the order in which they choose their places. */
export function nameMarks(
  reading: Reading,
  objects: readonly SeenObject[],
  style: (seen: SeenObject) => NameStyle,
  clear: { readonly kept: readonly Box[]; readonly spared: readonly Box[] },
): NamesDrawn {
  const size = NAME_SIZE_EMS * reading.layout.em;
  const styles = objects.map(style);
  const placed = placeNames(
    objects.map(({ rings }, index) => ({
      text: styles[index]?.text ?? '',
      rings,
      before: styles[index]?.sign === undefined ? 0 : SIGN_EMS * size,
    })),
    { grid: reading.grid, picture: reading.picture, size, ...clear },
  );
  const marks = placed.flatMap((name) => {
    const seen = objects[name.index];
    const own = styles[name.index];
    return seen === undefined || own === undefined ? [] : marksOf(name, seen, own, size);
  });
  return { marks, taken: placed.map(({ box }) => box), leftOut: objects.length - placed.length };
}

function marksOf(name: Placed, { subject }: SeenObject, style: NameStyle, size: number): readonly Mark[] {
  const { leader, box } = name;
  const stroke = { ink: style.ink, weight: 'hair' } as const;
  return [
    ...(leader === undefined
      ? []
      : [
          pathMark(`${subject}:leader:bedding`, linePath([leader.from, leader.to]), {
            stroke: { ink: style.halo, weight: 'medium' },
            subject,
          }),
          pathMark(`${subject}:leader`, linePath([leader.from, leader.to]), { stroke, subject }),
          pathMark(`${subject}:leader:end`, circlePath(leader.to, 0.11 * size), {
            fill: style.ink,
            stroke: { ink: style.halo, weight: 'hair' },
            subject,
          }),
        ]),
    ...(style.sign?.(box.x + 0.42 * size, box.y + box.height / 2) ?? []),
    textMark(`${subject}:name`, name.text, name.x, name.y, {
      size,
      ink: style.ink,
      halo: style.halo,
      face: style.face ?? 'text',
      subject,
    }),
  ];
}
