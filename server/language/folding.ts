import { FoldingRangeKind, type FoldingRange } from 'vscode-languageserver-types';
import { walk } from '../../grammar/index.js';
import type { Snapshot } from './snapshot.js';

/** Every block folds under its first line, and so does a run of comments that is longer than one line. */
export function foldingRanges({ tree }: Snapshot): readonly FoldingRange[] {
  const ranges: FoldingRange[] = [];
  walk(tree.nodes, ({ line, lastLine }) => {
    if (lastLine > line) ranges.push({ startLine: line, endLine: lastLine });
  });
  return [...ranges, ...commentRuns(tree)].sort((a, b) => a.startLine - b.startLine);
}

function commentRuns({ comments, nodes }: Snapshot['tree']): readonly FoldingRange[] {
  const taken = new Set<number>();
  walk(nodes, ({ line }) => taken.add(line));
  const runs: FoldingRange[] = [];
  let run: FoldingRange | undefined;
  for (const { line } of comments.filter((comment) => !taken.has(comment.line))) {
    if (run?.endLine === line - 1) {
      run.endLine = line;
      continue;
    }
    run = { startLine: line, endLine: line, kind: FoldingRangeKind.Comment };
    runs.push(run);
  }
  return runs.filter(({ startLine, endLine }) => endLine > startLine);
}
