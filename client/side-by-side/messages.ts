import * as v from 'valibot';
import { comparedViews } from '../../server/drawing/scene.js';
import { topics } from '../../server/findings/comparison/change.js';
import { exceeds } from '../preview/messages.js';
import { sceneSchema } from '../preview/scene-schema.js';

/**
 * What the extension and the pages with pictures side by side say to each other, checked at both ends: plans may come
 * from strangers, and the extension acts on what a page asks.
 */

const count = v.pipe(v.number(), v.safeInteger(), v.minValue(0));
const text = v.pipe(v.string(), v.maxLength(100_000));
const part = v.pipe(v.number(), v.finite());
const view = v.picklist(comparedViews);
const side = v.strictObject({
  name: text,
  scene: sceneSchema,
  widthMillimetres: v.pipe(v.number(), v.gtValue(0)),
});
const most = <T extends v.GenericSchema>(schema: T) => v.pipe(v.array(schema), v.maxLength(20_000));

const strip = v.strictObject({
  of: v.picklist(['value', 'colour']),
  parts: most(
    v.strictObject({
      name: text,
      share: part,
      hex: v.custom<`#${string}`>((hex) => typeof hex === 'string' && /^#[0-9a-f]{6}$/iu.test(hex)),
      target: v.exactOptional(part),
      within: v.exactOptional(v.boolean()),
    }),
  ),
  words: text,
});

/** A plan on the wall, as the page shows it. */
const cardSchema = v.strictObject({
  title: text,
  canvas: text,
  scene: sceneSchema,
  strips: most(strip),
  key: v.exactOptional(text),
  counts: v.strictObject({ errors: count, warnings: count, hints: count }),
  found: text,
});

const toPage = v.variant('type', [
  v.strictObject({
    type: v.literal('comparison'),
    view,
    earlier: side,
    later: side,
    changes: most(
      v.strictObject({
        topic: v.picklist(topics),
        message: text,
        /** It stands in one of the texts, and can be shown there. */
        isPlaced: v.boolean(),
      }),
    ),
    remarks: most(text),
  }),
  v.strictObject({
    type: v.literal('wall'),
    title: text,
    view,
    /** The names of the files, in their order. */
    names: most(text),
    /** How many more there are, which are not shown. */
    left: count,
  }),
  v.strictObject({
    type: v.literal('card'),
    index: count,
    card: cardSchema,
    differs: v.exactOptional(text),
  }),
  /** Why a plan of the wall can't be shown, as a sentence. */
  v.strictObject({ type: v.literal('unreadable'), index: count, reason: text }),
  /** Why there is nothing to show, as a sentence. */
  v.strictObject({ type: v.literal('nothing'), reason: text }),
]);
export type ToPage = v.InferOutput<typeof toPage>;
export type CardMessage = Extract<ToPage, { type: 'card' }>;
export type ComparisonMessage = Extract<ToPage, { type: 'comparison' }>;
export type WallMessage = Extract<ToPage, { type: 'wall' }>;

const fromPage = v.variant('type', [
  /** The page listens: what is sent before is lost. */
  v.strictObject({ type: v.literal('ready') }),
  v.strictObject({ type: v.literal('view'), view }),
  /** Show the words that a change is about, or open a plan of the wall. */
  v.strictObject({ type: v.literal('open'), index: count }),
]);
export type FromPage = v.InferOutput<typeof fromPage>;

/** Characters and entries in all, so that a message is refused before it is looked at closely. */
const LARGEST = { toPage: 64_000_000, fromPage: 200 } as const;

/** What came from the extension; nothing when it is not well formed. */
export function readInPage(data: unknown): ToPage | undefined {
  return read(data, toPage, LARGEST.toPage);
}

/** What came from the page. */
export function readFromPage(data: unknown): FromPage | undefined {
  return read(data, fromPage, LARGEST.fromPage);
}

function read<M>(data: unknown, schema: v.GenericSchema<unknown, M>, limit: number): M | undefined {
  if (exceeds(data, limit)) return undefined;
  const result = v.safeParse(schema, data);
  return result.success ? result.output : undefined;
}
