import { TextDocument } from 'vscode-languageserver-textdocument';
import { TextDocumentEdit, TextEdit, type CodeAction } from 'vscode-languageserver-types';
import { everything, openPlan, settled } from '../../server/language/test-support.js';
import type { FileAnswer } from '../../server/plan/plan.js';
import { isGone, newlyTold, readAfresh } from './mending.js';
import { mended } from './plan.js';

/** What was tried of a plan. */
export interface Tried {
  /** Rules of the fixes that there are, and of those that are offered. */
  readonly made: string[];
  readonly offered: string[];
  readonly failures: string[];
}

/**
 * Each fix of a plan by itself: its finding goes when its edits are made, so that what is advised is true; and where an
 * editor is offered it, no error or warning comes that was not there.
 */
export async function tryAll(name: string, text: string, files: Files = {}): Promise<Tried> {
  const { service, uri } = openPlan(text, everything, inStudio(files));
  service.diagnostics(uri);
  await settled();
  const options = { readFile: (file: string) => files[file] ?? NO_FILE };
  const tried: Tried = { made: [], offered: [], failures: [] };
  const before = readAfresh(text, options);
  for (const finding of before.findings) {
    const { fix, rule, location, message, advice = '' } = finding;
    if (!fix) continue;
    tried.made.push(rule);
    const failed = (what: string, after: string): void => {
      tried.failures.push(`${name}: ${what}\n${message}\n${advice}\n-> ${fix.title}\n${after}\n\n${text}`);
    };
    const edited = mended(text, fix);
    const asTold = readAfresh(edited, options);
    if (!isGone(finding, before, asTold)) failed('the finding stays', '');
    const place = { line: location.line, character: location.start };
    const action = service
      .codeActions(uri, { start: place, end: place })
      .find(({ title, diagnostics }) => title === fix.title && diagnostics?.[0]?.code === slug(rule));
    if (!action) continue;
    tried.offered.push(rule);
    const offered = applied(text, action);
    const after = offered === edited ? asTold : readAfresh(offered, options);
    if (!isGone(finding, before, after)) failed('the finding stays when it is mended in an editor', '');
    for (const remark of newlyTold(before, after)) failed(`a new ${remark.severity}`, remark.message);
  }
  return tried;
}

function slug(rule: string): string {
  return rule.replaceAll(' ', '-');
}

function applied(text: string, { edit }: CodeAction): string {
  const changes = edit?.documentChanges?.filter((change) => TextDocumentEdit.is(change)) ?? [];
  const edits = changes.flatMap((change) => change.edits).filter((one) => TextEdit.is(one));
  return TextDocument.applyEdits(TextDocument.create('plan', 'mahlstick', 1, text), edits);
}

/** The files that plans name, by the path written there. */
export type Files = Readonly<Record<string, FileAnswer>>;
const NO_FILE: FileAnswer = { ok: false, reason: 'There is no such file.' };

function inStudio(files: Files): Files {
  return Object.fromEntries(
    Object.entries(files).map(([file, answer]) => [`file:///studio/${file}`, answer]),
  );
}
