import type { Length, Node, StatementOf } from '../../grammar/index.js';
import { nameKey, t } from '../../grammar/index.js';
import type { ColourBook } from './colours.js';
import { millimetresPer } from './lengths.js';
import type { Paint, Palette, Stated } from './plan.js';
import { locate, type Problems } from './problems.js';
import { every, single, statementLocation } from './select.js';

/** The tube paints of the plan and how they are used. */
export function resolvePalette(
  nodes: readonly Node[],
  book: ColourBook,
  problems: Problems,
): Palette | undefined {
  const node = single(nodes, 'palette', problems);
  if (!node) return undefined;
  const { children } = node;
  const mother = single(children, 'mother', problems);
  const tube = single(children, 'tube', problems);
  const filmThickness = resolveFilm(children, problems);
  const paints = resolvePaints(children, book, problems);
  if (tube && tube.statement.millilitres.value <= 0) {
    problems.error('number out of range', t('A tube holds more than nothing.'), statementLocation(tube));
  }
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
    ...(tube && tube.statement.millilitres.value > 0
      ? { tube: { value: tube.statement.millilitres.value, location: statementLocation(tube) } }
      : {}),
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
  problems.error('number out of range', t('A paint film has a thickness such as `0.15 mm`.'), location);
  return undefined;
}

function millimetres({ value, unit }: Length): number | undefined {
  if (unit === '%') return undefined;
  return unit === undefined ? value : value * millimetresPer(unit);
}

function resolvePaints(children: readonly Node[], book: ColourBook, problems: Problems): readonly Paint[] {
  const paints = new Map<string, Paint>();
  for (const node of every(children, 'paint')) {
    const { name, index, full, tint, temperature } = node.statement;
    const key = nameKey(name.text);
    const earlier = paints.get(key);
    if (earlier) {
      problems.repeatedName('paint', name.text, locate(node, name), earlier.location);
      continue;
    }
    const fullColour = full && book.find(full, node)?.colour;
    const tintColour = tint && book.find(tint.colour, node)?.colour;
    if (tint && !isMixture(tint)) {
      const message = t('A tint has parts of paint and of white, such as `at 1 to 9`.');
      problems.error('number out of range', message, locate(node, { ...tint.paint, end: tint.white.end }));
    }
    paints.set(key, {
      name: name.text,
      key,
      ...(index ? { index: index.text } : {}),
      ...(fullColour ? { full: fullColour } : {}),
      ...(tint && tintColour && isMixture(tint)
        ? { tint: { colour: tintColour, paint: tint.paint.value, white: tint.white.value } }
        : {}),
      ...(temperature ? { temperature: temperature.choice } : {}),
      location: locate(node, name),
    });
  }
  return [...paints.values()];
}

/** Parts of paint and of white, both of which a tint has. */
function isMixture({ paint, white }: NonNullable<StatementOf<'paint'>['tint']>): boolean {
  return paint.value > 0 && white.value > 0;
}
