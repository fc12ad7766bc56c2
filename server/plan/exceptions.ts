import type { Node } from '../../grammar/index.js';
import type { ObjectIndex } from './objects.js';
import type { Allowance, RuleSetting } from './plan.js';
import { locate } from './problems.js';
import { every } from './select.js';

/** What the plan sets aside, with reasons: for the whole plan, or for objects named there or around it. */
export function resolveAllowances(nodes: readonly Node[], objects: ObjectIndex): readonly Allowance[] {
  const general = every(nodes, 'allow').map((node) =>
    allowance(node, objects.findAll(node.statement.names, node)),
  );
  const own = objects.nodes.flatMap((object, index) =>
    every(object.children, 'allow').map((node) => allowance(node, [index])),
  );
  return [...general, ...own].sort((a, b) => a.location.line - b.location.line);
}

function allowance(node: ReturnType<typeof every<'allow'>>[number], objects: readonly number[]): Allowance {
  const { rule, because } = node.statement;
  return { rule: words(rule.text), reason: because.value, objects, location: locate(node, rule) };
}

export function resolveRuleSettings(nodes: readonly Node[]): readonly RuleSetting[] {
  return every(nodes, 'rule').map((node) => {
    const { rule, severity, limit } = node.statement;
    return {
      rule: words(rule.text),
      ...(severity ? { severity: severity.choice } : {}),
      ...(limit ? { limit: limit.percent / 100 } : {}),
      location: locate(node, rule),
    };
  });
}

function words(text: string): string {
  return text.toLowerCase().split(/\s+/).join(' ');
}
