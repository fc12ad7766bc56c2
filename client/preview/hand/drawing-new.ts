import { marked, said, t } from '../../../grammar/localised.js';
import type { Spot } from '../../../server/drawing/scene.js';
import type { HandChange } from '../../../server/language/hand/change.js';
import type { Board } from './board.js';
import {
  type Draft,
  type Tool,
  draftPath,
  evenSided,
  finished,
  isBox,
  leastPoints,
  toolWord,
  withPoint,
  withoutLastPoint,
} from './draft.js';
import { arrowWay } from './keys.js';
import { isForPanning } from './moving.js';
import { placeInWords, sizeInWords, steps, toStep } from './lengths.js';
import type { Overlay } from './overlay.js';
import { distance, sum } from './place.js';
import type { Readout } from './readout.js';
import { snap } from './snap.js';

export interface DrawingNewHost {
  readonly board: Board;
  readonly overlay: Overlay;
  readonly readout: Readout;
  readonly place: HTMLElement;
  readonly snaps: () => boolean;
  readonly write: (change: HandChange) => void;
  /** Another tool is taken, or none. */
  readonly changed: (tool: Tool | undefined) => void;
}

/** Two clicks at one place are one point. */
const samePixels = 4;
const crossPixels = 12;

/** Drawing a new shape or lead, with a pointer or with a cross that arrow keys move. */
export class DrawingNew {
  readonly #host: DrawingNewHost;
  #draft: Draft | undefined;
  /** Where the next point would be. */
  #at: Spot | undefined;
  #pointer: number | undefined;

  constructor(host: DrawingNewHost) {
    this.#host = host;
    const { place } = host;
    const listen = <K extends keyof HTMLElementEventMap>(
      type: K,
      heard: (event: HTMLElementEventMap[K]) => void,
    ): void =>
      place.addEventListener(
        type,
        (event) => {
          if (this.#draft === undefined || isForPanning(event, place)) return;
          // What is drawn over is neither moved nor shown in the text.
          event.stopPropagation();
          heard(event);
        },
        { capture: true },
      );
    listen('pointerdown', (event) => this.#press(event));
    listen('pointermove', (event) => this.#move(event));
    listen('pointerup', (event) => this.#release(event));
    listen('pointercancel', () => this.#pull());
    listen('click', () => undefined);
    listen('dblclick', () => this.#endLine());
  }

  get tool(): Tool | undefined {
    return this.#draft?.tool;
  }

  /** Takes a tool in hand, or lays it down. With the keyboard a cross comes to the middle of the picture. */
  take(tool: Tool | undefined, byKeys: boolean): void {
    this.#draft = tool === undefined ? undefined : { tool, points: [] };
    this.#pointer = undefined;
    this.#at = undefined;
    const { board, changed, overlay, place, readout } = this.#host;
    place.classList.toggle('drawing-new', tool !== undefined);
    overlay.showDraft('', []);
    overlay.showCross(undefined, 0, '');
    readout.away();
    readout.settle();
    changed(tool);
    const picture = board.scene?.picture;
    if (tool === undefined || !byKeys || picture === undefined) return;
    this.#cross({ x: picture.x + picture.width / 2, y: picture.y + picture.height / 2 });
    overlay.focusCross();
    readout.say(`${instruction(tool)}. ${this.#where()}.`);
  }

  /** A key while a tool is in hand. True when it was for the tool. */
  press(event: KeyboardEvent): boolean {
    const draft = this.#draft;
    if (draft === undefined) return false;
    // A pointer that is down sets no point where it is let go of, when what it began is taken back.
    if (event.key === 'Escape' || event.key === 'Backspace') this.#pointer = undefined;
    if (event.key === 'Escape') {
      if (draft.points.length > 0) this.#begin({ ...draft, points: [] });
      else this.take(undefined, false);
      return true;
    }
    if (event.key === 'Backspace') {
      this.#begin(withoutLastPoint(draft));
      return true;
    }
    // Before there is a point the key is for what has the focus, a button of the bar perhaps.
    if (event.key === 'Enter' && !isBox(draft.tool) && draft.points.length > 0) {
      this.#endLine();
      return true;
    }
    if (!this.#host.overlay.crossHasFocus || this.#at === undefined) return false;
    if (event.key === ' ' || event.key === 'Enter') {
      this.#set(this.#at);
      return true;
    }
    const way = arrowWay(event.key);
    if (way === undefined) return false;
    const { small, large } = steps[this.#host.board.unit];
    const step = event.shiftKey ? large : small;
    this.#cross(this.#within(sum(this.#at, { x: way.x * step, y: way.y * step })));
    this.#host.readout.say(`${this.#where()}.`);
    return true;
  }

  #press(event: PointerEvent): void {
    const draft = this.#draft;
    if (draft === undefined || event.button !== 0 || !event.isPrimary) return;
    event.preventDefault();
    this.#host.readout.settle();
    this.#host.overlay.showCross(undefined, 0, '');
    this.#pointer = event.pointerId;
    this.#host.place.setPointerCapture(event.pointerId);
    this.#at = this.#placeOf(event);
    if (isBox(draft.tool) && this.#at !== undefined) this.#begin({ ...draft, points: [this.#at] });
  }

  #move(event: PointerEvent): void {
    const draft = this.#draft;
    if (draft === undefined || !event.isPrimary) return;
    this.#at = this.#placeOf(event);
    this.#show();
    const [first] = draft.points;
    if (this.#at === undefined) return;
    const size =
      isBox(draft.tool) && first !== undefined
        ? sizeInWords(first, this.#at, this.#host.board.unit)
        : undefined;
    this.#host.readout.beside({ x: event.clientX, y: event.clientY }, [
      size ?? placeInWords(this.#at, this.#host.board.unit),
    ]);
  }

  #release(event: PointerEvent): void {
    const draft = this.#draft;
    if (draft === undefined || event.pointerId !== this.#pointer) return;
    this.#pointer = undefined;
    this.#at = this.#placeOf(event);
    if (this.#at === undefined) return;
    const last = draft.points.at(-1);
    if (last !== undefined && distance(last, this.#at) < this.#host.board.pixels(samePixels)) {
      if (isBox(draft.tool)) {
        this.#begin({ ...draft, points: [] });
        this.#host.readout.refuse(t('Drag from one corner of the {0} to the other.', toolWord(draft.tool)));
      }
      return;
    }
    this.#set(this.#at);
  }

  /** The pointer was taken away: a box that it was spanning is none. */
  #pull(): void {
    this.#pointer = undefined;
    if (this.#draft !== undefined && isBox(this.#draft.tool)) this.#begin({ ...this.#draft, points: [] });
  }

  #set(at: Spot): void {
    const draft = this.#draft;
    if (draft === undefined) return;
    const [first] = draft.points;
    const closes =
      draft.tool === 'outline' &&
      first !== undefined &&
      draft.points.length >= leastPoints.outline &&
      distance(first, at) < this.#host.board.pixels(2 * samePixels);
    if (closes) {
      this.#endLine();
      return;
    }
    this.#begin(withPoint(draft, at));
    const count = this.#draft?.points.length ?? 0;
    if (isBox(draft.tool) && count === 2) this.#end();
    else this.#host.readout.say(t('Point {0}. {1}.', count, this.#where()));
  }

  #endLine(): void {
    if (this.#draft !== undefined && !isBox(this.#draft.tool)) this.#end();
  }

  #end(): void {
    const { board, readout, write } = this.#host;
    const draft = this.#draft;
    if (draft === undefined) return;
    const change = finished({ ...draft, points: draft.points.map((at) => board.inPlan(at)) });
    if (typeof change === 'string') {
      if (isBox(draft.tool)) this.#begin({ ...draft, points: [] });
      readout.refuse(change);
      return;
    }
    this.take(undefined, false);
    // It stays in sight until it is drawn from the text.
    this.#host.overlay.showDraft(draftPath(draft, undefined), []);
    write(change);
  }

  #begin(draft: Draft): void {
    this.#draft = draft;
    this.#show();
  }

  #show(): void {
    const draft = this.#draft;
    if (draft === undefined) return;
    this.#host.overlay.showDraft(draftPath(draft, this.#at), draft.points);
  }

  #cross(at: Spot): void {
    this.#at = at;
    const { board, overlay, readout } = this.#host;
    const label = t(
      'Cross, {0}. Arrow keys move it, Space sets a point, Enter ends, Escape leaves.',
      this.#where(),
    );
    overlay.showCross(at, board.pixels(crossPixels), label);
    readout.beside(board.onScreen(at), [this.#where()]);
    this.#show();
  }

  #where(): string {
    const draft = this.#draft;
    const [first] = draft?.points ?? [];
    if (this.#at === undefined || draft === undefined) return '';
    const place = placeInWords(this.#at, this.#host.board.unit);
    return isBox(draft.tool) && first !== undefined
      ? `${sizeInWords(first, this.#at, this.#host.board.unit)}, ${place}`
      : place;
  }

  #placeOf(event: PointerEvent): Spot | undefined {
    const { board, overlay, snaps } = this.#host;
    const pointer = board.under({ x: event.clientX, y: event.clientY });
    if (pointer === undefined) return undefined;
    const isFree = event.ctrlKey || event.metaKey;
    const step = isFree ? undefined : steps[board.unit].small;
    const under = { x: toStep(pointer.x, step), y: toStep(pointer.y, step) };
    const [first] = this.#draft?.points ?? [];
    const tool = this.#draft?.tool;
    overlay.showSnap(undefined);
    if (event.shiftKey && first !== undefined && tool !== undefined && isBox(tool))
      return evenSided(first, under);
    if (isFree || !snaps()) return under;
    const { at, mark } = snap(under, board.guides, board.snapReach);
    overlay.showSnap(mark);
    return at;
  }

  #within({ x, y }: Spot): Spot {
    const picture = this.#host.board.scene?.picture;
    if (picture === undefined) return { x, y };
    return {
      x: Math.min(picture.x + picture.width, Math.max(picture.x, x)),
      y: Math.min(picture.y + picture.height, Math.max(picture.y, y)),
    };
  }
}

/** How it is drawn, for the tip of the tool and for a reader. */
export function instruction(tool: Tool): string {
  return said(instructions[tool]);
}

const instructions: Readonly<Record<Tool, string>> = {
  rectangle: marked('Rectangle: drag from corner to corner; with the keyboard, Space sets each corner'),
  ellipse: marked('Ellipse: drag the box round it; with the keyboard, Space sets each corner of the box'),
  outline: marked('Outline: click its points; Enter or a double click ends, Backspace takes the last back'),
  lead: marked(
    'Lead: click its places from where it starts; Enter or a double click ends, Backspace takes the last back',
  ),
};
