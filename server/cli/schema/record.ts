import * as v from 'valibot';
import { hex, point, role, share } from './parts.js';

/** Written into every document, and the `$id` of its schema. */
export const recordSchemaId = 'mahlstick/schema/record-1.json';

const date = v.pipe(v.string(), v.isoDate(), v.description('A day, such as 2027-01-22.'));
const value = v.pipe(v.number(), v.description('Munsell value, 0 to 10.'));
const step = v.pipe(v.number(), v.description('On the scale of the plan, fractions allowed.'));
const stepsOff = v.pipe(
  v.number(),
  v.description('Photograph less plan, in steps: below nought it is darker.'),
);
const difference = v.pipe(v.number(), v.description('CIEDE2000.'));
const place = v.pipe(v.number(), v.integer(), v.description('Its number in the plan, 1 for the first.'));

const group = v.strictObject({
  name: v.string(),
  from: v.number(),
  to: v.number(),
  share,
  planned: v.pipe(share, v.description('In the whole plan.')),
});

const budget = v.array(
  v.strictObject({
    name: v.string(),
    share,
    planned: share,
    target: share,
    tolerance: share,
    within: v.boolean(),
  }),
);

const colour = { colour: hex, munsell: v.string() };

const object = v.strictObject({
  name: v.string(),
  share: v.pipe(share, v.description('What is seen of it in the plan.')),
  worked: v.pipe(v.boolean(), v.description('Painted by then; a toned ground does not count.')),
  ...colour,
  value,
  step,
  planned: v.exactOptional(
    v.pipe(
      v.strictObject({ step, colour: v.exactOptional(hex), munsell: v.exactOptional(v.string()) }),
      v.description(
        'What is to stand there after the sitting; without a colour where only its value counts.',
      ),
    ),
  ),
  stepsOff: v.exactOptional(stepsOff),
  difference: v.exactOptional(difference),
  hueAndChroma: v.exactOptional(
    v.pipe(v.number(), v.description('CIEDE2000 with the lightness of both as planned.')),
  ),
  before: v.exactOptional(
    v.pipe(
      v.strictObject({ stepsOff, difference: v.exactOptional(difference) }),
      v.description('In the photograph before, held to the same as now.'),
    ),
  ),
  went: v.exactOptional(v.picklist(['nearer', 'away', 'neither'])),
});

const figures = {
  type: v.picklist(['JPEG', 'PNG', 'WebP']),
  width: v.pipe(v.number(), v.description('Pixels of the photograph, upright.')),
  height: v.number(),
  profile: v.pipe(v.string(), v.description('The colours it is in.')),
  profileStated: v.boolean(),
  taken: v.exactOptional(v.pipe(v.string(), v.description('When the camera says it was taken.'))),
  whole: v.pipe(
    v.strictObject({ values: v.boolean(), colours: v.boolean() }),
    v.description('All that is seen has been painted by then, so that shares can be held to the plan.'),
  ),
  meanValue: value,
  range: v.pipe(
    v.strictObject({ darkest: value, lightest: value }),
    v.description('2 % of the canvas is under the first and 2 % above the second.'),
  ),
  steps: v.pipe(v.array(share), v.description('From the darkest.')),
  groups: v.array(group),
  valueBudget: budget,
  roles: v.array(v.strictObject({ role, share, planned: share })),
  noRole: v.pipe(share, v.description('Nearest in colour to something without a role.')),
  colourBudget: budget,
  emphasis: v.exactOptional(
    v.strictObject({
      at: point,
      fromFocus: v.exactOptional(v.pipe(share, v.description('Part of the diagonal.'))),
      atFocus: v.exactOptional(v.pipe(share, v.description('What the focal point has of the strongest.'))),
      plannedAtFocus: v.exactOptional(v.pipe(share, v.description('The same in the plan.'))),
    }),
  ),
  objects: v.array(object),
  change: v.exactOptional(
    v.strictObject({
      since: place,
      mean: difference,
      objects: v.pipe(
        v.array(v.strictObject({ name: v.string(), difference })),
        v.description('The most changed first.'),
      ),
      bare: v.exactOptional(difference),
    }),
  ),
  doubts: v.array(v.strictObject({ about: v.string(), grave: v.boolean(), inWords: v.string() })),
};

const head = {
  sitting: place,
  title: v.string(),
  date: v.exactOptional(date),
  photograph: v.pipe(v.string(), v.description('Its file, as the plan has it.')),
};

const sitting = v.variant('is', [
  v.strictObject({ ...head, is: v.literal('measured'), ...figures }),
  v.strictObject({ ...head, is: v.literal('unreadable'), reason: v.string() }),
  v.strictObject({ ...head, is: v.literal('on its way') }),
]);

export const recordSchema = v.pipe(
  v.strictObject({
    schema: v.literal(recordSchemaId),
    version: v.literal(1),
    file: v.pipe(v.string(), v.description('As given; `-` is the standard input.')),
    errors: v.pipe(v.number(), v.description('What cannot be read is left out.')),
    title: v.exactOptional(v.string()),
    unit: v.string(),
    scale: v.pipe(v.number(), v.description('How many steps the scale of the plan has.')),
    plannedMeanValue: v.exactOptional(value),
    sittings: v.pipe(
      v.array(sitting),
      v.description('Those that name a photograph, in the order of the plan.'),
    ),
  }),
  v.title('What the photographs of the sittings tell'),
);

export type RecordDocument = v.InferOutput<typeof recordSchema>;
