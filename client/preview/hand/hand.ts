import './hand.css';
import { t } from '../../../grammar/localised.js';
import { type Scene, isBoardView } from '../../../server/drawing/scene.js';
import type { HandChange } from '../../../server/language/hand/change.js';
import { element } from '../elements.js';
import type { FromPage, ServerState, ToPage } from '../messages.js';
import { Board, type Surface } from './board.js';
import type { Tool } from './draft.js';
import type { Grip } from './grips.js';
import { DrawingNew } from './drawing-new.js';
import { Keyboard } from './keyboard.js';
import { MarkedPanel } from './marked-panel.js';
import { Moving } from './moving.js';
import { Overlay } from './overlay.js';
import { Readout } from './readout.js';
import { Selection } from './selection.js';
import { ToolRow } from './tool-row.js';
import { type Made, TryFeed } from './try-feed.js';
import { WriteQueue } from './write-queue.js';

export interface HandHost {
  /** What the drawing lies in. */
  readonly place: HTMLElement;
  readonly surface: Surface;
  readonly post: (message: FromPage) => void;
  /** Draws a scene, one that is only tried as well. */
  readonly draw: (scene: Scene) => void;
  readonly snaps: boolean;
  readonly keepSnaps: (snaps: boolean) => void;
  /** All that was to be written is in the drawing, or will not be. */
  readonly settled: () => void;
  /** A tool is taken in hand, or none. */
  readonly toolTaken: (tool: Tool | undefined) => void;
}

type Answer = Extract<ToPage, { readonly type: 'tried' | 'written' | 'refused' }>;

/** Working by hand in the drawing: what is marked shows its handles, is moved, changed, and new things are drawn. */
export class Hand {
  /** The row of the page's bar. */
  readonly row: HTMLElement;
  readonly #host: HandHost;
  readonly #board: Board;
  readonly #overlay = new Overlay();
  readonly #readout = new Readout();
  readonly #tries: TryFeed;
  readonly #writes: WriteQueue;
  readonly #moving: Moving;
  readonly #drawing: DrawingNew;
  readonly #keyboard: Keyboard;
  readonly #selection: Selection;
  readonly #tools: ToolRow;
  /** In a drawing of another size there is room for more handles, or fewer. */
  readonly #sizes = new ResizeObserver(() => {
    if (this.#moving.drag === undefined && !this.#writes.busy) this.#selection.show();
  });
  #watched: SVGSVGElement | undefined;
  #snaps: boolean;
  #ids = 0;

  constructor(host: HandHost) {
    this.#host = host;
    this.#snaps = host.snaps;
    this.#board = new Board(host.surface);
    this.#tries = new TryFeed((made) => this.#ask('try', made));
    this.#writes = new WriteQueue({
      ask: (made) => this.#ask('write', made),
      ground: () => this.#board.ground,
      refused: (reason) => this.#refused(reason),
    });
    const shared = {
      board: this.#board,
      overlay: this.#overlay,
      readout: this.#readout,
      place: host.place,
      snaps: () => this.#snaps,
      attempt: (change: HandChange) => this.#attempt(change),
      write: (change: HandChange) => this.write(change),
      letGo: () => this.#putBack(),
    };
    this.#tools = new ToolRow({
      snaps: host.snaps,
      take: (tool, byKeys) => this.#drawing.take(tool, byKeys),
      snap: (snaps) => {
        this.#snaps = snaps;
        host.keepSnaps(snaps);
      },
    });
    const panel = new MarkedPanel(shared);
    this.#drawing = new DrawingNew({ ...shared, changed: (tool) => this.#toolChanged(tool) });
    this.#moving = new Moving({
      ...shared,
      gripAt: (event) => (this.tool === undefined ? this.#selection.gripAt(event) : undefined),
      // The cursor of the text may be there already, while something else has been marked by keys.
      clicked: ({ subject }) => this.#selection.select(subject),
      begun: (grip) => this.#begun(grip),
    });
    this.#keyboard = new Keyboard({
      ...shared,
      writes: this.#writes,
      step: (to) => host.post({ type: 'step', to }),
    });
    this.#selection = new Selection({ ...shared, panel, hidesHandles: () => this.tool !== undefined });
    const { notice, tag, live } = this.#readout;
    this.row = element('div', { class: 'hand-bar' }, this.#tools.group, panel.section, notice, tag, live);
    window.addEventListener('keydown', (event) => this.#press(event), { capture: true });
    host.place.addEventListener('pointerdown', () => this.#readout.settle(), { capture: true });
  }

  get tool(): Tool | undefined {
    return this.#drawing.tool;
  }

  /** A drawing made from the text is on the page. */
  drawn(scene: Scene, version: number): void {
    this.#board.take(scene, version);
    const isPicture = !isBoardView(scene.view);
    if (!isPicture && this.tool !== undefined) this.#drawing.take(undefined, false);
    this.#tools.enable(isPicture);
    const { svg } = this.#host.surface;
    if (svg !== undefined) {
      this.#overlay.attach(svg);
      if (this.#watched !== svg) this.#sizes.observe(svg);
      this.#watched = svg;
    }
    this.#writes.drawn();
    if (!this.#writes.busy) this.#host.settled();
    if (this.#moving.drag === undefined) this.#rest();
    this.#selection.show();
    this.#moving.goOn();
  }

  /** The cursor is at something else, perhaps. */
  cursorMoved(): void {
    if (this.#moving.drag === undefined) this.#selection.cursorAt(this.#host.surface.marked);
  }

  answer(message: Answer): void {
    switch (message.type) {
      case 'tried':
        this.#tried(message);
        return;
      case 'written':
        this.#writes.written(message.id, message.version);
        return;
      case 'refused':
        // What can't be tried on the way may be possible where the hand lets go.
        if (this.#tries.answered(message.id) === 'not asked')
          this.#writes.refused(message.id, message.reason, message.isStale);
        return;
    }
  }

  server(state: ServerState): void {
    if (state === 'running') return;
    this.#tries.forget();
    const wasBusy = this.#writes.busy;
    this.#writes.forget();
    if (this.#moving.cancel() || wasBusy)
      this.#refused(t('Mahlstick has stopped, so nothing is written. Your text is not affected.'));
  }

  #ask(type: 'try' | 'write', made: Made): number {
    this.#ids += 1;
    this.#host.post({ type, id: this.#ids, ...made });
    return this.#ids;
  }

  #tried({ id, version, scene }: Extract<Answer, { readonly type: 'tried' }>): void {
    const { ground, scene: current } = this.#board;
    if (this.#tries.answered(id) !== 'shown') return;
    if (version !== ground?.version || scene.view !== current?.view) return;
    this.#host.draw(scene);
    this.#moving.tried(scene);
  }

  #begun({ subject }: Grip): void {
    this.#readout.settle();
    this.#host.surface.focus(subject);
    this.#selection.select(subject);
  }

  #attempt(change: HandChange): void {
    const version = this.#board.ground?.version;
    if (version !== undefined) this.#tries.try({ version, change });
  }

  /** Writes a change in the text, after those that are on their way. */
  write(change: HandChange): void {
    this.#tries.drop();
    this.#readout.settle();
    this.#writes.add({ kind: 'change', change });
  }

  #refused(reason: string): void {
    this.#keyboard.forget();
    this.#putBack();
    this.#host.settled();
    this.#readout.refuse(reason);
  }

  /** The drawing is as the text has it again. */
  #putBack(): void {
    this.#tries.drop();
    this.#readout.away();
    const { scene } = this.#board;
    if (scene !== undefined) this.#host.draw(scene);
    this.#rest();
    this.#selection.show();
  }

  /** No pointer moves anything; but keys may have moved something farther than it is drawn. */
  #rest(): void {
    if (this.tool === undefined) this.#overlay.showDraft('', []);
    this.#overlay.clear();
    this.#keyboard.show();
  }

  #toolChanged(tool: Tool | undefined): void {
    this.#tools.choose(tool);
    this.#moving.cancel();
    this.#overlay.showSnap(undefined);
    this.#selection.show();
    this.#host.toolTaken(tool);
  }

  #press(event: KeyboardEvent): void {
    if (isTyping(event.target)) return;
    const isTaken =
      (event.key === 'Escape' && this.#moving.cancel()) ||
      this.#drawing.press(event) ||
      this.#keyboard.press(event);
    if (!isTaken) return;
    event.preventDefault();
    // Neither the drawing nor the editor takes it for a key of theirs.
    event.stopPropagation();
  }
}

function isTyping(target: EventTarget | null): boolean {
  return (
    target instanceof HTMLTextAreaElement ||
    target instanceof HTMLSelectElement ||
    (target instanceof HTMLInputElement && target.type !== 'radio' && target.type !== 'checkbox')
  );
}
