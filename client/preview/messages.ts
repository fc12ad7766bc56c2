import * as v from 'valibot';
import { views } from '../../server/drawing/scene.js';
import { changeSchema } from './hand/change-schema.js';
import { overlays } from './toolbar/layers.js';
import type { Look } from './look.js';
import {
  distanceSchema,
  locationSchema,
  sceneChangeSchema,
  sceneSchema,
  severitySchema,
} from './scene-schema.js';
import { zoomLimits } from './zoom/zoom-steps.js';

/**
 * What the extension and the page of a preview say to each other. Both ends check what they are given against
 * these schemas: the page because the plan behind a drawing may come from a stranger, the extension because it
 * acts on what the page asks.
 */

const count = v.pipe(v.number(), v.safeInteger(), v.minValue(0));
const view = v.picklist(views);
const part = v.pipe(v.number(), v.minValue(0), v.maxValue(1));
const zoom = v.strictObject({
  factor: v.pipe(v.number(), v.minValue(zoomLimits.least), v.maxValue(zoomLimits.most)),
  x: part,
  y: part,
});

/** More than anybody reads; a text that is no plan has as many errors as lines. */
export const mostFindings = 10_000;

const listedFinding = v.strictObject({
  /** The rule or problem, such as `value-budget`. */
  code: v.pipe(v.string(), v.maxLength(200)),
  severity: severitySchema,
  message: v.pipe(v.string(), v.maxLength(10_000)),
  location: locationSchema,
});
/** A diagnostic of the plan, as the page lists it. */
export type ListedFinding = v.InferOutput<typeof listedFinding>;

const serverStates = ['starting', 'running', 'stopped'] as const;
export type ServerState = (typeof serverStates)[number];

const sketchRead = v.variant('ok', [
  v.strictObject({
    ok: v.literal(true),
    bytes: v.custom<Uint8Array<ArrayBuffer>>((it) => it instanceof Uint8Array),
  }),
  /** A sentence to the painter. */
  v.strictObject({ ok: v.literal(false), reason: v.pipe(v.string(), v.maxLength(10_000)) }),
]);
export type SketchRead = v.InferOutput<typeof sketchRead>;

const toPage = v.variant('type', [
  v.strictObject({
    type: v.literal('scene'),
    /** Counts the scenes given to this page: a lower one than the last is overtaken. */
    epoch: count,
    /** Of the document that was drawn. */
    version: count,
    scene: sceneSchema,
  }),
  /** What makes the next scene of the one that was given last, whose epoch is one less. */
  v.strictObject({
    type: v.literal('scene change'),
    epoch: count,
    version: count,
    change: sceneChangeSchema,
  }),
  v.strictObject({
    type: v.literal('findings'),
    version: count,
    findings: v.pipe(v.array(listedFinding), v.maxLength(mostFindings)),
  }),
  /** Where the cursor is: zero-based, `null` while the plan is in no editor. */
  v.strictObject({ type: v.literal('mark'), version: count, line: v.nullable(count) }),
  v.strictObject({ type: v.literal('view'), view }),
  v.strictObject({ type: v.literal('server'), state: v.picklist(serverStates) }),
  /** The plan can't be opened any more. */
  v.strictObject({ type: v.literal('gone') }),
  /** The plan can be read and not written. */
  v.strictObject({ type: v.literal('read only') }),
  /** The text has done what was asked for, and the focus comes back to the page. */
  v.strictObject({ type: v.literal('come back'), isFirst: v.boolean() }),
  /** The file of the sketch or the photograph that is wanted, as the plan names it. */
  v.strictObject({
    type: v.literal('sketch'),
    file: v.pipe(v.string(), v.maxLength(10_000)),
    read: sketchRead,
  }),
  /** How the plan would look after a change that was only tried; `id` is that of the question. */
  v.strictObject({ type: v.literal('tried'), id: count, version: count, scene: sceneSchema }),
  /** The same, told by what is another than in the scene of that epoch. */
  v.strictObject({
    type: v.literal('tried change'),
    id: count,
    version: count,
    epoch: count,
    change: sceneChangeSchema,
  }),
  /** A drawing to be painted in so many pixels across, for a file or for the clipboard. */
  v.strictObject({
    type: v.literal('rasterise'),
    id: count,
    svg: v.string(),
    width: v.pipe(count, v.minValue(1), v.maxValue(20_000)),
    goesTo: v.picklist(['file', 'clipboard']),
  }),
  /** Copy the drawing, as its button does. */
  v.strictObject({ type: v.literal('copy') }),
  /** A change is in the text, which has this version now. */
  v.strictObject({ type: v.literal('written'), id: count, version: count }),
  /** A change can't be tried or written, and why; `isStale` when the text is another than the one it was made on. */
  v.strictObject({
    type: v.literal('refused'),
    id: count,
    reason: v.pipe(v.string(), v.maxLength(10_000)),
    isStale: v.boolean(),
  }),
]);
export type ToPage = v.InferOutput<typeof toPage>;

const fromPage = v.variant('type', [
  /** The page listens: what is sent before is lost. */
  v.strictObject({ type: v.literal('ready') }),
  /** Give the whole drawing: the page has not the one that a change is of. */
  v.strictObject({ type: v.literal('again') }),
  v.strictObject({ type: v.literal('view'), view }),
  /** Select the words that something in the drawing stands for, if the document is still at that version. */
  v.strictObject({ type: v.literal('reveal'), version: count, location: locationSchema }),
  /** Squint from so far; `null` for the usual distance. */
  v.strictObject({ type: v.literal('distance'), millimetres: v.nullable(distanceSchema) }),
  /** Show the record after that sitting, by its index in the plan; `null` for the latest. */
  v.strictObject({ type: v.literal('sitting'), sitting: v.nullable(count) }),
  /** Give the file of the photograph of that sitting, by its index in the plan; `null` for the sketch. */
  v.strictObject({ type: v.literal('under'), sitting: v.nullable(count) }),
  /** How much room there is for the drawing. */
  v.strictObject({ type: v.literal('room'), isNarrow: v.boolean() }),
  v.strictObject({ type: v.literal('restart') }),
  /** Ask what to export, and where to. */
  v.strictObject({ type: v.literal('export') }),
  /** Give the shown drawing for the clipboard. */
  v.strictObject({ type: v.literal('copy') }),
  v.strictObject({ type: v.literal('copied'), isCopied: v.boolean() }),
  /** A drawing painted for a file; `null` when it can't be. */
  v.strictObject({ type: v.literal('raster'), id: count, png: v.nullable(v.instance(Uint8Array)) }),
  /** Write the example into the plan, if the document is still at that version. */
  v.strictObject({ type: v.literal('example'), version: count }),
  /** Show what a change by hand would do to the drawing of that version. */
  v.strictObject({ type: v.literal('try'), id: count, version: count, change: changeSchema }),
  /** Write it, if the document is still at that version. */
  v.strictObject({ type: v.literal('write'), id: count, version: count, change: changeSchema }),
  /** Take the last change of the text back, or make it again. */
  v.strictObject({ type: v.literal('step'), to: v.picklist(['undo', 'redo']) }),
]);
export type FromPage = v.InferOutput<typeof fromPage>;

/** What the page keeps for a preview that is restored when a window is opened again. */
export const pageStateSchema = v.strictObject({
  uri: v.pipe(v.string(), v.maxLength(4_000)),
  view,
  distanceMillimetres: v.exactOptional(distanceSchema),
  /** The sitting that the view `record` shows, by its index in the plan; left out, the latest. */
  sitting: v.exactOptional(count),
  /** Left out, what is moved by hand snaps to the division of the canvas. */
  snaps: v.exactOptional(v.boolean()),
  /** Left out, the drawing fits the page. */
  zoom: v.exactOptional(zoom),
  /** What does not lie over the picture now. */
  hidden: v.exactOptional(v.pipe(v.array(v.picklist(overlays)), v.maxLength(overlays.length))),
  /** How strongly the sketch shows, a part of one, where that is another than the plan says. */
  sketch: v.exactOptional(part),
  /** The sitting whose photograph lies under the drawing, by its index in the plan; left out, the sketch does. */
  under: v.exactOptional(count),
});
export type PageState = v.InferOutput<typeof pageStateSchema>;

/** What may be kept; what is as it is from the first is left out. */
type Kept = { readonly [K in keyof Omit<PageState, 'uri' | 'view'>]?: PageState[K] | undefined };

export function pageState(uri: string, { view: shown, ...others }: Kept & Pick<Look, 'view'>): PageState {
  const { distanceMillimetres, sitting, snaps, zoom: zoomed, hidden, sketch, under } = others;
  return {
    uri,
    view: shown,
    ...(distanceMillimetres === undefined ? {} : { distanceMillimetres }),
    ...(sitting === undefined ? {} : { sitting }),
    ...(snaps === undefined ? {} : { snaps }),
    ...(zoomed === undefined ? {} : { zoom: zoomed }),
    ...(hidden === undefined || hidden.length === 0 ? {} : { hidden }),
    ...(sketch === undefined ? {} : { sketch }),
    ...(under === undefined ? {} : { under }),
  };
}

/**
 * Characters and entries in all, so that a message is refused before it is looked at closely; of `bytes` the bytes of
 * arrays.
 */
const largest = { toPage: 64_000_000, fromPage: 2_000, bytes: 200_000_000 } as const;

export type Refusal = 'too large' | 'unknown' | 'malformed';
export type Received<M> =
  { readonly ok: true; readonly message: M } | { readonly ok: false; readonly reason: Refusal };

/** Checks what came from the extension. */
export function receiveInPage(data: unknown): Received<ToPage> {
  return receive(data, toPage, largest.toPage);
}

/** Checks what came from the page. */
export function receiveFromPage(data: unknown): Received<FromPage> {
  const isRaster = typeof data === 'object' && data !== null && 'type' in data && data.type === 'raster';
  return receive(data, fromPage, largest.fromPage, isRaster ? largest.bytes : 0);
}

interface Messages<M extends { readonly type: string }> extends v.GenericSchema<unknown, M> {
  readonly options: readonly { readonly entries: { readonly type: { readonly literal: string } } }[];
}

function receive<M extends { readonly type: string }>(
  data: unknown,
  schema: Messages<M>,
  limit: number,
  limitBytes = limit,
): Received<M> {
  if (exceeds(data, limit, limitBytes)) return { ok: false, reason: 'too large' };
  const result = v.safeParse(schema, data);
  if (result.success) return { ok: true, message: result.output };
  const type = typeof data === 'object' && data !== null && 'type' in data ? data.type : undefined;
  const known = schema.options.some(({ entries }) => entries.type.literal === type);
  return { ok: false, reason: known ? 'malformed' : 'unknown' };
}

/**
 * Whether a value holds more characters and entries than `limit`, or its arrays more bytes than `limitBytes`; stops
 * counting there, so that what holds itself is counted to an end too.
 */
export function exceeds(value: unknown, limit: number, limitBytes = limit): boolean {
  let left = limit;
  let leftBytes = limitBytes;
  const waiting: unknown[] = [value];
  while (waiting.length > 0) {
    const item = waiting.pop();
    left -= typeof item === 'string' ? item.length + 1 : 1;
    if (ArrayBuffer.isView(item)) leftBytes -= item.byteLength;
    if (left < 0 || leftBytes < 0) return true;
    if (!ArrayBuffer.isView(item) && typeof item === 'object' && item !== null) {
      for (const [key, entry] of Object.entries(item)) {
        left -= Array.isArray(item) ? 0 : key.length;
        waiting.push(entry);
      }
    }
  }
  return false;
}
