import type { Node } from '../../grammar/index.js';
import { nameKey } from '../../grammar/index.js';
import { reportRepeated } from './colours.js';
import type { ObjectIndex } from './objects.js';
import { type PlaceSurroundings, resolvePlace } from './places.js';
import type { Lead, Plan } from './plan.js';
import { locate, type Problems } from './problems.js';
import { every, single, statementLocation } from './select.js';

/** The lead lines from their start to where they aim; one whose places can't be told is left out. */
export function resolveLeads(
  nodes: readonly Node[],
  objects: ObjectIndex,
  surroundings: PlaceSurroundings,
): readonly Lead[] {
  const leads = new Map<string, Lead>();
  for (const node of every(nodes, 'lead')) {
    const { name, along, from, through, to } = node.statement;
    const key = nameKey(name.text);
    const earlier = leads.get(key);
    if (earlier) {
      reportRepeated(surroundings.problems, 'lead', name.text, locate(node, name), earlier.location);
      continue;
    }
    const carrier = along && objects.find(along.object, locate(node, along.object));
    const places = [...(from ? [from] : []), ...through, to];
    const points = places.flatMap((place) => resolvePlace(place, node, surroundings) ?? []);
    if (points.length < places.length || (along && carrier === undefined)) continue;
    leads.set(key, {
      name: name.text,
      key,
      points,
      ...(carrier === undefined
        ? {}
        : { along: { object: carrier, ...(along?.side ? { side: along.side.choice } : {}) } }),
      location: locate(node, name),
      lines: { first: node.line, last: node.lastLine },
    });
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
  return { path: { value: objects.findAll(node.statement.stops, node), location: statementLocation(node) } };
}
