import * as v from 'valibot';
import { isPictureData } from '../../server/drawing/picture-data.js';
import {
  dashNames,
  layerNames,
  type PictureData,
  type Scene,
  tokens,
  views,
  weights,
} from '../../server/drawing/scene.js';
import type { SceneChange } from '../../server/drawing/scene-change.js';
import { DISTANCE_LIMITS_MILLIMETRES } from '../../server/drawing/viewing.js';

/** The longest outline that is drawn, as SVG path data: 200,000 points fit. */
const longestPath = 8_000_000;
const longestText = 100_000;
const mostMarks = 100_000;
/** A canvas has four; what a plan gives wrongly is told as such. */
const mostCorners = 1_000;

const text = v.pipe(v.string(), v.maxLength(longestText));
const finite = v.pipe(v.number(), v.finite());
const size = v.pipe(finite, v.minValue(0));
/** From how far a squint is taken, within what a drawing takes. */
export const distanceSchema = v.pipe(
  v.number(),
  v.minValue(DISTANCE_LIMITS_MILLIMETRES.least),
  v.maxValue(DISTANCE_LIMITS_MILLIMETRES.most),
);
const column = v.pipe(v.number(), v.safeInteger(), v.minValue(0));
const hex = v.custom<`#${string}`>((ink) => typeof ink === 'string' && /^#[0-9a-f]{3,8}$/i.test(ink));
const ink = v.union([v.picklist(tokens), hex]);

/** A stretch of one line, see `Location` of the plan. */
export const locationSchema = v.pipe(
  v.strictObject({ line: column, start: column, end: column }),
  v.check(({ start, end }) => start <= end),
  v.readonly(),
);

export const severitySchema = v.picklist(['error', 'warning', 'hint']);

const box = v.strictObject({ x: finite, y: finite, width: size, height: size });

const base = { key: text, subject: v.exactOptional(text), tip: v.exactOptional(text) };

const mark = v.variant('kind', [
  v.strictObject({
    ...base,
    kind: v.literal('path'),
    // What has no place in path data has no business in the attribute either.
    d: v.pipe(v.string(), v.maxLength(longestPath), v.regex(/^[MmLlHhVvCcSsQqTtAaZz0-9eE+\-.,\s]*$/)),
    fill: v.exactOptional(ink),
    fillRule: v.exactOptional(v.literal('evenodd')),
    stroke: v.exactOptional(
      v.strictObject({
        ink,
        weight: v.picklist(weights),
        dash: v.exactOptional(v.picklist(dashNames)),
        under: v.exactOptional(v.literal(true)),
      }),
    ),
  }),
  v.strictObject({
    ...base,
    kind: v.literal('text'),
    text,
    x: finite,
    y: finite,
    size,
    anchor: v.picklist(['start', 'middle', 'end']),
    face: v.picklist(['text', 'strong', 'title', 'note']),
    ink,
    halo: v.exactOptional(ink),
  }),
  v.strictObject({
    ...base,
    kind: v.literal('image'),
    box,
    href: v.custom<PictureData>((href) => typeof href === 'string' && isPictureData(href)),
  }),
]);

const placed = {
  location: locationSchema,
  from: v.exactOptional(v.strictObject({ file: text, line: column })),
};

const subject = v.variant('kind', [
  v.strictObject({
    kind: v.picklist(['object', 'lead', 'paint', 'sitting']),
    key: text,
    name: text,
    ...placed,
    lines: v.strictObject({ first: column, last: column }),
  }),
  v.strictObject({
    kind: v.picklist(['canvas', 'ground', 'focus', 'horizon', 'division', 'grid', 'scale', 'budget']),
    name: text,
    ...placed,
  }),
  v.strictObject({
    kind: v.literal('finding'),
    name: text,
    severity: severitySchema,
    message: text,
    ...placed,
  }),
]);

const budget = v.strictObject({
  of: v.picklist(['value', 'colour']),
  tolerance: finite,
  bars: v.array(
    v.strictObject({
      key: text,
      name: text,
      target: finite,
      share: finite,
      within: v.boolean(),
      swatches: v.array(hex),
    }),
  ),
});

const spot = v.strictObject({ x: finite, y: finite });
const frame = v.strictObject({
  middle: spot,
  width: size,
  height: size,
  turn: finite,
  isEven: v.exactOptional(v.literal(true)),
});
const sketchLength = v.strictObject({ value: finite, in: v.picklist(['pixels', 'parts']) });

const sketchPlace = v.strictObject({ across: sketchLength, down: sketchLength });
const sketchCorners = v.pipe(v.array(sketchPlace), v.maxLength(mostCorners));

const photographs = v.pipe(
  v.array(
    v.strictObject({
      sitting: column,
      name: text,
      file: text,
      corners: sketchCorners,
      grey: v.exactOptional(sketchPlace),
    }),
  ),
  v.maxLength(mostMarks),
);
const record = v.strictObject({
  sittings: v.pipe(
    v.array(v.strictObject({ sitting: column, subject: text, name: text })),
    v.maxLength(mostMarks),
  ),
  chosen: column,
});

const grip = v.strictObject({
  key: text,
  subject: text,
  kind: v.picklist(['object', 'point', 'focus', 'lead', 'lead place']),
  at: spot,
  name: text,
  fixed: v.exactOptional(text),
  frame: v.exactOptional(frame),
});
const painted = v.strictObject({
  step: v.exactOptional(finite),
  colour: v.exactOptional(v.union([v.strictObject({ name: text }), v.strictObject({ hex })])),
});
/** What of the handling is no long list. */
const restOfHandling = {
  guides: v.strictObject({
    lines: v.pipe(v.array(v.strictObject({ from: spot, to: spot })), v.maxLength(mostMarks)),
    crossings: v.pipe(v.array(v.strictObject({ at: spot, name: text })), v.maxLength(mostMarks)),
  }),
  tones: v.array(hex),
  colours: v.pipe(v.array(v.strictObject({ name: text, hex })), v.maxLength(mostMarks)),
  unit: v.picklist(['cm', 'mm', 'm', 'in']),
  sketch: v.exactOptional(
    v.strictObject({
      file: text,
      corners: sketchCorners,
      opacity: finite,
    }),
  ),
};
const handling = v.strictObject({
  ...restOfHandling,
  grips: v.pipe(v.array(grip), v.maxLength(mostMarks)),
  painted: v.record(text, painted),
});

const layer = { name: v.picklist(layerNames), blur: v.exactOptional(size) };

/** What of a drawing is no long list. */
const rest = {
  view: v.picklist(views),
  sheet: box,
  picture: box,
  em: size,
  title: text,
  description: text,
  budgets: v.array(budget),
  legend: v.array(v.strictObject({ key: text, text })),
  viewing: v.exactOptional(
    v.strictObject({
      distanceMillimetres: distanceSchema,
      usualMillimetres: v.pipe(finite, v.gtValue(0)),
      unit: v.picklist(['m', 'ft']),
    }),
  ),
  record: v.exactOptional(record),
  photographs: v.exactOptional(photographs),
};

/** What a page accepts as a drawing; anything else is not drawn. */
export const sceneSchema: v.GenericSchema<Scene> = v.strictObject({
  ...rest,
  layers: v.array(v.strictObject({ ...layer, marks: v.pipe(v.array(mark), v.maxLength(mostMarks)) })),
  subjects: v.record(text, subject),
  handling: v.exactOptional(handling),
});

const listChange = <T>(item: v.GenericSchema<T>) =>
  v.pipe(
    v.array(
      v.union([
        v.strictObject({ kept: v.strictTuple([column, column]) }),
        v.strictObject({ made: v.pipe(v.array(item), v.maxLength(mostMarks)) }),
      ]),
    ),
    v.maxLength(mostMarks),
  );

/** What a page accepts as a change of the drawing that it has. */
export const sceneChangeSchema: v.GenericSchema<SceneChange> = v.strictObject({
  rest: v.strictObject(rest),
  layers: v.array(v.strictObject({ ...layer, marks: listChange(mark) })),
  subjects: listChange(v.strictTuple([text, subject])),
  handling: v.exactOptional(
    v.strictObject({
      rest: v.strictObject(restOfHandling),
      grips: listChange(grip),
      painted: listChange(v.strictTuple([text, painted])),
    }),
  ),
});
