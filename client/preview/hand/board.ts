import { frameCorners } from '../../../server/drawing/handling/frame.js';
import type { Frame, Guides, Scene, Spot } from '../../../server/drawing/scene.js';
import { svgElement } from '../elements.js';
import { type Grip, sizeGripsOf } from './grips.js';
import type { Unit } from './lengths.js';
import { onDrawing, turned, unitsPerPixel } from './place.js';
import type { Ground } from './write-queue.js';

/** What a hand needs to know of the drawing on the page. */
export interface Surface {
  /** The drawing, once there is one. */
  readonly svg: SVGSVGElement | undefined;
  /** Path data of the outline of a subject, as it is drawn. */
  outlineOf(subject: string): readonly string[];
  /** Keys of what the cursor is at. */
  readonly marked: readonly string[];
  /** Gives a subject the focus; false when it can't have it. */
  focus(subject: string): boolean;
}

/** Pixels of the screen within which something snaps. */
const snapPixels = 8;
/** Pixels of a side that has room for a handle between those of its corners. */
const roomPixels = 72;

/** The drawing as a hand finds it: all places are those of the drawing, which in one view are not those of the plan. */
export class Board {
  readonly surface: Surface;
  #scene: Scene | undefined;
  #ground: Ground | undefined;
  #grips: readonly Grip[] = [];
  #guides: Guides = { lines: [], crossings: [] };

  constructor(surface: Surface) {
    this.surface = surface;
  }

  take(scene: Scene, version: number): void {
    this.#scene = scene;
    const { handling } = scene;
    this.#ground = { version, handling };
    const turn = (at: Spot): Spot => turned(at, scene.picture, scene.view);
    this.#grips = (handling?.grips ?? []).flatMap((grip) => [
      { ...grip, at: turn(grip.at) },
      ...sizeGripsOf(grip, turn),
    ]);
    const { lines, crossings } = handling?.guides ?? { lines: [], crossings: [] };
    this.#guides = {
      lines: lines.map(({ from, to }) => ({ from: turn(from), to: turn(to) })),
      crossings: crossings.map(({ at, name }) => ({ at: turn(at), name })),
    };
  }

  get scene(): Scene | undefined {
    return this.#scene;
  }

  /** The plan as the drawing is made from it. */
  get ground(): Ground | undefined {
    return this.#ground;
  }

  get grips(): readonly Grip[] {
    return this.#grips;
  }

  get guides(): Guides {
    return this.#guides;
  }

  get unit(): Unit {
    return this.#ground?.handling?.unit ?? 'cm';
  }

  grip(key: string): Grip | undefined {
    return this.#grips.find((grip) => grip.key === key);
  }

  /** What takes hold of a thing as a whole. */
  whole(subject: string): Grip | undefined {
    return this.#grips.find((grip) => grip.subject === subject && isWhole(grip));
  }

  /** The small handles of a thing, as many as there is room for, and that of the focal point, a small thing itself. */
  handles(subject: string): readonly Grip[] {
    const room = this.pixels(roomPixels);
    return this.#grips.filter(
      (grip) => grip.subject === subject && (!isWhole(grip) || grip.kind === 'focus') && hasRoom(grip, room),
    );
  }

  /** The frame round a thing as path data in the drawing; empty for none. */
  outlineOfFrame(frame: Frame | undefined): string {
    if (frame === undefined) return '';
    const corners = frameCorners(frame).map((corner) => this.inPlan(corner));
    return `M${corners.map(({ x, y }) => `${x} ${y}`).join('L')}Z`;
  }

  /** Where the handles of a thing would be in the drawing, by their keys, if its frame were this one. */
  placesOfFrame(subject: string, frame: Frame): readonly (readonly [key: string, at: Spot])[] {
    const whole = this.#ground?.handling?.grips.find((grip) => grip.subject === subject && isWhole(grip));
    if (whole === undefined) return [];
    return sizeGripsOf({ ...whole, frame }, (at) => this.inPlan(at)).map(({ key, at }) => [key, at]);
  }

  /** Names a subject as it is read aloud. */
  nameOf(subject: string): string {
    return this.whole(subject)?.name ?? this.#scene?.subjects[subject]?.name ?? '';
  }

  /** The place of the drawing under a place of the screen. */
  under(screen: Spot): Spot | undefined {
    const matrix = this.surface.svg?.getScreenCTM();
    return matrix ? onDrawing(screen, matrix) : undefined;
  }

  /** The place of the screen, in CSS pixels from the page's upper left corner, where a place of the drawing is seen. */
  onScreen({ x, y }: Spot): Spot {
    const matrix = this.surface.svg?.getScreenCTM();
    if (!matrix) return { x: 0, y: 0 };
    return { x: matrix.a * x + matrix.c * y + matrix.e, y: matrix.b * x + matrix.d * y + matrix.f };
  }

  /** So many pixels of the screen, in canvas units. */
  pixels(count: number): number {
    const matrix = this.surface.svg?.getScreenCTM();
    return matrix ? count * unitsPerPixel(matrix) : 0;
  }

  get snapReach(): number {
    return this.pixels(snapPixels);
  }

  /** The same place in the plan; and a place of the plan in the drawing, which is the same way round. */
  inPlan(at: Spot): Spot {
    return this.#scene === undefined ? at : turned(at, this.#scene.picture, this.#scene.view);
  }

  /** The same way in the plan. */
  wayInPlan({ x, y }: Spot): Spot {
    return { x: this.#scene?.view === 'mirror' ? -x : x, y };
  }

  /** The box round the outline of a subject. */
  boxOf(subject: string): DOMRectReadOnly | undefined {
    const { svg } = this.surface;
    const outline = this.surface.outlineOf(subject);
    if (svg === undefined || outline.length === 0) return undefined;
    const path = svgElement('path', { d: outline.join('') });
    svg.append(path);
    const box = path.getBBox();
    path.remove();
    return box;
  }
}

/** Whether the side that the handle is in the middle of has room for it. */
function hasRoom(grip: Grip, room: number): boolean {
  if (grip.kind !== 'size') return true;
  const { handle, frame } = grip;
  if (handle.endsWith('centre')) return frame.width >= room;
  return !handle.startsWith('middle') || frame.height >= room;
}

function isWhole({ kind }: Grip): boolean {
  return kind === 'object' || kind === 'lead' || kind === 'focus';
}
