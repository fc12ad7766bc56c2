import { inQuotes, isKind, type Node } from '../../../grammar/index.js';
import { linesOfBase } from '../../plan/based-on/bases.js';
import { isIn, isInBlock, isOwn } from '../../plan/based-on/here.js';
import { goesOn, isOneOfMany, isSaidWholly } from '../../plan/based-on/merge.js';
import { fileNamedBy } from '../../plan/files.js';
import type { Location, Plan } from '../../plan/plan.js';
import { locate } from '../../plan/problems.js';
import type { Fix, FixEdit, OwnEdit, OwnFix } from '../finding.js';
import { keywordAndWords } from './edit.js';

/** A base's text is written by its own plan only, so a change of it is written into this plan, which goes before. */

type ForeignEdit = Extract<FixEdit, { readonly kind: 'replace' | 'add line' }>;

/**
 * Edits of the plan's own text that come to the same as these: what would change a plan that this one builds on is said
 * in this one instead. Nothing where that can't be said.
 */
export function ownEdits(plan: Plan, edits: readonly FixEdit[]): readonly OwnEdit[] | undefined {
  if (edits.every(isOwnEdit)) return edits;
  const foreign = edits.filter((edit): edit is ForeignEdit => !isOwnEdit(edit));
  const groups = new Map<Node, ForeignEdit[]>();
  for (const edit of foreign) {
    const statement = statementWith(plan, placeOf(edit));
    if (!statement) return undefined;
    groups.set(statement, [...(groups.get(statement) ?? []), edit]);
  }
  const said = [...groups].map(([statement, own]) => saidHere(plan, statement, own));
  if (said.some((one) => one === undefined)) return undefined;
  return [...edits.filter(isOwnEdit), ...said.flatMap((one) => one ?? [])];
}

/** A fix as edits of the plan's own text; nothing where it can't be said there. */
export function ownFix(plan: Plan, fix: Fix | undefined): OwnFix | undefined {
  const edits = fix && ownEdits(plan, fix.edits);
  return fix && edits && { title: fix.title, edits };
}

/** Whether an edit changes the plan's own text. */
export function isOwnEdit(edit: FixEdit): edit is OwnEdit {
  switch (edit.kind) {
    case 'replace':
      return isOwn(edit.location);
    case 'add line':
      return edit.under.file === undefined;
    case 'add statement':
    case 'take out line':
      return true;
  }
}

function placeOf(edit: ForeignEdit): Location {
  return edit.kind === 'replace' ? edit.location : locate(edit.under, edit.under.statement);
}

/** The statement at the left margin that a place of a base belongs to, or the plan's own one that changes that. */
function statementWith({ statements }: Plan, place: Location): Node | undefined {
  return statements.find((statement) => isIn(statement, place));
}

function layersOf(statement: Node): readonly Node[] {
  return [statement, ...(statement.changes ? layersOf(statement.changes) : [])];
}

function isSame(one: Node, other: Node): boolean {
  return one.file === other.file && one.line === other.line;
}

function saidHere(
  plan: Plan,
  statement: Node,
  edits: readonly ForeignEdit[],
): readonly OwnEdit[] | undefined {
  const text = new BaseText(plan, edits);
  if (isSaidWholly(statement.statement))
    return [{ kind: 'add statement', text: text.block(statement).join('\n') }];
  if (!goesOn(statement.statement)) return undefined;
  const changed = edits.flatMap((edit) => (edit.kind === 'replace' ? [edit] : []));
  const inHeader = changed.filter(({ location }) =>
    layersOf(statement).some((layer) => layer.file === location.file && layer.line === location.line),
  );
  // A thing of the base keeps its part in the picture where none is given here.
  if (isKind(statement, 'object') && inHeader.some((edit) => edit.text === '')) return undefined;
  const below = edits.flatMap((edit) =>
    edit.kind === 'add line' && !isSame(edit.under, statement) ? [edit] : [],
  );
  const lines = linesOf(
    statement,
    [
      ...changed.filter((edit) => !inHeader.includes(edit)).map(({ location }) => location),
      ...below.map(({ under }) => locate(under, under.statement)),
    ],
    text,
  );
  if (!lines) return undefined;
  const under = [...lines, ...text.addedTo(statement)];
  if (statement.file === undefined) return goneOnWith(statement, inHeader, under);
  const header = headerOf(statement, inHeader, text);
  if (header === undefined) return undefined;
  return [{ kind: 'add statement', text: [header, ...under.map((line) => `  ${line}`)].join('\n') }];
}

/** The plan's own statement goes on with more lines, and a sitting with a day. */
function goneOnWith(
  own: Node,
  inHeader: readonly { readonly text: string }[],
  under: readonly string[],
): readonly OwnEdit[] | undefined {
  const [header, ...more] = inHeader;
  if (more.length > 0 || (header && !isKind(own, 'sitting'))) return undefined;
  const { line, statement } = own;
  const dated: readonly OwnEdit[] =
    header && statement.kind === 'sitting'
      ? [
          {
            kind: 'replace',
            location: { line, start: statement.title.end, end: statement.title.end },
            text: ` on ${header.text}`,
          },
        ]
      : [];
  if (under.length === 0) return dated;
  return [...dated, { kind: 'add line', under: own, text: under.join('\n') }];
}

/** What stands under a statement of a base, as far as it changes, each line as it becomes. */
function linesOf(
  { children }: Node,
  places: readonly Location[],
  text: BaseText,
): readonly string[] | undefined {
  const changed = new Set<Node>();
  for (const place of places) {
    const child = children.find((one) => isInBlock(one, place));
    if (!child || isOneOfMany(child.statement)) return undefined;
    // Shapes of a base all go where the plan gives one.
    const alike = isKind(child, 'shape') ? children.filter((one) => isKind(one, 'shape')) : [child];
    alike.forEach((one) => changed.add(one));
  }
  return [...changed].flatMap((child) => text.block(child));
}

/** The line that opens a statement of a base, as far as it is needed to go on with it; with what is edited of it. */
function headerOf(
  node: Node,
  edits: readonly { readonly location: Location; readonly text: string }[],
  text: BaseText,
): string | undefined {
  const { statement } = node;
  const [edit] = edits;
  if (edits.some(({ location }) => location.file === node.file)) return text.words(node);
  // The day of a sitting may stand in a plan further on.
  if (edit && statement.kind !== 'sitting') return undefined;
  switch (statement.kind) {
    case 'object':
      return keywordAndWords('object', text.slice(locate(node, statement.name)));
    case 'sitting': {
      const title = text.slice(locate(node, statement.title));
      return keywordAndWords('sitting', edit ? `${title} on ${edit.text}` : title);
    }
    default:
      return statement.kind;
  }
}

/** A file that a base in another folder names, by its path from the plan. */
function pathFromHere(node: Node): readonly FixEdit[] {
  if (node.file?.includes('/') !== true) return [];
  const named = fileNamedBy(node.statement);
  return named
    ? [{ kind: 'replace', location: locate(node, named.file), text: inQuotes(named.file.value) }]
    : [];
}

/** The lines of the plans that a plan builds on, as some edits would leave them. */
class BaseText {
  readonly #bases: Plan['basedOn'];
  readonly #edits: readonly ForeignEdit[];

  constructor({ basedOn }: Plan, edits: readonly ForeignEdit[]) {
    this.#bases = basedOn;
    this.#edits = edits;
  }

  slice({ file, line, start, end }: Location): string {
    return (linesOfBase(this.#bases, file)[line] ?? '').slice(start, end);
  }

  /** The statement of a node after the edits, without what stands behind it on its line. */
  words(node: Node): string {
    const { file, line, statement } = node;
    const { start, end } = statement;
    const edits = [...this.#edits, ...pathFromHere(node)]
      .flatMap((edit) => (edit.kind === 'replace' ? [edit] : []))
      .filter(({ location }) => location.file === file && location.line === line)
      .toSorted((one, other) => one.location.start - other.location.start);
    let words = '';
    let from = start;
    for (const { location, text } of edits) {
      words += this.slice(locate(node, { start: from, end: location.start })) + text;
      from = location.end;
    }
    return words + this.slice(locate(node, { start: from, end: Math.max(from, end) }));
  }

  /** A statement after the edits with what stands under it, a line each. */
  block(node: Node): readonly string[] {
    const under = [...node.children.flatMap((child) => this.block(child)), ...this.addedTo(node)];
    return [this.words(node), ...under.map((line) => `  ${line}`)];
  }

  /** New lines under a statement. */
  addedTo({ file, line }: Node): readonly string[] {
    return this.#edits.flatMap((edit) =>
      edit.kind === 'add line' && edit.under.file === file && edit.under.line === line ? [edit.text] : [],
    );
  }
}
