import type { Node, StatementKind } from '../../grammar/index.js';
import type { Problems } from './problems.js';
import { keywordLocation } from './select.js';

/** Statements that are read and kept but from which nothing is computed yet, and what that will be. */
const UNCOMPUTED: Partial<Record<StatementKind, string>> = {
};

/** One hint for each kind of statement that is read but not computed, at the first of its kind. */
export function reportUncomputed(nodes: readonly Node[], problems: Problems): void {
  const seen = new Set<StatementKind>();
  const visit = (node: Node): void => {
    const { kind } = node.statement;
    const meaning = UNCOMPUTED[kind];
    if (meaning !== undefined && !seen.has(kind)) {
      seen.add(kind);
      problems.hint('not computed yet', `\`${kind}\` is read. ${meaning}`, keywordLocation(node));
    }
    node.children.forEach(visit);
  };
  nodes.forEach(visit);
}
