import * as v from 'valibot';
import { views } from '../drawing/scene.js';
import { DISTANCE_LIMITS_MILLIMETRES } from '../drawing/viewing.js';

/** The forms that parameters must have to be looked at; what a message holds besides is let through. */
export type Form = v.GenericSchema;

const position = v.object({
  line: v.pipe(v.number(), v.integer()),
  character: v.pipe(v.number(), v.integer()),
});
const textDocument = v.object({ uri: v.string() });
const share = v.pipe(v.number(), v.minValue(0), v.maxValue(1));

export const range = v.object({ start: position, end: position });
export const ofDocument = v.object({ textDocument });
export const atPosition = v.object({ textDocument, position });
export const inRange = v.object({ textDocument, range });
export const ofColour = v.object({
  textDocument,
  range,
  color: v.object({ red: share, green: share, blue: share }),
});
export const ofView = v.object({
  textDocument,
  view: v.picklist(views),
  distanceMillimetres: v.optional(
    v.pipe(
      v.number(),
      v.minValue(DISTANCE_LIMITS_MILLIMETRES.least),
      v.maxValue(DISTANCE_LIMITS_MILLIMETRES.most),
    ),
  ),
  isNarrow: v.optional(v.boolean()),
});

const version = v.number();

export const opened = v.object({ textDocument: v.object({ uri: v.string(), version, text: v.string() }) });
export const changed = v.object({
  textDocument: v.object({ uri: v.string(), version }),
  contentChanges: v.array(v.object({ text: v.string(), range: v.optional(range) })),
});
export const watched = v.object({ changes: v.array(v.object({ uri: v.string() })) });
