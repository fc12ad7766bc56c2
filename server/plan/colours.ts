import type { ColourSpec, Node, NodeOf } from '../../grammar/index.js';
import { isKind, nameKey, said as spoken, t } from '../../grammar/index.js';
import { type Colour, type ColourReading, parseColour } from './colour/colour.js';
import { computedColour } from './colour/model.js';
import { pigmentOf } from './materials/pigments.js';
import type { Location, NamedColour, ObjectColour } from './plan.js';
import { locate, type Problems } from './problems.js';
import { every, said } from './select.js';

type Definition = Node & (NodeOf<'colour definition'> | NodeOf<'paint'>);

/** Where a definition stands in being looked up: what it is, that it is nothing, or that it is just being looked up. */
type Reading = ObjectColour | 'none' | 'open';

/**
 * The named colours of a plan and how a colour written anywhere in it is found. A colour may be given by the name of
 * another, wherever in the plan that one stands; then it has the other's role unless it has one of its own.
 */
export class ColourBook {
  readonly colours: readonly NamedColour[];
  readonly #definitions = new Map<string, Definition>();
  readonly #readings = new Map<Definition, Reading>();
  readonly #places = new Map<Definition, number>();
  /** Index into the paints of the palette. */
  readonly #paints = new Map<Definition, number>();
  readonly #problems: Problems;

  readonly #lost: ReadonlySet<string>;

  /** @param lostNames names that lines were to give which can't be read */
  constructor(nodes: readonly Node[], problems: Problems, lostNames: readonly string[] = []) {
    this.#problems = problems;
    this.#lost = new Set(lostNames.map(nameKey));
    const colours = this.#firstOfEachName(every(nodes, 'colour definition'));
    const palette = every(nodes, 'palette').at(-1);
    const paints = new Map<string, Node & NodeOf<'paint'>>();
    for (const node of every(palette?.children ?? [], 'paint')) {
      const key = nameKey(node.statement.name.text);
      if (!paints.has(key)) paints.set(key, node);
    }
    [...paints.values()].forEach((node, index) => this.#paints.set(node, index));
    for (const node of [...colours, ...paints.values()]) {
      const key = nameKey(node.statement.name.text);
      if (!this.#definitions.has(key)) this.#definitions.set(key, node);
    }
    const found = colours.flatMap((node) => {
      const reading = this.#lookUp(node);
      return reading ? [{ node, reading }] : [];
    });
    found.forEach(({ node }, index) => this.#places.set(node, index));
    this.colours = found.map(({ node, reading: { colour, role } }) => ({
      name: node.statement.name.text,
      key: nameKey(node.statement.name.text),
      colour,
      ...(role ? { role } : {}),
      location: locate(node, node.statement.name),
      colourLocation: locate(node, node.statement.colour),
    }));
  }

  /** The colour that a spec stands for; a name that is neither a colour, a paint nor a CSS colour is reported. */
  find(spec: ColourSpec, node: Pick<Node, 'line'>): ObjectColour | undefined {
    const location = locate(node, spec);
    if (spec.kind !== 'name') {
      const colour = this.#read(spec.text, location);
      return colour && { colour, location };
    }
    const definition = this.#definitions.get(nameKey(spec.text));
    if (definition && this.#readings.get(definition) !== 'open') {
      const found = this.#lookUp(definition);
      if (!found && isKind(definition, 'paint') && !definition.statement.full) {
        const message = t(
          'The paint `{0}` has no colour of its own yet: give its masstone, such as `full #7a1030`.',
          spec.text,
        );
        this.#problems.error('unreadable colour', message, location);
      }
      const named = this.#places.get(definition);
      return found && standingAt(location, found, named);
    }
    const css = parseColour(spec.text);
    if (css.ok) return { colour: css.colour, location };
    if (definition) {
      const message = t('`{0}` is given by itself. Give it a colour, such as `#7a3b1d`.', spec.text);
      this.#problems.error('circular reference', message, location);
    } else if (!this.#lost.has(nameKey(spec.text))) {
      this.#problems.unknownName('colour', spec.text, this.#names(), location);
    }
    return undefined;
  }

  /** What a definition stands for, looked up once; `undefined` for none and, after reporting, for none to be read. */
  #lookUp(node: Definition): ObjectColour | undefined {
    let reading = this.#readings.get(node);
    if (reading === undefined) {
      // From the end of the chain, so that it may be as long as the plan.
      for (const link of this.#chainFrom(node).reverse()) this.#settle(link);
      reading = this.#readings.get(node);
    }
    return typeof reading === 'string' ? undefined : reading;
  }

  /** The definition and those it is given by, one by the next, as far as they are not looked up yet. */
  #chainFrom(node: Definition): Definition[] {
    const chain = new Set<Definition>();
    let link: Definition | undefined = node;
    while (link && !this.#readings.has(link) && !chain.has(link)) {
      chain.add(link);
      const spec = specOf(link);
      link = spec?.kind === 'name' ? this.#definitions.get(nameKey(spec.text)) : undefined;
    }
    return [...chain];
  }

  #settle(node: Definition): void {
    if (this.#readings.has(node)) return;
    this.#readings.set(node, 'open');
    const spec = specOf(node);
    const found = spec ? this.find(spec, node) : knownTone(node);
    const role = isKind(node, 'paint')
      ? undefined
      : (said(node, (statement) => statement.role)?.value.choice ?? found?.role);
    const paint = this.#paints.get(node) ?? found?.paint;
    this.#readings.set(
      node,
      found
        ? {
            colour: found.colour,
            location: found.location,
            ...(role ? { role } : {}),
            ...(paint === undefined ? {} : { paint }),
          }
        : 'none',
    );
  }

  #firstOfEachName(nodes: readonly (Node & NodeOf<'colour definition'>)[]) {
    const first = new Map<string, Node & NodeOf<'colour definition'>>();
    for (const node of nodes) {
      const { name } = node.statement;
      const key = nameKey(name.text);
      const earlier = first.get(key);
      if (earlier) {
        const there = locate(earlier, earlier.statement.name);
        this.#problems.repeatedName('colour', name.text, locate(node, name), there);
      } else {
        first.set(key, node);
      }
    }
    return [...first.values()];
  }

  #read(text: string, location: Location): Colour | undefined {
    const parsed = parseColour(text);
    if (parsed.ok) return parsed.colour;
    reportColour(parsed, location, this.#problems);
    return undefined;
  }

  #names(): readonly string[] {
    return [...this.#definitions.values()].map(({ statement }) => statement.name.text);
  }
}

/**
 * What a definition stands for, where it is asked for by the name of the colour with the index `named`, if it is one.
 */
function standingAt(
  location: Location,
  { colour, role, paint }: ObjectColour,
  named: number | undefined,
): ObjectColour {
  const here: { -readonly [K in keyof ObjectColour]: ObjectColour[K] } = { colour, location };
  if (role) here.role = role;
  if (paint !== undefined) here.paint = paint;
  if (named !== undefined) here.named = named;
  return here;
}

/** A paint of which the full tone is known needs none in the plan. */
function knownTone(node: Definition): ObjectColour | undefined {
  if (!isKind(node, 'paint')) return undefined;
  const { index, name } = node.statement;
  const pigment = index && pigmentOf(index.text, name.text);
  const tone = pigment?.masstone ?? pigment?.remembered?.full;
  const reading = tone && parseColour(tone);
  return name && reading?.ok
    ? { colour: computedColour(reading.colour.lab), location: locate(node, name) }
    : undefined;
}

function specOf({ statement }: Definition): ColourSpec | undefined {
  return statement.kind === 'paint' ? statement.full : statement.colour;
}

/** Tells why a colour can't be read, with the likeliest spelling as a fix. */
function reportColour(
  { reason, suggestion }: Extract<ColourReading, { ok: false }>,
  location: Location,
  problems: Problems,
): void {
  problems.error(
    'unreadable colour',
    spoken(reason),
    location,
    suggestion === undefined
      ? {}
      : { fix: { title: t('Change to {0}', `\`${suggestion}\``), replacement: suggestion } },
  );
}
