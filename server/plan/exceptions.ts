import {
  nameKey,
  type Node,
  type NodeOf,
  type RuleLimitTerm,
  type Sentence,
  t,
} from '../../grammar/index.js';
import type { AllowNode, ObjectIndex } from './objects.js';
import type { Allowance, Cue, Lead, RuleSetting } from './plan.js';
import { locate, type Problems } from './problems.js';
import { every, lastOf } from './select.js';
import { partOfWhole } from './shares.js';

/** No two directions lie further apart, in degrees. */
const HALF_TURN = 180;

/** What exceptions can be for. */
export interface Exceptable {
  readonly objects: ObjectIndex;
  readonly leads: readonly Lead[];
  readonly cues: readonly Cue[];
}

/**
 * What the plan sets aside, with reasons: for the whole plan, or for what is named there or for the object around it.
 */
export function resolveAllowances(
  nodes: readonly Node[],
  plan: Exceptable,
  problems: Problems,
): readonly Allowance[] {
  const leadNames = every(nodes, 'lead').map(({ statement }) => statement.name.text);
  const of = (node: AllowNode): Named => namedBy(node, plan, leadNames, problems);
  const general = every(nodes, 'allow').flatMap((node) => {
    const named = of(node);
    // With names that nothing has it is not the whole plan that is meant.
    return isNarrowed(node) && isForAll(named) ? [] : allowance(node, named);
  });
  const own: Allowance[] = [];
  for (let index = 0; index < plan.objects.nodes.length; index++) {
    for (const node of plan.objects.allowsUnder(index)) {
      const named = of(node);
      own.push(allowance(node, { ...named, objects: [...new Set([index, ...named.objects])] }));
    }
  }
  // In the order of the text, those of a plan that this one builds on last.
  return [...general, ...own].sort(
    ({ location: a }, { location: b }) =>
      Number(a.file !== undefined) - Number(b.file !== undefined) || a.line - b.line,
  );
}

/** Whether it is for the whole plan. */
export function isForAll({ objects, leads, cues }: Named): boolean {
  return objects.length + leads.length + cues.length === 0;
}

type Named = Pick<Allowance, 'objects' | 'leads' | 'cues'>;

function isNarrowed({ statement: { names, cue } }: AllowNode): boolean {
  return names.length > 0 || cue !== undefined;
}

/** An object and a lead may have one name; it is for the rule to know which of them it is about. */
function namedBy(
  node: AllowNode,
  { objects, leads, cues }: Exceptable,
  leadNames: readonly string[],
  problems: Problems,
): Named {
  const { names, cue } = node.statement;
  const keysOfLeads = new Set(leadNames.map(nameKey));
  for (const name of names) {
    if (objects.indexOf(name) !== undefined || keysOfLeads.has(nameKey(name.text))) continue;
    const known = [...objects.nodes.map(({ statement }) => statement.name.text), ...leadNames];
    const what = leadNames.length > 0 ? 'object or lead' : 'object';
    problems.unknownName(what, name.text, known, locate(node, name));
  }
  return {
    objects: names.flatMap((name) => objects.indexOf(name) ?? []),
    leads: names.flatMap((name) => indicesWhere(leads, ({ key }) => key === nameKey(name.text))),
    cues: cue ? cuesThatBegin(cue, node, cues, problems) : [],
  };
}

function cuesThatBegin(
  beginning: Sentence,
  node: AllowNode,
  cues: readonly Cue[],
  problems: Problems,
): readonly number[] {
  const wanted = inOneForm(beginning.value);
  const begun = indicesWhere(cues, ({ value }) => wanted !== '' && inOneForm(value).startsWith(wanted));
  if (begun.length === 0) {
    const message = t(
      'No cue of this plan begins with these words. Give the first words of the cue as it is written.',
    );
    problems.error('unknown name', message, locate(node, beginning));
  }
  return begun;
}

function indicesWhere<T>(items: readonly T[], isMeant: (item: T) => boolean): readonly number[] {
  return items.flatMap((item, index) => (isMeant(item) ? index : []));
}

/** Capitals, blanks and the way an accent is stored make no difference. */
function inOneForm(sentence: string): string {
  return words(sentence.normalize('NFC').trim());
}

function allowance(node: AllowNode, named: Named): Allowance {
  const { rule, because } = node.statement;
  return { rule: words(rule.text), reason: because.value, ...named, location: locate(node, rule) };
}

/** How the plan changes single rules; of several lines for one rule the last counts. */
export function resolveRuleSettings(nodes: readonly Node[], problems: Problems): readonly RuleSetting[] {
  const byRule = new Map<string, (Node & NodeOf<'rule'>)[]>();
  for (const node of every(nodes, 'rule')) {
    const rule = words(node.statement.rule.text);
    byRule.set(rule, [...(byRule.get(rule) ?? []), node]);
  }
  return [...byRule].flatMap(([rule, several]) => {
    const node = lastOf(several, problems);
    return node ? setting(rule, node, problems) : [];
  });
}

function setting(rule: string, node: Node & NodeOf<'rule'>, problems: Problems): RuleSetting {
  const { rule: term, severity, limit: stated } = node.statement;
  const limit = stated && limitOf(stated, node, problems);
  return {
    rule,
    ...(severity ? { severity: severity.choice } : {}),
    ...(limit ? { limit } : {}),
    location: locate(node, term),
  };
}

function limitOf(
  { value, unit, ...span }: RuleLimitTerm,
  node: Pick<Node, 'line'>,
  problems: Problems,
): RuleSetting['limit'] {
  const location = locate(node, span);
  if (unit === 'percent') {
    const part = partOfWhole({ percent: value, ...span }, node, problems);
    return part === undefined ? undefined : { value: part, unit: 'part', location };
  }
  const degrees = unit === 'degrees';
  if (value >= 0 && (!degrees || value <= HALF_TURN)) return { value, unit, location };
  const message = degrees
    ? t('An angle between two hues or lines lies between 0 and 180 degrees.')
    : t('A limit is not less than nothing.');
  problems.error('number out of range', message, location);
  return undefined;
}

function words(text: string): string {
  return text.toLowerCase().split(/\s+/).join(' ');
}
