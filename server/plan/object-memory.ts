import type { Node } from '../../grammar/index.js';
import type { Outline } from './geometry/outline.js';
import type { PlanObject } from './plan.js';

/**
 * What objects are resolved from besides their own statements; while all its parts are the same, it is the same object.
 */
export interface Basis {
  readonly parts: readonly unknown[];
}

interface Kept {
  /** What its outline was placed on. */
  readonly ground: Basis;
  readonly outline: Outline;
  resolved: { readonly around: Basis; readonly object: PlanObject } | undefined;
}

/**
 * Keeps what objects were resolved to by their statements, from one tree to the next, where these alone and a few
 * things of the whole plan tell it: not where an object is placed by another, has a shape from a file, or has a
 * problem.
 */
export class ObjectMemory {
  #kept = new WeakMap<Node, Kept>();
  /** What may be used besides and is left as it is. */
  #others: WeakMap<Node, Kept> | undefined;
  #ground: Basis = { parts: [] };
  #around: Basis = { parts: [] };

  /** A memory that starts with what this one keeps, for a resolution that is only tried: this one stays as it is. */
  aside(): ObjectMemory {
    const other = new ObjectMemory();
    other.#others = this.#kept;
    other.#ground = this.#ground;
    other.#around = this.#around;
    return other;
  }

  /** What outlines are placed on now. */
  groundOf(parts: readonly unknown[]): Basis {
    return (this.#ground = sameOr(this.#ground, parts));
  }

  /** What tells the rest of objects now. */
  aroundOf(parts: readonly unknown[]): Basis {
    return (this.#around = sameOr(this.#around, parts));
  }

  /** The outline of an object that refers to nothing, if it was built on the same ground from the same statements. */
  outlineOf(node: Node, ground: Basis): Outline | undefined {
    const kept = this.#find(node);
    return kept?.ground === ground ? kept.outline : undefined;
  }

  keepOutline(node: Node, ground: Basis, outline: Outline): void {
    this.#kept.set(node, { ground, outline, resolved: undefined });
  }

  /** The object as it was resolved with the same outline and surroundings. */
  objectOf(node: Node, outline: Outline, around: Basis): PlanObject | undefined {
    const kept = this.#find(node);
    return kept?.outline === outline && kept.resolved?.around === around ? kept.resolved.object : undefined;
  }

  /** Kept for an object of which the outline is kept. */
  keepObject(node: Node, around: Basis, object: PlanObject): void {
    const kept = this.#kept.get(node);
    if (kept?.outline === object.outline) kept.resolved = { around, object };
  }

  #find(node: Node): Kept | undefined {
    return this.#kept.get(node) ?? this.#others?.get(node);
  }
}

function sameOr(known: Basis, parts: readonly unknown[]): Basis {
  const isSame = known.parts.length === parts.length && parts.every((part, at) => part === known.parts[at]);
  return isSame ? known : { parts };
}
