import type { Node } from '../../../grammar/index.js';
import { linesOfBase } from '../../plan/based-on/bases.js';
import { goesOn } from '../../plan/based-on/merge.js';
import type { Plan } from '../../plan/plan.js';
import type { Style } from '../style.js';
import type { Paragraphs } from './paragraphs.js';

/** As much of a line as is told of it. */
const LONGEST = 80;

/** What the plan that this one is based on says where a line of this one says something else, or more. */
export function baseFigures(plan: Plan, line: number, style: Style): Paragraphs {
  const changed = plan.basedOn && nodeOn(plan.statements, line)?.changes;
  if (!changed) return [];
  const { file = '', line: there, statement, children } = changed;
  const from = `${style.name(file)}${style.text(`, line ${there + 1}`)}`;
  if (goesOn(statement)) {
    const rest = children.length > 0 ? ' What is not said here stays as it is there.' : '';
    return [`${style.text('Goes on with what is in ')}${from}${style.text(`.${rest}`)}`];
  }
  return [`${from}${style.text(' has ')}${style.name(wordsOf(plan, changed))}`];
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
