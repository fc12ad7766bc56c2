/** How a case writes its places and lengths, so that it can be read as it is, in a mirror, or larger. */
export interface Writing {
  /** `(12, 30)` */
  readonly at: (x: number, y: number) => string;
  readonly length: (length: number) => string;
  /** Across the canvas. */
  readonly percent: (percent: number) => string;
  readonly side: (side: 'left' | 'right') => string;
  /** Degrees clockwise, or a step across: what runs the other way in a mirror. */
  readonly turned: (figure: number) => string;
}

/** A small picture that once was, or might be, measured otherwise in a mirror or at another size. */
export interface Case {
  readonly name: string;
  readonly width: number;
  readonly text: (writing: Writing) => string;
}

function number(figure: number): string {
  return String(Number(figure.toFixed(6)));
}

export function timesAsLarge(factor: number): Writing {
  const length = (figure: number): string => number(figure * factor);
  return {
    at: (x, y) => `(${length(x)}, ${length(y)})`,
    length,
    percent: (percent) => `${percent}%`,
    side: (side) => side,
    turned: length,
  };
}

export const asItIs = timesAsLarge(1);

export function inMirror({ width }: Pick<Case, 'width'>): Writing {
  return {
    ...asItIs,
    at: (x, y) => asItIs.at(width - x, y),
    percent: (percent) => `${100 - percent}%`,
    side: (side) => (side === 'left' ? 'right' : 'left'),
    turned: (figure) => number(-figure),
  };
}

export const CASES: readonly Case[] = [
  {
    name: 'a long dominant object with the focal point at one end and a thing just at the limit of what is one with it',
    width: 80,
    text: ({ at, length }) => `canvas ${length(80)} x ${length(60)} cm
focus ${at(20.3, 30)}
  win by edges, value
object table, dominant
  shape outline ${at(18.3, 23)} ${at(66.3, 23)} ${at(66.3, 37)} ${at(18.3, 37)}
  value 4
object cup
  shape ellipse ${length(4)} x ${length(4)} at ${at(45.3, 30)}
  value 1
  edges hard
object lamp, secondary
  shape ellipse ${length(5)} x ${length(5)} at ${at(62.3, 30)}
  value 5
  edges hard`,
  },
  {
    name: 'shapes one above the other on an upright edge',
    width: 40,
    text: ({ at, length }) => `canvas ${length(40)} x ${length(60)} cm
object flags
  shape outline ${at(0, 1)} ${at(0, 7)} ${at(0.5, 7.5)}
  repeat 2 every (0, ${length(6)})
object ball
  shape ellipse ${length(2)} x ${length(2)} at ${at(0, 0)}`,
  },
  {
    name: 'a ground that a tip on the lower edge parts in two',
    width: 60,
    text: ({ at, length }) => `canvas ${length(60)} x ${length(40)} cm
  ground #b9a17c
object blade
  shape outline ${at(52, 40.5)} ${at(1, 32.5)} ${at(29, 40)} ${at(39.5, 5)}
object wall
  shape rectangle ${at(0, 0)} to ${at(60, 28)}`,
  },
  {
    name: 'blades that touch along about a hair',
    width: 50,
    text: ({ at, length, turned }) => `canvas ${length(50)} x ${length(50)} cm
  ground #b9a17c
object blades
  shape outline ${at(48, 37)} ${at(15, 21)} ${at(-2.5, 34)} ${at(13, 21)}
  repeat 3 every (${turned(1)}, ${length(2)})
  value 1
object slope
  shape outline ${at(-3.5, 39.5)} ${at(6, 54.5)} ${at(47, 48.5)}
  value 1`,
  },
  {
    name: 'a lead along ellipses, whose points stray alike from a straight line',
    width: 40,
    text: ({ at, length, percent, turned }) => `canvas ${length(40)} x ${length(60)} cm
focus ${at(24.72136, 22.918)}
object posts
  shape ellipse ${length(2)} x ${length(28)} at ${at(15.5, 14)}
  repeat 3 every (${turned(-10)}, ${length(6)})
lead rail along posts from top edge at ${percent(63)} to focus`,
  },
  {
    name: 'a lead round the focal point, as near from everywhere',
    width: 40,
    text: ({ at, length, percent }) => `canvas ${length(40)} x ${length(60)} cm
focus ${at(2, 1)}
object moon
  shape circle ${length(20)} at focus
lead rim along moon from top edge at ${percent(5)} to focus`,
  },
  {
    name: 'a lead that may set out over either edge of a corner',
    width: 50,
    text: ({ at, length, side, turned }) => `canvas ${length(50)} x ${length(50)} cm
focus ${at(30.9, 30.9)}
object boards
  shape rectangle ${at(2, 11.5)} to ${at(-0.5, -0.5)}
  repeat 2 every (${turned(3)}, ${length(-3)})
lead edge along boards from upper ${side('left')} corner to focus`,
  },
  {
    name: 'a lead that passes the focal point at two places as near',
    width: 50,
    text: ({ at, length, side }) => `canvas ${length(50)} x ${length(50)} cm
divide thirds
focus lower ${side('right')}
object beam
  shape rectangle ${at(0, 0)} to ${at(50, 5)}
lead edge along beam from upper ${side('right')} corner to ${at(1, 8)}`,
  },
  {
    name: 'a disc two parts in a hundred from two edges',
    width: 80,
    text: ({ at, length }) => `canvas ${length(80)} x ${length(60)} cm
object disc
  shape circle ${length(8)} at ${at(2, 58)}`,
  },
  {
    name: 'a rim that ends two parts in a hundred from a corner',
    width: 80,
    text: ({ at, length, turned }) => `canvas ${length(80)} x ${length(60)} cm
object rims
  shape ellipse ${length(19)} x ${length(19)} at ${at(15, 1)}
  repeat 2 every (${turned(-4)}, ${length(1)})`,
  },
];
