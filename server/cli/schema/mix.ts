import * as v from 'valibot';
import { hex, share } from './parts.js';

/** Written into every document, and the `$id` of its schema. */
export const mixSchemaId = 'mahlstick/schema/mix-1.json';

const side = v.picklist(['warm', 'cool']);
const millilitres = v.pipe(v.number(), v.description('Millilitres.'));
const difference = v.pipe(v.number(), v.description('CIEDE2000; a prediction.'));
const paintName = v.pipe(v.string(), v.description('The name of a paint of the palette.'));

const paint = v.strictObject({
  name: v.string(),
  index: v.exactOptional(v.pipe(v.string(), v.description('Colour Index name.'))),
  pigment: v.exactOptional(v.pipe(v.string(), v.description('What painters call its pigment.'))),
  basis: v.pipe(
    v.picklist(['measured', 'estimated', 'unknown']),
    v.description(
      'What its mixtures are worked out from: measured spectra, a full tone and a tint, or nothing.',
    ),
  ),
  strengthGuessed: v.pipe(v.boolean(), v.description('It is known by its full tone alone.')),
  family: v.exactOptional(v.string()),
  side: v.exactOptional(side),
  sideFrom: v.exactOptional(v.picklist(['plan', 'pigment', 'hue'])),
  transparency: v.exactOptional(v.string()),
  full: v.exactOptional(hex),
  tint: v.exactOptional(v.pipe(hex, v.description('One part of it in ten of titanium white.'))),
  millilitres: v.pipe(v.number(), v.description('What the picture takes of it, millilitres.')),
  tubes: v.exactOptional(v.number()),
});

const primary = v.strictObject({
  primary: v.picklist(['yellow', 'red', 'blue']),
  warm: v.array(paintName),
  cool: v.array(paintName),
  undecided: v.array(paintName),
  lacks: v.array(side),
});

const mixture = v.strictObject({
  parts: v.pipe(
    v.array(v.strictObject({ paint: paintName, parts: v.pipe(v.number(), v.integer()) })),
    v.description('Whole parts by volume, those of most parts first.'),
  ),
  colour: v.pipe(hex, v.description('What it is predicted to dry to.')),
  estimate: v.pipe(v.boolean(), v.description('Some of its paints are not measured.')),
});

const colour = v.strictObject({
  wanted: v.pipe(hex, v.description('As it will be painted.')),
  munsell: v.string(),
  objects: v.pipe(v.array(v.string()), v.description('Painted with it, the largest first.')),
  ground: v.pipe(v.boolean(), v.description('The canvas is toned with it.')),
  stated: v.pipe(v.boolean(), v.description('False for the grey of objects that have a value only.')),
  share,
  millilitres,
  mixture: v.exactOptional(mixture),
  difference: v.exactOptional(difference),
  beyond: v.pipe(v.boolean(), v.description('No mixture comes near enough: over 5.')),
});

const glaze = v.strictObject({
  object: v.string(),
  wanted: v.pipe(hex, v.description('What the glaze looks like over white.')),
  mixture: v.exactOptional(mixture),
  mediumParts: v.exactOptional(
    v.pipe(v.number(), v.description('Parts of clear medium to those of the mixture.')),
  ),
  difference: v.exactOptional(
    v.pipe(v.number(), v.description('CIEDE2000 from `wanted` to the mixture over white.')),
  ),
  seen: v.pipe(hex, v.description('The body colour through the glaze.')),
  estimate: v.boolean(),
});

const string = v.strictObject({
  name: v.string(),
  steps: v.array(
    v.strictObject({
      step: v.number(),
      wanted: hex,
      mixture: v.exactOptional(mixture),
      difference: v.exactOptional(difference),
    }),
  ),
});

const addition = v.strictObject({
  index: v.string(),
  name: v.string(),
  left: v.pipe(
    v.array(v.strictObject({ wanted: hex, difference })),
    v.description('For each colour that is beyond the palette, what is left with this paint.'),
  ),
});

/** What `mahlstick mix --json` prints. */
export const mixSchema = v.pipe(
  v.strictObject({
    schema: v.literal(mixSchemaId),
    version: v.literal(1),
    file: v.pipe(v.string(), v.description('As given; `-` is the standard input.')),
    errors: v.pipe(
      v.number(),
      v.integer(),
      v.description('How many errors the plan has; what they hide is left out.'),
    ),
    title: v.exactOptional(v.string()),
    palette: v.exactOptional(
      v.strictObject({
        paints: v.pipe(v.array(paint), v.description('In the order of the text.')),
        mother: v.exactOptional(paintName),
        primaries: v.array(primary),
        colours: v.pipe(v.array(colour), v.description('The largest share first.')),
        glazes: v.array(glaze),
        strings: v.pipe(v.array(string), v.description('Each from dark to light.')),
        addition: v.exactOptional(addition),
        reach: v.pipe(
          v.array(v.number()),
          v.description(
            'The most C*ab that can be mixed at each of 72 hue angles of CIELAB, from 0, 5 degrees apart.',
          ),
        ),
      }),
    ),
  }),
  v.title('What the colours of a plan are mixed of'),
);

export type MixDocument = v.InferOutput<typeof mixSchema>;
