import {
  CodeActionKind,
  type CodeAction,
  type Diagnostic,
  type Position,
  type Range,
  type SnippetTextEdit,
  type TextEdit,
  type WorkspaceEdit,
} from 'vscode-languageserver-types';
import type { Finding } from '../findings/finding.js';
import { NEEDLESS_EXCEPTION } from '../findings/check.js';
import { ruleById } from '../findings/rules.js';
import { quoted } from '../findings/words.js';
import type { Location } from '../plan/plan.js';
import type { Abilities } from './abilities.js';
import { findingDiagnostic, planDiagnostic, syntaxDiagnostic } from './diagnostics.js';
import { lineEndOf } from './edits.js';
import type { Snapshot } from './snapshot.js';
import { emptyRangeAt, indentOf, overlaps, rangeOf } from './text.js';

/** What mends or sets aside the problems that touch the range. */
export function codeActions(snapshot: Snapshot, range: Range, abilities: Abilities): readonly CodeAction[] {
  const here = ({ location }: { readonly location: Location }): boolean => overlaps(location, range);
  const { tree, plan, uri } = snapshot;
  const act = { snapshot, abilities };
  return [
    ...tree.problems
      .filter((problem) => here({ location: problem }))
      .flatMap((problem) => fixes(act, problem.fix, problem, syntaxDiagnostic(problem, abilities))),
    ...plan.problems
      .filter(here)
      .flatMap((problem) =>
        fixes(act, problem.fix, problem.location, planDiagnostic(problem, uri, abilities)),
      ),
    ...snapshot.findings
      .filter((finding) => finding.allowed === undefined && here(finding))
      .flatMap((finding) => findingActions(act, finding)),
  ];
}

interface Acting {
  readonly snapshot: Snapshot;
  readonly abilities: Abilities;
}

function findingActions(act: Acting, finding: Finding): readonly CodeAction[] {
  const diagnostic = findingDiagnostic(finding, act.snapshot.uri, act.abilities);
  return [
    ...fixes(act, finding.fix, finding.location, diagnostic),
    ...(finding.rule === NEEDLESS_EXCEPTION ? [takeOutLine(act, finding.location.line, diagnostic)] : []),
    ...(ruleById(finding.rule) === undefined ? [] : [setAside(act, finding, diagnostic)]),
  ];
}

function fixes(
  act: Acting,
  fix: Finding['fix'],
  location: Location,
  diagnostic: Diagnostic,
): readonly CodeAction[] {
  if (fix === undefined) return [];
  const newText = fix.replacement.replace(/\n/g, lineEndOf(act.snapshot.text));
  const edit = { range: rangeOf(location), newText };
  return [
    {
      ...action(act, fix.title, edit, diagnostic),
      ...(act.abilities.preferredActions ? { isPreferred: true } : {}),
    },
  ];
}

function takeOutLine(act: Acting, line: number, diagnostic: Diagnostic): CodeAction {
  const below = line + 1 < act.snapshot.lines.length;
  const range = below
    ? { start: { line, character: 0 }, end: { line: line + 1, character: 0 } }
    : rangeOf({ line, start: 0, end: act.snapshot.lines[line]?.length ?? 0 });
  return action(act, 'Take this line out', { range, newText: '' }, diagnostic);
}

/** Writes `allow RULE because "..."`: under the object when the finding concerns one, else for the whole plan. */
function setAside(act: Acting, finding: Finding, diagnostic: Diagnostic): CodeAction {
  const { rule, objects } = finding;
  const [only] = objects.length === 1 && ruleById(rule)?.perObject === true ? objects : [];
  const object = only === undefined ? undefined : act.snapshot.plan.objects[only];
  const whose = object === undefined ? '' : ` for ${quoted(object.name)}`;
  const place = object === undefined ? endOfPlan(act.snapshot) : endOfBlock(act.snapshot, object.node);
  return action(
    act,
    `Set ${quoted(rule)} aside${whose}, with a reason`,
    allowance(act, rule, place),
    diagnostic,
  );
}

interface NewLine {
  readonly position: Position;
  /** What goes before and after the statement to make it a line of its own. */
  readonly before: string;
  readonly after: string;
}

function endOfBlock({ lines, text }: Snapshot, node: Snapshot['plan']['objects'][number]['node']): NewLine {
  const [child] = node.children;
  const indent =
    child === undefined ? `${indentOf(lines[node.line] ?? '')}  ` : indentOf(lines[child.line] ?? '');
  return lineBelow(lines, node.lastLine, indent, lineEndOf(text));
}

function endOfPlan({ tree, lines, text }: Snapshot): NewLine {
  const lineEnd = lineEndOf(text);
  const earlier = tree.nodes.findLast(({ statement }) => statement.kind === 'allow');
  if (earlier !== undefined) return lineBelow(lines, earlier.lastLine, '', lineEnd);
  const last = tree.nodes.at(-1);
  if (last === undefined) return { position: { line: 0, character: 0 }, before: '', after: lineEnd };
  return lineBelow(lines, last.lastLine, lineEnd, lineEnd);
}

function lineBelow(lines: readonly string[], line: number, before: string, lineEnd: string): NewLine {
  const last = lines.length - 1;
  if (line < last) return { position: { line: line + 1, character: 0 }, before, after: lineEnd };
  return {
    position: { line: last, character: lines[last]?.length ?? 0 },
    before: lineEnd + before,
    after: '',
  };
}

function allowance(
  { abilities }: Acting,
  rule: string,
  { position, before, after }: NewLine,
): TextEdit | SnippetTextEdit {
  const range = emptyRangeAt(position.line, position.character);
  // Where a snippet starts behind other text, editors indent its further lines as they see fit.
  if (abilities.snippetEdits && position.character === 0) {
    return {
      range,
      snippet: { kind: 'snippet', value: `${before}allow ${rule} because "\${1:why}"${after}` },
    };
  }
  return { range, newText: `${before}allow ${rule} because "…"${after}` };
}

function action(
  { snapshot: { uri, version }, abilities }: Acting,
  title: string,
  edit: TextEdit | SnippetTextEdit,
  diagnostic: Diagnostic,
): CodeAction {
  const whole: WorkspaceEdit = abilities.versionedEdits
    ? { documentChanges: [{ textDocument: { uri, version }, edits: [edit] }] }
    : { changes: { [uri]: 'newText' in edit ? [edit] : [] } };
  return { title, kind: CodeActionKind.QuickFix, diagnostics: [diagnostic], edit: whole };
}
