import fc from 'fast-check';
import { views } from '../../../server/drawing/scene.js';
import { campaign } from '../campaign.js';
import { takeTheWholeWay } from '../whole-way.js';

/** Few places, so that borders touch, coincide and meet in corners. */
const lattice = fc.integer({ min: -4, max: 24 }).map((half) => String(half / 2));
const odd = fc.constantFrom(
  '0',
  '-0',
  '0.0000001',
  '1e308',
  '1e-300',
  '9'.repeat(30),
  '9'.repeat(309),
  '-1000000',
  '1/3',
  '0/0',
  '7 1/2',
  '33.3%',
  '100%',
  '-50%',
  '0.00001 mm',
  '99999 m',
  '3 in',
  '5 cm',
  '1.00000000001',
  '0.99999999999',
);
const fine = fc.double({ min: -3, max: 13, noNaN: true }).map((number) => number.toFixed(9));
const number = fc.oneof(
  { weight: 12, arbitrary: lattice },
  { weight: 3, arbitrary: fine },
  { weight: 1, arbitrary: odd },
);
const size = fc.oneof(
  { weight: 6, arbitrary: lattice.map((one) => one.replace('-', '')) },
  { weight: 1, arbitrary: odd },
);
const point = fc.tuple(number, number).map(([x, y]) => `(${x}, ${y})`);
const place = fc.oneof(
  { weight: 6, arbitrary: point },
  {
    weight: 1,
    arbitrary: fc.constantFrom(
      'focus',
      'centre',
      'upper left',
      'top edge of thing0',
      'left side of thing0 at 30%',
    ),
  },
);

/** Points, of which some come again, so that lines run back over themselves. */
const points = fc
  .tuple(fc.array(place, { maxLength: 12 }), fc.array(fc.nat(11), { maxLength: 6 }))
  .map(([own, again]) => [...own, ...again.flatMap((at) => own[at] ?? [])].join(' '));

const letter = fc.constantFrom(...'MLHVCQASTZmlhcaz');
const pathData = fc
  .array(
    fc.tuple(letter, fc.array(fc.oneof(lattice, fine, fc.constantFrom('1e308', '-1e-9')), { maxLength: 7 })),
    {
      maxLength: 8,
    },
  )
  .map((parts) => `M 0 0 ${parts.map(([sign, numbers]) => `${sign} ${numbers.join(' ')}`).join(' ')}`);

const shape = fc.oneof(
  { weight: 4, arbitrary: points.map((some) => `outline ${some}`) },
  { weight: 3, arbitrary: points.map((some) => `smooth ${some}`) },
  { weight: 2, arbitrary: fc.tuple(point, point).map(([a, b]) => `rectangle ${a} to ${b}`) },
  {
    weight: 2,
    arbitrary: fc
      .tuple(fc.constantFrom('rectangle', 'ellipse'), size, size, place)
      .map(([form, width, height, at]) => `${form} ${width} x ${height} at ${at}`),
  },
  { weight: 1, arbitrary: fc.tuple(size, place).map(([across, at]) => `circle ${across} at ${at}`) },
  { weight: 2, arbitrary: pathData.map((data) => `path "${data}"`) },
);

const factor = fc.constantFrom('0%', '0.001%', '50%', '100%', '100000%', '-20%');
const modifier = fc.oneof(
  fc
    .tuple(fc.constantFrom('0', '90', '45', '360', '22.5', '1e9', '0.000001'))
    .map(([turn]) => `turn ${turn} degrees`),
  fc.tuple(factor, factor).map(([across, down]) => `resize ${across} x ${down}`),
  fc.tuple(size, size).map(([width, height]) => `size ${width} x ${height}`),
  fc
    .tuple(fc.constantFrom(2, 3, 60, 500), number, number, factor)
    .map(
      ([count, x, y, resized]) => `repeat ${count} every (${x}, ${y}) turning 6 degrees resized ${resized}`,
    ),
  place.map((at) => `at ${at}`),
  fc.constantFrom('mirror left to right', 'mirror top to bottom'),
);

interface Thing {
  readonly shape: string;
  readonly modifiers: readonly string[];
  readonly value: number;
  readonly plane: string;
  /** So many objects have this outline. */
  readonly times: number;
}

const thing: fc.Arbitrary<Thing> = fc.record({
  shape,
  modifiers: fc.array(modifier, { maxLength: 2 }),
  value: fc.integer({ min: 1, max: 5 }),
  plane: fc.constantFrom('foreground', 'middle', 'background'),
  times: fc.oneof(
    { weight: 20, arbitrary: fc.constant(1) },
    { weight: 1, arbitrary: fc.constantFrom(2, 40, 200) },
  ),
});

const lead = fc
  .tuple(place, points, fc.constantFrom('focus', 'thing0', 'right edge at 50%', '(3, 3)'))
  .map(([from, through, to]) => `from ${from} through ${through} to ${to}`);

const canvas = fc.oneof(
  { weight: 8, arbitrary: fc.constant('canvas 10 x 8 cm') },
  { weight: 1, arbitrary: fc.tuple(size, size).map(([width, height]) => `canvas ${width} x ${height} cm`) },
  {
    weight: 1,
    arbitrary: fc.constantFrom('canvas 0.001 x 1000 m', 'canvas 7 1/2 x 9 in', 'canvas 1 x 1 mm'),
  },
);

const plan = fc
  .tuple(canvas, place, fc.array(thing, { maxLength: 9 }), fc.array(lead, { maxLength: 2 }))
  .map(([size_, focus, things, leads]) =>
    [
      size_,
      `focus ${focus}`,
      ...things
        .flatMap((one) => Array.from({ length: one.times }, () => one))
        .flatMap(({ shape: form, modifiers, value, plane }, index) => [
          `object thing${index}${index === 0 ? ', dominant' : ''}`,
          ...[`plane ${plane}`, `shape ${form}`, ...modifiers, `value ${value}`].map((line) => `  ${line}`),
        ]),
      ...leads.map((one, index) => `lead way${index} ${one}`),
      '',
    ].join('\n'),
  );

/** Shapes that touch, cross themselves, lie on each other, enclose nothing, or are too large or small to be any. */
export const geometry = campaign({
  runs: 5,
  cases: fc.record({ text: plan, view: fc.constantFrom(...views) }),
  hold: ({ text, view }) => takeTheWholeWay(text, view),
});
