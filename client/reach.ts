import * as vscode from 'vscode';
import { URI } from 'vscode-uri';
import type { Files, Reach } from './read-file.js';

/** The files of the workspace, on whatever file system it lies. */
export const workspaceFiles: Files = {
  stat: (file) => vscode.workspace.fs.stat(vscode.Uri.from(file)),
  readFile: (file) => vscode.workspace.fs.readFile(vscode.Uri.from(file)),
};

/** Addresses of the open workspace folders. */
export function openFolders(): readonly string[] {
  return (vscode.workspace.workspaceFolders ?? []).map(({ uri }) => uri.toString());
}

/** Where plans may read from now. */
export function reachOfPlans(languageId: string): Reach {
  return {
    folders: (vscode.workspace.workspaceFolders ?? []).map((folder) => URI.from(folder.uri)),
    plans: vscode.workspace.textDocuments
      .filter((document) => document.languageId === languageId)
      .map((document) => URI.from(document.uri)),
  };
}
