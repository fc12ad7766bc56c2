import type { StatementKind } from '../../grammar/index.js';
import type { Plan } from '../plan/plan.js';
import type { Memory } from './memory.js';

/** Parts of a plan that are words to the painter alone: nothing is measured of them, and no rule looks at them. */
const WORDS = ['concept', 'mood', 'avoids', 'notes'] as const satisfies readonly (keyof Plan)[];
const SAYING: ReadonlySet<StatementKind> = new Set(['concept', 'mood', 'avoid', 'note']);

const isWords: ReadonlySet<string> = new Set(WORDS);

/** All of a plan but its words. */
export type WordlessPlan = Omit<Plan, (typeof WORDS)[number]>;

/** The plan without its words, the same one as long as nothing else in it is another. */
export function keptWordless(plan: Plan, memory: Memory): WordlessPlan {
  const inputs: unknown[] = [];
  for (const [part, value] of Object.entries(plan))
    if (!isWords.has(part) && part !== 'statements') inputs.push(part, value);
  for (const node of plan.statements) if (!SAYING.has(node.statement.kind)) inputs.push(node);
  return memory.recall('plan', '', inputs, () => plan);
}
