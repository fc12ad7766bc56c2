import fc from 'fast-check';

/** A small picture as data, from which the text of a plan is written. Lengths in canvas units; names are numbers. */
export interface Picture {
  readonly width: number;
  readonly height: number;
  readonly divide: readonly string[];
  readonly focus?: Place;
  readonly winBy: readonly string[];
  readonly horizon?: number;
  readonly trend?: 'lighten' | 'darken';
  readonly valueBudget?: readonly [number, number, number];
  readonly colourBudget?: readonly [number, number, number];
  readonly wheel: 'painters' | 'munsell';
  readonly colours: readonly { readonly spec: string; readonly role?: string }[];
  readonly objects: readonly Thing[];
  readonly leads: readonly Lead[];
  /** Indices of objects. */
  readonly path: readonly number[];
  readonly cue?: number;
}

export type Place =
  | { readonly kind: 'crossing'; readonly row: string; readonly column: Column }
  | { readonly kind: 'point'; readonly at: Spot }
  | { readonly kind: 'focus' };

export type Column = 'left' | 'right';
export type Spot = readonly [number, number];

export interface Thing {
  readonly role?: 'dominant' | 'secondary' | 'minor';
  readonly plane: 'background' | 'middle' | 'foreground';
  readonly shape: Shape;
  readonly turn: number;
  readonly repeat?: { readonly times: number; readonly every: Spot };
  readonly value?: number;
  readonly colour?: number;
  readonly edges: string;
  readonly softAgainst?: number;
  readonly detail: string;
}

export type Shape =
  | { readonly form: 'rectangle'; readonly from: Spot; readonly to: Spot }
  | { readonly form: 'ellipse'; readonly size: Spot; readonly at: Spot }
  | { readonly form: 'circle'; readonly size: number; readonly at: Place }
  | { readonly form: 'outline' | 'smooth'; readonly points: readonly Spot[] };

export interface Lead {
  readonly from:
    | { readonly kind: 'edge'; readonly side: 'left' | 'right' | 'top' | 'bottom'; readonly percent: number }
    | { readonly kind: 'corner'; readonly row: 'upper' | 'lower'; readonly column: Column };
  readonly through: readonly Spot[];
  readonly to: Place;
  /** The object along whose edge it runs. */
  readonly along?: number;
}

const COLOURS = [
  '#2f5254',
  '#d9a566',
  '#5b3450',
  '#8f4d2e',
  '#aab8c7',
  '#57632f',
  '#cda83c',
  '#3c5a45',
  '#777',
];
const CANVASES: readonly Spot[] = [
  [80, 60],
  [60, 40],
  [50, 50],
  [40, 60],
];

function maybe<T>(arbitrary: fc.Arbitrary<T>): fc.Arbitrary<T | undefined> {
  return fc.option(arbitrary, { nil: undefined });
}

function spotOn([width, height]: Spot, over = 0.1): fc.Arbitrary<Spot> {
  const along = (side: number): fc.Arbitrary<number> =>
    fc
      .integer({ min: Math.round(-2 * over * side), max: Math.round(2 * (1 + over) * side) })
      .map((n) => n / 2);
  return fc.tuple(along(width), along(height));
}

const place = (canvas: Spot): fc.Arbitrary<Place> =>
  fc.oneof(
    fc.record({
      kind: fc.constant('crossing' as const),
      row: fc.constantFrom('upper', 'lower'),
      column: fc.constantFrom<Column>('left', 'right'),
    }),
    fc.record({ kind: fc.constant('point' as const), at: spotOn(canvas, 0) }),
  );

function shape(canvas: Spot): fc.Arbitrary<Shape> {
  const [width, height] = canvas;
  const size = fc.tuple(fc.integer({ min: 2, max: width / 2 }), fc.integer({ min: 2, max: height / 2 }));
  return fc.oneof(
    fc.record({ form: fc.constant('rectangle' as const), from: spotOn(canvas), to: spotOn(canvas) }),
    fc.record({
      form: fc.constant('rectangle' as const),
      from: fc.constant<Spot>([0, 0]),
      to: fc.integer({ min: 4, max: height }).map((level): Spot => [width, level]),
    }),
    fc.record({ form: fc.constant('ellipse' as const), size, at: spotOn(canvas) }),
    fc.record({
      form: fc.constant('circle' as const),
      size: fc.integer({ min: 2, max: 24 }),
      at: fc.oneof(place(canvas), fc.constant<Place>({ kind: 'focus' })),
    }),
    fc.record({
      form: fc.constantFrom('outline' as const, 'smooth' as const),
      points: fc.array(spotOn(canvas), { minLength: 3, maxLength: 6 }),
    }),
  );
}

function thing(canvas: Spot): fc.Arbitrary<Thing> {
  return fc
    .record({
      role: maybe(
        fc.constantFrom('dominant' as const, 'secondary' as const, 'secondary' as const, 'minor' as const),
      ),
      plane: fc.constantFrom(
        'background' as const,
        'middle' as const,
        'middle' as const,
        'foreground' as const,
      ),
      shape: shape(canvas),
      turn: fc.constantFrom(0, 0, 0, 15, -40),
      repeat: fc.option(
        fc.record({
          times: fc.integer({ min: 2, max: 4 }),
          every: fc.tuple(fc.integer({ min: -12, max: 12 }), fc.integer({ min: -4, max: 8 })),
        }),
        { nil: undefined, freq: 8 },
      ),
      value: maybe(fc.integer({ min: 1, max: 5 })),
      colour: maybe(fc.nat({ max: 3 })),
      edges: fc.constantFrom('hard', 'firm', 'soft', 'lost'),
      softAgainst: maybe(fc.nat({ max: 7 })),
      detail: fc.constantFrom('fine', 'some', 'little'),
    })
    .map(definite) as fc.Arbitrary<Thing>;
}

/** Without the keys that hold nothing. */
function definite<T extends object>(record: T): Partial<T> {
  return Object.fromEntries(Object.entries(record).filter(([, value]) => value !== undefined)) as Partial<T>;
}

function lead(canvas: Spot): fc.Arbitrary<Lead> {
  return fc
    .record({
      from: fc.oneof(
        fc.record({
          kind: fc.constant('edge' as const),
          side: fc.constantFrom('left' as const, 'right' as const, 'top' as const, 'bottom' as const),
          percent: fc.integer({ min: 5, max: 95 }),
        }),
        fc.record({
          kind: fc.constant('corner' as const),
          row: fc.constantFrom('upper' as const, 'lower' as const),
          column: fc.constantFrom<Column>('left', 'right'),
        }),
      ),
      through: fc.array(spotOn(canvas, 0), { maxLength: 2 }),
      to: fc.oneof(
        { weight: 2, arbitrary: fc.constant<Place>({ kind: 'focus' }) },
        { weight: 1, arbitrary: place(canvas) },
      ),
      along: fc.option(fc.nat({ max: 7 }), { nil: undefined, freq: 3 }),
    })
    .map(definite) as fc.Arbitrary<Lead>;
}

const shares = fc.constantFrom<readonly [number, number, number]>(
  [57, 27, 16],
  [30, 40, 30],
  [20, 30, 50],
  [10, 20, 70],
);

/** Rabatment and diagonals have no `upper left` on a square: there they come with a division that has. */
function divisions([width, height]: Spot): fc.Arbitrary<string[]> {
  const crossed = ['golden', 'thirds', 'quarters'];
  return fc
    .subarray([...crossed, 'rabatment', 'diagonals'], { maxLength: 2 })
    .filter(
      (divide) =>
        width !== height || divide.length === 0 || divide.some((system) => crossed.includes(system)),
    );
}

/** No two alike in look and role: of those nothing but name and order says which is meant. */
const palette = fc.uniqueArray(
  fc
    .record({
      spec: fc.constantFrom(...COLOURS),
      role: maybe(fc.constantFrom('dominant', 'complement', 'discord', 'neutral')),
    })
    .map(definite),
  { minLength: 4, maxLength: 4, selector: ({ spec, role }) => `${spec} ${role}` },
) as fc.Arbitrary<Picture['colours']>;

/** Pictures of two to eight objects, with all that rules look at. */
export const picture: fc.Arbitrary<Picture> = fc.constantFrom(...CANVASES).chain((canvas) =>
  fc
    .record({
      width: fc.constant(canvas[0]),
      height: fc.constant(canvas[1]),
      divide: divisions(canvas),
      focus: fc.option(place(canvas), { nil: undefined, freq: 12 }),
      winBy: fc.subarray(['value', 'colour', 'edges', 'detail', 'scale', 'isolation'], { maxLength: 3 }),
      horizon: maybe(fc.integer({ min: 4, max: canvas[1] - 4 })),
      trend: maybe(fc.constantFrom('lighten' as const, 'darken' as const)),
      valueBudget: maybe(shares),
      colourBudget: maybe(shares),
      wheel: fc.constantFrom('painters' as const, 'munsell' as const),
      colours: palette,
      objects: fc.array(thing(canvas), { minLength: 2, maxLength: 8 }),
      leads: fc.array(lead(canvas), { maxLength: 4 }),
      path: fc.uniqueArray(fc.nat({ max: 7 }), { maxLength: 4 }),
      cue: maybe(fc.nat({ max: 7 })),
    })
    .map((drawn) => placed(definite(drawn) as Picture)),
);

/** Without a focal point, what would lie at it lies in the middle. */
function placed(picture: Picture): Picture {
  if (picture.focus) return picture;
  const middle: Place = { kind: 'point', at: [picture.width / 2, picture.height / 2] };
  const there = (place: Place): Place => (place.kind === 'focus' ? middle : place);
  return {
    ...picture,
    objects: picture.objects.map((thing) => ({
      ...thing,
      shape: thing.shape.form === 'circle' ? { ...thing.shape, at: there(thing.shape.at) } : thing.shape,
    })),
    leads: picture.leads.map((each) => ({ ...each, to: there(each.to) })),
  };
}

/** Left and right changed over. */
export function mirrored(picture: Picture): Picture {
  const over = ([x, y]: Spot): Spot => [picture.width - x, y];
  const side = <S extends string>(word: S): S =>
    (word === 'left' ? 'right' : word === 'right' ? 'left' : word) as S;
  const placeOver = (where: Place): Place => {
    switch (where.kind) {
      case 'crossing':
        return { ...where, column: side(where.column) };
      case 'point':
        return { ...where, at: over(where.at) };
      case 'focus':
        return where;
    }
  };
  return {
    ...picture,
    ...(picture.focus ? { focus: placeOver(picture.focus) } : {}),
    objects: picture.objects.map((thing) => ({
      ...thing,
      turn: 0 - thing.turn,
      ...(thing.repeat
        ? { repeat: { ...thing.repeat, every: [-thing.repeat.every[0], thing.repeat.every[1]] } }
        : {}),
      shape: shapeWith(thing.shape, over, placeOver, 1),
    })),
    leads: picture.leads.map((each) => ({
      ...each,
      from:
        each.from.kind === 'corner'
          ? { ...each.from, column: side(each.from.column) }
          : each.from.side === 'top' || each.from.side === 'bottom'
            ? { ...each.from, percent: 100 - each.from.percent }
            : { ...each.from, side: side(each.from.side) },
      through: each.through.map(over),
      to: placeOver(each.to),
    })),
  };
}

/** Canvas and all lengths times a factor. */
export function scaled(picture: Picture, factor: number): Picture {
  const times = ([x, y]: Spot): Spot => [x * factor, y * factor];
  const placeTimes = (where: Place): Place =>
    where.kind === 'point' ? { ...where, at: times(where.at) } : where;
  return {
    ...picture,
    width: picture.width * factor,
    height: picture.height * factor,
    ...(picture.focus ? { focus: placeTimes(picture.focus) } : {}),
    ...(picture.horizon === undefined ? {} : { horizon: picture.horizon * factor }),
    objects: picture.objects.map((thing) => ({
      ...thing,
      ...(thing.repeat ? { repeat: { ...thing.repeat, every: times(thing.repeat.every) } } : {}),
      shape: shapeWith(thing.shape, times, placeTimes, factor),
    })),
    leads: picture.leads.map((each) => ({
      ...each,
      through: each.through.map(times),
      to: placeTimes(each.to),
    })),
  };
}

function shapeWith(
  shape: Shape,
  spot: (at: Spot) => Spot,
  place: (at: Place) => Place,
  factor: number,
): Shape {
  switch (shape.form) {
    case 'rectangle':
      return { ...shape, from: spot(shape.from), to: spot(shape.to) };
    case 'ellipse':
      return { ...shape, size: [shape.size[0] * factor, shape.size[1] * factor], at: spot(shape.at) };
    case 'circle':
      return { ...shape, size: shape.size * factor, at: place(shape.at) };
    case 'outline':
    case 'smooth':
      return { ...shape, points: shape.points.map(spot) };
  }
}
