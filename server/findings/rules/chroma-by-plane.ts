import { t } from '../../../grammar/index.js';
import type { Measures } from '../../measure/measures.js';
import type { Plan } from '../../plan/plan.js';
import { plainNumber } from '../../plan/problems.js';
import type { Remedy, Rule, RuleFinding } from '../finding.js';
import { type Greying, greyingWords, leastGreying } from '../advice/greying.js';
import { exceeds } from '../limits.js';
import { planeWords } from '../words/tones.js';
import { quoted } from '../words/words.js';

/** Less of the picture than this is an accent in its plane, not the plane. */
const LEAST_SHARE = 0.05;

interface PlaneChroma {
  readonly plane: 'background' | 'middle' | 'foreground';
  readonly chroma: number;
}

export const chromaByPlane: Rule = {
  id: 'chroma by plane',
  severity: 'hint',
  chapter: 'colour',
  limit: { value: 1, unit: 'number', of: 'Munsell chroma' },
  perObject: false,
  summary: 'The background is stronger in chroma than a nearer plane, in a plan whose planes go by distance.',
  explanation:
    'Air between us and what is far off takes chroma from it, so a background of stronger colour than what lies before it comes forward. It is only asked of a plan that says `planes lighten with distance` or `darken`, and of planes of which what has a colour takes 5 % of the picture or more. Means are of what is seen and has a colour, weighed by area, as painted.',
  formula: 'mean chroma of the background - mean chroma of a nearer plane > limit',
  source: 'common practice, no source',
  check: (plan, measures, limit): readonly RuleFinding[] => {
    const { trend } = plan.scale;
    if (!trend) return [];
    const chromas = planeChromas(plan, measures);
    const pair = wrongPair(chromas, limit);
    if (!pair) return [];
    const { background, nearer } = pair;
    return [
      {
        message: t(
          'The background has a mean chroma of {0} and the {1} one of {2}, though air takes chroma from what is far off; up to {3} more is let pass.',
          plainNumber(background.chroma, 1),
          planeWords(nearer.plane),
          plainNumber(nearer.chroma, 1),
          plainNumber(limit, 1),
        ),
        remedy: () => tryOut(plan, measures, limit),
        location: trend.location,
      },
    ];
  },
};

function planeChromas(plan: Plan, measures: Measures): readonly PlaneChroma[] {
  return measures.planes.flatMap(({ plane, chroma }) =>
    chroma === undefined || !exceeds(colouredShare(plan, measures, plane), LEAST_SHARE)
      ? []
      : { plane, chroma },
  );
}

/** The part of the picture that is seen of what in a plane has a colour. */
function colouredShare({ objects }: Plan, measures: Measures, plane: PlaneChroma['plane']): number {
  return objects
    .filter((object) => object.plane === plane && object.chroma)
    .reduce((sum, { index }) => sum + (measures.objects[index]?.share ?? 0), 0);
}

/** The background and the nearer plane that is weakest, when that is too weak. */
function wrongPair(
  chromas: readonly PlaneChroma[],
  limit: number,
): { readonly background: PlaneChroma; readonly nearer: PlaneChroma } | undefined {
  const background = chromas.find(({ plane }) => plane === 'background');
  const [nearer] = chromas
    .filter(({ plane }) => plane !== 'background')
    .sort((one, other) => one.chroma - other.chroma);
  if (!background || !nearer || !exceeds(background.chroma - nearer.chroma, limit)) return undefined;
  return { background, nearer };
}

/** The object of the background that brings most chroma into the picture, greyed the least that mends it. */
function tryOut(plan: Plan, measures: Measures, limit: number): Remedy {
  const weightOf = (index: number): number =>
    (measures.objects[index]?.share ?? 0) * (measures.hues.objects[index]?.chroma ?? 0);
  const farther = plan.objects
    .filter(({ index, plane }) => plane === 'background' && weightOf(index) > 0)
    .sort((one, other) => weightOf(other.index) - weightOf(one.index));
  for (const { index, name } of farther.slice(0, MOST_TRIED)) {
    const greying = leastGreying(plan, measures, index, (one) => {
      const after = planeChromas(plan, measures).map(({ plane, chroma }) => ({
        plane,
        chroma: chroma + changeIn(plan, measures, plane, one),
      }));
      return !wrongPair(after, limit);
    });
    if (greying) {
      return {
        advice:
          greying.name === quoted(name)
            ? `${greyingWords(greying)}.`
            : t(
                'Lower the chroma of {0}, the colour of {1}, from {2} to {3}.',
                greying.name,
                quoted(name),
                plainNumber(greying.from, 1),
                plainNumber(greying.to, 1),
              ),
        fix: greying.fix,
      };
    }
  }
  return { advice: t('Grey the colours of the background, or strengthen what lies before it.') };
}

const MOST_TRIED = 3;

/** By how much the mean chroma of a plane changes. */
function changeIn(
  plan: Plan,
  measures: Measures,
  plane: PlaneChroma['plane'],
  { chromaOf }: Greying,
): number {
  let change = 0;
  for (const { index, plane: own, chroma } of plan.objects) {
    if (own === plane && chroma)
      change += (measures.objects[index]?.share ?? 0) * (chromaOf(index) - chroma.reached);
  }
  const area = colouredShare(plan, measures, plane);
  return area > 0 ? change / area : 0;
}
