import { length, percent } from '../../findings/words/words.js';
import type { NamedProportion, ProportionMeasure } from '../../measure/proportion.js';
import type { Canvas } from '../../plan/plan.js';
import { plainNumber, capitalised } from '../../plan/problems.js';
import { nameBySides } from '../../plan/stock.js';
import type { Snapshot } from '../snapshot.js';
import type { Style } from '../style.js';
import { notations, type Paragraphs } from './paragraphs.js';

/** A proportion missed by less than a stretcher is made to. */
const EXACT = 0.0005;

/** Size, proportion and what the trade calls it, diagonal and ground of the canvas. */
export function canvasFigures({ plan: { canvas }, measures }: Snapshot, style: Style): Paragraphs {
  const { width, height, diagonal, unit } = canvas;
  const proportion = plainNumber(measures.proportion.ratio, 3);
  const way = width === height ? 'square' : width > height ? 'landscape' : 'upright';
  return [
    style.text(`${plainNumber(width)} x ${plainNumber(height)} ${unit}, ${way}.`),
    style.text(`Proportion ${proportion} : 1. Diagonal ${length(diagonal, canvas)}.`),
    ...proportionNames(measures.proportion, canvas).map((words) => style.text(words)),
    `${style.text('Ground')} ${notations(canvas.ground.colour, style)}`,
  ];
}

/** `2 : 3. The size of figure 20.`; nothing for a proportion that has no name. */
function proportionNames({ named }: ProportionMeasure, canvas: Canvas): readonly string[] {
  const own = nameBySides(canvas);
  const shapes = named.filter(({ kind }) => kind !== 'paper' && kind !== 'stock').map(proportionName);
  const sizes = named.filter(({ kind }) => kind === 'paper' || kind === 'stock');
  const of = (sameSize: boolean): readonly string[] =>
    sizes
      .filter((size) => size.sameSize === sameSize)
      .map((size) => (sameSize ? size.name : proportionName(size)));
  const words = [
    ...shapes.map((shape) => `${capitalised(shape)}.`),
    ...of(true).map((name) => (name === own ? 'A stock size.' : `The size of ${name}.`)),
    ...of(false).map((name) => `In proportion with ${name}.`),
  ];
  return words.length === 0 ? [] : [words.join(' ')];
}

function proportionName({ name, difference }: NamedProportion): string {
  if (Math.abs(difference) < EXACT) return name;
  return `${name}, ${percent(Math.abs(difference))} ${difference > 0 ? 'longer' : 'shorter'}`;
}
