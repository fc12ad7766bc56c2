import type { ColourSpec, Node } from '../../grammar/index.js';
import { nameKey } from '../../grammar/index.js';
import { type Colour, type ColourReading, parseColour } from './colour/colour.js';
import type { Location, NamedColour, ObjectColour, Paint } from './plan.js';
import { locate, type Problems } from './problems.js';
import { every } from './select.js';

/** The named colours of a plan and how a colour written anywhere in it is found. */
export class ColourBook {
  readonly colours: NamedColour[] = [];
  readonly #byKey = new Map<string, number>();
  readonly #paints: ReadonlyMap<string, Paint>;
  readonly #problems: Problems;

  constructor(nodes: readonly Node[], paints: readonly Paint[], problems: Problems) {
    this.#problems = problems;
    this.#paints = new Map(paints.map((paint) => [paint.key, paint]));
    for (const node of every(nodes, 'colour definition')) this.#define(node);
  }

  /** The colour that a spec stands for; a name that is neither a colour, a paint nor a CSS colour is reported. */
  find(spec: ColourSpec, node: Pick<Node, 'line'>): ObjectColour | undefined {
    const location = locate(node, spec);
    if (spec.kind !== 'name') {
      const colour = this.#read(spec.text, location);
      return colour && { colour, location };
    }
    const key = nameKey(spec.text);
    const index = this.#byKey.get(key);
    const named = index === undefined ? undefined : this.colours[index];
    if (index !== undefined && named) {
      return { colour: named.colour, named: index, location, ...(named.role ? { role: named.role } : {}) };
    }
    const paint = this.#paints.get(key)?.full;
    if (paint) return { colour: paint, location };
    const css = parseColour(spec.text);
    if (css.ok) return { colour: css.colour, location };
    this.#problems.unknownName('colour', spec.text, this.#knownNames(), location);
    return undefined;
  }

  #define(node: ReturnType<typeof every<'colour definition'>>[number]): void {
    const { name, colour: spec, role } = node.statement;
    const key = nameKey(name.text);
    const earlier = this.colours[this.#byKey.get(key) ?? -1];
    if (earlier) {
      reportRepeated(this.#problems, 'colour', name.text, locate(node, name), earlier.location);
      return;
    }
    const found = this.find(spec, node);
    if (!found) return;
    this.#byKey.set(key, this.colours.length);
    this.colours.push({
      name: name.text,
      key,
      colour: found.colour,
      ...(role ? { role: role.choice } : {}),
      location: locate(node, name),
      colourLocation: locate(node, spec),
    });
  }

  #read(text: string, location: Location): Colour | undefined {
    const parsed = parseColour(text);
    if (parsed.ok) return parsed.colour;
    reportColour(parsed, location, this.#problems);
    return undefined;
  }

  #knownNames(): readonly string[] {
    return [...this.colours.map(({ name }) => name), ...[...this.#paints.values()].map(({ name }) => name)];
  }
}

/** Tells why a colour can't be read, with the likeliest spelling as a fix. */
export function reportColour(
  { reason, suggestion }: Extract<ColourReading, { ok: false }>,
  location: Location,
  problems: Problems,
): void {
  problems.error(
    'unreadable colour',
    reason,
    location,
    suggestion === undefined
      ? {}
      : { fix: { title: `Change to \`${suggestion}\``, replacement: suggestion } },
  );
}

export function reportRepeated(
  problems: Problems,
  what: string,
  name: string,
  location: Location,
  earlier: Location,
): void {
  problems.error(
    'repeated name',
    `There is already ${what === 'object' ? 'an' : 'a'} ${what} called \`${name}\`, on line ${earlier.line + 1}. This one is left out.`,
    location,
    { related: [{ location: earlier, message: `\`${name}\` is first named here.` }] },
  );
}
