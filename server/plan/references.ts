import { type Node, type NodeOf, t, type Word } from '../../grammar/index.js';
import { type Arrow, type Circle, dependenciesOf, inOrder } from './dependencies.js';
import { pointsOf } from './build-outline.js';
import { EMPTY_OUTLINE, type Outline } from './geometry/outline.js';
import type { Box, Point } from './geometry/point.js';
import type { CanvasUnits } from './lengths.js';
import type { Basis } from './object-memory.js';
import { type ObjectIndex, type ObjectNode, objectOutline } from './objects.js';
import type { OutlineCache } from './outline-cache.js';
import { findCrossing, type PlaceSurroundings, resolvePlace } from './places.js';
import type { Division, Focus, Location } from './plan.js';
import { inWords, locate, type Problems, thousands } from './problems.js';
import { every, single, statementLocation } from './select.js';
import type { ReadPart } from './shapes.js';

/** Curves are flattened to 0.02 % of the diagonal. */
const FLATNESS = 0.0002;
/** Points of all flattened outlines together: several times what a large plan has. */
const MOST_POINTS = 1_000_000;

const NO_ARROWS: readonly Arrow[] = [];

/** How far a flattened outline may stand off its curve on a canvas of this diagonal, canvas units. */
export function flatnessOn(diagonal: number): number {
  return diagonal * FLATNESS;
}

export interface ReferenceSources {
  readonly nodes: readonly Node[];
  readonly objects: ObjectIndex;
  readonly canvas: CanvasUnits & { readonly diagonal: number };
  readonly divisions: readonly Division[];
  readonly problems: Problems;
  readonly readPart: ReadPart;
  /** What is kept from one resolution to the next; without it, every object is placed anew and nothing is kept. */
  readonly cache: OutlineCache | undefined;
}

/**
 * Places what refers to each other, the objects and the focal point, each after what it refers to. A circle is one
 * error, at the reference that closes it; what refers to something unplaced is drawn without that place.
 */
export class References implements PlaceSurroundings {
  readonly canvas: CanvasUnits;
  readonly divisions: readonly Division[];
  readonly problems: Problems;
  readonly outlines: readonly Outline[];
  readonly focal: Focus | undefined;
  readonly focusUnplaced: boolean;
  readonly #objects: ObjectIndex;
  readonly #focusNode: (Node & NodeOf<'focus'>) | undefined;
  readonly #placed: (Outline | undefined)[];
  #focal: Focus | undefined;

  constructor(sources: ReferenceSources) {
    this.canvas = sources.canvas;
    this.divisions = sources.divisions;
    this.problems = sources.problems;
    this.#objects = sources.objects;
    this.#focusNode = single(sources.nodes, 'focus', sources.problems);
    const { cache, canvas, nodes } = sources;
    const memory = cache?.objects;
    const { width, height, millimetresPerUnit } = canvas;
    const ground = memory?.groundOf([width, height, millimetresPerUnit, ...every(nodes, 'divide')]);
    const kept = this.#objects.nodes.map((node) => ground && memory?.outlineOf(node, ground));
    this.#placed = kept.map(() => undefined);
    const graph = this.#graph(kept);
    const { order, circles } = inOrder(graph);
    circles.forEach((circle) => this.#reportCircle(circle));
    const tolerance = flatnessOn(sources.canvas.diagonal);
    let points = 0;
    for (const index of order) {
      const node = this.#objects.nodes[index];
      if (!node) this.#focal = this.#placeFocus();
      else if (points <= MOST_POINTS) {
        const known = kept[index];
        if (known) cache?.hold(this.#objects.keys[index] as string);
        const outline = known ?? this.#build(index, graph[index], ground, tolerance, sources);
        points += pointsOf(outline);
        this.#placed[index] = outline;
        if (points > MOST_POINTS) this.#reportTooMany(node);
      }
    }
    this.focal = this.#focal;
    this.focusUnplaced = this.#focusNode !== undefined && this.#focal === undefined;
    this.outlines = this.#placed.map((outline) => outline ?? EMPTY_OUTLINE);
  }

  #build(
    index: number,
    arrows: readonly Arrow[] | undefined,
    ground: Basis | undefined,
    tolerance: number,
    { cache, readPart }: ReferenceSources,
  ): Outline {
    const block = this.#objects.block(index);
    const told = this.problems.list.length;
    const key = this.#objects.keys[index] as string;
    const outline = objectOutline(key, block, this, readPart, tolerance, cache);
    const node = this.#objects.nodes[index];
    const isAlone = arrows === NO_ARROWS && this.problems.list.length === told && !block.hasFile;
    if (node && ground && isAlone) cache?.objects.keepOutline(node, ground, outline);
    return outline;
  }

  boxOf(name: Word, asked: Location): Box | undefined {
    const index = this.#objects.find(name, asked);
    const outline = index === undefined ? undefined : this.#placed[index];
    return outline && outline.path.length > 0 ? outline.box : undefined;
  }

  focus(asked: Location): Point | undefined {
    if (!this.#focusNode) {
      const message = t('The plan has no focal point to refer to. Write `focus upper right`, say.');
      this.problems.error('unknown name', message, asked);
    }
    return this.#focal?.at;
  }

  /** The objects in their order, and the focal point after them. */
  #graph(kept: readonly (Outline | undefined)[]): readonly (readonly Arrow[])[] {
    const focus = this.#objects.nodes.length;
    const graph = this.#objects.nodes.map(({ children }, index) =>
      kept[index] ? NO_ARROWS : this.#arrows(children, focus),
    );
    graph.push(this.#arrows(this.#focusNode ? [this.#focusNode] : [], focus));
    return graph;
  }

  #arrows(nodes: readonly Node[], focus: number): readonly Arrow[] {
    const dependencies = dependenciesOf(nodes);
    if (dependencies.length === 0) return NO_ARROWS;
    return dependencies.flatMap(({ name, asked }): Arrow[] => {
      if (!name) return [{ to: focus, what: 'focus', asked }];
      const to = this.#objects.indexOf(name);
      return to === undefined ? [] : [{ to, what: name.text, asked }];
    });
  }

  #placeFocus(): Focus | undefined {
    const node = this.#focusNode;
    const at = node && resolvePlace(node.statement.at, node, this);
    return at && { at, ...this.#crossingOf(node), winBy: means(node), location: statementLocation(node) };
  }

  #crossingOf(node: NodeOf<'focus'>): Pick<Focus, 'crossing'> {
    const { base, moves } = node.statement.at;
    if (base.kind !== 'spot' || base.of?.kind === 'name' || moves.length > 0) return {};
    const found = findCrossing(this.divisions, base.spot, base.of?.system);
    return found ? { crossing: { system: found.system, name: found.crossing.name } } : {};
  }

  #reportTooMany(node: ObjectNode): void {
    const message = t(
      'The plan has more than {0} points up to here; what comes after is not drawn.',
      thousands(MOST_POINTS),
    );
    this.problems.error('number out of range', message, locate(node, node.statement.name));
  }

  #reportCircle({ arrows }: Circle): void {
    const closing = arrows.at(-1);
    if (!closing) return;
    const names = inWords(arrows.map(({ what }) => `\`${what}\``));
    const message =
      arrows.length === 1
        ? t('{0} is placed by itself. Place it by coordinates, or by something else.', names)
        : t('Round in a circle: {0} are each placed by the next. Place one of them by coordinates.', names);
    this.problems.error('circular reference', message, closing.asked, {
      related: arrows
        .slice(0, -1)
        .map(({ what, asked }) => ({ location: asked, message: t('`{0}` is asked for here.', what) })),
    });
  }
}

function means(node: { readonly children: readonly Node[] }): Focus['winBy'] {
  return every(node.children, 'win by').flatMap((child) =>
    child.statement.means.map((choice) => ({ value: choice.choice, location: locate(child, choice) })),
  );
}
