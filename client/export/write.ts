import * as vscode from 'vscode';
import { Utils, URI } from 'vscode-uri';
import type { Wanted } from './choices.js';

const NAMES: Readonly<Record<Wanted['format'], string>> = {
  svg: vscode.l10n.t('SVG drawing'),
  png: vscode.l10n.t('PNG image'),
  pdf: vscode.l10n.t('PDF document'),
  ics: 'iCalendar',
};

/**
 * Asks where the file is to be, beside the plan unless the painter says otherwise; the dialog asks before it
 * overwrites.
 */
export async function askWhere(plan: vscode.Uri, { what, format }: Wanted): Promise<vscode.Uri | undefined> {
  const name = Utils.basename(URI.from(plan)).replace(/\.mahl$/u, '');
  const folder =
    plan.scheme === 'untitled'
      ? vscode.workspace.workspaceFolders?.[0]?.uri
      : vscode.Uri.from(Utils.dirname(URI.from(plan)));
  return vscode.window.showSaveDialog({
    title: vscode.l10n.t('Export drawing'),
    ...(folder === undefined ? {} : { defaultUri: vscode.Uri.joinPath(folder, `${name}-${what}.${format}`) }),
    filters: { [NAMES[format]]: [format] },
  });
}
