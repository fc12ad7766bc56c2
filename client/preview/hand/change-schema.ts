import * as v from 'valibot';
import { frameHandles, sketchCorners } from '../../../server/drawing/scene.js';
import type { HandChange } from '../../../server/language/hand/change.js';

/** So many points of a new line fit a message of the page. */
export const mostPoints = 200;

const name = v.pipe(v.string(), v.minLength(1), v.maxLength(400));
/** Far beyond any picture, and still a number that a plan can hold. */
const furthest = 1e6;
const length = v.pipe(v.number(), v.minValue(-furthest), v.maxValue(furthest));
const spot = v.pipe(v.strictObject({ x: length, y: length }), v.readonly());
const sitting = v.pipe(v.number(), v.safeInteger(), v.minValue(0));
const pixels = v.pipe(length, v.minValue(1));

/** What the extension takes from the page as a change made by hand; anything else is refused. */
export const changeSchema: v.GenericSchema<unknown, HandChange> = v.variant('kind', [
  v.strictObject({ kind: v.literal('move'), grip: name, to: spot }),
  v.strictObject({
    kind: v.literal('resize'),
    subject: name,
    factor: v.pipe(v.number(), v.minValue(0.01), v.maxValue(100)),
  }),
  v.strictObject({
    kind: v.literal('size'),
    subject: name,
    handle: v.picklist(frameHandles),
    to: spot,
    keepsProportion: v.boolean(),
  }),
  v.strictObject({
    kind: v.literal('sketch corner'),
    corner: v.picklist(sketchCorners),
    sitting: v.exactOptional(sitting),
    to: spot,
    width: pixels,
    height: pixels,
  }),
  v.strictObject({ kind: v.literal('grey patch'), sitting, to: spot, width: pixels, height: pixels }),
  v.strictObject({
    kind: v.literal('value'),
    subject: name,
    step: v.pipe(v.number(), v.minValue(0), v.maxValue(100)),
  }),
  v.strictObject({ kind: v.literal('colour'), subject: name, colour: name }),
  v.strictObject({
    kind: v.literal('new box'),
    form: v.picklist(['rectangle', 'ellipse']),
    from: spot,
    to: spot,
  }),
  v.strictObject({
    kind: v.literal('new line'),
    form: v.picklist(['outline', 'lead']),
    points: v.pipe(v.array(spot), v.minLength(2), v.maxLength(mostPoints)),
  }),
  v.strictObject({ kind: v.literal('crossing'), name }),
]);
