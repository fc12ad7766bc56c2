import { t } from '../../grammar/localised.js';
import type { Box, Scene } from '../../server/drawing/scene.js';

/**
 * What a plan can begin with, as it is shown where nothing is drawn yet and written into the text when that is asked
 * for.
 */
export interface Example {
  readonly text: string;
  /** A name in it that the painter will want to give anew. */
  readonly name: string;
}

const usual = { width: 40, height: 30 } as const;

/** An object that fits the canvas, and a canvas where the plan has none. */
export function exampleFor({ subjects, picture }: Pick<Scene, 'subjects' | 'picture'>): Example {
  const hasCanvas = Object.values(subjects).some(({ kind }) => kind === 'canvas');
  const { width, height } = hasCanvas ? picture : usual;
  const size = `${figure(0.225 * width)} x ${figure(0.4 * height)}`;
  const at = `(${figure(0.625 * width)}, ${figure(0.535 * height)})`;
  const name = t('pear');
  const canvas = hasCanvas ? '' : `canvas ${usual.width} x ${usual.height} cm\n\n`;
  const text = `${canvas}object ${name}, dominant\n  shape   ellipse ${size}\n  at      ${at}\n  colour  #a8a13c\n`;
  return { text, name };
}

/** Where a text goes at the end of another: below it, with an empty line between. */
export function appended(text: string, more: string): string {
  if (text.trim() === '') return text === '' || text.endsWith('\n') ? more : `\n${more}`;
  if (/\n[ \t]*\r?\n[ \t]*$/.test(text)) return more;
  return text.endsWith('\n') ? `\n${more}` : `\n\n${more}`;
}

function figure(value: Box['width']): string {
  return String(Number(value.toPrecision(2)));
}
