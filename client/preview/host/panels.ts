import * as v from 'valibot';
import * as vscode from 'vscode';
import { type View, views } from '../../../server/drawing/scene.js';
import { type ServerLink, languageId } from '../../server-link.js';
import type { Look } from '../look.js';
import { type PageState, pageStateSchema } from '../messages.js';
import { pageOptions } from './built-page.js';
import { PreviewPanel } from './panel.js';

const viewType = 'mahlstick.preview';

/** The previews that are open: one of a plan, or more when they are asked for, each restored with the window. */
export class PreviewPanels implements vscode.Disposable {
  readonly #extensionUri: vscode.Uri;
  readonly #server: ServerLink;
  readonly #log: vscode.LogOutputChannel;
  /** The one that was in front last comes last. */
  readonly #open = new Set<PreviewPanel>();
  readonly #changed = new vscode.EventEmitter<void>();
  readonly #subscriptions: vscode.Disposable;

  /** A preview has come, gone, or shows another view. */
  readonly onChanged = this.#changed.event;

  constructor(extensionUri: vscode.Uri, server: ServerLink, log: vscode.LogOutputChannel) {
    this.#extensionUri = extensionUri;
    this.#server = server;
    this.#log = log;
    this.#subscriptions = vscode.Disposable.from(
      vscode.window.registerWebviewPanelSerializer(viewType, {
        deserializeWebviewPanel: (panel, state) => this.#restore(panel, state),
      }),
      vscode.workspace.onDidRenameFiles(({ files }) => {
        for (const { oldUri, newUri } of files) this.#follow(oldUri, newUri);
      }),
      vscode.workspace.onDidSaveTextDocument((document) => this.#followSaved(document)),
    );
  }

  /** The preview that commands are about: the one in front, else that of the plan in front, else the only one. */
  get current(): PreviewPanel | undefined {
    const all = [...this.#open];
    const uri = vscode.window.activeTextEditor?.document.uri;
    return (
      all.find(({ active }) => active) ??
      (uri && this.#of(uri)) ??
      (all.length === 1 ? all[0] : all.find(({ visible }) => visible))
    );
  }

  /** Whether any preview can be seen now. */
  get inSight(): boolean {
    return [...this.#open].some(({ visible }) => visible);
  }

  lookOf(uri: vscode.Uri): Look | undefined {
    return this.#of(uri)?.look;
  }

  /** A preview of the plan whose page listens: the one there is, brought forward where it is hidden, or a new one. */
  async readyFor(uri: vscode.Uri): Promise<PreviewPanel> {
    const known = this.#of(uri);
    if (known === undefined) await this.open(uri);
    else if (!known.visible) known.bringForward();
    const preview = this.#of(uri);
    if (preview === undefined) throw new Error(vscode.l10n.t('There is no preview of the plan.'));
    await preview.ready();
    return preview;
  }

  viewOf(uri: vscode.Uri): View | undefined {
    return this.#of(uri)?.view;
  }

  /** Shows the preview of a plan beside it, or brings forward the one there is. The text keeps the focus. */
  async open(uri: vscode.Uri): Promise<void> {
    const known = this.#of(uri);
    if (known !== undefined) {
      known.bringForward();
      return;
    }
    await this.#add(this.#beside(), uri, { view: configuredView() });
  }

  /** Opens one more preview of a plan, in another view, so that two can be compared. */
  async openAnother(uri: vscode.Uri): Promise<void> {
    const shown = this.viewOf(uri);
    const view = shown === undefined ? configuredView() : shown === 'notan' ? 'drawing' : 'notan';
    await this.#add(this.#beside(), uri, { view });
  }

  dispose(): void {
    this.#subscriptions.dispose();
    this.#changed.dispose();
    for (const preview of this.#open) preview.dispose();
  }

  /** A panel beside the text, which keeps the focus. */
  #beside(): vscode.WebviewPanel {
    return vscode.window.createWebviewPanel(
      viewType,
      '',
      { viewColumn: vscode.ViewColumn.Beside, preserveFocus: true },
      pageOptions(this.#extensionUri),
    );
  }

  async #restore(panel: vscode.WebviewPanel, state: unknown): Promise<void> {
    const { success, output } = v.safeParse(pageStateSchema, state);
    if (!success) {
      this.#log.warn('A preview of the last session could not be restored: its state is not readable.');
      panel.dispose();
      return;
    }
    panel.webview.options = pageOptions(this.#extensionUri);
    await this.#add(panel, vscode.Uri.parse(output.uri), output, output);
  }

  async #add(panel: vscode.WebviewPanel, uri: vscode.Uri, look: Look, kept?: PageState): Promise<void> {
    const preview = new PreviewPanel({
      panel,
      uri,
      look: { view: look.view, distanceMillimetres: look.distanceMillimetres, sitting: look.sitting },
      ...(kept === undefined ? {} : { kept }),
      extensionUri: this.#extensionUri,
      server: this.#server,
      log: this.#log,
      changed: () => this.#told(),
    });
    this.#open.add(preview);
    panel.onDidChangeViewState(() => {
      if (!panel.active || !this.#open.delete(preview)) return;
      this.#open.add(preview);
      this.#changed.fire();
    });
    panel.onDidDispose(() => {
      this.#open.delete(preview);
      preview.dispose();
      void this.#tellContext();
    });
    await this.#tellContext();
  }

  /** Of a file that was renamed, or all plans in a folder that was. */
  #follow(oldUri: vscode.Uri, newUri: vscode.Uri): void {
    const [before, after] = [oldUri.toString(), newUri.toString()];
    for (const preview of this.#open) {
      const uri = preview.uri.toString();
      if (uri === before || uri.startsWith(`${before}/`))
        preview.follow(vscode.Uri.parse(after + uri.slice(before.length)));
    }
    this.#told();
  }

  /** An unsaved plan that is saved is closed, and its words go on in the file that was chosen. */
  #followSaved(saved: vscode.TextDocument): void {
    if (saved.languageId !== languageId || this.#of(saved.uri) !== undefined) return;
    const text = saved.getText();
    const unsaved = vscode.workspace.textDocuments.filter(
      (document) => document.isUntitled && document.getText() === text,
    );
    for (const { uri } of unsaved) {
      for (const preview of this.#allOf(uri)) preview.follow(saved.uri);
    }
    this.#told();
  }

  /** The preview of a plan, of several the one that was in front last. */
  #of(uri: vscode.Uri): PreviewPanel | undefined {
    return this.#allOf(uri).at(-1);
  }

  #allOf(uri: vscode.Uri): readonly PreviewPanel[] {
    return [...this.#open].filter((preview) => preview.uri.toString() === uri.toString());
  }

  /** Tells what has changed, and in the titles which of several previews is which. */
  #told(): void {
    for (const preview of this.#open) preview.name(this.#allOf(preview.uri).length > 1);
    this.#changed.fire();
  }

  async #tellContext(): Promise<void> {
    this.#told();
    await vscode.commands.executeCommand('setContext', 'mahlstick.previewOpen', this.#open.size > 0);
  }
}

function configuredView(): View {
  const view = vscode.workspace.getConfiguration('mahlstick').get<string>('preview.view');
  return views.find((known) => known === view) ?? 'drawing';
}
