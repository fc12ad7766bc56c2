import * as v from 'valibot';
import { share } from './parts.js';

/** Written into every document, and the `$id` of its schema. */
export const wallSchemaId = 'mahlstick/schema/wall-1.json';

const strip = v.array(
  v.strictObject({
    name: v.string(),
    share,
    target: v.exactOptional(share),
    within: v.exactOptional(v.pipe(v.boolean(), v.description('False for a share out of its budget.'))),
  }),
);

const shown = v.strictObject({
  file: v.string(),
  read: v.literal(true),
  title: v.string(),
  canvas: v.string(),
  values: v.exactOptional(strip),
  colours: v.exactOptional(strip),
  key: v.exactOptional(v.string()),
  errors: v.number(),
  warnings: v.number(),
  hints: v.number(),
  differs: v.exactOptional(
    v.pipe(v.string(), v.description('What differs from the plan that it builds on.')),
  ),
});

export const wallSchema = v.pipe(
  v.strictObject({
    schema: v.literal(wallSchemaId),
    version: v.literal(1),
    plans: v.array(
      v.variant('read', [
        shown,
        v.strictObject({ file: v.string(), read: v.literal(false), reason: v.string() }),
      ]),
    ),
    left: v.pipe(v.number(), v.description('How many more there are, which are not looked at.')),
  }),
  v.title('Plans side by side'),
);

export type WallDocument = v.InferOutput<typeof wallSchema>;
