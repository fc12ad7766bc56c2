import {
  nameIn,
  nameKey,
  type Node,
  type NodeOf,
  placesIn,
  type Statement,
  t,
  walk,
  type Word,
} from '../../../grammar/index.js';
import { parseColour } from '../colour/colour.js';
import { inWords, locate, type Problems } from '../problems.js';
import { every } from '../select.js';
import { edgesWithout, isEdgesAgainst } from './merge.js';

type Kind = 'object' | 'colour' | 'lead' | 'paint';

/** A thing that a plan takes out of its base. */
interface Taken {
  readonly kind: Kind;
  readonly key: string;
}

/** The statements of a base without what is left out of them, and what that was. */
export interface Remaining {
  readonly nodes: readonly Node[];
  readonly taken: readonly (Taken & { readonly word: Word; readonly node: Node })[];
}

/** Takes out of a base all that `without` names; a name that the base has not is reported. */
export function leaveOut(
  base: readonly Node[],
  without: readonly (Node & NodeOf<'without'>)[],
  file: string,
  problems: Problems,
): Remaining {
  if (without.length === 0) return { nodes: base, taken: [] };
  const known = namedIn(base);
  const taken = without.flatMap((node) =>
    node.statement.names.flatMap((word) => {
      const meant = known.filter(({ key }) => key === nameKey(word.text));
      if (meant.length === 0) {
        problems.nameNotFound(
          t(
            '`{0}` has no object, colour, lead or paint called `{1}` that could be left out.',
            file,
            word.text,
          ),
          word.text,
          known.map(({ name }) => name),
          locate(node, word),
        );
      }
      return meant.map(({ kind, key }) => ({ kind, key, word, node }));
    }),
  );
  const isOut = (node: Node): boolean => {
    const named = thingNamedBy(node.statement);
    return named !== undefined && taken.some(({ kind, key }) => kind === named.kind && key === named.key);
  };
  const nodes = base
    .filter((node) => !isOut(node))
    .map((node) => withChildren(node, (child) => (isOut(child) ? undefined : child)));
  return { nodes, taken };
}

/**
 * A plan without what its base says by something that has been left out of it. Lists go on without the name; what can't
 * be without it goes too, and is told once, where it was left out: leads, places, colours.
 *
 * @param nodes the plan and what remains of its base, as one
 * @param ownFile the file of the plan itself, whose own lines stay as they are
 */
export function withoutWhatRefers(
  nodes: readonly Node[],
  taken: Remaining['taken'],
  ownFile: string | undefined,
  baseFile: string,
  problems: Problems,
): readonly Node[] {
  if (taken.length === 0) return nodes;
  const gone = new Gone(taken, nodes);
  const isBase = ({ file }: Node): boolean => file !== ownFile;
  // A colour that is given by one that is gone is gone as well, and so on.
  let remaining = nodes;
  for (;;) {
    const lost = every(remaining, 'colour definition').filter(
      (node) =>
        isBase(node) && gone.colour(node.statement.colour, t('the colour `{0}`', node.statement.name.text)),
    );
    if (lost.length === 0) break;
    remaining = remaining.filter((node) => !lost.some((one) => one === node));
    lost.forEach(({ statement }) =>
      gone.follows(nameKey(statement.name.text), nameKey(statement.colour.text)),
    );
  }
  const kept = remaining.flatMap((node) => keptOf(node, gone, isBase) ?? []);
  for (const { word, node, lost } of gone.losses()) {
    problems.hint(
      'left out with it',
      t('With `{0}` goes what `{1}` says by it: {2}.', word.text, baseFile, inWords(lost)),
      locate(node, word),
    );
  }
  return kept;
}

/** What is gone, and what goes with it. */
class Gone {
  readonly #objects: ReadonlySet<string>;
  /** Names of colours and paints that are gone, with the one that was left out first. */
  readonly #tones = new Map<string, string>();
  readonly #taken: Remaining['taken'];
  readonly #lost = new Map<string, string[]>();

  constructor(taken: Remaining['taken'], nodes: readonly Node[]) {
    this.#taken = taken;
    const there = namedIn(nodes);
    const isThere = (kinds: readonly Kind[], wanted: string): boolean =>
      there.some(({ kind, key }) => kinds.includes(kind) && key === wanted);
    this.#objects = new Set(
      taken.flatMap(({ kind, key }) => (kind === 'object' && !isThere(['object'], key) ? [key] : [])),
    );
    for (const { kind, key } of taken) {
      const isTone = kind === 'colour' || kind === 'paint';
      if (isTone && !isThere(['colour', 'paint'], key) && !parseColour(key).ok) this.#tones.set(key, key);
    }
  }

  object(name: Word, lost?: string): boolean {
    const key = nameKey(name.text);
    if (!this.#objects.has(key)) return false;
    if (lost !== undefined) this.#lose(key, lost);
    return true;
  }

  /** Whether one of the places of a statement is that of an object that is gone. */
  place(statement: Statement, lost: string): boolean {
    return placesIn(statement).some((place) => {
      const name = nameIn(place);
      return name !== undefined && this.object(name, lost);
    });
  }

  colour(spec: { readonly kind?: string; readonly text: string }, lost: string): boolean {
    const first = spec.kind === 'name' ? this.#tones.get(nameKey(spec.text)) : undefined;
    if (first !== undefined) this.#lose(first, lost);
    return first !== undefined;
  }

  /** A colour that goes because another has gone. */
  follows(key: string, other: string): void {
    this.#tones.set(key, this.#tones.get(other) ?? other);
  }

  losses(): readonly { readonly word: Word; readonly node: Node; readonly lost: readonly string[] }[] {
    return [...this.#lost].flatMap(([key, lost]) => {
      const one = this.#taken.find((candidate) => candidate.key === key);
      return one ? [{ word: one.word, node: one.node, lost }] : [];
    });
  }

  #lose(key: string, what: string): void {
    const lost = this.#lost.get(key) ?? [];
    if (!lost.includes(what)) this.#lost.set(key, [...lost, what]);
  }
}

/** A statement of the base as it is without what is gone; nothing where it goes too. */
function keptOf(node: Node, gone: Gone, isBase: (node: Node) => boolean): Node | undefined {
  const { statement } = node;
  if (!isBase(node)) return withChildren(node, (child) => keptUnder(child, node, gone, isBase));
  switch (statement.kind) {
    case 'lead': {
      const lost = t('the lead `{0}`', statement.name.text);
      const isLost = statement.along && gone.object(statement.along.object, lost);
      return isLost === true || gone.place(statement, lost) ? undefined : node;
    }
    case 'focus':
      return gone.place(statement, t('the focal point')) ? undefined : node;
    case 'path': {
      const stops = statement.stops.filter((name) => !gone.object(name));
      return stops.length === 0 ? undefined : { ...node, statement: { ...statement, stops } };
    }
    case 'cue': {
      const carriedBy = statement.carriedBy.filter((name) => !gone.object(name));
      return { ...node, statement: { ...statement, carriedBy } };
    }
    case 'allow':
      return allowWithout(node, gone);
    case 'sitting': {
      const works = every(node.children, 'works').flatMap((child) => child.statement.names);
      const kept = withChildren(node, (child) => keptUnder(child, node, gone, isBase));
      // Without its `works`, a layer would go over the whole picture.
      const isIdle = works.length > 0 && every(kept.children, 'works').length === 0;
      return isIdle ? undefined : kept;
    }
    default:
      return withChildren(node, (child) => keptUnder(child, node, gone, isBase));
  }
}

function keptUnder(node: Node, parent: Node, gone: Gone, isBase: (node: Node) => boolean): Node | undefined {
  if (!isBase(node)) return node;
  const { statement } = node;
  const of = parent.statement.kind === 'object' ? parent.statement.name.text : '';
  switch (statement.kind) {
    case 'at':
      return gone.place(statement, t('the place of `{0}`', of)) ? undefined : node;
    case 'shape': {
      const lost = t('the shape of `{0}`', of);
      const isLost = [node, ...node.children].some((one) => gone.place(one.statement, lost));
      return isLost ? undefined : node;
    }
    case 'edges':
      return isEdgesAgainst(node) ? edgesWithout(node, (name) => gone.object(name)) : node;
    case 'colour':
      return gone.colour(statement.colour, t('the colour of `{0}`', of)) ? undefined : node;
    case 'glaze':
      return gone.colour(statement.colour, t('the glaze of `{0}`', of)) ? undefined : node;
    case 'ground':
      return gone.colour(statement.colour, t('the ground')) ? undefined : node;
    case 'mother':
      return gone.colour({ kind: 'name', text: statement.name.text }, t('what goes into every mixture'))
        ? undefined
        : node;
    case 'works': {
      const names = statement.names.filter((name) => !gone.object(name));
      return names.length === 0 ? undefined : { ...node, statement: { ...statement, names } };
    }
    case 'allow':
      return allowWithout(node, gone);
    default:
      return node;
  }
}

/** An exception for things that are all gone is for nothing, not for the whole plan. */
function allowWithout(node: Node, gone: Gone): Node | undefined {
  const { statement } = node;
  if (statement.kind !== 'allow') return node;
  const names = statement.names.filter((name) => !gone.object(name));
  if (names.length === statement.names.length) return node;
  return names.length === 0 ? undefined : { ...node, statement: { ...statement, names } };
}

function withChildren(node: Node, keep: (child: Node) => Node | undefined): Node {
  const children = node.children.flatMap((child) => keep(child) ?? []);
  const isSame =
    children.length === node.children.length && children.every((child, i) => child === node.children[i]);
  return isSame ? node : { ...node, children };
}

/** All objects, colours, leads and paints, with their names as written. */
function namedIn(nodes: readonly Node[]): readonly (Taken & { readonly name: string })[] {
  const found: (Taken & { readonly name: string })[] = [];
  walk(nodes, ({ statement }) => {
    const named = thingNamedBy(statement);
    if (named) found.push(named);
  });
  return found;
}

function thingNamedBy(statement: Statement): (Taken & { readonly name: string }) | undefined {
  const named = (kind: Kind, name: Word) => ({ kind, key: nameKey(name.text), name: name.text });
  switch (statement.kind) {
    case 'object':
    case 'lead':
    case 'paint':
      return named(statement.kind, statement.name);
    case 'colour definition':
      return named('colour', statement.name);
    default:
      return undefined;
  }
}
