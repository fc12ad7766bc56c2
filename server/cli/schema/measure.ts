import * as v from 'valibot';
import {
  balance,
  borders,
  emphasis,
  eyePath,
  hues,
  notan,
  planes,
  proportion,
  spacing,
  tangents,
} from './design.js';
import { hex, length, names, plane, point, role, share } from './parts.js';

/** Written into every document, and the `$id` of its schema. */
export const measureSchemaId = 'mahlstick/schema/measure-2.json';

const budget = v.array(
  v.strictObject({
    name: v.string(),
    share,
    target: share,
    difference: v.pipe(v.number(), v.description('The share less the target.')),
    tolerance: share,
    within: v.boolean(),
  }),
);

const carriers = v.pipe(
  v.array(v.strictObject({ object: v.string(), share })),
  v.description('Largest visible share first.'),
);

const canvas = v.strictObject({
  width: length,
  height: length,
  diagonal: length,
  unit: v.picklist(['mm', 'cm', 'm', 'in']),
  millimetresPerUnit: v.number(),
  stock: v.exactOptional(v.string()),
  proportion,
  support: v.exactOptional(v.string()),
  medium: v.exactOptional(v.string()),
  ground: v.strictObject({
    colour: hex,
    munsellValue: v.number(),
    step: v.number(),
    role: v.exactOptional(role),
  }),
});

const division = v.strictObject({
  system: v.string(),
  crossings: v.array(v.strictObject({ name: v.string(), at: point })),
});

const focus = v.strictObject({
  at: point,
  nearestCrossing: v.exactOptional(
    v.strictObject({
      system: v.string(),
      name: v.string(),
      at: point,
      distance: length,
      distanceShare: share,
    }),
  ),
  fromCentre: v.pipe(share, v.description('Distance to the middle of the canvas, part of the diagonal.')),
  dominants: v.array(
    v.strictObject({
      object: v.string(),
      holds: v.pipe(v.boolean(), v.description('Its visible shape holds the focal point.')),
      distanceShare: v.pipe(
        v.nullable(share),
        v.description(
          'To its nearest visible border, part of the diagonal; null when nothing of it is seen.',
        ),
      ),
    }),
  ),
});

const object = v.strictObject({
  name: v.string(),
  role: v.exactOptional(v.picklist(['dominant', 'secondary', 'minor'])),
  plane,
  step: v.exactOptional(v.pipe(v.number(), v.description('Of the value scale, 1 the darkest.'))),
  munsellValue: v.exactOptional(v.number()),
  colour: v.exactOptional(v.pipe(hex, v.description('As it will be painted, at its value.'))),
  colourName: v.exactOptional(v.string()),
  colourRole: v.exactOptional(role),
  share: v.pipe(share, v.description('Visible part of the canvas.')),
  hiddenShare: v.pipe(share, v.description('Part of its shape on the canvas that others cover.')),
  offCanvasShare: v.pipe(share, v.description('Part of its shape that lies off the canvas.')),
  coveredBy: v.pipe(names, v.description('The most covering first.')),
});

/** What `mahlstick measure --json` prints. */
export const measureSchema = v.pipe(
  v.strictObject({
    schema: v.literal(measureSchemaId),
    version: v.literal(2),
    file: v.pipe(v.string(), v.description('As given; `-` is the standard input.')),
    errors: v.pipe(
      v.number(),
      v.integer(),
      v.description('How many errors the plan has; what they hide is not measured.'),
    ),
    title: v.exactOptional(v.string()),
    canvas,
    divisions: v.array(division),
    focus: v.exactOptional(focus),
    objects: v.pipe(v.array(object), v.description('In the order of the text.')),
    values: v.strictObject({
      steps: v.array(v.strictObject({ step: v.number(), munsellValue: v.number(), share })),
      groups: v.array(
        v.strictObject({ name: v.string(), from: v.number(), to: v.number(), share, objects: carriers }),
      ),
      budget,
      bareShare: v.pipe(share, v.description('Bare ground; it is also counted at its own step.')),
      unplannedShare: v.pipe(share, v.description('Visible objects that have neither value nor colour.')),
      munsellMean: v.exactOptional(v.number()),
      key: v.exactOptional(v.picklist(['low', 'middle', 'high'])),
      range: v.exactOptional(
        v.pipe(
          v.strictObject({ from: v.number(), to: v.number() }),
          v.description('Munsell values between which nine tenths of the picture lie.'),
        ),
      ),
    }),
    notan,
    planes,
    emphasis,
    borders,
    balance,
    spacing,
    tangents,
    eyePath,
    hues,
    colours: v.strictObject({
      roles: v.array(v.strictObject({ role, share, objects: carriers })),
      named: v.array(v.strictObject({ name: v.string(), colour: hex, role: v.exactOptional(role), share })),
      budget,
      noRoleShare: v.pipe(share, v.description('Visible objects whose colour has no part in the budget.')),
      bareShare: v.pipe(share, v.description('Bare ground that has no part in the budget.')),
    }),
  }),
  v.title('What is measured on a plan'),
);

export type MeasureDocument = v.InferOutput<typeof measureSchema>;
