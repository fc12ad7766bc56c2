import { t } from '../../../grammar/index.js';
import { inWords } from '../../plan/problems.js';
import type { PrimaryMeasure } from '../../measure/mixing/mixing.js';
import type { Rule } from '../finding.js';

/** From so many paints on a palette is one for mixing hues, rather than a brown and a white. */
const FEWEST_PRIMARIES = 1;

export const missingPrimary: Rule = {
  id: 'missing primary',
  severity: 'hint',
  chapter: 'palette',
  perObject: false,
  summary: 'The palette has no yellow, no red or no blue.',
  explanation:
    'With a yellow, a red and a blue every hue can be mixed, if not every strength of it. Without one of them half of the wheel is out of reach, which can be the making of a picture, as with two complements and white. Secondaries and earths stand in for a primary in part: an earth counts as the yellow or red that it is, greens and violets do not count.',
  formula: 'a palette with paints of at least one of yellow, red and blue, and none of another',
  source: 'common practice, no source',
  check: (plan, { palette }) => {
    if (!palette || !plan.palette) return [];
    // A paint of which nothing is known may be the one that is missing.
    if (palette.paints.some(({ family }) => family === undefined)) return [];
    const missing = palette.primaries.filter(
      ({ lacks, undecided }) => lacks.length === 2 && undecided.length === 0,
    );
    if (missing.length === 0 || missing.length > 3 - FEWEST_PRIMARIES) return [];
    return [
      {
        message: t('The palette has {0}.', inWords(missing.map(({ primary }) => noneOf(primary)))),
        advice: t(
          'Add {0}, or leave it so if the picture is to keep to the other half of the wheel.',
          inWords(missing.map(({ primary }) => oneOf(primary))),
        ),
        location: plan.palette.location,
      },
    ];
  },
};

type Primary = PrimaryMeasure['primary'];

function noneOf(primary: Primary): string {
  switch (primary) {
    case 'yellow':
      return t('no yellow');
    case 'red':
      return t('no red');
    case 'blue':
      return t('no blue');
  }
}

function oneOf(primary: Primary): string {
  switch (primary) {
    case 'yellow':
      return t('a yellow');
    case 'red':
      return t('a red');
    case 'blue':
      return t('a blue');
  }
}
