import {
  statementsIn,
  type Block,
  type Node,
  type StatementEntry,
  type StatementKind,
  type SyntaxTree,
} from '../../grammar/index.js';

/** Statements of which a block may well hold several. */
const repeatable: ReadonlySet<StatementKind> = new Set([
  'object',
  'colour definition',
  'budget',
  'lead',
  'cue',
  'avoid',
  'note',
  'allow',
  'rule',
  'sitting',
  'away',
  'group',
  'shape',
  'edges',
  'paint',
  'task',
] as const);

/** What an object needs to be drawn and measured. */
const needed: readonly StatementKind[] = ['shape', 'at', 'colour', 'value', 'plane'];

/** What the plan goes on with once it has a canvas. */
const mainstay: readonly StatementKind[] = ['object', 'colour definition'];

/** What stands in few plans, or is thought of last. */
const rare: ReadonlySet<StatementKind> = new Set(['mahl', 'based on', 'without', 'note'] as const);

/**
 * The statements that can stand on a line of `block`, the likeliest first: what the block still needs, then the order
 * of the reference, and last what it has already and what is rare.
 */
export function likeliestFirst(tree: SyntaxTree, block: Block, line: number): readonly StatementEntry[] {
  const given = new Set(
    nodesOf(tree, block, line).flatMap((node) => (node.line === line ? [] : [node.statement.kind])),
  );
  const first = block === 'object' ? needed : block === 'plan' && given.has('canvas') ? mainstay : [];
  const rank = ({ kind }: StatementEntry): number => {
    if (given.has(kind) && !repeatable.has(kind)) return first.length + 2;
    if (rare.has(kind)) return first.length + 1;
    const place = given.has(kind) && block === 'object' ? -1 : first.indexOf(kind);
    return place < 0 ? first.length : place;
  };
  return statementsIn(block).toSorted((one, other) => rank(one) - rank(other));
}

/** What stands in the block that the line is in, or would go on with. */
function nodesOf({ nodes }: SyntaxTree, block: Block, line: number): readonly Node[] {
  if (block === 'plan') return nodes;
  let found: readonly Node[] = [];
  let level = nodes;
  for (;;) {
    const node = level.findLast((candidate) => candidate.line <= line);
    if (node === undefined) return found;
    if (node.statement.kind === block) found = node.children;
    level = node.children;
  }
}
