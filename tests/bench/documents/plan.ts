import { Chance } from './chance.js';
import { shapeLines } from './shapes.js';

/** A plan as painters write them, made by chance. */
export interface MadePlan {
  readonly text: string;
  readonly objects: number;
}

/** Lines that a picture takes before its first object. */
const head = (name: string): readonly string[] => [
  '// Sketched on the spot; the rest is from memory.',
  `plan    "${name}"`,
  '',
  'concept "Everything leans towards the one warm window."',
  'mood    quiet, a little cold, about to snow',
  'cue     "bread, and wet wool" carried by thing1, thing2',
  'cue     "a dog two streets away" carried by thing3',
  'avoid   "a postcard"',
  '',
  'canvas  80 x 60 cm',
  '  support linen, oil ground',
  '  ground  #8a7a66, complement',
  '  medium  oil',
  '',
  'divide  golden',
  'focus   upper right',
  '  win by  value, edges, detail',
  '',
  'scale   5',
  '  group   dark 1-2, middle 3, light 4-5',
  '  planes  lighten with distance',
  '',
  'budget  value dark 30%, middle 45%, light 25% within 8%',
  'budget  colour dominant 60%, complement 28%, discord 12% within 8%',
  '',
  'colour  slate #44525e dominant',
  'colour  mist #9fb0bb dominant  // what the air makes of the far houses',
  'colour  brick #8a4b32 complement',
  'colour  straw #d9b46a complement',
  'colour  moss #5d6b3a discord',
  'colour  chalk #e9e2d3 complement',
];

const tail: readonly string[] = [
  '',
  'lead    lane from lower left corner through (24, 48) (38, 36) to focus',
  'lead    wire along thing2 from top edge at 12% to focus',
  '',
  'path    thing1, thing3, thing2',
];

/** Lines of a plan that no object takes. */
export const linesAround = head('').length + tail.length;

/** Fewest lines of an object: its name, a shape and a colour. */
const FEWEST = 3;

/**
 * A plan of so many lines and objects. The objects stand in rows and columns, each a little larger than its place, so
 * that as many overlap in a large plan as in a small one.
 *
 * @throws where the lines do not suffice for the objects, or the objects for the lines
 */
export function planOf(lines: number, objects: number, seed = 1): MadePlan {
  const chance = new Chance(seed);
  const room = lines - linesAround;
  const columns = Math.ceil(Math.sqrt((objects * 4) / 3));
  const rows = Math.ceil(objects / columns);
  const body = Array.from({ length: objects }, (_, index) => {
    const size = Math.floor(((index + 1) * room) / objects) - Math.floor((index * room) / objects);
    const width = 80 / columns;
    const height = 60 / rows;
    const at = { x: ((index % columns) + 0.5) * width, y: (Math.floor(index / columns) + 0.5) * height };
    return objectLines(
      `thing${index + 1}`,
      index,
      size,
      { at, width: width * 1.3, height: height * 1.3 },
      chance,
    );
  }).flat();
  const all = [...head(`Street ${seed}`), ...body, ...tail];
  if (all.length !== lines) throw new Error(`${lines} lines do not go with ${objects} objects`);
  return { text: `${all.join('\n')}\n`, objects };
}

/** A plan of so many lines with as many objects as examples of that length have. */
export function planOfLines(lines: number, seed = 1): MadePlan {
  return planOf(lines, Math.round((lines - linesAround) / 6), seed);
}

interface Place {
  readonly at: { readonly x: number; readonly y: number };
  readonly width: number;
  readonly height: number;
}

function objectLines(
  name: string,
  index: number,
  size: number,
  place: Place,
  chance: Chance,
): readonly string[] {
  if (size < FEWEST) throw new Error('an object takes three lines');
  const role = index === 1 ? ', dominant' : index % 40 === 5 ? ', secondary' : '';
  const plane = index < 3 ? 'background' : chance.of(['middle', 'foreground']);
  const optional = [
    `  value   ${chance.whole(1, 5)}`,
    `  edges   ${chance.of(['hard', 'firm', 'soft', 'lost'])}`,
    `  plane   ${plane}`,
    `  detail  ${chance.of(['fine', 'some', 'little'])}`,
    `  note    "Wet into wet, ${chance.whole(2, 40)} strokes at most."`,
  ];
  const [blank, extra] = size > FEWEST ? [[''], size - FEWEST - 1] : [[], 0];
  const continued = Math.max(0, extra - optional.length);
  return [
    ...blank,
    `object  ${name}${role}`,
    ...shapeLines(place, continued, chance),
    `  colour  ${chance.of(['slate', 'mist', 'brick', 'straw', 'moss', 'chalk'])}`,
    ...optional.slice(0, extra),
  ];
}
