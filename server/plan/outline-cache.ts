import { buildOutline, type BuiltOutline } from './build-outline.js';
import { type Crowding, crowdingObjects, type Layers } from './crowding.js';
import type { Outline } from './geometry/outline.js';
import { ObjectMemory } from './object-memory.js';
import type { Plan } from './plan.js';
import { isSameData } from './same-data.js';
import type { OutlineInput } from './shapes.js';

/** An outline, and all that it was built from. */
interface Kept {
  readonly tolerance: number;
  readonly input: OutlineInput;
  readonly built: BuiltOutline;
}

/** Which objects crowd a picture, and all that this was told from. */
interface Counted {
  readonly width: number;
  readonly height: number;
  readonly outlines: readonly Outline[];
  readonly coveringOrder: readonly number[];
  readonly crowding: ReadonlyMap<number, Crowding>;
}

/**
 * Keeps what is worked out of outlines. Each outline by whose it is and what it is built from, so that an edit rebuilds
 * only the shapes it touches and an untouched outline stays the same object; which of them crowd the picture; the
 * objects that have them; and the plan of those. What one whole resolution did not ask for is dropped at the next.
 */
export class OutlineCache {
  #current = new Map<string, Kept>();
  #earlier = new Map<string, Kept>();
  #crowding: Counted | undefined;
  /** The objects with these outlines. */
  objects = new ObjectMemory();
  /** The plan that was resolved last. */
  plan: Plan | undefined;
  /** How many outlines have been built so far. */
  built = 0;
  /** How often crossings have been counted so far. */
  counted = 0;

  /** Starts a resolution: only what the one before used is kept. */
  turnOver(): void {
    this.#earlier = this.#current;
    this.#current = new Map();
  }

  /** A cache that starts with what this one keeps, for a resolution that is only tried: this one stays as it is. */
  aside(): OutlineCache {
    const other = new OutlineCache();
    other.#current = new Map(this.#current);
    other.#crowding = this.#crowding;
    other.objects = this.objects.aside();
    other.plan = this.plan;
    return other;
  }

  /** How many outlines are kept, those of the resolution before among them. */
  get kept(): number {
    return new Set([...this.#current.keys(), ...this.#earlier.keys()]).size;
  }

  /** Keeps on what is kept under this name: it was not asked for, as nothing has changed. */
  hold(name: string): void {
    const kept = this.#earlier.get(name);
    if (kept && !this.#current.has(name)) this.#current.set(name, kept);
  }

  /** The outline that something of this name has; built where it is not the one that was kept of it. */
  get(name: string, input: OutlineInput, tolerance: number): BuiltOutline {
    const kept = this.#current.get(name) ?? this.#earlier.get(name);
    if (kept?.tolerance === tolerance && isSameData(kept.input, input)) {
      this.#current.set(name, kept);
      return kept.built;
    }
    const built = buildOutline(input, tolerance);
    this.built++;
    this.#current.set(name, { tolerance, input, built });
    return built;
  }

  /** Which objects crowd the picture: counted anew only where an outline, the canvas or the order is another. */
  crowding(layers: Layers): ReadonlyMap<number, Crowding> {
    const kept = this.#crowding;
    if (kept && isCounted(kept, layers)) return kept.crowding;
    this.counted++;
    const { canvas, objects, coveringOrder } = layers;
    const crowding = crowdingObjects(layers);
    const { width, height } = canvas;
    this.#crowding = { width, height, outlines: outlinesOf(objects), coveringOrder, crowding };
    return crowding;
  }
}

function outlinesOf(objects: Layers['objects']): readonly Outline[] {
  const outlines: Outline[] = [];
  for (const { outline } of objects) outlines.push(outline);
  return outlines;
}

function isCounted(kept: Counted, { canvas, objects, coveringOrder }: Layers): boolean {
  if (kept.width !== canvas.width || kept.height !== canvas.height) return false;
  const { outlines, coveringOrder: order } = kept;
  if (outlines.length !== objects.length || order.length !== coveringOrder.length) return false;
  for (let at = 0; at < outlines.length; at++) if (outlines[at] !== objects[at]?.outline) return false;
  for (let at = 0; at < order.length; at++) if (order[at] !== coveringOrder[at]) return false;
  return true;
}
