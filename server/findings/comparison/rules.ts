import type { Allowance, Plan, RuleSetting } from '../../plan/plan.js';
import { inWords } from '../../plan/problems.js';
import { standing } from '../check.js';
import type { Finding } from '../finding.js';
import { limitForm, quoted } from '../words/words.js';
import {
  type Change,
  type Compared,
  byKey,
  calledIn,
  changeOf,
  comeAndGone,
  nowCalled,
  otherNow,
  places,
} from './change.js';
import { said } from './wording.js';

/**
 * Findings that are gone and those that are new. Where they stand in the text makes no difference: they are known by
 * rule and names.
 */
export function findingChanges({ earlier, later, objects }: Compared): readonly Change[] {
  const keyBefore = (finding: Finding): string =>
    findingKey(finding, earlier.plan, nowCalled({ earlier, later, objects }));
  const keyNow = (finding: Finding): string => findingKey(finding, later.plan, calledIn(later.plan));
  const [before, now] = [standing(earlier.findings), standing(later.findings)];
  return [
    ...unmatched(now, keyNow, before, keyBefore).map(({ message, location, objects: about }): Change => ({
      topic: 'findings',
      kind: 'new',
      message: `New: ${message}`,
      ...objectOf(about, later.plan),
      later: location,
    })),
    ...unmatched(before, keyBefore, now, keyNow).map(({ message, location, objects: about }): Change => ({
      topic: 'findings',
      kind: 'gone',
      message: `No longer found: ${message}`,
      ...objectOf(about, earlier.plan),
      earlier: location,
    })),
  ];
}

function objectOf([first]: readonly number[], { objects }: Plan): Pick<Change, 'object'> {
  const name = first === undefined ? undefined : objects[first]?.name;
  return name === undefined ? {} : { object: name };
}

/** Those of one list that have no partner in the other; of findings of one key as many as there are more. */
function unmatched(
  findings: readonly Finding[],
  keyOf: (finding: Finding) => string,
  others: readonly Finding[],
  keyOfOther: (finding: Finding) => string,
): readonly Finding[] {
  const left = new Map<string, number>();
  for (const other of others) left.set(keyOfOther(other), (left.get(keyOfOther(other)) ?? 0) + 1);
  return findings.filter((finding) => {
    const count = left.get(keyOf(finding)) ?? 0;
    left.set(keyOf(finding), count - 1);
    return count <= 0;
  });
}

function findingKey(
  { rule, objects, leads = [], cue }: Finding,
  plan: Plan,
  nameOf: (object: number) => string,
): string {
  return JSON.stringify([
    rule,
    objects.map(nameOf).sort(),
    leads.map((lead) => plan.leads[lead]?.key ?? '').sort(),
    cue === undefined ? '' : plan.cues[cue]?.value,
  ]);
}

/** What differs in the rules that are set aside, and in how they are set. */
export function ruleChanges({ earlier, later, objects }: Compared): readonly Change[] {
  const [before, now] = [earlier.plan, later.plan];
  const about = (allowances: readonly Allowance[], plan: Plan, nameOf: (object: number) => string) =>
    allowances.map((allowance) => ({ ...allowance, about: aboutWords(allowance, plan, nameOf) }));
  const aside = byKey(
    about(before.allowances, before, nowCalled({ earlier, later, objects })),
    about(now.allowances, now, calledIn(now)),
    (allowance) => `${allowance.rule} ${allowance.about}`,
  );
  const set = byKey(before.ruleSettings, now.ruleSettings, ({ rule }) => rule);
  return [
    ...comeAndGone('rules', aside, {
      new: (allowance) =>
        `The rule ${quoted(allowance.rule)} is set aside now${allowance.about}, because ${said(allowance.reason)}.`,
      gone: (allowance) => `The rule ${quoted(allowance.rule)} is no longer set aside${allowance.about}.`,
    }),
    ...aside.both.flatMap(([old, allowance]) =>
      otherNow(
        'rules',
        [old.reason, allowance.reason],
        (reason, was) =>
          `The rule ${quoted(allowance.rule)} is set aside because ${said(reason)} instead of ${said(was)}.`,
        places(old.location, allowance.location),
      ),
    ),
    ...[
      ...set.both,
      ...set.gone.map((old) => [old, undefined] as const),
      ...set.come.map((setting) => [undefined, setting] as const),
    ].flatMap(([old, setting]) => {
      const rule = quoted((setting ?? old)?.rule ?? '');
      return changeOf(
        'rules',
        [old && settingText(old), setting && settingText(setting)],
        {
          new: (text) => `The rule ${rule} is set now: ${text}.`,
          gone: (text) => `The rule ${rule} is as usual again; it was set: ${text}.`,
          changed: (text, was) => `The rule ${rule} is set: ${text} instead of ${was}.`,
        },
        places(old?.location, setting?.location),
      );
    }),
  ];
}

function aboutWords(
  { objects, leads, cues }: Allowance,
  plan: Plan,
  nameOf: (object: number) => string,
): string {
  const names = [
    ...objects.map((object) => quoted(nameOf(object))),
    ...leads.map((lead) => quoted(plan.leads[lead]?.name ?? '')),
    ...cues.map((cue) => said(plan.cues[cue]?.value ?? '')),
  ];
  return names.length === 0 ? '' : ` for ${inWords(names)}`;
}

function settingText({ severity, limit }: RuleSetting): string {
  const parts = [severity, limit && limitForm(limit)].filter((part) => part !== undefined);
  return parts.length === 0 ? 'as usual' : parts.join(', ');
}
