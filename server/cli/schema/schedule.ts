import * as v from 'valibot';
import { layers } from '../../../grammar/index.js';
import { names, share } from './parts.js';

/** Written into every document, and the `$id` of its schema. */
export const scheduleSchemaId = 'mahlstick/schema/schedule-1.json';

const date = v.pipe(v.string(), v.isoDate(), v.description('A day, such as 2027-01-22.'));
const days = v.pipe(v.number(), v.integer(), v.description('Whole days.'));
const sitting = v.pipe(v.string(), v.description('The title of a sitting.'));
const place = v.pipe(v.number(), v.integer(), v.description('Its place in `sittings`, counted from 0.'));
const layer = v.picklist(layers);

const coat = v.strictObject({
  object: v.string(),
  days: v.exactOptional(days),
  dryOn: v.exactOptional(date),
  restsOn: v.pipe(
    v.picklist(['paint', 'unknown paint', 'usual paint', 'binder', 'varnish', 'unsettled']),
    v.description(
      'What the days go by: the slowest paint of the mixture, one of which no figure is known, a usual paint where no mixture is known, the binder whatever the paint, or the varnish.',
    ),
  ),
  slowest: v.exactOptional(
    v.strictObject({
      paint: v.string(),
      index: v.exactOptional(v.pipe(v.string(), v.description('Colour Index name.'))),
      days: v.pipe(v.number(), v.description('Of a thin film of 0.15 mm.')),
      source: v.exactOptional(v.string()),
    }),
  ),
});

const held = v.strictObject({
  title: sitting,
  date: v.exactOptional(date),
  weekday: v.exactOptional(v.string()),
  taken: v.pipe(v.boolean(), v.description('The plan says that this day is taken.')),
  layer,
  layerStated: v.boolean(),
  varnish: v.exactOptional(v.picklist(['final', 'retouch'])),
  fat: v.pipe(share, v.description('Share of added oil or medium.')),
  fatFrom: v.pipe(
    v.picklist(['share', 'body', 'layer']),
    v.description('A share of the plan, its `lean` or `fat`, or what is usual of the layer.'),
  ),
  filmMillimetres: v.number(),
  filmStated: v.boolean(),
  binder: v.string(),
  works: names,
  tasks: v.array(v.string()),
  idle: v.pipe(v.boolean(), v.description('It works on nothing, and nothing is to be done.')),
  coats: v.array(coat),
  dryingDays: v.exactOptional(days),
  dryOn: v.exactOptional(date),
  readyFrom: v.exactOptional(v.pipe(date, v.description('When all that it goes over is ready for it.'))),
  latest: v.exactOptional(v.pipe(date, v.description('Worked back from the due date.'))),
  slackDays: v.exactOptional(days),
});

const conflict = v.strictObject({
  kind: v.picklist([
    'not dry',
    'leaner over fatter',
    'glaze over wet',
    'varnish too soon',
    'faster over slower',
  ]),
  object: v.string(),
  below: place,
  above: place,
  missingDays: v.exactOptional(days),
  from: v.exactOptional(v.pipe(date, v.description('The first free day on which it is safe.'))),
  fat: v.exactOptional(v.pipe(v.tuple([share, share]), v.description('Below, above.'))),
  thinFilmDays: v.exactOptional(v.pipe(v.tuple([v.number(), v.number()]), v.description('Below, above.'))),
});

export const scheduleSchema = v.pipe(
  v.strictObject({
    schema: v.literal(scheduleSchemaId),
    version: v.literal(1),
    file: v.pipe(v.string(), v.description('As given; `-` is the standard input.')),
    errors: v.pipe(v.number(), v.description('What cannot be read is left out.')),
    title: v.exactOptional(v.string()),
    sittings: v.pipe(v.array(held), v.description('In the order of time.')),
    conflicts: v.pipe(
      v.array(conflict),
      v.description('As measured, in the order of time, whether or not the plan sets them aside.'),
    ),
    neverWorked: names,
    dryOn: v.exactOptional(date),
    varnishFrom: v.exactOptional(date),
    due: v.exactOptional(
      v.strictObject({
        date,
        weekday: v.string(),
        readyOn: v.exactOptional(date),
        latestStart: v.exactOptional(date),
        slackDays: v.exactOptional(days),
      }),
    ),
    away: v.array(v.strictObject({ from: date, to: date })),
  }),
  v.title('The sittings of a plan in time'),
);

export type ScheduleDocument = v.InferOutput<typeof scheduleSchema>;
