import { percent } from '../../findings/words/words.js';
import { plainNumber } from '../../plan/problems.js';
import type { Snapshot } from '../snapshot.js';
import type { Style } from '../style.js';
import { type Paragraphs, wantedAndMeasured } from './paragraphs.js';

/** Each share of a budget, as wanted and as measured. */
export function budgetFigures({ measures }: Snapshot, of: 'value' | 'colour', style: Style): Paragraphs {
  const { budget } = of === 'value' ? measures.values : measures.colours;
  if (budget.length === 0) return [style.text('No share can be measured against this budget.')];
  return [
    style.list(budget.map((entry) => `${style.strong(entry.name)}: ${style.text(wantedAndMeasured(entry))}`)),
  ];
}

/** Each step of the value scale with its Munsell value and its share; mean, key and range. */
export function scaleFigures({ plan, measures }: Snapshot, style: Style): Paragraphs {
  const { steps, mean, key, range } = measures.values;
  const groupOf = (step: number): string => {
    const group = plan.scale.groups.find(({ from, to }) => from <= step && step <= to);
    return group === undefined ? '' : ` (${group.name})`;
  };
  const spread =
    range === undefined
      ? ''
      : ` Nine tenths of the picture lie between ${plainNumber(range.from, 1)} and ${plainNumber(range.to, 1)}.`;
  return [
    style.list(
      steps.map(({ step, value, share }) =>
        style.text(
          `step ${step}${groupOf(step)}: Munsell value ${plainNumber(value, 1)}, ${percent(share)} of the picture`,
        ),
      ),
    ),
    ...(mean === undefined || key === undefined
      ? []
      : [
          style.text(
            `Mean Munsell value ${plainNumber(mean, 1)}: ${key === 'middle' ? 'a middle key' : `a ${key} key`}.${spread}`,
          ),
        ]),
  ];
}

/** The steps of a group, its share, its budget and the pieces it falls into; nothing for a group that the scale does not have. */
export function groupFigures({ measures }: Snapshot, key: string, style: Style): Paragraphs {
  const group = measures.values.groups.find((candidate) => candidate.key === key);
  if (group === undefined) return [];
  const budget = measures.values.budget.find((candidate) => candidate.key === key);
  const tone = measures.notan.tones.find((candidate) => candidate.key === key);
  const range = group.from === group.to ? `step ${group.from}` : `steps ${group.from} to ${group.to}`;
  const pieces = tone?.pieces.length ?? 0;
  return [
    `${style.strong(group.name)}: ${style.text(`${range}, ${percent(group.share)} of the picture`)}`,
    ...(budget === undefined ? [] : [style.text(`${wantedAndMeasured(budget)}.`)]),
    ...(tone === undefined || pieces === 0
      ? []
      : [
          style.text(
            pieces === 1
              ? 'It hangs together in one piece.'
              : `It falls into ${pieces} pieces; the largest is ${percent(tone.largestOfTone)} of it.`,
          ),
        ]),
  ];
}

/** Mean value and chroma of each plane, from the foreground back. */
export function planesFigures({ measures: { planes } }: Snapshot, style: Style): Paragraphs {
  if (planes.length === 0) return [];
  return [
    style.list(
      planes.toReversed().map(({ plane, share, value, chroma }) => {
        const figures = [
          `${percent(share)} of the picture`,
          ...(value === undefined ? [] : [`mean Munsell value ${plainNumber(value, 1)}`]),
          ...(chroma === undefined ? [] : [`mean chroma ${plainNumber(chroma, 1)}`]),
        ];
        return `${style.strong(plane)}: ${style.text(figures.join(', '))}`;
      }),
    ),
  ];
}
