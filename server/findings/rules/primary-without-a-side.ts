import { t } from '../../../grammar/index.js';
import type { PrimaryMeasure } from '../../measure/mixing/mixing.js';
import { EARTHS } from '../../measure/mixing/primaries.js';
import { knownPigments, type Pigment } from '../../plan/materials/pigments.js';
import type { Plan } from '../../plan/plan.js';
import { inWords } from '../../plan/problems.js';
import type { Rule } from '../finding.js';
import { quoted } from '../words/words.js';

export const primaryWithoutASide: Rule = {
  id: 'primary without a side',
  severity: 'hint',
  chapter: 'palette',
  perObject: false,
  summary: 'A yellow, red or blue of the palette has no warm or no cool companion.',
  explanation:
    'A split-primary palette has a warm and a cool paint of each primary. Two that lean to each other, such as a cool yellow and a greenish blue, mix a clean green; two that lean away from each other mix a dull one, because between them they hold all three primaries. Painters who want quiet mixtures leave sides out on purpose. Earths count where the plan says to which side they lean, or where there is no brighter paint of their primary.',
  formula:
    'for each of yellow, red and blue with at least one paint: no paint on its warm or on its cool side; the side is what the plan states, else that of the pigment, else that of the hue',
  source: 'common practice, no source',
  check: (plan, { palette }) => {
    if (!palette || !plan.palette) return [];
    const lacking = palette.primaries.filter(
      ({ warm, cool, undecided, lacks }) =>
        undecided.length === 0 && lacks.length === 1 && warm.length + cool.length > 0,
    );
    if (lacking.length === 0) return [];
    const words = lacking.map((primary) => lackInWords(plan, primary));
    return [
      {
        message: t('The palette leans to one side: {0}.', words.join('; ')),
        advice: adviceOf(lacking),
        location: plan.palette.location,
      },
    ];
  },
};

function lackInWords(
  { palette }: Plan,
  { primary, warm: warmOnes, cool: coolOnes, lacks }: PrimaryMeasure,
): string {
  const names = [...warmOnes, ...coolOnes].map((index) => quoted(palette?.paints[index]?.name ?? ''));
  return lacks[0] === 'warm'
    ? t('{0} ({1}) without a warm one', cool(primary), inWords(names))
    : t('{0} ({1}) without a cool one', warm(primary), inWords(names));
}

function adviceOf(lacking: readonly PrimaryMeasure[]): string {
  const named = lacking.flatMap(({ primary, lacks: [side] }) => {
    const pigment = side && companion(primary, side);
    if (!pigment) return [];
    return side === 'warm'
      ? [t('{0} ({1}) as the {2}', pigment.name, pigment.index, warm(primary))]
      : [t('{0} ({1}) as the {2}', pigment.name, pigment.index, cool(primary))];
  });
  return named.length === 0
    ? t('Add a companion, or leave it so if you want mixtures between these to be quiet.')
    : t('Add {0}, or leave it so if you want mixtures between these to be quiet.', inWords(named));
}

type Primary = PrimaryMeasure['primary'];

function warm(primary: Primary): string {
  switch (primary) {
    case 'yellow':
      return t('warm yellow');
    case 'red':
      return t('warm red');
    case 'blue':
      return t('warm blue');
  }
}

function cool(primary: Primary): string {
  switch (primary) {
    case 'yellow':
      return t('cool yellow');
    case 'red':
      return t('cool red');
    case 'blue':
      return t('cool blue');
  }
}

/** A paint of the side that lacks, without known hazards; one that was measured before others. */
function companion(family: PrimaryMeasure['primary'], side: 'warm' | 'cool'): Pigment | undefined {
  const fitting = knownPigments().filter(
    (pigment) =>
      pigment.family === family &&
      pigment.side === side &&
      pigment.hazards.length === 0 &&
      !EARTHS.has(pigment.index),
  );
  return fitting.find(({ masstone }) => masstone !== undefined) ?? fitting[0];
}
