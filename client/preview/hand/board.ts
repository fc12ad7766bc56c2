import type { Grip, Guides, Scene, Spot } from '../../../server/drawing/scene.js';
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
    this.#ground = handling === undefined ? undefined : { version, handling };
    const turn = (at: Spot): Spot => turned(at, scene.picture, scene.view);
    this.#grips = (handling?.grips ?? []).map((grip) => ({ ...grip, at: turn(grip.at) }));
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
    return this.#ground?.handling.unit ?? 'cm';
  }

  grip(key: string): Grip | undefined {
    return this.#grips.find((grip) => grip.key === key);
  }

  /** What takes hold of a thing as a whole. */
  whole(subject: string): Grip | undefined {
    return this.#grips.find((grip) => grip.subject === subject && isWhole(grip));
  }

  /** The small handles of a thing, and that of the focal point, which is a small thing itself. */
  handles(subject: string): readonly Grip[] {
    return this.#grips.filter(
      (grip) => grip.subject === subject && (!isWhole(grip) || grip.kind === 'focus'),
    );
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

  /** The same place in the plan. */
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
    const path = document.createElementNS('http://www.w3.org/2000/svg', 'path');
    path.setAttribute('d', outline.join(''));
    svg.append(path);
    const box = path.getBBox();
    path.remove();
    return box;
  }
}

function isWhole({ kind }: Grip): boolean {
  return kind === 'object' || kind === 'lead' || kind === 'focus';
}
