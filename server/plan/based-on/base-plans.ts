import { type Node, parse, splitLines, type Statement, type SyntaxTree } from '../../../grammar/index.js';
import { pathFrom } from './paths.js';

/** A plan that another builds on. */
export interface BasePlan {
  /** Its path from the plan that builds on it. */
  readonly file: string;
  readonly text: string;
  /** The lines of the text without their ends, and without the mark that some files begin with. */
  readonly lines: readonly string[];
  readonly tree: SyntaxTree;
  /**
   * Its statements, each with the file that it stands in; files that they name have their paths from the plan that
   * builds on it.
   */
  readonly nodes: readonly Node[];
}

/** So many are kept, and so much text of them, for the next time that they are asked for. */
const MOST_KEPT = 32;
const MOST_CHARACTERS_KEPT = 20_000_000;

/** Newest first. What is kept changes nothing but the time it takes. */
let kept: readonly BasePlan[] = [];

/** A text read as a plan that others build on. The same text under the same path gives the same nodes. */
export function basePlan(file: string, text: string): BasePlan {
  const known = kept.find((one) => one.file === file && one.text === text);
  const plan = known ?? read(file, text, kept.find((one) => one.file === file)?.tree);
  let characters = 0;
  kept = [plan, ...kept.filter((one) => one !== plan)].filter((one, index) => {
    characters += one.text.length;
    return index === 0 || (index < MOST_KEPT && characters <= MOST_CHARACTERS_KEPT);
  });
  return plan;
}

function read(file: string, text: string, before: SyntaxTree | undefined): BasePlan {
  const tree = parse(text, before);
  return {
    file,
    text,
    lines: splitLines(text),
    tree,
    nodes: tree.nodes.map((node) => placed(node, file)),
  };
}

function placed(node: Node, file: string): Node {
  return {
    ...node,
    file,
    statement: withPaths(node.statement, file),
    children: node.children.map((child) => placed(child, file)),
  };
}

function withPaths(statement: Statement, plan: string): Statement {
  switch (statement.kind) {
    case 'photo':
    case 'sketch':
      return { ...statement, file: { ...statement.file, value: pathFrom(plan, statement.file.value) } };
    case 'shape': {
      const { shape } = statement;
      if (shape.form !== 'file') return statement;
      const file = { ...shape.file, value: pathFrom(plan, shape.file.value) };
      return { ...statement, shape: { ...shape, file } };
    }
    default:
      return statement;
  }
}
