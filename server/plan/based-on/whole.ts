import { type Node, type StatementKind, type SyntaxTree, t } from '../../../grammar/index.js';
import type { ReadFile } from '../plan.js';
import { locate, type Problems } from '../problems.js';
import { every, type FaultyLines } from '../select.js';
import { type Bases, readBases } from './bases.js';
import { leaveOut, withoutWhatRefers } from './left-out.js';
import { built } from './merge.js';

/** One of the texts that a plan is made of. */
interface PlanText {
  /** Missing for the plan itself, else its path from there. */
  readonly file?: string;
  readonly tree: SyntaxTree;
  readonly nodes: readonly Node[];
}

/** A plan with all that it builds on, as if it stood in one text: each statement says in which file it stands. */
export interface Whole {
  readonly nodes: readonly Node[];
  /** Missing for a plan that builds on none. */
  readonly bases: Bases | undefined;
  /** The plan itself, then what it builds on, the nearest first. */
  readonly texts: readonly PlanText[];
  readonly faultyLines: FaultyLines;
  /** Names, and kinds of statements, that lines were to give which can't be read. */
  readonly lostNames: readonly string[];
  readonly lostKinds: ReadonlySet<StatementKind>;
}

/** A plan and what it builds on. Of a plan that builds on nothing these are its own statements, the same objects. */
export function wholeOf(tree: SyntaxTree, readFile: ReadFile | undefined, problems: Problems): Whole {
  const bases = readBases(tree, readFile, problems);
  if (!bases && !tree.lostKinds.has('based on')) {
    for (const node of every(tree.nodes, 'without')) {
      problems.error(
        'unknown name',
        t('This plan builds on no other, so there is nothing to leave out. Say first what it is `based on`.'),
        locate(node, node.statement),
      );
    }
  }
  const texts: readonly PlanText[] = [{ tree, nodes: tree.nodes }, ...(bases?.plans ?? [])];
  // From the farthest on, each plan goes on with what is there so far.
  const { nodes } = texts.reduceRight((base, heir) => ({ ...heir, nodes: builtOn(base, heir, problems) }));
  return {
    nodes,
    bases,
    texts,
    faultyLines: new Map(
      texts.map((text) => [text.file, new Set(text.tree.problems.map(({ line }) => line))]),
    ),
    lostNames: texts.flatMap((text) => text.tree.lostNames),
    lostKinds: new Set(texts.flatMap((text) => [...text.tree.lostKinds])),
  };
}

/** The statements of a plan and of the one that it builds on, without what it leaves out. */
function builtOn(base: PlanText, { nodes, file }: PlanText, problems: Problems): readonly Node[] {
  const baseFile = base.file ?? '';
  const remaining = leaveOut(base.nodes, every(nodes, 'without'), baseFile, problems);
  return withoutWhatRefers(built(remaining.nodes, nodes), remaining.taken, file, baseFile, problems);
}
