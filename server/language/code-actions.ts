import {
  CodeActionKind,
  type CodeAction,
  type Diagnostic,
  type Range,
  type SnippetTextEdit,
  type TextEdit,
  type WorkspaceEdit,
} from 'vscode-languageserver-types';
import { inQuotes, type Node, speaking, t } from '../../grammar/index.js';
import { ownFix } from '../findings/edits/own.js';
import type { Finding, OwnFix } from '../findings/finding.js';
import { ruleById } from '../findings/rules.js';
import { blockIndent, lineBelow, type NewLine, textChanges } from '../findings/text-changes.js';
import { cueOpening } from '../findings/words/cues.js';
import { quoted } from '../findings/words/words.js';
import type { OwnLocation, Plan, PlanProblem } from '../plan/plan.js';
import type { Abilities } from './abilities.js';
import { findingDiagnostic, planDiagnostic, syntaxDiagnostic } from './diagnostics.js';
import { lineEndOf } from './edits.js';
import { refactorings } from './refactorings.js';
import type { Snapshot } from './snapshot.js';
import { emptyRangeAt, overlaps } from './text.js';
import { triedFix } from './tried-fixes.js';

/**
 * What mends or sets aside the problems that touch the range, and what else can be made of the line that it begins in.
 *
 * @param only the kinds that are asked for, each with all below it; every kind unless given
 */
export function codeActions(
  snapshot: Snapshot,
  range: Range,
  abilities: Abilities,
  only?: readonly CodeActionKind[],
): readonly CodeAction[] {
  const isWanted = (kind: CodeActionKind): boolean =>
    only?.some((asked) => asked === '' || asked === kind || kind.startsWith(`${asked}.`)) ?? true;
  return speaking(abilities.language, () => [
    ...(isWanted(CodeActionKind.QuickFix) ? quickFixes(snapshot, range, abilities) : []),
    ...(isWanted(CodeActionKind.RefactorRewrite)
      ? refactorings(snapshot, range).flatMap((fix) => {
          const own = ownFix(snapshot.plan, fix);
          return own ? rewriting({ snapshot, abilities }, own) : [];
        })
      : []),
  ]);
}

function quickFixes(snapshot: Snapshot, range: Range, abilities: Abilities): readonly CodeAction[] {
  const here = ({ location }: { readonly location: OwnLocation }): boolean => overlaps(location, range);
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
  const fix = triedFix(act.snapshot, finding);
  return [
    ...(fix === undefined ? [] : [mending(act, fix, diagnostic)]),
    ...(ruleById(finding.rule) === undefined ? [] : [setAside(act, finding, diagnostic)]),
  ];
}

function fixes(
  act: Acting,
  fix: PlanProblem['fix'],
  location: OwnLocation,
  diagnostic: Diagnostic,
): readonly CodeAction[] {
  if (fix === undefined) return [];
  const { title, replacement: text } = fix;
  return [mending(act, { title, edits: [{ kind: 'replace', location, text }] }, diagnostic)];
}

function mending(act: Acting, fix: OwnFix, diagnostic: Diagnostic): CodeAction {
  return {
    ...action(act, fix.title, editsOf(act, fix), diagnostic),
    ...(act.abilities.preferredActions ? { isPreferred: true } : {}),
  };
}

function rewriting(act: Acting, fix: OwnFix): CodeAction {
  return { title: fix.title, kind: CodeActionKind.RefactorRewrite, edit: edited(act, editsOf(act, fix)) };
}

function editsOf({ snapshot: { lines, text } }: Acting, fix: OwnFix): readonly TextEdit[] {
  return textChanges(fix, lines, lineEndOf(text)).map(({ from, to, text: newText }): TextEdit => ({
    range: {
      start: { line: from.line, character: from.column },
      end: { line: to.line, character: to.column },
    },
    newText,
  }));
}

/**
 * Writes `allow RULE because "..."`: for the cue, lead or object when the finding is about one, else for the whole
 * plan.
 */
function setAside(act: Acting, finding: Finding, diagnostic: Diagnostic): CodeAction {
  const { rule } = finding;
  const { words, title, under } = excepted(act.snapshot.plan, finding);
  const place = under ? endOfBlock(act.snapshot, under) : endOfPlan(act.snapshot);
  return action(
    act,
    title === undefined
      ? t('Set {0} aside, with a reason', quoted(rule))
      : t('Set {0} aside for {1}, with a reason', quoted(rule), title),
    [allowance(act, `${rule}${words}`, place)],
    diagnostic,
  );
}

/**
 * What a finding is about alone, where the rule can be set aside for that: a cue, a lead, or an object, in whose block
 * it is said.
 */
function excepted(
  plan: Plan,
  { rule: id, objects, leads = [], cue: cueIndex = -1 }: Finding,
): { readonly words: string; readonly title?: string; readonly under?: Node } {
  const rule = ruleById(id);
  const cue = rule?.perCue === true ? plan.cues[cueIndex] : undefined;
  if (cue) return { words: ` for ${inQuotes(cue.value)}`, title: t('“{0}”', cueOpening(cue.value)) };
  const lead = rule?.perLead === true && leads.length === 1 ? plan.leads[leads[0] ?? -1] : undefined;
  if (lead) return { words: ` for ${lead.name}`, title: quoted(lead.name) };
  const object =
    rule?.perObject === true && objects.length === 1 ? plan.objects[objects[0] ?? -1] : undefined;
  if (!object) return { words: '' };
  const title = quoted(object.name);
  return object.node.file === undefined
    ? { words: '', title, under: object.node }
    : { words: ` for ${object.name}`, title };
}

function endOfPlan({ tree, lines, text }: Snapshot): NewLine {
  const lineEnd = lineEndOf(text);
  const earlier = tree.nodes.findLast(({ statement }) => statement.kind === 'allow');
  if (earlier !== undefined) return lineBelow(lines, earlier.lastLine, '', lineEnd);
  const last = tree.nodes.at(-1);
  if (last === undefined) return { at: { line: 0, column: 0 }, before: '', after: lineEnd };
  return lineBelow(lines, last.lastLine, lineEnd, lineEnd);
}

function endOfBlock({ lines, text }: Snapshot, node: Node): NewLine {
  return lineBelow(lines, node.lastLine, blockIndent(node, lines), lineEndOf(text));
}

function allowance(
  { abilities }: Acting,
  rule: string,
  { at, before, after }: NewLine,
): TextEdit | SnippetTextEdit {
  const range = emptyRangeAt(at.line, at.column);
  // Where a snippet starts behind other text, editors indent its further lines as they see fit.
  if (abilities.snippetEdits && at.column === 0) {
    return {
      range,
      snippet: { kind: 'snippet', value: `${before}allow ${inSnippet(rule)} because "\${1:why}"${after}` },
    };
  }
  return { range, newText: `${before}allow ${rule} because "…"${after}` };
}

/** With what means something in a snippet as it stands. */
function inSnippet(text: string): string {
  return text.replace(/[\\$}]/g, '\\$&');
}

function action(
  act: Acting,
  title: string,
  edits: readonly (TextEdit | SnippetTextEdit)[],
  diagnostic: Diagnostic,
): CodeAction {
  return { title, kind: CodeActionKind.QuickFix, diagnostics: [diagnostic], edit: edited(act, edits) };
}

function edited(
  { snapshot: { uri, version }, abilities }: Acting,
  edits: readonly (TextEdit | SnippetTextEdit)[],
): WorkspaceEdit {
  return abilities.versionedEdits
    ? { documentChanges: [{ textDocument: { uri, version }, edits: [...edits] }] }
    : { changes: { [uri]: edits.filter((edit) => 'newText' in edit) } };
}
