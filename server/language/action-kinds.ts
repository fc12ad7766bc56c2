import { CodeActionKind } from 'vscode-languageserver-types';

/** The kinds of actions that there are. */
export const actionKinds: readonly CodeActionKind[] = [
  CodeActionKind.QuickFix,
  CodeActionKind.RefactorRewrite,
];
