import type { Node, StatementKind, SyntaxTree } from '../../../grammar/index.js';
import type { ReadFile } from '../plan.js';
import { locate, type Problems } from '../problems.js';
import { every, type FaultyLines } from '../select.js';
import { type Bases, readBases } from './bases.js';
import { leaveOut, withoutWhatRefers } from './left-out.js';
import { built } from './merge.js';

/** A plan with all that it builds on, as if it stood in one text: each statement says in which file it stands. */
export interface Whole {
  readonly nodes: readonly Node[];
  readonly bases: Bases;
  readonly faultyLines: FaultyLines;
  /** Names, and kinds of statements, that lines were to give which can't be read. */
  readonly lostNames: readonly string[];
  readonly lostKinds: ReadonlySet<StatementKind>;
}

/** A plan and what it builds on. Of a plan that builds on nothing these are its own statements, the same objects. */
export function wholeOf(tree: SyntaxTree, readFile: ReadFile | undefined, problems: Problems): Whole {
  const bases = readBases(tree, readFile, problems);
  const { plans } = bases;
  const without = every(tree.nodes, 'without');
  if (!bases.location && !tree.lostKinds.has('based on')) {
    for (const node of without) {
      problems.error(
        'unknown name',
        'This plan builds on no other, so there is nothing to leave out. Say first what it is `based on`.',
        locate(node, node.statement),
      );
    }
  }
  const trees = [tree, ...plans.map((plan) => plan.tree)];
  return {
    nodes: mergedOnto(tree.nodes, bases, problems),
    bases,
    faultyLines: new Map(
      trees.map(({ problems: faults }, index) => [
        index === 0 ? undefined : plans[index - 1]?.file,
        new Set(faults.map(({ line }) => line)),
      ]),
    ),
    lostNames: plans.length === 0 ? tree.lostNames : trees.flatMap(({ lostNames }) => lostNames),
    lostKinds:
      plans.length === 0 ? tree.lostKinds : new Set(trees.flatMap(({ lostKinds }) => [...lostKinds])),
  };
}

/** From the farthest base on, each plan goes on with what is there so far. */
function mergedOnto(own: readonly Node[], { plans }: Bases, problems: Problems): readonly Node[] {
  const layers = [{ file: undefined, nodes: own }, ...plans];
  return layers.reduceRight<{ readonly nodes: readonly Node[]; readonly file?: string }>(
    (base, { file, nodes }, index) => {
      if (index === plans.length) return { nodes, ...(file === undefined ? {} : { file }) };
      const baseFile = base.file ?? '';
      const remaining = leaveOut(base.nodes, every(nodes, 'without'), baseFile, problems);
      const merged = built(remaining.nodes, nodes);
      return {
        nodes: withoutWhatRefers(merged, remaining.taken, file, baseFile, problems),
        ...(file === undefined ? {} : { file }),
      };
    },
    { nodes: [] },
  ).nodes;
}
