import { t } from '../../../grammar/index.js';
import type { Rule, RuleFinding } from '../finding.js';
import type { Measures } from '../../measure/measures.js';
import type { Plan } from '../../plan/plan.js';
import { exceeds } from '../limits.js';
import { isCheaper } from '../advice/costs.js';
import { changeOf, recolourings, recolouringFix, type Recolouring } from '../advice/recolouring.js';
import { roleWords } from '../words/colours.js';
import { enoughPercent, heading, objectShare, percent, quoted, sharesApart } from '../words/words.js';

export const colourOutweighed: Rule = {
  id: 'colour outweighed',
  severity: 'hint',
  chapter: 'colour',
  perObject: false,
  summary: 'Another colour role covers more of the picture than the dominant colour.',
  explanation:
    'A picture has one colour that it is “in”, and that is the colour it has most of. When the complement or the neutrals cover more, they set the key, whatever the plan calls them.',
  formula: 'visible area of another role > visible area of the dominant role > 0',
  source: 'common practice, no source',
  check: (plan, measures): readonly RuleFinding[] => {
    const { roles } = measures.colours;
    const dominant = roles.find(({ role }) => role === 'dominant');
    const [most] = [...roles].sort((one, other) => other.share - one.share);
    if (!dominant || !most || dominant.share === 0 || !exceeds(most.share, dominant.share)) return [];
    const [largest] = most.objects;
    const object = largest && plan.objects[largest.object];
    const [less, more] = sharesApart(dominant.share, most.share);
    return [
      {
        message:
          t(
            'The dominant colour covers {0} of the picture, and {1} more: {2}.',
            less,
            roleWords(most.role),
            more,
          ) + (largest ? ` ${t('Most of that is {0}.', objectShare(plan, largest))}` : ''),
        ...tryOut(plan, measures, most.share, dominant.share),
        location:
          plan.colours.find(({ role }) => role === 'dominant')?.location ??
          plan.canvas.ground.location ??
          heading(plan),
        related: object
          ? [
              {
                location: object.location,
                message: t('{0} carries {1}.', quoted(object.name), roleWords(most.role)),
              },
            ]
          : [],
      },
    ];
  },
};

function tryOut(
  plan: Plan,
  measures: Measures,
  most: number,
  dominant: number,
): Pick<RuleFinding, 'advice' | 'fix'> {
  const recolouring = smallestThatHelps(plan, measures);
  const fix = recolouring && recolouringFix(plan, recolouring);
  const name = recolouring && plan.colours[recolouring.colour]?.name;
  if (!recolouring || !fix || name === undefined) {
    return {
      advice: t(
        'Bring more than {0} of the picture from the one to the other, or exchange the two roles.',
        enoughPercent((most - dominant) / 2),
      ),
    };
  }
  return {
    advice: t(
      'Give {0} ({1}) the colour {2}, or exchange the two roles.',
      quoted(recolouring.object.name),
      percent(recolouring.share),
      quoted(name),
    ),
    fix,
  };
}

function smallestThatHelps(plan: Plan, measures: Measures): Recolouring | undefined {
  const { roles, budget } = measures.colours;
  const helps = (one: Recolouring): boolean => {
    if (one.to !== 'dominant' || one.from === undefined) return false;
    const after = roles.map(({ role, share }) => ({ role, share: share + changeOf(one, role) }));
    const dominant = after.find(({ role }) => role === 'dominant')?.share ?? 0;
    if (after.some(({ share }) => exceeds(share, dominant))) return false;
    return !budget.some(
      ({ key, within, difference, tolerance, location }) =>
        location && within && exceeds(Math.abs(difference + changeOf(one, key)), tolerance),
    );
  };
  let best: Recolouring | undefined;
  for (const one of recolourings(plan, measures, helps)) {
    if (!best || isCheaper([one.share], [best.share])) best = one;
  }
  return best;
}
