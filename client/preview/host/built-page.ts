import * as vscode from 'vscode';
import { createNonce, type PageParts, pageHtml } from './page.js';

/** What a page of the extension may do: run what is built, and load nothing else. */
export function pageOptions(extension: vscode.Uri): vscode.WebviewOptions {
  return {
    enableScripts: true,
    enableForms: false,
    localResourceRoots: [vscode.Uri.joinPath(extension, 'dist')],
  };
}

/** The sign of a plan on the tab of a panel. */
export function planIcon(extension: vscode.Uri): { readonly light: vscode.Uri; readonly dark: vscode.Uri } {
  return {
    light: vscode.Uri.joinPath(extension, 'client/media/plan-light.svg'),
    dark: vscode.Uri.joinPath(extension, 'client/media/plan-dark.svg'),
  };
}

/** The page that `dist/<name>.js` and `dist/<name>.css` make, for a panel with {@link pageOptions}. */
export function builtPage(
  webview: vscode.Webview,
  extension: vscode.Uri,
  name: 'preview' | 'side-by-side',
  page: Pick<PageParts, 'state' | 'title'>,
): string {
  const built = (file: string) =>
    webview.asWebviewUri(vscode.Uri.joinPath(extension, 'dist', file)).toString();
  return pageHtml({
    cspSource: webview.cspSource,
    nonce: createNonce(),
    scriptUri: built(`${name}.js`),
    styleUri: built(`${name}.css`),
    language: vscode.env.language,
    sentences: vscode.l10n.bundle,
    ...page,
  });
}
