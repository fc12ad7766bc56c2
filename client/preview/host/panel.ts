import { Utils, URI } from 'vscode-uri';
import * as vscode from 'vscode';
import type { View } from '../../../server/drawing/scene.js';
import { CopyOfDrawing } from '../../export/copy.js';
import { Rasters } from '../../export/rasters.js';
import type { ServerLink } from '../../server-link.js';
import type { Look } from '../look.js';
import { type FromPage, type PageState, type ToPage, pageState } from '../messages.js';
import { exampleFor } from '../example.js';
import { builtPage, planIcon } from './built-page.js';
import { ComingBack } from './coming-back.js';
import { HandEdits } from './hand-edits.js';
import { PageLine } from './page-line.js';
import { PictureBeneath } from './picture-beneath.js';
import { documentOf, editorOf } from './plan-places.js';
import { PlanNews } from './plan-news.js';
import { type DrawnExample, PlanText } from './plan-text.js';
import { SceneFeed } from '../scene-feed.js';
import { viewLabel } from '../views.js';

export interface PreviewParts {
  readonly panel: vscode.WebviewPanel;
  readonly uri: vscode.Uri;
  readonly look: Look;
  /** What the page kept when the window was closed. */
  readonly kept?: PageState;
  readonly extensionUri: vscode.Uri;
  readonly server: ServerLink;
  readonly log: vscode.LogOutputChannel;
  /** Told when another view is shown. */
  readonly changed: () => void;
}

/** The drawing of one plan: gives its page scenes, findings and the place of the cursor, and does what it asks. */
export class PreviewPanel implements vscode.Disposable {
  readonly #parts: PreviewParts;
  readonly #feed: SceneFeed;
  readonly #hand: HandEdits;
  readonly #back: ComingBack;
  readonly #text: PlanText;
  readonly #page: PageLine;
  readonly #news: PlanNews;
  readonly #beneath = new PictureBeneath(
    () => this.#uri,
    (message) => this.#post(message),
  );
  readonly #rasters = new Rasters((message) => this.#post(message));
  readonly #copy: CopyOfDrawing;
  readonly #subscriptions: readonly vscode.Disposable[];
  #uri: vscode.Uri;
  #drawn: DrawnExample | undefined;

  constructor(parts: PreviewParts) {
    const { panel, server } = parts;
    this.#parts = parts;
    this.#copy = new CopyOfDrawing(server, parts.log, (message) => this.#post(message));
    this.#uri = parts.uri;
    this.#page = new PageLine({ panel, log: parts.log, received: (message) => this.#take(message) });
    this.#feed = new SceneFeed(parts.look, {
      ask: (look, known) =>
        this.#page.listens && server.state === 'running'
          ? server.scene(this.#uri, look, known)
          : Promise.resolve(null),
      deliver: ({ epoch, version, scene, change }) => {
        this.#drawn = { version, example: exampleFor(scene) };
        this.#post(
          change === undefined
            ? { type: 'scene', epoch, version, scene }
            : { type: 'scene change', epoch, version, change },
        );
        this.#beneath.drawn(scene);
      },
      failed: (error) => parts.log.debug(`No scene: ${String(error)}`),
    });
    this.#back = new ComingBack({
      isHere: () => panel.active,
      ask: (isFirst) => this.#post({ type: 'come back', isFirst }),
    });
    this.#text = new PlanText({
      panel,
      log: parts.log,
      uri: () => this.#uri,
      opened: () => this.#feed.refresh(),
      gone: () => this.#post({ type: 'gone' }),
      left: () => this.#back.end(),
    });
    this.#hand = new HandEdits({
      server,
      log: parts.log,
      document: () => documentOf(this.#uri),
      editor: () => editorOf(this.#uri),
      look: () => this.#feed.look,
      drawn: () => this.#feed.delivered,
      post: (message) => this.#post(message),
      show: (selection) => this.#text.show(selection),
    });
    this.#news = new PlanNews({
      server,
      uri: () => this.#uri,
      post: (message) => this.#post(message),
    });
    panel.iconPath = planIcon(parts.extensionUri);
    this.#subscriptions = [
      server.onStateChanged((state) => {
        this.#post({ type: 'server', state });
        if (state === 'running') void this.#text.open();
      }),
      server.onPlanChanged((changed) => {
        if (server.isAbout(changed, this.#uri)) this.#feed.refresh();
      }),
      vscode.workspace.onDidCloseTextDocument(({ uri }) => {
        if (uri.toString() !== this.#uri.toString()) return;
        this.#feed.begin();
        void this.#text.open();
      }),
    ];
    this.#load();
    void this.#text.open();
  }

  get uri(): vscode.Uri {
    return this.#uri;
  }

  get view(): View {
    return this.#feed.look.view;
  }

  get active(): boolean {
    return this.#parts.panel.active;
  }

  get visible(): boolean {
    return this.#parts.panel.visible;
  }

  /** Says in its title of which plan it is, and for one of several of that plan which view it shows. */
  name(isOneOfSeveral: boolean): void {
    const plan = Utils.basename(URI.from(this.#uri));
    const title = isOneOfSeveral
      ? vscode.l10n.t('Preview {0}, {1}', plan, viewLabel(this.view))
      : vscode.l10n.t('Preview {0}', plan);
    if (this.#parts.panel.title !== title) this.#parts.panel.title = title;
  }

  show(view: View): void {
    this.#post({ type: 'view', view });
    this.#look({ ...this.#feed.look, view });
  }

  get look(): Look {
    return this.#feed.look;
  }

  /** Settles when the page listens; rejects, with a sentence to the painter, when the preview is closed before. */
  ready(): Promise<void> {
    return this.#page.ready();
  }

  /** A drawing in pixels, painted by the page. */
  paint(svg: string, width: number): Promise<Uint8Array> {
    return this.#rasters.paint(svg, width);
  }

  /** Copies the drawing as an image; the page has to have the focus for that. */
  copy(): void {
    this.#parts.panel.reveal();
    this.#post({ type: 'copy' });
  }

  bringForward(): void {
    this.#parts.panel.reveal(undefined, true);
  }

  #look(look: Look): void {
    this.#feed.show(look);
    this.#parts.changed();
  }

  /** The plan has another name now. */
  follow(uri: vscode.Uri): void {
    this.#uri = uri;
    this.#feed.begin();
    this.#load();
    void this.#text.open();
  }

  /** Brings the text forward. */
  async showPlan(): Promise<void> {
    await this.#text.show();
  }

  dispose(): void {
    this.#feed.stop();
    this.#back.end();
    this.#page.dispose();
    this.#news.dispose();
    this.#beneath.dispose();
    this.#rasters.dispose();
    vscode.Disposable.from(...this.#subscriptions).dispose();
    this.#parts.panel.dispose();
  }

  #load(): void {
    const { panel, extensionUri } = this.#parts;
    const state = pageState(this.#uri.toString(), { ...this.#parts.kept, ...this.#feed.look });
    this.#page.end();
    this.name(false);
    panel.webview.html = builtPage(panel.webview, extensionUri, 'preview', {
      state: JSON.stringify(state),
      title: vscode.l10n.t('Mahlstick preview'),
    });
  }

  #post(message: ToPage): void {
    this.#page.post(message);
  }

  #take(message: FromPage): void {
    switch (message.type) {
      case 'ready':
        this.#beneath.forget();
        this.#feed.forget();
        this.#post({ type: 'server', state: this.#parts.server.state });
        // It may be gone, which has to be said again to a page that has only now come.
        void this.#text.open();
        void this.#news.tellAll();
        return;
      case 'again':
        this.#feed.forget();
        this.#feed.refresh();
        return;
      case 'view':
        // The page has it already: told of it again, it would go back from one that was chosen meanwhile.
        this.#look({ ...this.#feed.look, view: message.view });
        return;
      case 'reveal':
        void this.#text.reveal(message.version, message.location);
        return;
      case 'distance':
        this.#feed.show({ ...this.#feed.look, distanceMillimetres: message.millimetres ?? undefined });
        return;
      case 'sitting':
        this.#feed.show({ ...this.#feed.look, sitting: message.sitting ?? undefined });
        return;
      case 'under':
        this.#beneath.want(message.sitting ?? undefined);
        return;
      case 'room':
        this.#feed.show({ ...this.#feed.look, isNarrow: message.isNarrow });
        return;
      case 'restart':
        void this.#parts.server.restart();
        return;
      case 'export':
        void vscode.commands.executeCommand('mahlstick.exportDrawing');
        return;
      case 'copy':
        void this.#copy.give(this.#uri, this.#feed.look);
        return;
      case 'copied':
        void this.#copy.tell(message.isCopied);
        return;
      case 'raster':
        this.#rasters.answer(message);
        return;
      case 'example':
        void this.#text.insertExample(message.version, this.#drawn);
        return;
      case 'try':
        void this.#hand.try(message);
        return;
      case 'write':
        void this.#hand.write(message);
        return;
      case 'step':
        void this.#hand.step(message.to, () => {
          this.#parts.panel.reveal();
          this.#back.begin();
        });
        return;
    }
  }
}
