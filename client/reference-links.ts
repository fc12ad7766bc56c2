import * as vscode from 'vscode';
import type { Middleware } from 'vscode-languageclient';

export const openReferenceCommand = 'mahlstick.openReference';

/**
 * Of documents that codes lead to: newer versions of VS Code follow no code to a command, but every one to a document.
 */
const scheme = 'mahlstick-reference';

const pages = ['grammar/README.md', 'server/measure/README.md', 'server/findings/README.md'] as const;

/**
 * Codes, hovers and offers point to pages of the reference as files. Here they lead to the page set as Markdown, at the
 * right heading, where following a file would show its source from the top.
 */
export function referenceLinks(extension: vscode.Uri): Middleware {
  const base = extension.toString();
  const leads = (address: string): Lead | undefined => {
    const page = pages.find((file) => address.startsWith(`${base}/${file}#`));
    return page && { page, anchor: address.slice(address.indexOf('#') + 1) };
  };
  const lead = (content: vscode.MarkdownString | vscode.MarkedString | undefined): void => {
    if (!(content instanceof vscode.MarkdownString)) return;
    content.value = content.value.replace(/\]\(([^\s()]+)\)/gu, (link, address: string) => {
      const to = leads(address);
      return to === undefined ? link : `](${commandFor(to)})`;
    });
    content.isTrusted = { enabledCommands: [openReferenceCommand] };
  };
  return {
    handleDiagnostics: (uri, diagnostics, next) => {
      for (const diagnostic of diagnostics) {
        const { code } = diagnostic;
        if (typeof code !== 'object') continue;
        const to = leads(code.target.toString());
        if (to !== undefined) diagnostic.code = { ...code, target: documentFor(to) };
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

/** Shows the page that a document stands for in the place of it, for as long as this is not disposed. */
export function followCodes(extension: vscode.Uri): vscode.Disposable {
  return vscode.Disposable.from(
    vscode.workspace.registerTextDocumentContentProvider(scheme, { provideTextDocumentContent: () => '' }),
    vscode.window.onDidChangeActiveTextEditor(async (editor) => {
      const uri = editor?.document.uri;
      if (uri?.scheme !== scheme) return;
      const standIns = vscode.window.tabGroups.all
        .flatMap(({ tabs }) => tabs)
        .filter(({ input }) => input instanceof vscode.TabInputText && input.uri.scheme === scheme);
      await vscode.window.tabGroups.close(standIns);
      await openReference(extension, uri.path.slice(1), uri.query);
    }),
  );
}

/** Shows a page of the reference at a heading; anything but a page of the reference is refused. */
export async function openReference(extension: vscode.Uri, page: unknown, anchor: unknown): Promise<void> {
  const file = pages.find((candidate) => candidate === page);
  if (file === undefined || typeof anchor !== 'string') return;
  const uri = vscode.Uri.joinPath(extension, file).with({ fragment: anchor });
  await vscode.commands.executeCommand('markdown.showPreview', uri);
}

interface Lead {
  readonly page: (typeof pages)[number];
  readonly anchor: string;
}

function commandFor({ page, anchor }: Lead): string {
  return `command:${openReferenceCommand}?${encodeURIComponent(JSON.stringify([page, anchor]))}`;
}

function documentFor({ page, anchor }: Lead): vscode.Uri {
  return vscode.Uri.from({ scheme, path: `/${page}`, query: anchor });
}
