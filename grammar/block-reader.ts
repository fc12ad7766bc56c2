import {
  guessedKind,
  indentedTooFar,
  misplaced,
  noStatement,
  pointsWithoutOutline,
  unevenIndentation,
  unknownStatement,
  type Host,
} from './block-problems.js';
import { Indentation, type Level } from './indentation.js';
import type { LineReading } from './line-parser.js';
import type { Opening, PlacedLine, SourceLine } from './lines.js';
import { unreadableText } from './messages.js';
import type { LineProblem } from './phrases.js';
import { opensBlock, statementIn, statementsOpenedBy, type StatementEntry } from './statements.js';
import type { Comment, Node, Problem, Statement, StatementKind } from './syntax.js';

/** What a line was to give of which no statement is left. */
export interface Loss {
  readonly line: number;
  readonly name: string | undefined;
  readonly kind: StatementKind | undefined;
}

const NO_NODES: readonly Node[] = [];

interface GrowingNode extends Node {
  lastLine: number;
  children: readonly Node[];
}

/**
 * A line under which others may be indented. There is one of each depth, which is that of the line that was read last
 * there: what it says of a line holds until the line is ended.
 */
class OpenLine implements Host {
  kind: 'plan' | StatementKind | undefined;
  parent: OpenLine | undefined;
  /** Unset where the line is no statement; then what stands under it is no part of the plan. */
  node: GrowingNode | undefined;
  /** What stands under it, as far as it is counted: what lies behind is left from lines before. */
  readonly #under: GrowingNode[] = [];
  #count = 0;

  begin(
    kind: 'plan' | StatementKind | undefined,
    parent: OpenLine | undefined,
    node: GrowingNode | undefined,
  ): void {
    this.kind = kind;
    this.parent = parent;
    this.node = node;
    this.#count = 0;
  }

  add(node: GrowingNode): void {
    this.#under[this.#count++] = node;
  }

  end(lastLine: number): void {
    if (this.node === undefined) return;
    this.node.lastLine = lastLine;
    if (this.#count > 0) this.node.children = this.#under.slice(0, this.#count);
  }
}

interface Found {
  readonly entry: StatementEntry;
  readonly host: OpenLine;
  readonly problem?: LineProblem;
  readonly detached?: boolean;
}

/** Reads lines into blocks, one after the other; each list is in the order of the lines. */
export class BlockReader {
  readonly lines: PlacedLine[] = [];
  readonly nodes: Node[] = [];
  readonly detached: Node[] = [];
  readonly problems: Problem[] = [];
  readonly comments: Comment[] = [];
  readonly losses: Loss[] = [];
  /** Whether no line disagrees with those above about where blocks stand. */
  isEven = true;
  readonly #indentation = new Indentation();
  readonly #root = new OpenLine();
  /** By depth; those at which no line is open any more are kept for the next one there. */
  readonly #open: OpenLine[] = [];
  #depth = 0;
  #lastLine = 0;

  constructor() {
    this.#root.begin('plan', undefined, undefined);
  }

  /**
   * Whether a line that is indented like this stands at the margin, and nothing of those before tells how it is read.
   */
  beginsAnew(indentation: string): boolean {
    const { margin } = this.#indentation;
    return this.isEven && (margin === undefined || margin === indentation);
  }

  take(source: SourceLine, line: number): void {
    const { comment, opening } = source;
    if (comment) this.comments.push({ line, ...comment });
    if (source.isQuiet) {
      this.lines.push(source.placedAt(undefined, undefined));
      return;
    }
    const level = this.#indentation.next(source.indentation);
    this.#closeTo(level.depth);
    this.#lastLine = line;
    const parent = level.depth === 0 ? this.#root : (this.#open[level.depth - 1] as OpenLine);
    const usual = opening && usualEntry(opening, parent);
    const found = opening && !usual ? this.#find(opening, parent) : undefined;
    const entry = usual ?? found?.entry;
    const placed = source.placedAt(level, entry);
    this.lines.push(placed);
    const { reading } = placed;
    if (reading?.lostName !== undefined || reading?.lostKind !== undefined)
      this.losses.push({ line, name: reading.lostName, kind: reading.lostKind });
    const isRight = usual !== undefined && level.uneven === undefined;
    if (!isRight || (reading && reading.problems.length > 0))
      this.#tell(line, source, level, parent, entry, found, reading);
    const host = found?.host ?? parent;
    const isDetached = found?.detached === true;
    const node = reading?.statement && nodeAt(line, reading.statement);
    if (node) this.#put(node, host, isDetached);
    const kind = entry?.kind ?? (opening && guessedKind(opening, parent));
    this.#openAt(level.depth).begin(kind, isDetached ? this.#root : host, node);
  }

  /** Ends the blocks that are open, after the last line. */
  end(): void {
    this.#closeTo(0);
  }

  #put(node: GrowingNode, host: OpenLine, isDetached: boolean): void {
    if (host === this.#root && !isDetached) this.nodes.push(node);
    else if (host.node === undefined || isDetached) this.detached.push(node);
    else host.add(node);
  }

  /** Reports what is wrong with a line, in the order of its words. */
  #tell(
    line: number,
    source: SourceLine,
    level: Level,
    parent: OpenLine,
    entry: StatementEntry | undefined,
    found: Found | undefined,
    reading: LineReading | undefined,
  ): void {
    const { opening } = source;
    const problems: LineProblem[] = [];
    if (level.uneven) {
      this.isEven = false;
      problems.push(unevenIndentation(source, level.uneven));
    }
    if (opening && !entry)
      problems.push(opening.isWord ? unknownStatement(opening, parent) : noStatement(opening));
    if (!opening && source.unreadable) problems.push(unreadableText(source.text, source.unreadable));
    if (found?.problem) problems.push(found.problem);
    for (const problem of reading?.problems ?? []) problems.push(problem);
    for (const problem of problems.sort((one, other) => one.start - other.start)) {
      this.problems.push({ line, ...problem });
    }
  }

  #openAt(depth: number): OpenLine {
    if (this.#depth !== depth) throw new Error('indentation and open lines disagree');
    this.#depth = depth + 1;
    return (this.#open[depth] ??= new OpenLine());
  }

  #closeTo(depth: number): void {
    while (this.#depth > depth) (this.#open[--this.#depth] as OpenLine).end(this.#lastLine);
  }

  /** Which statement a line is, and where it belongs; `undefined` where its opening is that of none. */
  #find(opening: Opening, parent: OpenLine): Found | undefined {
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

function nodeAt(line: number, statement: Statement): GrowingNode {
  return { line, lastLine: line, statement, children: NO_NODES };
}

/** Which statement a line is that stands where it belongs, as nearly all do. */
function usualEntry(opening: Opening, parent: OpenLine): StatementEntry | undefined {
  const entry = entryUnder(parent, opening);
  return entry?.kind === 'points' && !takesPoints(parent) ? undefined : entry;
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
function takesPoints({ node }: OpenLine): boolean {
  if (node?.statement.kind !== 'shape') return true;
  return node.statement.shape.form === 'outline' || node.statement.shape.form === 'smooth';
}
