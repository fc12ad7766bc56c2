import * as v from 'valibot';

/** Written into every document, and the `$id` of its schema. */
export const checkSchemaId = 'mahlstick/schema/check-2.json';

const counted = v.pipe(v.number(), v.integer(), v.minValue(0));
const fromOne = v.pipe(v.number(), v.integer(), v.minValue(1));

const place = v.pipe(
  v.strictObject({
    line: fromOne,
    column: fromOne,
    endColumn: fromOne,
    file: v.exactOptional(
      v.pipe(
        v.string(),
        v.description('The plan in which it is, by its path, where that is one that this plan is based on.'),
      ),
    ),
  }),
  v.description('Counted from 1; columns count UTF-16 code units, the end is exclusive.'),
);

const counts = v.strictObject({ errors: counted, warnings: counted, hints: counted, setAside: counted });

const remark = v.strictObject({
  rule: v.pipe(v.string(), v.description('In words, such as `value budget` or `unknown word`.')),
  severity: v.picklist(['error', 'warning', 'hint']),
  message: v.string(),
  advice: v.exactOptional(v.pipe(v.string(), v.description('One thing to try.'))),
  place,
  from: v.exactOptional(
    v.pipe(place, v.description('Where it comes from, when that is in a plan that this one is based on.')),
  ),
  related: v.array(v.strictObject({ message: v.string(), place })),
  objects: v.pipe(v.array(v.string()), v.description('Names of the objects concerned.')),
  setAside: v.exactOptional(
    v.pipe(
      v.strictObject({ reason: v.string(), place }),
      v.description(
        'Present when the plan sets this finding aside; it then counts as neither warning nor hint.',
      ),
    ),
  ),
});

const file = v.variant('read', [
  v.strictObject({
    file: v.pipe(v.string(), v.description('As given; `-` is the standard input.')),
    read: v.literal(true),
    title: v.exactOptional(v.string()),
    summary: counts,
    findings: v.array(remark),
  }),
  v.strictObject({
    file: v.string(),
    read: v.literal(false),
    reason: v.pipe(v.string(), v.description('Goes behind the name: `is not there`.')),
    line: v.exactOptional(fromOne),
    byte: v.exactOptional(fromOne),
  }),
]);

/** What `mahlstick check --json` prints. */
export const checkSchema = v.pipe(
  v.strictObject({
    schema: v.literal(checkSchemaId),
    version: v.literal(2),
    files: v.array(file),
    summary: v.pipe(counts, v.description('Of all files that could be read.')),
  }),
  v.title('What is said about plans'),
);

export type CheckDocument = v.InferOutput<typeof checkSchema>;
