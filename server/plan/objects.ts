import type { Choice, Node, NodeOf, Word } from '../../grammar/index.js';
import { inQuotes, nameKey, nearestWord, reasonInWords, t } from '../../grammar/index.js';
import { fromMunsell } from './colour/munsell.js';
import { atValue } from './colour/painted.js';
import { nearestStep, stepValue, valueOf } from './colour/value.js';
import { buildOutline } from './build-outline.js';
import type { ColourBook } from './colours.js';
import type { Outline } from './geometry/outline.js';
import { ObjectBlock } from './object-block.js';
import { idsOfSvg } from './geometry/svg-file.js';
import type { OutlineCache } from './outline-cache.js';
import type { PlaceSurroundings } from './places.js';
import type { Edges, Plane } from '../../grammar/index.js';
import type { Location, ObjectColour, PlanObject, PlanProblem, ValueScale } from './plan.js';
import { locate, plainNumber, type Problems } from './problems.js';
import { every, type FaultyLines, hasFaultyLine, said, sentencesOf } from './select.js';
import { faultPlace, gatherShapes, type ReadPart, type ShapeInput } from './shapes.js';

export type ObjectNode = Node & NodeOf<'object'>;
export type AllowNode = Node & NodeOf<'allow'>;

/** The objects of a plan by name; of two with one name the first counts and the second is reported. */
export class ObjectIndex {
  readonly nodes: ObjectNode[] = [];
  /** The keys of their names. */
  readonly keys: string[] = [];
  readonly #blocks: (ObjectBlock | undefined)[] = [];
  readonly #byKey = new Map<string, number>();
  readonly #problems: Problems;

  constructor(nodes: readonly Node[], problems: Problems) {
    this.#problems = problems;
    for (const node of every(nodes, 'object')) {
      const { name } = node.statement;
      const key = nameKey(name.text);
      const earlier = this.nodes[this.#byKey.get(key) ?? -1];
      if (earlier) {
        problems.repeatedName(
          'object',
          name.text,
          locate(node, name),
          locate(earlier, earlier.statement.name),
        );
        continue;
      }
      this.#byKey.set(key, this.nodes.length);
      this.nodes.push(node);
      this.keys.push(key);
      this.#blocks.push(undefined);
    }
  }

  /** What stands under an object. */
  block(index: number): ObjectBlock {
    return (this.#blocks[index] ??= new ObjectBlock(this.nodes[index]?.children ?? NONE));
  }

  /** Whether it has been seen that no shape of an object comes from a file. */
  isKnownWithoutFile(index: number): boolean {
    return this.#blocks[index]?.hasFile === false;
  }

  /** The exceptions under an object, also of one that nothing else was asked of. */
  allowsUnder(index: number): readonly AllowNode[] {
    const block = this.#blocks[index];
    return block ? (block.allows ?? NONE) : every(this.nodes[index]?.children ?? NONE, 'allow');
  }

  indexOf(name: Word): number | undefined {
    return this.#byKey.get(nameKey(name.text));
  }

  /** The index of an object; reports a name that no object has. */
  find(name: Word, asked: Location): number | undefined {
    const index = this.indexOf(name);
    if (index === undefined) {
      const names = this.nodes.map(({ statement }) => statement.name.text);
      this.#problems.unknownName('object', name.text, names, asked);
    }
    return index;
  }

  /** The indices of several names, those that no object has reported and left out. */
  findAll(names: readonly Word[], node: Pick<Node, 'line'>): readonly number[] {
    return names.flatMap((name) => this.find(name, locate(node, name)) ?? []);
  }
}

/**
 * The outline of one object, from the cache, if there is one, when nothing it is built from has changed.
 *
 * @param key of its name
 */
export function objectOutline(
  key: string,
  block: ObjectBlock,
  surroundings: PlaceSurroundings,
  readPart: ReadPart,
  tolerance: number,
  cache: OutlineCache | undefined,
): Outline {
  const { problems } = surroundings;
  const { input, from, repeatNode } = gatherShapes(block, surroundings, readPart);
  const built = cache ? cache.get(key, input, tolerance) : buildOutline(input, tolerance);
  const { outline, faults, overRepeated } = built;
  for (const { shape, reason } of faults) {
    const node = from[shape];
    if (!node) continue;
    const message = t('The shape can’t be read: {0}.', reasonInWords(reason));
    problems.error('unreadable shape', message, faultPlace(node), likelyPart(input.shapes[shape]));
  }
  if (overRepeated && repeatNode) {
    const message = t('A shape with so many points can’t be repeated so often; it is drawn once.');
    problems.error('number out of range', message, locate(repeatNode, repeatNode.statement.times));
  }
  return outline;
}

/** For a part that the SVG file does not have, the part whose id is nearest. */
function likelyPart(shape: ShapeInput | undefined): Pick<PlanProblem, 'fix'> {
  if (shape?.form !== 'part' || shape.part === undefined) return {};
  const ids = idsOfSvg(shape.content);
  const nearest = ids.includes(shape.part) ? undefined : nearestWord(shape.part, ids);
  if (nearest === undefined) return {};
  return { fix: { title: t('Change to {0}', `"${nearest}"`), replacement: inQuotes(nearest) } };
}

export interface ObjectSurroundings {
  readonly objects: ObjectIndex;
  readonly book: ColourBook;
  readonly scale: ValueScale;
  readonly problems: Problems;
  /** Shape statements whose file is still being read. */
  readonly waiting: ReadonlySet<Node>;
  /** Lines whose text has an error. */
  readonly faultyLines: FaultyLines;
}

/** Everything about an object but its outline; `index` counts in `surroundings.objects`. */
export function resolveObject(index: number, outline: Outline, surroundings: ObjectSurroundings): PlanObject {
  const { objects, book, problems, waiting, faultyLines } = surroundings;
  const node = objects.nodes[index] as ObjectNode;
  const block = objects.block(index);
  const { statement } = node;
  const plane = block.one('plane', block.plane, problems);
  const colourNode = block.one('colour', block.colour, problems);
  const colour = colourNode && book.find(colourNode.statement.colour, colourNode);
  const glazeNode = block.one('glaze', block.glaze, problems);
  const glaze = glazeNode && book.find(glazeNode.statement.colour, glazeNode);
  const detail = block.one('detail', block.detail, problems);
  const valueNode = statedValue(block, surroundings);
  const all = block.edges ?? NONE;
  const edges = generalEdges(all, problems);
  const object: Writable<PlanObject> = {
    index,
    name: statement.name.text,
    key: objects.keys[index] as string,
    plane: chosen<Plane>(plane?.statement.plane, 'middle'),
    outline,
    waiting: waiting.size > 0 && node.children.some((child) => waiting.has(child)),
    faulty: hasFaultyLine(node, 1, faultyLines),
    colourLost: colourNode !== undefined && colour === undefined,
    stepStated: valueNode !== undefined,
    edges: chosen<Edges>(edges?.statement.edges, 'firm'),
    edgesAgainst: all.length > 0 ? edgesAgainst(all, objects) : NONE,
    detail: chosen(detail?.statement.detail, 'some'),
    notes: sentencesOf(block.notes ?? NONE),
    location: locate(node, statement.name),
    node,
  };
  paint(object, colour, valueNode, surroundings.scale);
  const role = said(node, ownRole);
  if (role) object.role = role.value.choice;
  if (colour) object.colour = colour;
  if (glaze) object.glaze = glaze;
  const shape = block.shapes?.[0];
  if (shape) object.shapeLocation = locate(shape, shape.statement);
  if (node.file === undefined) object.lines = { first: node.line, last: node.lastLine };
  return object;
}

const NONE: readonly never[] = [];

type Writable<T> = { -readonly [K in keyof T]: T[K] };

function ownRole({ role }: ObjectNode['statement']): typeof role {
  return role;
}

function chosen<T extends string>(choice: Choice<T> | undefined, usual: T): T {
  return choice?.choice ?? usual;
}

/** The statement of a value that is on the scale; one that is not is reported. */
function statedValue(
  block: ObjectBlock,
  { scale, problems }: ObjectSurroundings,
): (Node & NodeOf<'value'>) | undefined {
  const node = block.one('value', block.value, problems);
  if (!node) return undefined;
  const stated = node.statement.step.value;
  if (stated >= 1 && stated <= scale.steps) return node;
  problems.error(
    'number out of range',
    t(
      'The scale has steps 1 (darkest) to {0} (lightest), so there is no value {1}.',
      scale.steps,
      plainNumber(stated),
    ),
    locate(node, node.statement.step),
  );
  return undefined;
}

/**
 * Paints it in the stated step, or in the step nearest to the colour's own value; the colour is painted at that value.
 */
function paint(
  object: Writable<PlanObject>,
  colour: ObjectColour | undefined,
  node: (Node & NodeOf<'value'>) | undefined,
  { steps }: ValueScale,
): void {
  if (!node && !colour) return;
  const stated = node?.statement.step.value;
  const value = stated === undefined ? valueOf((colour as ObjectColour).colour) : stepValue(stated, steps);
  object.step = stated ?? nearestStep(value, steps);
  object.value = value;
  if (colour) {
    const { shown, chromaWanted, chromaReached } = atValue(colour.colour, value);
    object.painted = shown;
    object.chroma = { wanted: chromaWanted, reached: chromaReached };
  } else {
    object.painted = fromMunsell(undefined, value, 0);
  }
  if (node) object.valueLocation = locate(node, node.statement);
}

type EdgesNode = Node & NodeOf<'edges'>;

/** The last statement that says how its edges are everywhere; the others are warned about. */
function generalEdges(all: readonly EdgesNode[], problems: Problems): EdgesNode | undefined {
  let last: EdgesNode | undefined;
  for (const node of all) {
    if (node.statement.against.length > 0) continue;
    if (last) {
      problems.warn(
        'repeated statement',
        t('The edges are given again below; this line does not count.'),
        locate(last, last.statement),
      );
    }
    last = node;
  }
  return last;
}

function edgesAgainst(all: readonly EdgesNode[], objects: ObjectIndex): PlanObject['edgesAgainst'] {
  const against = all.filter(({ statement }) => statement.against.length > 0);
  if (against.length === 0) return NONE;
  return against.map((node) => ({
    edges: node.statement.edges.choice,
    objects: objects.findAll(node.statement.against, node),
  }));
}
