import { t } from '../../grammar/index.js';
import { isForAll } from '../plan/exceptions.js';
import type { Allowance, Plan } from '../plan/plan.js';
import type { Rule, RuleFinding } from './finding.js';
import { cueOpening } from './words/cues.js';
import { quoted } from './words/words.js';

/** A kind of thing for which alone a rule can be set aside. */
export interface ExceptionKind {
  readonly one: 'object' | 'lead' | 'cue';
  /** What is written behind `for`, with a word in capitals for what the painter fills in. */
  readonly form: 'NAME' | '"CUE"';
}

/** What a rule can be set aside for, but the whole plan; none for a rule about the picture as a whole. */
export function exceptionKinds({ perObject, perLead, perCue }: Rule): readonly ExceptionKind[] {
  return [
    ...(perObject ? [{ one: 'object', form: 'NAME' } as const] : []),
    ...(perLead === true ? [{ one: 'lead', form: 'NAME' } as const] : []),
    ...(perCue === true ? [{ one: 'cue', form: '"CUE"' } as const] : []),
  ];
}

/** Whether an exception of the plan sets a finding of a rule aside. */
export function setsAside(
  allowance: Allowance,
  rule: Rule,
  { objects = [], leads = [], cue }: Pick<RuleFinding, 'objects' | 'leads' | 'cue'>,
): boolean {
  if (allowance.rule !== rule.id) return false;
  if (isForAll(allowance)) return true;
  return exceptionKinds(rule).some(({ one }) => {
    switch (one) {
      case 'object':
        return allowance.objects.some((object) => objects.includes(object));
      case 'lead':
        return allowance.leads.some((lead) => leads.includes(lead));
      case 'cue':
        return cue !== undefined && allowance.cues.includes(cue);
    }
  });
}

/** Whether an exception is for single things and the rule is about none of them. */
export function isTooNarrow(allowance: Allowance, rule: Rule): boolean {
  if (isForAll(allowance)) return false;
  return !exceptionKinds(rule).some(({ one }) => allowance[`${one}s`].length > 0);
}

/** `` `a`, `b` and the cue “the smell of rain” `` as items; none for an exception for the whole plan. */
export function namesSetAside(plan: Plan, { objects, leads, cues }: Allowance): readonly string[] {
  return [
    ...objects.flatMap((object) => plan.objects[object]?.name ?? []).map(quoted),
    ...leads.flatMap((lead) => plan.leads[lead]?.name ?? []).map(quoted),
    ...cues.flatMap((cue) => plan.cues[cue] ?? []).map((cue) => t('the cue “{0}”', cueOpening(cue.value))),
  ];
}
