import * as v from 'valibot';
import { frameHandles, sketchCorners, views } from '../drawing/scene.js';
import { DISTANCE_LIMITS_MILLIMETRES } from '../drawing/viewing.js';
import type { HandChange } from './hand/change.js';

/** The forms that parameters must have to be looked at; what a message holds besides is let through. */
export type Form = v.GenericSchema;

const position = v.object({
  line: v.pipe(v.number(), v.integer()),
  character: v.pipe(v.number(), v.integer()),
});
const textDocument = v.object({ uri: v.string() });
const share = v.pipe(v.number(), v.minValue(0), v.maxValue(1));

const range = v.object({ start: position, end: position });
export const ofDocument = v.object({ textDocument });
export const atPosition = v.object({ textDocument, position });
export const ofReferences = v.object({
  ...atPosition.entries,
  context: v.object({ includeDeclaration: v.boolean() }),
});
export const ofRename = v.object({ ...atPosition.entries, newName: v.string() });
export const ofDelta = v.object({ ...ofDocument.entries, previousResultId: v.string() });
export const pulled = v.object({
  ...ofDocument.entries,
  previousResultId: v.optional(v.string()),
});
export const atPositions = v.object({
  textDocument,
  positions: v.pipe(v.array(position), v.maxLength(1_000)),
});
export const ofTyping = v.object({
  ...atPosition.entries,
  ch: v.string(),
  options: v.object({ tabSize: v.number(), insertSpaces: v.boolean() }),
});
export const ofQuery = v.object({ query: v.string() });
export const ofMoves = v.object({ files: v.array(v.object({ oldUri: v.string(), newUri: v.string() })) });
export const inRange = v.object({ textDocument, range });
export const ofActions = v.object({
  ...inRange.entries,
  context: v.object({ only: v.optional(v.array(v.string())) }),
});
export const ofColour = v.object({
  textDocument,
  range,
  color: v.object({ red: share, green: share, blue: share }),
});
const sitting = v.pipe(v.number(), v.safeInteger(), v.minValue(0));
/** How a view is looked at, for those views that it matters to. */
export const ofLook = v.object({
  distanceMillimetres: v.optional(
    v.pipe(
      v.number(),
      v.minValue(DISTANCE_LIMITS_MILLIMETRES.least),
      v.maxValue(DISTANCE_LIMITS_MILLIMETRES.most),
    ),
  ),
  sitting: v.optional(sitting),
});
export const ofView = v.object({
  textDocument,
  view: v.picklist(views),
  ...ofLook.entries,
  isNarrow: v.optional(v.boolean()),
  handling: v.optional(v.boolean()),
  known: v.optional(v.pipe(v.number(), v.safeInteger())),
});

const finite = v.pipe(v.number(), v.finite());
const spot = v.object({ x: finite, y: finite });
/** The most points that are drawn by hand in one go. */
const MOST_POINTS = 500;
const points = v.pipe(v.array(spot), v.minLength(2), v.maxLength(MOST_POINTS));
const key = v.pipe(v.string(), v.maxLength(1_000));

const pixels = v.pipe(finite, v.minValue(1));

/** What a hand does in the drawing, see `HandChange`. */
const handChange: v.GenericSchema<unknown, HandChange> = v.variant('kind', [
  v.object({ kind: v.literal('move'), grip: key, to: spot }),
  v.object({ kind: v.literal('resize'), subject: key, factor: v.pipe(finite, v.gtValue(0)) }),
  v.object({
    kind: v.literal('size'),
    subject: key,
    handle: v.picklist(frameHandles),
    to: spot,
    keepsProportion: v.boolean(),
  }),
  v.object({
    kind: v.literal('sketch corner'),
    corner: v.picklist(sketchCorners),
    sitting: v.optional(sitting),
    to: spot,
    width: pixels,
    height: pixels,
  }),
  v.object({
    kind: v.literal('grey patch'),
    sitting,
    to: spot,
    width: pixels,
    height: pixels,
  }),
  v.object({ kind: v.literal('value'), subject: key, step: finite }),
  v.object({ kind: v.literal('colour'), subject: key, colour: v.pipe(v.string(), v.maxLength(200)) }),
  v.object({ kind: v.literal('new box'), form: v.picklist(['rectangle', 'ellipse']), from: spot, to: spot }),
  v.object({ kind: v.literal('new line'), form: v.picklist(['outline', 'lead']), points }),
  v.object({ kind: v.literal('crossing'), name: key }),
]);
export const tried = v.object({ ...ofView.entries, version: v.number(), change: handChange });
export const written = v.object({ textDocument, version: v.number(), change: handChange });

const version = v.number();

export const opened = v.object({ textDocument: v.object({ uri: v.string(), version, text: v.string() }) });
export const changed = v.object({
  // Before LSP 3.16 a client may leave its version open.
  textDocument: v.object({ uri: v.string(), version: v.nullish(version) }),
  contentChanges: v.array(v.object({ text: v.string(), range: v.optional(range) })),
});
export const watched = v.object({ changes: v.array(v.object({ uri: v.string() })) });
const folders = v.array(v.object({ uri: v.string() }));
export const otherFolders = v.object({ added: folders, removed: folders });
