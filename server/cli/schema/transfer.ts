import * as v from 'valibot';
import { degrees, length, point, share } from './parts.js';

/** Written into every document, and the `$id` of its schema. */
export const transferSchemaId = 'mahlstick/schema/transfer-1.json';

const count = v.pipe(v.number(), v.integer());

const place = {
  fromLeft: v.pipe(v.number(), v.description('From the left edge of the canvas, canvas units.')),
  fromTop: v.pipe(v.number(), v.description('From its upper edge, canvas units.')),
  square: v.pipe(v.string(), v.description('The square it lies in: `C3`.')),
  fromSquareLeft: length,
  fromSquareTop: length,
  told: v.pipe(
    v.strictObject({ fromLeft: v.string(), fromTop: v.string() }),
    v.description('As it is read off the ruler: `12.3 cm`, `5 3/8 in`.'),
  ),
};

const line = v.strictObject({ name: v.string(), from: length, to: length });

const grid = v.strictObject({
  stated: v.pipe(v.boolean(), v.description('False for the one that is taken where the plan states none.')),
  line: v.pipe(v.string(), v.description('What states it in a plan.')),
  square: v.pipe(v.strictObject({ width: length, height: length }), v.description('Of a whole square.')),
  columns: v.pipe(v.array(line), v.description('From the left; in a mirrored document A is the last.')),
  rows: v.pipe(v.array(line), v.description('From the top.')),
});

const keyPoint = v.strictObject({
  number: v.pipe(count, v.description('Among those of the object, as in the drawing.')),
  kind: v.picklist([
    'corner',
    'centre',
    'end of an axis',
    'leftmost',
    'topmost',
    'rightmost',
    'lowest',
    'on the curve',
    'crosses the edge',
  ]),
  edge: v.exactOptional(v.picklist(['left', 'right', 'top', 'bottom'])),
  covered: v.pipe(v.boolean(), v.description('Something in front lies over it.')),
  ...place,
});

const shape = v.strictObject({
  form: v.picklist(['corners', 'curve', 'circle', 'ellipse']),
  radius: v.exactOptional(length),
  axes: v.exactOptional(v.pipe(v.array(length), v.description('Whole axes, the long one first.'))),
  turn: v.exactOptional(v.pipe(degrees, v.description('Of the long axis, clockwise.'))),
  offCanvas: v.pipe(count, v.description('Points of it that lie off the canvas.')),
  points: v.array(keyPoint),
});

/** What `mahlstick transfer --json` prints. */
export const transferSchema = v.pipe(
  v.strictObject({
    schema: v.literal(transferSchemaId),
    version: v.literal(1),
    file: v.pipe(v.string(), v.description('As given; `-` is the standard input.')),
    errors: v.pipe(count, v.description('How many errors the plan has; what they hide is left out.')),
    title: v.exactOptional(v.string()),
    canvas: v.strictObject({
      width: length,
      height: length,
      unit: v.picklist(['mm', 'cm', 'm', 'in']),
    }),
    mirrored: v.pipe(v.boolean(), v.description('Left and right are changed over.')),
    ruler: v.pipe(v.picklist(['cm', 'mm', 'in']), v.description('What lengths in words are read off.')),
    rounding: v.pipe(
      v.number(),
      v.description('The most that a distance is moved by being read off the ruler, millimetres.'),
    ),
    grid,
    objects: v.pipe(
      v.array(
        v.strictObject({
          object: v.string(),
          shapes: v.pipe(v.array(shape), v.description('The largest first.')),
          more: v.pipe(count, v.description('Smaller shapes of it whose points are not given.')),
        }),
      ),
      v.description('Those that have a point on the canvas, in the order of the text.'),
    ),
    places: v.array(
      v.strictObject({ name: v.string(), of: v.picklist(['horizon', 'focus', 'lead']), ...place }),
    ),
    divisions: v.array(
      v.strictObject({
        system: v.string(),
        uprights: v.pipe(v.array(length), v.description('From the left edge.')),
        levels: v.pipe(v.array(length), v.description('From the upper edge.')),
        slopes: v.array(v.strictObject({ from: point, to: point })),
      }),
    ),
    sketch: v.exactOptional(
      v.pipe(
        v.strictObject({
          file: v.string(),
          width: count,
          height: count,
          stretch: v.pipe(share, v.description('How much one side would be stretched against the other.')),
        }),
        v.description('The sketch whose corners are not stated, in pixels.'),
      ),
    ),
  }),
  v.title('What is measured off to carry the drawing of a plan over to its canvas'),
);

export type TransferDocument = v.InferOutput<typeof transferSchema>;
