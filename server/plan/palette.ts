import type { ColourSpec, Node } from '../../grammar/index.js';
import { nameKey } from '../../grammar/index.js';
import { type Colour, parseColour } from './colour/colour.js';
import { reportColour, reportRepeated } from './colours.js';
import { millimetresPer } from './lengths.js';
import type { Paint, Palette, Stated } from './plan.js';
import { locate, type Problems } from './problems.js';
import { every, single, statementLocation } from './select.js';
import type { Length } from '../../grammar/index.js';

/** The tube paints of the plan and how they are used. */
export function resolvePalette(nodes: readonly Node[], problems: Problems): Palette | undefined {
  const node = single(nodes, 'palette', problems);
  if (!node) return undefined;
  const { children } = node;
  const mother = single(children, 'mother', problems);
  const tube = single(children, 'tube', problems);
  const filmThickness = resolveFilm(children, problems);
  const paints = resolvePaints(children, problems);
  const key = mother && nameKey(mother.statement.name.text);
  if (mother && !paints.some((paint) => paint.key === key)) {
    const { name } = mother.statement;
    problems.unknownName(
      'paint',
      name.text,
      paints.map((paint) => paint.name),
      locate(mother, name),
    );
  }
  return {
    paints,
    ...(mother
      ? { mother: { value: mother.statement.name.text, location: locate(mother, mother.statement.name) } }
      : {}),
    ...(filmThickness ? { filmThickness } : {}),
    ...(tube ? { tube: { value: tube.statement.millilitres.value, location: statementLocation(tube) } } : {}),
    location: statementLocation(node),
  };
}

/** The thickness of a paint film in millimetres; a bare number counts millimetres. */
export function resolveFilm(children: readonly Node[], problems: Problems): Stated<number> | undefined {
  const node = single(children, 'film', problems);
  if (!node) return undefined;
  const location = statementLocation(node);
  const value = millimetres(node.statement.thickness);
  if (value !== undefined && value > 0) return { value, location };
  problems.error('number out of range', 'A paint film has a thickness such as `0.15 mm`.', location);
  return undefined;
}

function millimetres({ value, unit }: Length): number | undefined {
  if (unit === '%') return undefined;
  return unit === undefined ? value : value * millimetresPer(unit);
}

function resolvePaints(children: readonly Node[], problems: Problems): readonly Paint[] {
  const paints = new Map<string, Paint>();
  for (const node of every(children, 'paint')) {
    const { name, index, full, tint, temperature } = node.statement;
    const key = nameKey(name.text);
    const earlier = paints.get(key);
    if (earlier) {
      reportRepeated(problems, 'paint', name.text, locate(node, name), earlier.location);
      continue;
    }
    const fullColour = full && readColour(full, node, problems);
    const tintColour = tint && readColour(tint.colour, node, problems);
    paints.set(key, {
      name: name.text,
      key,
      ...(index ? { index: index.text } : {}),
      ...(fullColour ? { full: fullColour } : {}),
      ...(tint && tintColour
        ? { tint: { colour: tintColour, paint: tint.paint.value, white: tint.white.value } }
        : {}),
      ...(temperature ? { temperature: temperature.choice } : {}),
      location: locate(node, name),
    });
  }
  return [...paints.values()];
}

function readColour(spec: ColourSpec, node: Node, problems: Problems): Colour | undefined {
  const parsed = parseColour(spec.text);
  if (parsed.ok) return parsed.colour;
  reportColour(parsed, locate(node, spec), problems);
  return undefined;
}
