import { t } from '../../../grammar/index.js';
import type { Measures } from '../../measure/measures.js';
import type { Plan } from '../../plan/plan.js';
import { stepEdit } from '../edits.js';
import type { Rule, RuleFinding } from '../finding.js';
import { type ContestedTones, contestedTones, LEADING_BY } from '../seen/leading-tone.js';
import { repaintingOf } from '../advice/repainting.js';
import { stepsInWords, toneWords, toStep } from '../words/tones.js';
import { enoughPercent, heading, percent, quoted } from '../words/words.js';
import { capitalised } from '../../plan/problems.js';

export const noLeadingTone: Rule = {
  id: 'no leading tone',
  severity: 'hint',
  chapter: 'values',
  limit: { value: LEADING_BY, unit: 'part', of: 'the picture' },
  perObject: false,
  summary: 'Two tones share the picture evenly, so that neither leads.',
  explanation:
    'Seen small or with half-closed eyes a picture is two or three flat tones, and one of them should rule. Two that hold about the same part of nearly all of it pull it in two. Where the value budget itself sets two groups that near each other it is meant, and nothing is said.',
  formula:
    '|share of one group - share of another| < limit, where together they hold more than 80 % of the picture',
  source:
    'common practice, no source; subordination in A. W. Dow, Composition (9th ed. 1914), is its reason, and “two thirds light, one third dark”, which H. Speed quotes as an old rule without holding to it (The Practice and Science of Drawing, 1913), keeps it',
  check: (plan, measures, limit) => {
    if (!plan.objects.some(({ index }) => (measures.objects[index]?.share ?? 0) > 0)) return [];
    const shares = measures.values.groups.map(({ share }) => share);
    return contestedTones(plan, shares, limit).flatMap((pair) => finding(plan, measures, pair, limit));
  },
};

function finding(
  plan: Plan,
  measures: Measures,
  { larger, smaller }: ContestedTones,
  limit: number,
): readonly RuleFinding[] {
  const { groups } = measures.values;
  const more = groups[larger];
  const less = groups[smaller];
  if (!more || !less) return [];
  const figures = [
    capitalised(toneWords(more).words),
    percent(more.share),
    toneWords(less).words,
    percent(less.share),
    percent(limit),
  ] as const;
  return [
    {
      message: toneWords(more).many
        ? t(
            '{0} hold {1} of the picture and {2} {3}: neither leads. One should be ahead by {4} or more.',
            ...figures,
          )
        : t(
            '{0} holds {1} of the picture and {2} {3}: neither leads. One should be ahead by {4} or more.',
            ...figures,
          ),
      remedy: () => advice(plan, measures, { larger, smaller }, limit),
      location: plan.valueBudget?.location ?? plan.scale.location ?? heading(plan),
    },
  ];
}

function advice(
  plan: Plan,
  measures: Measures,
  { larger, smaller }: ContestedTones,
  limit: number,
): Pick<RuleFinding, 'advice' | 'fix'> {
  const repainting = repaintingOf(plan, measures);
  const change = repainting.smallestChange((tones) => contestedTones(plan, tones.groups, limit).length === 0);
  const object = change && plan.objects[change.object];
  const { groups } = measures.values;
  const more = groups[larger];
  const less = groups[smaller];
  if (!more || !less) return {};
  if (change && object) {
    const after = repainting.after(change).groups;
    const [first, second] = [larger, smaller].sort((a, b) => (after[b] ?? 0) - (after[a] ?? 0));
    const lead = toneWords(groups[first ?? larger] ?? more);
    const told = [
      quoted(object.name),
      stepsInWords(change.to - change.from),
      change.to,
      lead.words,
      percent(after[first ?? 0] ?? 0),
      percent(after[second ?? 0] ?? 0),
    ] as const;
    return {
      advice: leading(change.to > change.from, lead.many, told),
      fix: {
        title: toStep(quoted(object.name), change.to),
        edits: stepEdit(object, change.to),
      },
    };
  }
  // What moves from one to the other counts on both sides; told so that it is enough.
  const missing = (limit - (more.share - less.share)) / 2;
  return {
    advice: t(
      'Take {0} of the picture from {1} to {2}, or let the two have less of it.',
      enoughPercent(missing),
      toneWords(less).words,
      toneWords(more).words,
    ),
  };
}

/** @param told the object, by how many steps and to which one, and what leads then with which share to which */
function leading(
  isUp: boolean,
  isMany: boolean,
  told: readonly [string, string, number, string, string, string],
): string {
  if (isUp)
    return isMany
      ? t('Take {0} {1} up, to step {2}: then {3} lead with {4} to {5}.', ...told)
      : t('Take {0} {1} up, to step {2}: then {3} leads with {4} to {5}.', ...told);
  return isMany
    ? t('Take {0} {1} down, to step {2}: then {3} lead with {4} to {5}.', ...told)
    : t('Take {0} {1} down, to step {2}: then {3} leads with {4} to {5}.', ...told);
}
