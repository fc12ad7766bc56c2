import { marked, type Node } from '../../../grammar/index.js';
import { linesOfBase } from '../../plan/based-on/bases.js';
import { goesOn } from '../../plan/based-on/merge.js';
import type { Plan } from '../../plan/plan.js';
import type { Style } from '../style.js';
import { type Paragraphs, woven } from './paragraphs.js';

/** As much of a line as is told of it. */
const LONGEST = 80;

/** What the plan that this one is based on says where a line of this one says something else, or more. */
export function baseFigures(plan: Plan, line: number, style: Style): Paragraphs {
  const changed = plan.basedOn && nodeOn(plan.statements, line)?.changes;
  if (!changed) return [];
  const { file = '', line: there, statement, children } = changed;
  const from = [style.name(file), String(there + 1)];
  if (!goesOn(statement)) {
    return [woven(marked('{0}, line {1} has {2}'), style, ...from, style.name(wordsOf(plan, changed)))];
  }
  return [
    children.length > 0
      ? woven(
          marked('Goes on with what is in {0}, line {1}. What is not said here stays as it is there.'),
          style,
          ...from,
        )
      : woven(marked('Goes on with what is in {0}, line {1}.'), style, ...from),
  ];
}

/** The statement of the plan's own text on a line. */
function nodeOn(nodes: readonly Node[], line: number): Node | undefined {
  for (const node of nodes) {
    if (node.file !== undefined || line < node.line || node.lastLine < line) continue;
    return node.line === line ? node : nodeOn(node.children, line);
  }
  return undefined;
}

function wordsOf({ basedOn }: Plan, { file, line, statement: { start, end } }: Node): string {
  const words = (linesOfBase(basedOn, file)[line] ?? '').slice(start, end).split(/\s+/u).join(' ');
  return words.length > LONGEST ? `${words.slice(0, LONGEST)}…` : words;
}
