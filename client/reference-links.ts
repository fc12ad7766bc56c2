import * as vscode from 'vscode';
import type { Middleware } from 'vscode-languageclient';

export const openReferenceCommand = 'mahlstick.openReference';

const pages = ['grammar/README.md', 'server/measure/README.md', 'server/findings/README.md'] as const;

/**
 * Codes, hovers and offers point to pages of the reference as files. Here they lead to a command that shows the page set as
 * Markdown, at the right heading, where following a file would show its source from the top.
 */
export function referenceLinks(extension: vscode.Uri): Middleware {
  const base = extension.toString();
  const leads = (address: string): string | undefined => {
    const page = pages.find((file) => address.startsWith(`${base}/${file}#`));
    return page && commandFor(page, address.slice(address.indexOf('#') + 1));
  };
  const lead = (content: vscode.MarkdownString | vscode.MarkedString | undefined): void => {
    if (!(content instanceof vscode.MarkdownString)) return;
    content.value = content.value.replace(
      /\]\(([^\s()]+)\)/gu,
      (link, address: string) => `](${leads(address) ?? link.slice(2, -1)})`,
    );
    content.isTrusted = { enabledCommands: [openReferenceCommand] };
  };
  return {
    handleDiagnostics: (uri, diagnostics, next) => {
      for (const diagnostic of diagnostics) {
        const { code } = diagnostic;
        if (typeof code !== 'object') continue;
        const command = leads(code.target.toString());
        if (command !== undefined) diagnostic.code = { ...code, target: vscode.Uri.parse(command) };
      }
      next(uri, diagnostics);
    },
    provideHover: async (document, position, token, next) => {
      const hover = await next(document, position, token);
      hover?.contents.forEach(lead);
      return hover;
    },
    provideCompletionItem: async (document, position, context, token, next) => {
      const list = await next(document, position, context, token);
      const items = Array.isArray(list) ? list : (list?.items ?? []);
      for (const { documentation } of items) lead(documentation);
      return list;
    },
  };
}

/** Shows a page of the reference at a heading; anything but a page of the reference is refused. */
export async function openReference(extension: vscode.Uri, page: unknown, anchor: unknown): Promise<void> {
  const file = pages.find((candidate) => candidate === page);
  if (file === undefined || typeof anchor !== 'string') return;
  const uri = vscode.Uri.joinPath(extension, file).with({ fragment: anchor });
  await vscode.commands.executeCommand('markdown.showPreview', uri);
}

function commandFor(page: string, anchor: string): string {
  return `command:${openReferenceCommand}?${encodeURIComponent(JSON.stringify([page, anchor]))}`;
}
