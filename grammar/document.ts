import { t } from './localised.js';
import { Indentation, type Level } from './indentation.js';
import { SourceLine, splitLines, type Opening } from './lines.js';
import type { LineReading } from './line-parser.js';
import { alternatives, unreadableText } from './messages.js';
import { nearestWord } from './nearest.js';
import {
  opensBlock,
  statementIn,
  statementsIn,
  statementsOpenedBy,
  type Block,
  type StatementEntry,
} from './statements.js';
import type { Comment, Node, Problem, Statement, StatementKind, SyntaxTree } from './syntax.js';
import type { LineProblem } from './phrases.js';

/** A line in its place: what the printer and the editor need to know besides the tree. */
export interface PlacedLine {
  readonly source: SourceLine;
  /** Unset for blank lines and comments. */
  readonly level?: Level;
  readonly entry?: StatementEntry;
  readonly reading?: LineReading;
}

interface GrowingNode extends Node {
  lastLine: number;
  readonly statement: Statement;
  readonly children: GrowingNode[];
}

/** A line under which others may be indented. */
interface OpenLine {
  /** What the line is, or undefined when it could not be told; then anything may stand under it. */
  readonly kind: 'plan' | Statement['kind'] | undefined;
  /** Where nodes under this line go. */
  readonly children: GrowingNode[];
  readonly parent?: OpenLine;
  readonly statement?: Statement | undefined;
  readonly node?: GrowingNode | undefined;
}

interface Found {
  readonly entry: StatementEntry;
  readonly host: OpenLine;
  readonly problem?: LineProblem;
  readonly detached?: boolean;
}

/** A document being read, line by line, into a tree. */
export class DocumentReader {
  readonly lines: PlacedLine[] = [];
  private readonly nodes: GrowingNode[] = [];
  private readonly detached: GrowingNode[] = [];
  private readonly problems: Problem[] = [];
  private readonly comments: Comment[] = [];
  private readonly lostNames: string[] = [];
  private readonly lostKinds = new Set<StatementKind>();
  private readonly indentation = new Indentation();
  private readonly root: OpenLine = { kind: 'plan', children: this.nodes };
  /** By depth: the line others are now indented under. */
  private readonly open: OpenLine[] = [];
  private lastLine = 0;

  /** Each line by its text. */
  readonly known = new Map<string, SourceLine>();

  /**
   * @param before lines that were read before, by their texts, which are not read again
   * @param nodesBefore those of the tree they were read for, which stay where nothing under them has changed
   */
  constructor(text: string, before?: ReadonlyMap<string, SourceLine>, nodesBefore: readonly Node[] = []) {
    // One after the other: what a line is read from need not be kept until all are begun.
    const lines = splitLines(text);
    for (let index = 0; index < lines.length; index++) {
      this.take(this.sourceOf(lines[index] as string, before), index);
    }
    this.closeTo(0);
    keepNodes(this.nodes, nodesBefore);
  }

  private sourceOf(line: string, before: ReadonlyMap<string, SourceLine> | undefined): SourceLine {
    const met = this.known.get(line);
    if (met) return met;
    // Of the first text nearly all lines stay, of each later one only those that were edited.
    const source = before?.get(line) ?? new SourceLine(before ? ownCopy(line) : line);
    this.known.set(source.text, source);
    return source;
  }

  get tree(): SyntaxTree {
    const { nodes, detached, problems, comments, lostNames, lostKinds } = this;
    return { nodes, detached, problems, lostNames, lostKinds, comments, lineCount: this.lines.length };
  }

  private take(source: SourceLine, line: number): void {
    const { comment, opening } = source;
    if (comment) this.comments.push({ line, ...comment });
    if (source.isQuiet) {
      this.lines.push({ source });
      return;
    }
    const level = this.indentation.next(source.indentation);
    this.closeTo(level.depth);
    this.lastLine = line;
    const parent = this.open[level.depth - 1] ?? this.root;
    const found = opening && this.find(opening, parent);
    const entry = found?.entry;
    const reading = entry && source.readAs(entry);
    this.lines.push(placed(source, level, entry, reading));
    if (reading?.lostName !== undefined) this.lostNames.push(reading.lostName);
    if (reading?.lostKind !== undefined) this.lostKinds.add(reading.lostKind);
    if (level.uneven || !found || found.problem || (reading && reading.problems.length > 0))
      this.tell(line, source, level, parent, found, reading);
    this.attach(line, level.depth, parent, found, reading?.statement, opening);
  }

  /** Reports what is wrong with a line, in the order of its words. */
  private tell(
    line: number,
    source: SourceLine,
    level: Level,
    parent: OpenLine,
    found: Found | undefined,
    reading: LineReading | undefined,
  ): void {
    const { opening } = source;
    const problems: LineProblem[] = [];
    if (level.uneven) problems.push(unevenIndentation(source, level.uneven));
    if (opening && !found)
      problems.push(opening.isWord ? unknownStatement(opening, parent) : noStatement(opening));
    if (!opening && source.unreadable) problems.push(unreadableText(source.text, source.unreadable));
    if (found?.problem) problems.push(found.problem);
    for (const problem of reading?.problems ?? []) problems.push(problem);
    for (const problem of problems.sort((one, other) => one.start - other.start)) {
      this.problems.push({ line, ...problem });
    }
  }

  private attach(
    line: number,
    depth: number,
    parent: OpenLine,
    found: Found | undefined,
    statement: Statement | undefined,
    opening: Opening | undefined,
  ): void {
    const node: GrowingNode | undefined = statement && { line, lastLine: line, statement, children: [] };
    if (node) (found?.detached ? this.detached : (found?.host.children ?? this.detached)).push(node);
    const kind = found?.entry.kind ?? (opening && guessedKind(opening, parent));
    const host = found?.detached ? this.root : (found?.host ?? parent);
    const children = node?.children ?? this.detached;
    this.open.push({ kind, children, parent: host, statement, node });
    if (this.open.length !== depth + 1) throw new Error('indentation and open lines disagree');
  }

  private closeTo(depth: number): void {
    while (this.open.length > depth) {
      const closed = this.open.pop();
      if (closed?.node) closed.node.lastLine = this.lastLine;
    }
  }

  /** Which statement a line is, and where it belongs; `undefined` where its opening is that of none. */
  private find(opening: Opening, parent: OpenLine): Found | undefined {
    for (let host: OpenLine | undefined = parent; host; host = host.parent) {
      const entry = entryUnder(host, opening);
      if (entry === undefined) continue;
      if (entry.kind === 'points' && !takesPoints(host)) {
        return { entry, host, detached: true, problem: pointsWithoutOutline(opening) };
      }
      if (host === parent || parent.kind === undefined) return { entry, host };
      const leaf = parent.kind !== 'plan' && !opensBlock(parent.kind) && host === parent.parent;
      return {
        entry,
        host,
        problem: leaf ? indentedTooFar(opening, parent) : misplaced(opening, entry, parent),
      };
    }
    const [elsewhere] = statementsOpenedBy(opening.canonical);
    if (elsewhere) {
      return {
        entry: elsewhere,
        host: parent,
        detached: true,
        problem: misplaced(opening, elsewhere, parent),
      };
    }
    return undefined;
  }
}

/** The same text without the longer one that it was cut out of, which is kept as long as what is cut out of it. */
function ownCopy(text: string): string {
  return ` ${text}`.slice(1);
}

/** Puts nodes of before in the place of those that are the same down to the last statement, on the same lines. */
function keepNodes(nodes: Node[], before: readonly Node[]): void {
  let at = 0;
  for (let index = 0; index < nodes.length; index++) {
    const node = nodes[index] as Node;
    while (at < before.length && (before[at] as Node).line < node.line) at++;
    const old = before[at];
    if (old && isSameNode(node, old)) nodes[index] = old;
  }
}

function isSameNode(one: Node, other: Node): boolean {
  if (one.statement !== other.statement || one.line !== other.line || one.lastLine !== other.lastLine)
    return false;
  const { length } = one.children;
  if (length !== other.children.length) return false;
  for (let at = 0; at < length; at++)
    if (!isSameNode(one.children[at] as Node, other.children[at] as Node)) return false;
  return true;
}

function placed(
  source: SourceLine,
  level: Level,
  entry: StatementEntry | undefined,
  reading: LineReading | undefined,
): PlacedLine {
  if (entry === undefined || reading === undefined) return { source, level };
  return { source, level, entry, reading };
}

function entryUnder(host: OpenLine, opening: Opening): StatementEntry | undefined {
  const { kind } = host;
  if (kind === undefined) return statementsOpenedBy(opening.canonical)[0];
  if (kind === 'shape' && continuesOutline(opening)) return statementIn('shape', '');
  if (!opening.isWord) return undefined;
  return kind === 'plan' && host.parent === undefined
    ? statementIn('plan', opening.canonical)
    : opensBlock(kind)
      ? statementIn(kind, opening.canonical)
      : undefined;
}

/** Under a shape, every line that no other statement opens is a line of points. */
function continuesOutline(opening: Opening): boolean {
  if (!opening.isWord) return opening.word.text === '(';
  return opening.canonical === 'focus' || statementsOpenedBy(opening.canonical).length === 0;
}

/** A shape that could not be read may well have been an outline. */
function takesPoints({ statement }: OpenLine): boolean {
  if (statement?.kind !== 'shape') return true;
  return statement.shape.form === 'outline' || statement.shape.form === 'smooth';
}

function pointsWithoutOutline({ word }: Opening): LineProblem {
  const message = t('Only `outline` and `smooth` go on with points on further lines.');
  return { start: word.start, end: word.end, code: 'misplaced statement', message };
}

/** The block whose statements are meant under `line`. */
function blockOf(line: OpenLine): Block {
  for (let open: OpenLine | undefined = line; open; open = open.parent) {
    if (open.kind !== undefined && open.kind !== 'plan' && opensBlock(open.kind)) return open.kind;
  }
  return 'plan';
}

function openingWords(block: Block): readonly string[] {
  return statementsIn(block).flatMap((entry) => entry.words.slice(0, 1));
}

function guessedKind(opening: Opening, parent: OpenLine): Statement['kind'] | undefined {
  const block = blockOf(parent);
  const nearest = nearestWord(opening.word.text, openingWords(block));
  return nearest === undefined ? undefined : statementIn(block, nearest)?.kind;
}

function unknownStatement(opening: Opening, parent: OpenLine): LineProblem {
  const { word } = opening;
  const candidates = openingWords(blockOf(parent));
  const nearest = nearestWord(word.text, candidates);
  const { start, end } = word;
  const text = word.text.length > 40 ? `${word.text.slice(0, 39)}…` : word.text;
  if (nearest === undefined) {
    const message = t('No statement begins with `{0}`.', text);
    return { start, end, code: 'unknown word', message };
  }
  return {
    start,
    end,
    code: 'unknown word',
    message: `${t('No statement begins with `{0}`.', text)} ${t('Did you mean {0}?', `\`${nearest}\``)}`,
    fix: { title: t('Change to {0}', `\`${nearest}\``), replacement: nearest },
  };
}

function noStatement({ word }: Opening): LineProblem {
  const message = t('A line begins with a word that says what it is, such as `object` or `colour`.');
  return { start: word.start, end: word.end, code: 'unexpected text', message };
}

function misplaced({ word }: Opening, entry: StatementEntry, parent: OpenLine): LineProblem {
  const homes = entry.in.filter((block) => block !== 'plan');
  const margin = entry.in.includes('plan') ? [t('at the left margin')] : [];
  const under = homes.length > 0 ? [t('under {0}', alternatives(homes))] : [];
  const here =
    parent.kind === 'plan' && !parent.parent ? t('at the left margin') : t('under {0}', `\`${parent.kind}\``);
  return {
    start: word.start,
    end: word.end,
    code: 'misplaced statement',
    message: t(
      '`{0}` belongs {1}, not {2}.',
      word.text,
      [...margin, ...under].reduce((one, other) => t('{0} or {1}', one, other)),
      here,
    ),
  };
}

function indentedTooFar({ word }: Opening, parent: OpenLine): LineProblem {
  const message = t(
    'Nothing can stand under `{0}`; this line is read as standing beside it.',
    parent.kind ?? '',
  );
  return { start: word.start, end: word.end, code: 'uneven indentation', message };
}

function unevenIndentation(source: SourceLine, uneven: NonNullable<Level['uneven']>): LineProblem {
  const end = source.indentation.length;
  const message =
    uneven.because === 'tabs and spaces'
      ? t('This line is indented with other blanks (tabs or spaces) than the lines it stands beside.')
      : t('This indentation agrees with no line above; the line is read as part of the nearest block.');
  return {
    start: 0,
    end: end === 0 ? (source.opening?.word.end ?? 0) : end,
    code: 'uneven indentation',
    message,
    ...(end > 0 && { fix: { title: t('Align with the block'), replacement: uneven.expected } }),
  };
}
