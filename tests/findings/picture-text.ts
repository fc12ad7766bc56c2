import type { Lead, Picture, Place, Shape, Spot, Thing } from './pictures.js';

/** How things are called in a text, by their number. */
export interface Names {
  readonly object: (index: number) => string;
  readonly colour: (index: number) => string;
  readonly lead: (index: number) => string;
}

export const usualNames: Names = {
  object: (index) => `jug${index}`,
  colour: (index) => `hue${index}`,
  lead: (index) => `way${index}`,
};

/** Other names, of other lengths and in another order of the alphabet. */
export const otherNames: Names = {
  object: (index) => `x${9 - index}-thing`,
  colour: (index) => `t${9 - index}`,
  lead: (index) => `b${9 - index}-line-in`,
};

/** A text with what each of its lines is about: `object 2`, `lead 0`, `focus`. */
export interface WrittenPicture {
  readonly text: string;
  readonly about: readonly string[];
}

/** Puts lines that may stand in any order into another. */
export type Order = <T>(lines: readonly T[]) => readonly T[];

/** An order that a number stands for. */
export function shuffled(shuffle: number): Order {
  return (lines) =>
    lines
      .map((line, index) => ({ line, key: Math.sin((index + 1) * shuffle) }))
      .sort((one, other) => one.key - other.key)
      .map(({ line }) => line);
}

interface Block {
  readonly about: string;
  readonly head: string;
  readonly lines: readonly string[];
}

/**
 * The plan of a picture. Lines of a block, and blocks among each other, come in `order`; objects keep theirs, for it
 * says what covers what, and so do leads.
 */
export function written(
  picture: Picture,
  names: Names = usualNames,
  order: Order = (lines) => lines,
): WrittenPicture {
  const count = picture.objects.length;
  const object = (index: number): string => names.object(index % count);
  const objects = picture.objects.map((thing, index) => objectBlock(thing, index, names, object));
  const leads = picture.leads.map((lead, index) => leadBlock(lead, index, names, object));
  const head = headBlocks(picture, names, object);
  const rest = keeping(leads, order([...head, ...leads]));
  const half = Math.ceil(rest.length / 2);
  const lines = [...rest.slice(0, half), ...objects, ...rest.slice(half)].flatMap(
    ({ about, head, lines }) => [
      { about, line: head },
      ...order(lines).map((line) => ({ about, line: `  ${line}` })),
    ],
  );
  return { text: lines.map(({ line }) => line).join('\n'), about: lines.map(({ about }) => about) };
}

/** Blocks in another order, with `these` among each other in their own. */
function keeping(these: readonly Block[], blocks: readonly Block[]): readonly Block[] {
  const left = [...these];
  return blocks.map((each) => (these.includes(each) ? (left.shift() ?? each) : each));
}

function headBlocks(picture: Picture, names: Names, object: (index: number) => string): readonly Block[] {
  const { width, height, divide, focus, winBy, horizon, trend, valueBudget, colourBudget, cue, path } =
    picture;
  const stops = [...new Set(path.map(object))];
  return [
    block('canvas', `canvas ${number(width)} x ${number(height)} cm`, ['ground #b9a17c']),
    ...(divide.length > 0 ? [block('divide', `divide ${divide.join(', ')}`)] : []),
    ...(focus
      ? [block('focus', `focus ${placeWords(focus)}`, winBy.length > 0 ? [`win by ${winBy.join(', ')}`] : [])]
      : []),
    ...(horizon === undefined ? [] : [block('horizon', `horizon ${number(horizon)}`)]),
    block('scale', 'scale 5', trend ? [`planes ${trend} with distance`] : []),
    ...(valueBudget
      ? [
          block(
            'value budget',
            `budget value dark ${valueBudget[0]}%, middle ${valueBudget[1]}%, light ${valueBudget[2]}%`,
          ),
        ]
      : []),
    ...(colourBudget
      ? [
          block(
            'colour budget',
            `budget colour dominant ${colourBudget[2]}%, complement ${colourBudget[1]}%, discord ${colourBudget[0]}%`,
          ),
        ]
      : []),
    block('wheel', `wheel ${picture.wheel}`),
    ...picture.colours.map(({ spec, role }, index) =>
      block(`colour ${index}`, `colour ${names.colour(index)} ${spec}${role ? ` ${role}` : ''}`),
    ),
    ...(cue === undefined ? [] : [block('cue', `cue "a sound" carried by ${object(cue)}`)]),
    ...(stops.length > 1 ? [block('path', `path ${stops.join(', ')}`)] : []),
  ];
}

function block(about: string, head: string, lines: readonly string[] = []): Block {
  return { about, head, lines };
}

function objectBlock(thing: Thing, index: number, names: Names, object: (index: number) => string): Block {
  const { role, plane, shape, turn, repeat, value, colour, edges, softAgainst, detail } = thing;
  const against = softAgainst === undefined ? undefined : object(softAgainst);
  return block(`object ${index}`, `object ${names.object(index)}${role ? `, ${role}` : ''}`, [
    `plane ${plane}`,
    `shape ${shapeWords(shape)}`,
    ...(turn === 0 ? [] : [`turn ${turn}`]),
    ...(repeat ? [`repeat ${repeat.times} every ${spotWords(repeat.every)}`] : []),
    ...(value === undefined ? [] : [`value ${value}`]),
    ...(colour === undefined ? [] : [`colour ${names.colour(colour)}`]),
    `edges ${edges}`,
    ...(against === undefined || against === names.object(index) ? [] : [`edges soft against ${against}`]),
    `detail ${detail}`,
  ]);
}

function leadBlock(
  { from, through, to, along }: Lead,
  index: number,
  names: Names,
  object: (index: number) => string,
): Block {
  const start =
    from.kind === 'edge' ? `${from.side} edge at ${from.percent}%` : `${from.row} ${from.column} corner`;
  const words = [
    ...(along === undefined ? [] : [`along ${object(along)}`]),
    `from ${start}`,
    ...(through.length > 0 ? [`through ${through.map(spotWords).join(' ')}`] : []),
    `to ${placeWords(to)}`,
  ];
  return block(`lead ${index}`, `lead ${names.lead(index)} ${words.join(' ')}`);
}

function shapeWords(shape: Shape): string {
  switch (shape.form) {
    case 'rectangle':
      return `rectangle ${spotWords(shape.from)} to ${spotWords(shape.to)}`;
    case 'ellipse':
      return `ellipse ${number(shape.size[0])} x ${number(shape.size[1])} at ${spotWords(shape.at)}`;
    case 'circle':
      return `circle ${number(shape.size)} at ${placeWords(shape.at)}`;
    case 'outline':
    case 'smooth':
      return `${shape.form} ${shape.points.map(spotWords).join(' ')}`;
  }
}

function placeWords(place: Place): string {
  switch (place.kind) {
    case 'crossing':
      return `${place.row} ${place.column}`;
    case 'point':
      return spotWords(place.at);
    case 'focus':
      return 'focus';
  }
}

function spotWords([x, y]: Spot): string {
  return `(${number(x)}, ${number(y)})`;
}

function number(value: number): string {
  return String(Number(value.toFixed(6)));
}
