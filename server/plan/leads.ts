import type { Node, NodeOf, Place, Word } from '../../grammar/index.js';
import { nameIn, nameKey, t } from '../../grammar/index.js';
import { EMPTY_OUTLINE, type Outline } from './geometry/outline.js';
import { distance, samePoint } from './geometry/point.js';
import { carriedAlong, hasEdge } from './leads-along.js';
import { withoutRepeats } from './leads-simplify.js';
import type { ObjectIndex } from './objects.js';
import { type PlaceSurroundings, resolvePlace } from './places.js';
import type { Lead, LeadPlace, Plan } from './plan.js';
import { locate, type Problems } from './problems.js';
import { every, ownLines, single, statementLocation } from './select.js';

/** Part of the diagonal that is too little to be seen in the drawing. */
const UNSEEN = 0.0005;
/** Part of the diagonal by which places may differ through rounding and be the same. */
const ROUNDING = 1e-9;

/** What leads are placed by, with the outlines of the objects in their order. */
export interface LeadSurroundings extends PlaceSurroundings {
  readonly outlines: readonly Outline[];
}

type LeadNode = Node & NodeOf<'lead'>;

/**
 * The lead lines from their start to where they aim, each no longer than its own places and 48 points more; one whose
 * places can't be told is left out, and so is one without length.
 */
export function resolveLeads(
  nodes: readonly Node[],
  objects: ObjectIndex,
  surroundings: LeadSurroundings,
): readonly Lead[] {
  const leads = new Map<string, Lead>();
  for (const node of every(nodes, 'lead')) {
    const { name } = node.statement;
    const key = nameKey(name.text);
    const earlier = leads.get(key);
    if (earlier) {
      surroundings.problems.repeatedName('lead', name.text, locate(node, name), earlier.location);
      continue;
    }
    const lead = resolveLead(node, objects, surroundings);
    if (!lead) continue;
    if (hasLength(lead, surroundings)) leads.set(key, lead);
    else reportNoLength(lead, surroundings.problems);
  }
  return [...leads.values()];
}

export function resolvePath(
  nodes: readonly Node[],
  objects: ObjectIndex,
  problems: Problems,
): Pick<Plan, 'path'> {
  const node = single(nodes, 'path', problems);
  if (!node) return {};
  const { stops } = node.statement;
  const [first, last] = [stops[0], stops.at(-1)];
  const location = statementLocation(node);
  return {
    path: {
      value: objects.findAll(stops, node),
      location,
      stopsLocation: { ...location, ...(first && last ? { start: first.start, end: last.end } : {}) },
    },
  };
}

/** Beyond rounding: one that stays where it starts has no direction. */
function hasLength({ points }: Lead, { canvas }: LeadSurroundings): boolean {
  const [start] = points;
  const least = ROUNDING * Math.hypot(canvas.width, canvas.height);
  return start !== undefined && points.some((point) => distance(point, start) > least);
}

function reportNoLength({ name, to, location }: Lead, problems: Problems): void {
  problems.warn(
    'lead without length',
    to.names === 'focus'
      ? t(
          '`{0}` starts at the focal point, so it leads nowhere. Let it come `from` a place farther off.',
          name,
        )
      : t('`{0}` starts where it aims, so it leads nowhere. Let it come `from` a place farther off.', name),
    location,
  );
}

function resolveLead(node: LeadNode, objects: ObjectIndex, surroundings: LeadSurroundings): Lead | undefined {
  const { name, along, from: begins, through: passes, to: aims } = node.statement;
  const carrier = along && objects.find(along.object, locate(node, along.object));
  const from = begins && leadPlace(begins, node, objects, surroundings);
  const through = passes.flatMap((place) => leadPlace(place, node, objects, surroundings) ?? []);
  const to = leadPlace(aims, node, objects, surroundings);
  if (!to || (begins && !from) || through.length < passes.length) return undefined;
  if (along && carrier === undefined) return undefined;
  const base = {
    name: name.text,
    key: nameKey(name.text),
    ...(from ? { from } : {}),
    through,
    to,
    location: locate(node, name),
    ...ownLines(node),
  };
  const start = from ? [from.at] : [];
  const rest = [...through, to].map(({ at }) => at);
  if (!along || carrier === undefined) return { ...base, points: [...start, ...rest] };
  const outline = surroundings.outlines[carrier];
  if (!outline || !hasEdge(outline))
    reportNoEdge(along.object, node, objects.nodes[carrier], outline, surroundings);
  const { width, height } = surroundings.canvas;
  const carried = carriedAlong(outline ?? EMPTY_OUTLINE, {
    ...(along.side ? { side: along.side.choice } : {}),
    ...(from ? { from: from.at } : {}),
    target: rest[0] ?? to.at,
    canvas: surroundings.canvas,
    tolerance: Math.hypot(width, height) * UNSEEN,
  });
  if (!from && carried.length === 0) return undefined;
  const joined = withoutRepeats([...start, ...carried, ...rest]);
  const [met] = carried;
  const first = met ? joined.findIndex((point) => samePoint(point, met)) : 0;
  return {
    ...base,
    points: joined.length > 1 ? joined : [...joined, to.at],
    along: {
      object: carrier,
      ...(along.side ? { side: along.side.choice } : {}),
      ...(met ? { stretch: { first, last: first + carried.length - 1 } } : {}),
    },
  };
}

function leadPlace(
  place: Place,
  node: LeadNode,
  objects: ObjectIndex,
  surroundings: PlaceSurroundings,
): LeadPlace | undefined {
  const at = resolvePlace(place, node, surroundings);
  if (!at) return undefined;
  const location = locate(node, place);
  if (place.base.kind === 'focus' && place.moves.length === 0) return { at, names: 'focus', location };
  const name = nameIn(place);
  const object = name && objects.indexOf(name);
  return object === undefined ? { at, names: 'place', location } : { at, names: 'object', object, location };
}

/** A shape that could not be read, or is still on its way, is told of where it stands. */
function reportNoEdge(
  name: Word,
  node: LeadNode,
  object: Node | undefined,
  outline: Outline | undefined,
  { problems }: PlaceSurroundings,
): void {
  const hasShape = object?.children.some(({ statement }) => statement.kind === 'shape') ?? false;
  const isLine = outline !== undefined && outline.path.length > 0;
  if (hasShape && !isLine) return;
  const message = isLine
    ? t(
        '`{0}` encloses nothing, so it has no edge: no lead can run along it. Give it a `shape` with an area, or say `from` a place instead of `along`.',
        name.text,
      )
    : t(
        '`{0}` has no shape yet: no lead can run along it. Give it a `shape` with an area, or say `from` a place instead of `along`.',
        name.text,
      );
  problems.error('unreadable shape', message, locate(node, name));
}
