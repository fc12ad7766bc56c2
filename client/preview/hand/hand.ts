import './hand.css';
import type { Grip, Scene } from '../../../server/drawing/scene.js';
import type { HandChange } from '../../../server/language/hand/change.js';
import { element } from '../elements.js';
import type { FromPage, ServerState, ToPage } from '../messages.js';
import { Board, type Surface } from './board.js';
import type { Tool } from './draft.js';
import { DrawingNew } from './drawing-new.js';
import { askedBy } from './keys.js';
import { wayInWords } from './lengths.js';
import { MarkedPanel, type MarkedThing } from './marked-panel.js';
import { Moving } from './moving.js';
import { Overlay } from './overlay.js';
import { distance, sum } from './place.js';
import { Readout } from './readout.js';
import { ToolRow } from './tool-row.js';
import { TryFeed } from './try-feed.js';
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
  /** A tool is taken in hand, or none. */
  readonly toolTaken: (tool: Tool | undefined) => void;
}

type Answer = Extract<ToPage, { readonly type: 'tried' | 'written' | 'refused' }>;

/** Pixels of the screen round a handle that belong to it. */
const gripPixels = 13;

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
  readonly #tools: ToolRow;
  readonly #marked: MarkedPanel;
  #snaps: boolean;
  #ids = 0;
  /** The subject whose handles are shown: what had the focus last, or what the cursor came to. */
  #selected: string | undefined;
  #lastMarked = '';
  /** How far keys have moved something since the reader was last told. */
  #nudged: { readonly grip: string; readonly by: { readonly x: number; readonly y: number } } | undefined;

  constructor(host: HandHost) {
    this.#host = host;
    this.#snaps = host.snaps;
    this.#board = new Board(host.surface);
    const ask =
      (type: 'try' | 'write') => (made: { readonly version: number; readonly change: HandChange }) => {
        this.#ids += 1;
        host.post({ type, id: this.#ids, ...made });
        return this.#ids;
      };
    this.#tries = new TryFeed(ask('try'));
    this.#writes = new WriteQueue({
      ask: ask('write'),
      ground: () => this.#board.ground,
      refused: (reason) => this.#refused(reason),
    });
    const shared = {
      board: this.#board,
      overlay: this.#overlay,
      readout: this.#readout,
      place: host.place,
      snaps: () => this.#snaps,
      write: (change: HandChange) => this.#write(change),
    };
    this.#drawing = new DrawingNew({ ...shared, changed: (tool) => this.#toolChanged(tool) });
    this.#moving = new Moving({
      ...shared,
      gripAt: (event) => (this.#drawing.tool === undefined ? this.#gripAt(event) : undefined),
      begun: (grip) => this.#begun(grip),
      attempt: (change) => this.#attempt(change),
      letGo: () => this.#putBack(),
    });
    this.#tools = new ToolRow({
      snaps: host.snaps,
      take: (tool, byKeys) => this.#drawing.take(tool, byKeys),
      snap: (snaps) => {
        this.#snaps = snaps;
        host.keepSnaps(snaps);
      },
    });
    this.#marked = new MarkedPanel({
      change: (change) => this.#write(change),
      attempt: (change) => this.#attempt(change),
      letGo: () => this.#putBack(),
    });
    this.row = element(
      'div',
      { class: 'hand-bar' },
      this.#tools.group,
      this.#marked.section,
      this.#readout.notice,
      this.#readout.tag,
      this.#readout.live,
    );
    window.addEventListener('keydown', (event) => this.#press(event), { capture: true });
    host.place.addEventListener('focusin', ({ target }) => this.#focused(target));
    host.place.addEventListener('pointerdown', () => this.#readout.settle(), { capture: true });
  }

  get tool(): Tool | undefined {
    return this.#drawing.tool;
  }

  /** A drawing made from the text is on the page. */
  drawn(scene: Scene, version: number): void {
    this.#board.take(scene, version);
    const { svg } = this.#host.surface;
    if (svg !== undefined) this.#overlay.attach(svg);
    const wasBusy = this.#writes.busy;
    this.#writes.drawn();
    if (wasBusy && !this.#writes.busy) this.#nudged = undefined;
    if (this.#moving.drag === undefined) this.#rest();
    this.#showHandles();
    this.#moving.goOn();
  }

  /** The cursor is at something else, perhaps. */
  cursorMoved(): void {
    const { marked } = this.#host.surface;
    const key = marked.join('\n');
    if (key === this.#lastMarked) return;
    this.#lastMarked = key;
    if (this.#moving.drag !== undefined || this.#writes.busy) return;
    this.#select(marked.find((subject) => this.#board.whole(subject) !== undefined));
  }

  answer(message: Answer): void {
    switch (message.type) {
      case 'tried':
        if (this.#tries.answered(message.id) !== 'shown' || message.version !== this.#board.ground?.version)
          return;
        if (message.scene.view !== this.#board.scene?.view) return;
        this.#host.draw(message.scene);
        this.#moving.tried(message.scene);
        return;
      case 'written':
        this.#writes.written(message.id, message.version);
        return;
      case 'refused':
        // What can't be tried on the way may be possible where the hand lets go.
        if (this.#tries.answered(message.id) !== 'not asked') return;
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
      this.#refused('Mahlstick has stopped, so nothing is written. Your text is not affected.');
  }

  #begun({ subject }: Grip): void {
    this.#readout.settle();
    this.#host.surface.focus(subject);
    this.#select(subject);
  }

  #attempt(change: HandChange): void {
    const version = this.#board.ground?.version;
    if (version !== undefined) this.#tries.try({ version, change });
  }

  #write(change: HandChange): void {
    this.#tries.drop();
    this.#readout.settle();
    this.#writes.add({ kind: 'change', change });
  }

  #refused(reason: string): void {
    this.#nudged = undefined;
    this.#putBack();
    this.#readout.refuse(reason);
  }

  /** The drawing is as the text has it again. */
  #putBack(): void {
    this.#tries.drop();
    this.#readout.away();
    const { scene } = this.#board;
    if (scene !== undefined) this.#host.draw(scene);
    this.#rest();
    this.#showHandles();
  }

  /** Nothing moves; but keys may have moved something farther than it is drawn. */
  #rest(): void {
    if (this.#drawing.tool === undefined) this.#overlay.showDraft('', []);
    this.#overlay.clear();
    if (this.#nudged !== undefined) this.#showNudge(this.#nudged.grip);
  }

  #toolChanged(tool: Tool | undefined): void {
    this.#tools.choose(tool);
    this.#moving.cancel();
    this.#overlay.showSnap(undefined);
    this.#showHandles();
    this.#host.toolTaken(tool);
  }

  #select(subject: string | undefined): void {
    this.#selected = subject;
    this.#showHandles();
  }

  #showHandles(): void {
    const subject = this.#selected;
    const handles = subject === undefined || this.tool !== undefined ? [] : this.#board.handles(subject);
    this.#overlay.showGrips(handles, subject === undefined ? '' : this.#board.nameOf(subject));
    this.#marked.show(this.#thing(), this.#board.ground?.handling);
  }

  #thing(): MarkedThing | undefined {
    const subject = this.#selected;
    const whole = subject === undefined ? undefined : this.#board.whole(subject);
    if (subject === undefined || whole === undefined) return undefined;
    const kind = whole.kind === 'object' || whole.kind === 'focus' ? whole.kind : 'other';
    return { subject, kind, name: whole.name };
  }

  #focused(target: EventTarget | null): void {
    if (!(target instanceof Element)) return;
    const subject = target.closest('.outlines [data-subject]')?.getAttribute('data-subject');
    if (subject && subject !== this.#selected && this.#board.whole(subject)) this.#select(subject);
  }

  /** The nearest handle, else what is marked, else what lies uppermost: a finger takes only what is marked. */
  #gripAt(event: PointerEvent): Grip | undefined {
    const at = this.#board.under({ x: event.clientX, y: event.clientY });
    const { target } = event;
    if (at === undefined || !(target instanceof Element)) return undefined;
    const selected = this.#selected;
    if (selected !== undefined) {
      const near = this.#board
        .handles(selected)
        .filter((grip) => distance(grip.at, at) <= this.#board.pixels(gripPixels))
        .sort((a, b) => distance(a.at, at) - distance(b.at, at))[0];
      const whole = this.#board.whole(selected);
      if (near !== undefined) return near;
      if (whole?.kind === 'object' && this.#board.isInside(selected, at)) return whole;
    }
    const subject = target.closest('[data-subject]')?.getAttribute('data-subject');
    if (!subject || (event.pointerType === 'touch' && subject !== selected)) return undefined;
    return this.#board.whole(subject);
  }

  #press(event: KeyboardEvent): void {
    if (isTyping(event.target)) return;
    if (this.#wants(event)) {
      event.preventDefault();
      // Neither the drawing nor the editor takes it for a key of theirs.
      event.stopPropagation();
    }
  }

  #wants(event: KeyboardEvent): boolean {
    if (event.key === 'Escape' && this.#moving.cancel()) return true;
    if (this.#drawing.press(event)) return true;
    const handle = this.#overlay.focusedGrip;
    const thing = this.#host.place.querySelector('.outlines g:focus')?.getAttribute('data-subject');
    const unit = this.#board.ground?.handling.unit ?? 'cm';
    const asked = askedBy(event, handle === undefined ? 'thing' : 'handle', unit);
    if (asked === undefined) return false;
    if (asked.kind === 'step') {
      this.#host.post({ type: 'step', to: asked.to });
      return true;
    }
    const subject = handle === undefined ? thing : this.#board.grip(handle)?.subject;
    if (!subject) return false;
    this.#readout.settle();
    switch (asked.kind) {
      case 'nudge':
        return this.#nudge(handle ?? this.#board.whole(subject)?.key, asked.by);
      case 'resize':
        this.#write({ kind: 'resize', subject, factor: asked.factor });
        return true;
      case 'next handle':
        return this.#nextHandle(subject, handle, asked.back);
      case 'leave handle':
        return this.#host.surface.focus(subject);
    }
  }

  #nudge(key: string | undefined, by: { readonly x: number; readonly y: number }): boolean {
    const grip = key === undefined ? undefined : this.#board.grip(key);
    if (grip === undefined) return false;
    if (grip.fixed !== undefined) {
      this.#readout.refuse(grip.fixed);
      return true;
    }
    const before = this.#nudged?.grip === grip.key ? this.#nudged.by : { x: 0, y: 0 };
    this.#nudged = { grip: grip.key, by: sum(before, by) };
    this.#writes.add({ kind: 'nudge', grip: grip.key, by: this.#board.wayInPlan(by) });
    this.#showNudge(grip.key);
    const unit = this.#board.ground?.handling.unit ?? 'cm';
    this.#readout.say(`${grip.name} ${wayInWords(this.#nudged.by, unit)}.`);
    return true;
  }

  /** What keys have moved is shown where it will be, although the text does not say so yet. */
  #showNudge(key: string): void {
    const grip = this.#board.grip(key);
    if (grip === undefined) return;
    const by = this.#board.wayInPlan(this.#writes.outstanding(key));
    const isPart = grip.kind === 'point' || grip.kind === 'lead place';
    this.#overlay.beginGhost(
      isPart || (by.x === 0 && by.y === 0) ? [] : this.#host.surface.outlineOf(grip.subject),
    );
    this.#overlay.moveGhost(by);
    this.#overlay.shift(by, isPart ? key : undefined);
  }

  #nextHandle(subject: string, from: string | undefined, back: boolean): boolean {
    const handles = this.#board.handles(subject);
    if (handles.length === 0) return false;
    const at = handles.findIndex(({ key }) => key === from);
    const next =
      at < 0 ? (back ? handles.length - 1 : 0) : (at + (back ? -1 : 1) + handles.length) % handles.length;
    const grip = handles[next];
    if (grip !== undefined) this.#overlay.focusGrip(grip.key);
    return true;
  }
}

function isTyping(target: EventTarget | null): boolean {
  return (
    target instanceof HTMLTextAreaElement ||
    target instanceof HTMLSelectElement ||
    (target instanceof HTMLInputElement && target.type !== 'radio' && target.type !== 'checkbox')
  );
}
