import {
  type Node,
  type Plane,
  type Problem,
  reasonInWords,
  type ShapeForm,
  type SyntaxTree,
  t,
  usualTree,
} from '../../grammar/index.js';
import { toldHere } from './based-on/told-here.js';
import { type Whole, wholeOf } from './based-on/whole.js';
import { resolveCanvas, resolveGround } from './canvas.js';
import { ColourBook } from './colours.js';
import { resolveConcept } from './concept.js';
import { type Crowding, crowdingObjects, withoutShapes } from './crowding.js';
import { resolveDivisions } from './divisions.js';
import { resolveAllowances, resolveRuleSettings } from './exceptions.js';
import { filesNamed } from './files.js';
import { FINEST } from './fineness.js';
import { MOST_MUTUAL_CROSSINGS } from './geometry/crossing-bound.js';
import { resolveLeads, resolvePath } from './leads.js';
import { divisionPlace } from './lengths.js';
import { ObjectIndex, resolveObject } from './objects.js';
import { OutlineCache } from './outline-cache.js';
import { resolvePalette } from './palette.js';
import type { Plan, PlanObject, PlanProblem, ReadFile } from './plan.js';
import { type FoundProblem, locate, Problems, thousands } from './problems.js';
import { References } from './references.js';
import { hasFaultyLine, single } from './select.js';
import type { ReadPart } from './shapes.js';
import { resolveRecord } from './sittings.js';
import { takeOverParts } from './taken-over.js';
import { resolveBudgets, resolveScale } from './values.js';

export interface ResolveOptions {
  /** Without it, files named in the plan are taken to be still on their way. */
  readonly readFile?: ReadFile;
  /** Kept from one resolution of a document to the next, it saves rebuilding the outlines that did not change. */
  readonly outlines?: OutlineCache;
}

const PLANES: readonly Plane[] = ['background', 'middle', 'foreground'];

/**
 * The plan that a syntax tree states. Never throws: what can't be resolved is in `problems` and the rest of the plan
 * stands. Lengths are in canvas units, shares are parts of one.
 */
export function resolvePlan(tree: SyntaxTree, options: ResolveOptions = {}): Plan {
  usual ??= resolution(usualTree(), { outlines: new OutlineCache() });
  return resolution(tree, options).plan;
}

/** The plan, and what it was worked out with. */
interface Resolution {
  readonly plan: Plan;
  readonly workings: unknown;
}

/**
 * The resolution of a usual plan, which stays: whatever is compiled for objects of a kind is thrown away when memory is
 * collected while there is none of that kind, as between two edits.
 */
let usual: Resolution | undefined;

function resolution(tree: SyntaxTree, options: ResolveOptions): Resolution {
  const ofBases = new Problems();
  const whole = wholeOf(tree, options.readFile, ofBases);
  const { nodes, faultyLines, lostKinds, lostNames } = whole;
  const problems = new Problems();
  const cache = options.outlines;
  cache?.turnOver();
  // Nearly all statements are objects, which are asked for once.
  const others = nodes.filter(({ statement }) => statement.kind !== 'object');
  const bare = resolveCanvas(others, problems, lostKinds.has('canvas'));
  const scale = resolveScale(others, problems);
  const book = new ColourBook(others, problems, lostNames);
  const palette = resolvePalette(others, book, problems);
  const divisions = resolveDivisions(others, bare, problems);
  const objectIndex = new ObjectIndex(nodes, problems);
  const waiting = new Set<Node>();
  const readPart = partReader(options.readFile, waiting, problems);
  const memory = cache?.objects;
  const references = new References({
    nodes: others,
    objects: objectIndex,
    canvas: bare,
    divisions,
    problems,
    readPart,
    cache,
  });
  const surroundings = { objects: objectIndex, book, scale, problems, waiting, faultyLines };
  const around = memory?.aroundOf([
    scale.steps,
    ...lostNames,
    ...others.filter(({ statement: { kind } }) => kind === 'colour definition' || kind === 'palette'),
  ]);
  const placed = references.outlines.map((outline, index) => {
    const node = objectIndex.nodes[index] as Node;
    const known = around && memory?.objectOf(node, outline, around);
    if (known?.index === index && !hasFaultyLine(node, 1, faultyLines)) return known;
    const told = problems.list.length;
    const object = resolveObject(index, outline, surroundings);
    const isAlone = object.edgesAgainst.length === 0 && !object.faulty;
    if (around && isAlone && problems.list.length === told) memory?.keepObject(node, around, object);
    return object;
  });
  const order = coveringOrder(placed);
  const layers = { canvas: bare, objects: placed, coveringOrder: order };
  const crowding = cache ? cache.crowding(layers) : crowdingObjects(layers);
  reportCrowding(placed, crowding, problems);
  const objects = withoutShapes(placed, crowding);
  const ground = resolveGround(others, scale.steps, book, problems);
  const rolesInUse = ground.role !== undefined || objects.some(({ colour }) => colour?.role !== undefined);
  const horizon = single(others, 'horizon', problems);
  const wheel = single(others, 'wheel', problems);
  const focus = references.focal;
  const concept = resolveConcept(others, objectIndex, problems);
  const leads = resolveLeads(others, objectIndex, references);
  const plan = {
    ...(whole.bases ? { basedOn: whole.bases } : {}),
    statements: nodes,
    ...concept,
    canvas: { ...bare, ground },
    divisions,
    ...(focus ? { focus } : {}),
    focusUnplaced: references.focusUnplaced || (!focus && lostKinds.has('focus')),
    ...(horizon
      ? {
          horizon: {
            value: divisionPlace(horizon.statement.at, bare, 'down'),
            location: locate(horizon, horizon.statement.at),
          },
        }
      : {}),
    scale,
    ...resolveBudgets(others, scale, rolesInUse, problems),
    wheel: wheel?.statement.wheel.choice ?? 'painters',
    colours: book.colours,
    objects,
    coveringOrder: order,
    leads,
    ...resolvePath(others, objectIndex, problems),
    ...(palette ? { palette } : {}),
    ...resolveRecord(others, objectIndex, bare, faultyLines, problems),
    allowances: resolveAllowances(others, { objects: objectIndex, leads, cues: concept.cues }, problems),
    ruleSettings: resolveRuleSettings(others, problems),
    files: filesNamed(nodes, objectIndex),
    problems: told(whole, ofBases.list, problems),
  } satisfies Plan;
  if (cache?.plan) takeOverParts(plan, cache.plan);
  if (cache) cache.plan = plan;
  return { plan, workings: { whole, cache, book, references, surroundings } };
}

/**
 * What is told of a plan and of what it builds on. While that is not there, everything else would be a false alarm:
 * names, a canvas and crossings may come from it.
 */
function told(
  { bases, texts }: Whole,
  ofBases: readonly FoundProblem[],
  problems: Problems,
): readonly PlanProblem[] {
  const found = bases?.lacking === undefined ? [...ofBases, ...problems.list] : ofBases;
  const fresh = texts.flatMap(({ file, tree }) =>
    news(
      found.filter(({ location }) => location.file === file),
      tree,
    ),
  );
  return toldHere(fresh, bases);
}

/** Words that could not be read mean nothing, so it is no news that nothing goes by that name. */
function news(problems: readonly FoundProblem[], tree: SyntaxTree): readonly FoundProblem[] {
  if (tree.problems.length === 0) return problems;
  const told = new Map<number, Problem[]>();
  for (const problem of tree.problems) told.set(problem.line, [...(told.get(problem.line) ?? []), problem]);
  return problems.filter(({ location, severity, code }) => {
    const unread = told.get(location.line) ?? [];
    // What a line leaves out may stand in the words of it that could not be read.
    if (unread.length > 0 && severity === 'hint') return false;
    return !unread.some(
      (problem) =>
        (problem.start < location.end && problem.end > location.start) ||
        (code === 'unknown name' && problem.start === location.end + 1 && endsAPlace(problem)),
    );
  });
}

/** Whether the word was to be the second of a place, as in `upper rihgt`: then the first is no name. */
function endsAPlace({ fix }: Problem): boolean {
  return fix !== undefined && SECOND_OF_A_PLACE.has(fix.replacement);
}

const SECOND_OF_A_PLACE: ReadonlySet<string> = new Set(['left', 'centre', 'right']);

function coveringOrder(objects: readonly PlanObject[]): readonly number[] {
  const order: number[] = [];
  for (const plane of PLANES)
    for (const object of objects) if (object.plane === plane) order.push(object.index);
  return order;
}

/** Of all that are left out for one reason the first is told, and how many more there are. */
function reportCrowding(
  objects: readonly PlanObject[],
  crowding: ReadonlyMap<number, Crowding>,
  problems: Problems,
): void {
  if (crowding.size === 0) return;
  for (const kind of new Set(crowding.values())) {
    const [first, ...others] = objects.filter(({ index }) => crowding.get(index) === kind);
    if (!first) continue;
    const message = crowdingInWords(first.name, kind);
    const more = othersInWords(others.length);
    problems.error('unreadable shape', more === '' ? message : `${message} ${more}`, first.location);
  }
}

function othersInWords(count: number): string {
  if (count === 0) return '';
  return count === 1
    ? t('One more object is left out for the same reason.')
    : t('{0} more objects are left out for the same reason.', count);
}

function crowdingInWords(name: string, kind: Crowding): string {
  switch (kind) {
    case 'crossings':
      return t(
        '`{0}` crosses what lies under it too often to be measured, so it is not drawn: all outlines of a plan may cross each other {1} times. Draw it with fewer points.',
        name,
        thousands(MOST_MUTUAL_CROSSINGS),
      );
    case 'parts':
      return t(
        '`{0}` has too many parts to be measured with the others, so it is not drawn: all shapes of a plan may have {1} parts. Draw it with fewer.',
        name,
        thousands(FINEST.parts),
      );
    case 'length':
      return t(
        '`{0}` has too long an outline to be measured with the others, so it is not drawn: all outlines of a plan may be {1} times as long as the diagonal of the canvas. Draw it as one mass.',
        name,
        thousands(FINEST.length),
      );
    case 'level':
      return t(
        '`{0}` has too many lines beside each other to be measured with the others, so it is not drawn: points of the outlines of a plan may have lines of the same shape at their height {1} times. Draw it with fewer points.',
        name,
        thousands(FINEST.level),
      );
  }
}

function partReader(readFile: ReadFile | undefined, waiting: Set<Node>, problems: Problems): ReadPart {
  return (shape: Extract<ShapeForm, { form: 'file' }>, node: Node) => {
    const answer = readFile?.(shape.file.value);
    if (!answer) {
      waiting.add(node);
      return undefined;
    }
    if (answer.ok) return answer.text;
    const { value } = shape.file;
    const reason = reasonInWords(answer.reason);
    const message = value === '' ? reason : `${t('`{0}` cannot be read.', value)} ${reason}`;
    problems.error('unreadable file', message, locate(node, shape.file));
    return undefined;
  };
}
