import { marked, said, t } from '../../../grammar/index.js';
import { length, percent } from '../../findings/words/words.js';
import type { NamedProportion, ProportionMeasure } from '../../measure/proportion.js';
import type { Canvas } from '../../plan/plan.js';
import { plainNumber, capitalised } from '../../plan/problems.js';
import { nameBySides } from '../../plan/stock.js';
import type { Snapshot } from '../snapshot.js';
import type { Style } from '../style.js';
import { notations, type Paragraphs, woven } from './paragraphs.js';

/** A proportion missed by less than a stretcher is made to. */
const EXACT = 0.0005;

/** Size, proportion and what the trade calls it, diagonal and ground of the canvas. */
export function canvasFigures({ plan: { canvas }, measures }: Snapshot, style: Style): Paragraphs {
  const { width, height, diagonal, unit } = canvas;
  const size = `${plainNumber(width)} x ${plainNumber(height)} ${unit}`;
  const proportion = plainNumber(measures.proportion.ratio, 3);
  return [
    style.text(
      width === height
        ? t('{0}, square.', size)
        : width > height
          ? t('{0}, landscape.', size)
          : t('{0}, upright.', size),
    ),
    style.text(t('Proportion {0} : 1. Diagonal {1}.', proportion, length(diagonal, canvas))),
    ...proportionNames(measures.proportion, canvas).map((words) => style.text(words)),
    woven(marked('Ground {0}'), style, notations(canvas.ground.colour, style)),
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
    ...of(true).map((name) => (name === own ? t('A stock size.') : t('The size of {0}.', name))),
    ...of(false).map((name) => t('In proportion with {0}.', name)),
  ];
  return words.length === 0 ? [] : [words.join(' ')];
}

function proportionName({ name, difference }: NamedProportion): string {
  const told = said(name);
  if (Math.abs(difference) < EXACT) return told;
  const by = percent(Math.abs(difference));
  return difference > 0 ? t('{0}, {1} longer', told, by) : t('{0}, {1} shorter', told, by);
}
