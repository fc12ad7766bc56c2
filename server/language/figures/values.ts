import { marked, said, t } from '../../../grammar/index.js';
import { percent } from '../../findings/words/words.js';
import { plainNumber } from '../../plan/problems.js';
import type { Snapshot } from '../snapshot.js';
import type { Style } from '../style.js';
import { type Paragraphs, wantedAndMeasured } from './paragraphs.js';

/** Each share of a budget, as wanted and as measured. */
export function budgetFigures({ measures }: Snapshot, of: 'value' | 'colour', style: Style): Paragraphs {
  const { budget } = of === 'value' ? measures.values : measures.colours;
  if (budget.length === 0) return [style.text(t('No share can be measured against this budget.'))];
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
      ? []
      : [
          t(
            'Nine tenths of the picture lie between {0} and {1}.',
            plainNumber(range.from, 1),
            plainNumber(range.to, 1),
          ),
        ];
  return [
    style.list(
      steps.map(({ step, value, share }) =>
        style.text(
          t(
            'step {0}: Munsell value {1}, {2} of the picture',
            `${step}${groupOf(step)}`,
            plainNumber(value, 1),
            percent(share),
          ),
        ),
      ),
    ),
    ...(mean === undefined || key === undefined
      ? []
      : [style.text([said(keyWords[key], plainNumber(mean, 1)), ...spread].join(' '))]),
  ];
}

const keyWords = {
  low: marked('Mean Munsell value {0}: a low key.'),
  middle: marked('Mean Munsell value {0}: a middle key.'),
  high: marked('Mean Munsell value {0}: a high key.'),
} as const;

/**
 * The steps of a group, its share, its budget and the pieces it falls into; nothing for a group that the scale does not
 * have.
 */
export function groupFigures({ measures }: Snapshot, key: string, style: Style): Paragraphs {
  const group = measures.values.groups.find((candidate) => candidate.key === key);
  if (group === undefined) return [];
  const budget = measures.values.budget.find((candidate) => candidate.key === key);
  const tone = measures.notan.tones.find((candidate) => candidate.key === key);
  const share = percent(group.share);
  const told =
    group.from === group.to
      ? t('step {0}, {1} of the picture', group.from, share)
      : t('steps {0} to {1}, {2} of the picture', group.from, group.to, share);
  const pieces = tone?.pieces.length ?? 0;
  return [
    `${style.strong(group.name)}: ${style.text(told)}`,
    ...(budget === undefined ? [] : [style.text(`${wantedAndMeasured(budget)}.`)]),
    ...(tone === undefined || pieces === 0
      ? []
      : [
          style.text(
            pieces === 1
              ? t('It hangs together in one piece.')
              : t('It falls into {0} pieces; the largest is {1} of it.', pieces, percent(tone.largestOfTone)),
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
          t('{0} of the picture', percent(share)),
          ...(value === undefined ? [] : [t('mean Munsell value {0}', plainNumber(value, 1))]),
          ...(chroma === undefined ? [] : [t('mean chroma {0}', plainNumber(chroma, 1))]),
        ];
        return `${style.strong(plane)}: ${style.text(figures.join(', '))}`;
      }),
    ),
  ];
}
