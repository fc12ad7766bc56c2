import type { Position } from 'vscode-languageserver-types';
import type { FileAnswer } from '../plan/plan.js';
import type { Abilities } from './abilities.js';
import type { LanguageService } from './language-service.js';
import { createLanguageService } from './service.js';

/** A client that can take everything. */
export const everything: Abilities = {
  completionSnippets: true,
  completionMarkdown: true,
  insertReplaceEdits: true,
  hoverMarkdown: true,
  nestedSymbols: true,
  definitionLinks: true,
  versionedEdits: true,
  snippetEdits: true,
  semanticTokens: true,
  inlayHints: true,
  inlayHintRefresh: true,
  pulledDiagnostics: true,
  diagnosticRefresh: true,
  progress: true,
  linkTooltips: true,
  fileMoves: true,
  renamePreparing: true,
  codeActions: true,
  preferredActions: true,
  diagnosticLinks: true,
  relatedPlaces: true,
  fadedDiagnostics: true,
  fileWatching: true,
  workspaceFolders: true,
  configuration: true,
  configurationNews: true,
  drawings: true,
  reference: 'file:///mahlstick',
};

/** A client that can take nothing but the protocol's oldest forms. */
export const nothing: Abilities = {
  completionSnippets: false,
  completionMarkdown: false,
  insertReplaceEdits: false,
  hoverMarkdown: false,
  nestedSymbols: false,
  definitionLinks: false,
  versionedEdits: false,
  snippetEdits: false,
  semanticTokens: false,
  inlayHints: false,
  inlayHintRefresh: false,
  pulledDiagnostics: false,
  diagnosticRefresh: false,
  progress: false,
  linkTooltips: false,
  fileMoves: false,
  renamePreparing: false,
  codeActions: false,
  preferredActions: false,
  diagnosticLinks: false,
  relatedPlaces: false,
  fadedDiagnostics: false,
  fileWatching: false,
  workspaceFolders: false,
  configuration: false,
  configurationNews: false,
  drawings: false,
};

export const planUri = 'file:///studio/plan.mahl';

export interface Bench {
  readonly service: LanguageService;
  readonly uri: string;
  readonly text: string;
  /** Where the `|` stood; the start of the text without one. */
  readonly position: Position;
  /** URIs of the plans that were told to have changed, in order. */
  readonly changed: string[];
  readonly failures: string[];
}

/** A plan in a service of its own; the caret is marked `|` in the text, which is taken out. */
export function openPlan(
  marked: string,
  abilities: Abilities = everything,
  files: Readonly<Record<string, FileAnswer>> = {},
): Bench {
  const offset = Math.max(0, marked.indexOf('|'));
  const before = marked.slice(0, offset).split(/\r\n|\n/u);
  const text = marked.replace('|', '');
  const changed: string[] = [];
  const failures: string[] = [];
  const service = createLanguageService({
    abilities,
    folders: () => ['file:///studio'],
    fetchFile: (uri) => Promise.resolve(files[uri] ?? { ok: false, reason: 'There is no such file.' }),
    planChanged: (uri) => changed.push(uri),
    failed: (what, error) => failures.push(`${what}: ${String(error)}`),
  });
  service.open(planUri, 1, text);
  return {
    service,
    uri: planUri,
    text,
    position: { line: before.length - 1, character: before.at(-1)?.length ?? 0 },
    changed,
    failures,
  };
}

/** The promises that were settled so far have been answered. */
export async function settled(): Promise<void> {
  for (let turn = 0; turn < 5; turn++) await Promise.resolve();
}
