import * as v from 'valibot';

/** What the documents are put together from. */
export const share = v.pipe(v.number(), v.description('A part of one: 0.3 is 30 %.'));
export const length = v.pipe(v.number(), v.description('Canvas units.'));
export const point = v.pipe(
  v.strictObject({ x: v.number(), y: v.number() }),
  v.description('Canvas units, right and down from the upper left corner.'),
);
export const names = v.array(v.string());
export const hex = v.pipe(
  v.string(),
  v.regex(/^#[0-9a-f]{6}$/),
  v.description('sRGB, cut to what a screen can show.'),
);
export const role = v.picklist(['dominant', 'complement', 'discord', 'neutral']);
export const plane = v.picklist(['background', 'middle', 'foreground']);
export const side = v.picklist(['left', 'right', 'top', 'bottom']);
export const area = v.pipe(v.string(), v.description('The name of an object; empty for the bare ground.'));
export const degrees = v.pipe(v.number(), v.description('Degrees.'));
