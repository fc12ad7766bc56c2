import type { Node, NodeOf, RuleLimitTerm } from '../../grammar/index.js';
import type { ObjectIndex } from './objects.js';
import type { Allowance, RuleSetting } from './plan.js';
import { locate, type Problems } from './problems.js';
import { every, lastOf } from './select.js';
import { partOfWhole } from './shares.js';

/** No two directions lie further apart, in degrees. */
const HALF_TURN = 180;

/** What the plan sets aside, with reasons: for the whole plan, or for objects named there or around it. */
export function resolveAllowances(nodes: readonly Node[], objects: ObjectIndex): readonly Allowance[] {
  const general = every(nodes, 'allow').flatMap((node) => {
    const { names } = node.statement;
    const named = objects.findAll(names, node);
    // With names that nothing has it is not the whole plan that is meant.
    return names.length > 0 && named.length === 0 ? [] : allowance(node, named);
  });
  const own = objects.nodes.flatMap((object, index) =>
    every(object.children, 'allow').map((node) =>
      allowance(node, [...new Set([index, ...objects.findAll(node.statement.names, node)])]),
    ),
  );
  return [...general, ...own].sort((a, b) => a.location.line - b.location.line);
}

function allowance(node: ReturnType<typeof every<'allow'>>[number], objects: readonly number[]): Allowance {
  const { rule, because } = node.statement;
  return { rule: words(rule.text), reason: because.value, objects, location: locate(node, rule) };
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
    ? 'An angle between two hues or lines lies between 0 and 180 degrees.'
    : 'A limit is not less than nothing.';
  problems.error('number out of range', message, location);
  return undefined;
}

function words(text: string): string {
  return text.toLowerCase().split(/\s+/).join(' ');
}
