import * as v from 'valibot';
import { changeKinds, topics } from '../../findings/comparison/change.js';

/** Written into every document, and the `$id` of its schema. */
export const compareSchemaId = 'mahlstick/schema/compare-1.json';

const place = v.pipe(
  v.strictObject({
    line: v.number(),
    column: v.number(),
    endColumn: v.number(),
    file: v.exactOptional(
      v.pipe(v.string(), v.description('Of the plan that it builds on, relative to this one.')),
    ),
  }),
  v.description('Counted from 1, columns in UTF-16 code units, the end exclusive.'),
);

const side = v.strictObject({
  name: v.pipe(v.string(), v.description('As given: a file, REVISION:PATH, or `-`.')),
  title: v.exactOptional(v.string()),
  errors: v.pipe(v.number(), v.description('What cannot be read is left out of the comparison.')),
});

const change = v.strictObject({
  topic: v.picklist(topics),
  kind: v.picklist(changeKinds),
  message: v.string(),
  object: v.exactOptional(
    v.pipe(v.string(), v.description('Its name in the later plan, unless it is gone.')),
  ),
  figure: v.exactOptional(
    v.strictObject({
      from: v.number(),
      to: v.number(),
      unit: v.picklist(['part of the picture', 'step', 'Munsell value', 'CIEDE2000', 'degrees']),
    }),
  ),
  move: v.exactOptional(
    v.pipe(
      v.strictObject({ right: v.number(), down: v.number() }),
      v.description('Units of the later canvas.'),
    ),
  ),
  earlier: v.exactOptional(place),
  later: v.exactOptional(place),
});

export const compareSchema = v.pipe(
  v.strictObject({
    schema: v.literal(compareSchemaId),
    version: v.literal(1),
    earlier: side,
    later: side,
    same: v.pipe(v.boolean(), v.description('Nothing is told: the same picture, whatever the text.')),
    sameText: v.boolean(),
    remark: v.exactOptional(
      v.pipe(v.string(), v.description('How places were compared where the canvases differ.')),
    ),
    changes: v.pipe(v.array(change), v.description('What matters most to the picture first.')),
  }),
  v.title('What differs between two plans'),
);

export type CompareDocument = v.InferOutput<typeof compareSchema>;
