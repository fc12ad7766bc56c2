import type { Choice, Node, NodeOf, Word } from '../../grammar/index.js';
import { inQuotes, nameKey, nearestWord, said as spoken, t } from '../../grammar/index.js';
import { buildOutline } from './build-outline.js';
import { fromMunsell } from './colour/munsell.js';
import { atValue } from './colour/painted.js';
import { nearestStep, stepValue, valueOf } from './colour/value.js';
import { type ColourBook, reportRepeated } from './colours.js';
import type { Outline } from './geometry/outline.js';
import { idsOfSvg } from './geometry/svg-file.js';
import type { OutlineCache } from './outline-cache.js';
import type { PlaceSurroundings } from './places.js';
import type { Edges, Plane } from '../../grammar/index.js';
import type { Location, ObjectColour, PlanObject, PlanProblem, ValueScale } from './plan.js';
import { locate, plainNumber, type Problems } from './problems.js';
import { every, type FaultyLines, hasFaultyLine, ownLines, said, sentencesOf, single } from './select.js';
import { gatherShapes, type ReadPart, type ShapeInput } from './shapes.js';

export type ObjectNode = Node & NodeOf<'object'>;

/** The objects of a plan by name; of two with one name the first counts and the second is reported. */
export class ObjectIndex {
  readonly nodes: ObjectNode[] = [];
  readonly #byKey = new Map<string, number>();
  readonly #problems: Problems;

  constructor(nodes: readonly Node[], problems: Problems) {
    this.#problems = problems;
    for (const node of every(nodes, 'object')) {
      const { name } = node.statement;
      const key = nameKey(name.text);
      const earlier = this.nodes[this.#byKey.get(key) ?? -1];
      if (earlier) {
        reportRepeated(
          problems,
          'object',
          name.text,
          locate(node, name),
          locate(earlier, earlier.statement.name),
        );
        continue;
      }
      this.#byKey.set(key, this.nodes.length);
      this.nodes.push(node);
    }
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

/** The outline of one object, from the cache when nothing it is built from has changed. */
export function objectOutline(
  node: ObjectNode,
  surroundings: PlaceSurroundings,
  readPart: ReadPart,
  tolerance: number,
  cache: OutlineCache,
): Outline {
  const { problems } = surroundings;
  const { input, places, repeatPlace } = gatherShapes(node.children, surroundings, readPart);
  const { outline, faults, overRepeated } = cache.get(
    nameKey(node.statement.name.text),
    input,
    tolerance,
    () => buildOutline(input, tolerance),
  );
  for (const { shape, reason } of faults) {
    const place = places[shape];
    if (!place) continue;
    const message = t('The shape can’t be read: {0}.', spoken(reason));
    problems.error('unreadable shape', message, place, likelyPart(input.shapes[shape]));
  }
  if (overRepeated && repeatPlace) {
    const message = t('A shape with so many points can’t be repeated so often; it is drawn once.');
    problems.error('number out of range', message, repeatPlace);
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

/** Everything about an object but its outline. */
export function resolveObject(
  node: ObjectNode,
  index: number,
  outline: Outline,
  surroundings: ObjectSurroundings,
): PlanObject {
  const { objects, book, problems } = surroundings;
  const { children, statement } = node;
  const plane = single(children, 'plane', problems);
  const colourNode = single(children, 'colour', problems);
  const colour = colourNode && book.find(colourNode.statement.colour, colourNode);
  const glazeNode = single(children, 'glaze', problems);
  const glaze = glazeNode && book.find(glazeNode.statement.colour, glazeNode);
  const detail = single(children, 'detail', problems);
  const shape = every(children, 'shape').at(0);
  const role = said(node, (own) => own.role);
  const { waiting } = surroundings;
  const object: Writable<PlanObject> = {
    index,
    name: statement.name.text,
    key: nameKey(statement.name.text),
    plane: chosen<Plane>(plane?.statement.plane, 'middle'),
    outline,
    waiting: waiting.size > 0 && children.some((child) => waiting.has(child)),
    faulty: hasFaultyLine(node, 1, surroundings.faultyLines),
    colourLost: colourNode !== undefined && colour === undefined,
    ...objectValue(children, colour, surroundings),
    ...objectEdges(children, objects, problems),
    detail: chosen(detail?.statement.detail, 'some'),
    notes: sentencesOf(every(children, 'note')),
    location: locate(node, statement.name),
    node,
  };
  if (role) object.role = role.value.choice;
  if (colour) object.colour = colour;
  if (glaze) object.glaze = glaze;
  if (shape) object.shapeLocation = locate(shape, shape.statement);
  const { lines } = ownLines(node);
  if (lines) object.lines = lines;
  return object;
}

type Writable<T> = { -readonly [K in keyof T]: T[K] };

function chosen<T extends string>(choice: Choice<T> | undefined, usual: T): T {
  return choice?.choice ?? usual;
}

type ObjectValue = Pick<PlanObject, 'step' | 'stepStated' | 'value' | 'painted' | 'chroma' | 'valueLocation'>;

/** The stated step, or the step nearest to the colour's own value; the colour is painted at that value. */
function objectValue(
  children: readonly Node[],
  colour: ObjectColour | undefined,
  { scale, problems }: ObjectSurroundings,
): ObjectValue {
  const node = single(children, 'value', problems);
  const stated = node?.statement.step.value;
  const location = node && locate(node, node.statement);
  if (node && stated !== undefined && (stated < 1 || stated > scale.steps)) {
    problems.error(
      'number out of range',
      t(
        'The scale has steps 1 (darkest) to {0} (lightest), so there is no value {1}.',
        scale.steps,
        plainNumber(stated),
      ),
      locate(node, node.statement.step),
    );
  } else if (stated !== undefined && location) {
    const value = stepValue(stated, scale.steps);
    return { step: stated, stepStated: true, value, ...asPainted(colour, value), valueLocation: location };
  }
  if (!colour) return { stepStated: false };
  const value = valueOf(colour.colour);
  return { step: nearestStep(value, scale.steps), stepStated: false, value, ...asPainted(colour, value) };
}

function asPainted(colour: ObjectColour | undefined, value: number): Pick<PlanObject, 'painted' | 'chroma'> {
  if (!colour) return { painted: fromMunsell(undefined, value, 0) };
  const { shown, chromaWanted, chromaReached } = atValue(colour.colour, value);
  return { painted: shown, chroma: { wanted: chromaWanted, reached: chromaReached } };
}

function objectEdges(
  children: readonly Node[],
  objects: ObjectIndex,
  problems: Problems,
): Pick<PlanObject, 'edges' | 'edgesAgainst'> {
  const all = every(children, 'edges');
  const general = all.filter(({ statement }) => statement.against.length === 0);
  for (const node of general.slice(0, -1)) {
    problems.warn(
      'repeated statement',
      t('The edges are given again below; this line does not count.'),
      locate(node, node.statement),
    );
  }
  return {
    edges: chosen<Edges>(general.at(-1)?.statement.edges, 'firm'),
    edgesAgainst: all
      .filter(({ statement }) => statement.against.length > 0)
      .map((node) => ({
        edges: node.statement.edges.choice,
        objects: objects.findAll(node.statement.against, node),
      })),
  };
}
