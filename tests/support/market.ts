/** Numbers from 0 to 1, always the same: Lehmer's generator with the figures of Park and Miller 1988. */
function randomNumbers(): () => number {
  let state = 7919;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}

const HEAD = `plan "Market on the square"
concept "Everybody shouts, one woman listens."
mood loud, late, low sun
cue "a bell behind the houses" carried by tower
cue "ripe plums" carried by plums-0
avoid "a crowd as wallpaper"
canvas 120 x 80 cm
  ground #cdbb9a dominant
divide thirds, golden
focus lower right of golden
  win by value, colour
scale 7
  group dark 1-2, middle 3-5, light 6-7
  planes lighten with distance
budget value dark 20%, middle 50%, light 30% within 6%
budget colour dominant 70%, complement 20%, discord 10% within 6%
colour sand #c9ae83 dominant
colour brick #a1664a dominant
colour shade #5d4a40 dominant
colour linen #e8dcc4 dominant
colour cobalt #33558f complement
colour slate #6c7f99 complement
colour plum #5b2a4d discord
colour leaf #66803a discord
`;

const BACKGROUND = `object sky
  plane background
  shape rectangle (0, 0) to (120, 24)
  colour slate
  value 6
  edges lost
object square
  plane background
  shape rectangle (0, 22) to (120, 80)
  colour sand
  value 5
  edges soft
object tower, secondary
  plane background
  shape outline (83, 26) (83, 8) (86, 3) (89, 8) (89, 26)
  colour brick
  value 5
object clock
  plane background
  shape circle 3 at (86, 11)
  colour linen
  value 7
object houses
  plane background
  shape outline (-1, 26) (-1, 12) (10, 10) (19, 14) (30, 9) (42, 13) (55, 11) (66, 14) (78, 10) (95, 13) (108, 9) (121, 12) (121, 26)
  colour brick
  value 4
  edges soft
object listener, dominant
  plane foreground
  shape smooth (76, 42) (78.6, 46) (79.4, 56) (78, 62) (73, 62) (71.6, 56) (72.6, 46)
  colour cobalt
  value 1
  edges hard
  detail fine
object scarf
  plane foreground
  shape smooth (73, 43) (75.6, 41) (78.4, 43) (77, 46) (74, 46)
  colour linen
  value 7
  edges hard
`;

const TAIL = `lead cobbles from left edge at 80% through (40, 58) to focus
lead eaves along top edge of houses from left edge to tower
lead gutter from bottom edge at 70% to focus
path tower, clock, listener
allow even count because "a market counts nobody"
`;

/**
 * A lively plan with so many objects (twenty or more), always the same: a market of stalls with awnings, goods, sellers
 * and their shadows on three planes. The more stalls there are the smaller is each, so that every object lies over as
 * many others whatever the number.
 */
export function marketPlan(objects: number): string {
  const random = randomNumbers();
  const own = BACKGROUND.split('\nobject ').length;
  const stalls = Math.ceil((objects - own) / PARTS.length);
  const across = Math.max(1, Math.round(Math.sqrt((stalls * 120) / 56)));
  const down = Math.ceil(stalls / across);
  const blocks = Array.from({ length: stalls }, (_, index) => {
    const row = Math.floor(index / across);
    const width = 120 / across;
    const height = 56 / down;
    const place: Stall = {
      name: String(index),
      plane: row < down / 3 ? 'background' : row < (2 * down) / 3 ? 'middle' : 'foreground',
      x: ((index % across) + 0.15 + 0.3 * random()) * width,
      y: 23 + (row + 0.1 + 0.3 * random()) * height,
      width,
      height,
      pick: (list) => list[Math.floor(random() * list.length)] ?? '',
    };
    return PARTS.map((part) => part(place));
  }).flat();
  return HEAD + BACKGROUND + blocks.slice(0, objects - own).join('') + TAIL;
}

interface Stall {
  readonly name: string;
  readonly plane: string;
  /** Its upper left corner and the place it has, cm. */
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly pick: (list: readonly string[]) => string;
}

const PARTS: readonly ((stall: Stall) => string)[] = [
  (stall) => `object shadow-${stall.name}
  plane ${stall.plane}
  shape ellipse ${cm(stall.width)} x ${cm(0.3 * stall.height)} at ${at(stall, 0.45, 0.85)}
  colour ${stall.pick(['shade', 'sand'])}
  value ${stall.pick(['3', '4'])}
  edges ${stall.pick(['lost', 'soft'])}
`,
  (stall) => `object table-${stall.name}
  plane ${stall.plane}
  shape rectangle ${at(stall, 0.05, 0.5)} to ${at(stall, 0.75, 0.85)}
  colour ${stall.pick(['brick', 'sand', 'linen'])}
  value ${stall.pick(['3', '4', '6'])}
`,
  (stall) => `object awning-${stall.name}, secondary
  plane ${stall.plane}
  shape outline ${at(stall, 0, 0.2)} ${at(stall, 0.1, 0)} ${at(stall, 0.7, 0)} ${at(stall, 0.85, 0.22)} ${at(stall, 0.4, 0.28)}
  colour ${stall.pick(['linen', 'cobalt', 'slate', 'brick'])}
  value ${stall.pick(['5', '6', '7', '3'])}
  edges ${stall.pick(['firm', 'hard', 'soft'])}
`,
  (stall) => `object seller-${stall.name}
  plane ${stall.plane}
  shape smooth ${at(stall, 0.6, 0.3)} ${at(stall, 0.72, 0.45)} ${at(stall, 0.75, 0.9)} ${at(stall, 0.55, 0.95)} ${at(stall, 0.5, 0.42)}
  colour ${stall.pick(['shade', 'slate', 'leaf', 'cobalt'])}
  value ${stall.pick(['1', '2', '3', '4'])}
`,
  (stall) => `object hat-${stall.name}
  plane ${stall.plane}
  shape ellipse ${cm(0.2 * stall.width)} x ${cm(0.12 * stall.height)}
  at top of seller-${stall.name}
  colour ${stall.pick(['linen', 'sand', 'plum'])}
  value ${stall.pick(['7', '6', '2'])}
`,
  (stall) => `object plums-${stall.name}
  plane ${stall.plane}
  shape circle ${cm(0.12 * Math.min(stall.width, stall.height))} at ${at(stall, 0.15, 0.5)}
  repeat ${stall.pick(['3', '4', '5'])} every (${cm(0.11 * stall.width)}, 0)
  colour ${stall.pick(['plum', 'leaf', 'brick'])}
  value ${stall.pick(['2', '4'])}
  detail ${stall.pick(['little', 'fine'])}
`,
];

function at({ x, y, width, height }: Stall, right: number, below: number): string {
  return `(${cm(x + right * width)}, ${cm(y + below * height)})`;
}

function cm(length: number): string {
  return String(Math.round(length * 1000) / 1000);
}
