import {
  marked,
  nameIn,
  nameKey,
  placesIn,
  walk,
  type ColourSpec,
  type Node,
  type Statement,
  type SyntaxTree,
  type Word,
} from '../../grammar/index.js';
import { ruleById } from '../findings/rules.js';
import type { OwnLocation } from '../plan/plan.js';
import { touches } from './text.js';

/**
 * Everything that a painter names in a plan, where it is defined and where it is used. It is read from the
 * syntax tree alone, so that it holds for plans that can't be resolved.
 */
export interface Names extends WrittenNames {
  /** Those in lines that take no part in the picture because they stand where they do not belong. */
  readonly astray: WrittenNames;
}

export interface WrittenNames {
  readonly definitions: readonly Definition[];
  readonly uses: readonly Use[];
}

export type NameKind = 'object' | 'colour' | 'paint' | 'lead' | 'group' | 'sitting';

/** What a name is of, in a word that is `said`. */
export const kindWords: Readonly<Record<NameKind, string>> = {
  object: marked('object'),
  colour: marked('colour'),
  paint: marked('paint'),
  lead: marked('lead'),
  group: marked('group'),
  sitting: marked('sitting'),
};

export interface Definition {
  readonly kind: NameKind;
  readonly key: string;
  readonly name: string;
  readonly location: OwnLocation;
  readonly node: Node;
}

export interface Use {
  /** What the name may stand for, the likeliest first: a colour may be one of the plan or a paint. */
  readonly kinds: readonly NameKind[];
  readonly key: string;
  readonly location: OwnLocation;
  /** The name is one of the plan that this one is based on, even where this one has it too. */
  readonly ofBase: boolean;
}

/** Reads all definitions and uses, in the order of the text. */
export function namesOf({ nodes, detached }: SyntaxTree): Names {
  return { ...writtenIn(nodes), astray: writtenIn(detached) };
}

/** The definitions and uses among statements, in their order. */
export function writtenIn(nodes: readonly Node[]): WrittenNames {
  const definitions: Definition[] = [];
  const uses: Use[] = [];
  walk(nodes, (node) => {
    for (const { kind, word } of definedBy(node.statement)) {
      definitions.push({
        kind,
        key: nameKey(word.text),
        name: word.text,
        location: locate(node, word),
        node,
      });
    }
    for (const { kinds, word } of usedBy(node.statement)) {
      const ofBase = node.statement.kind === 'without';
      uses.push({ kinds, key: nameKey(word.text), location: locate(node, word), ofBase });
    }
  });
  return { definitions, uses };
}

/**
 * What the name under the caret stands for in the plan itself: the kind and key that its definition has, or would have.
 * A name of the plan that this one is based on stands for nothing in it.
 */
export function nameAt(
  names: Names,
  line: number,
  column: number,
): { readonly kind: NameKind; readonly key: string; readonly location: OwnLocation } | undefined {
  const here = ({ location }: { readonly location: OwnLocation }): boolean =>
    location.line === line && touches(location, column);
  const definition = names.definitions.find(here);
  if (definition !== undefined) return definition;
  const use = names.uses.find(here);
  if (use === undefined || use.ofBase) return undefined;
  const kind = kindOf(names, use);
  return kind === undefined ? undefined : { kind, key: use.key, location: use.location };
}

function kindOf({ definitions }: Names, { kinds, key }: Use): NameKind | undefined {
  const isDefined = (kind: NameKind): boolean =>
    definitions.some((definition) => definition.kind === kind && definition.key === key);
  return kinds.find(isDefined) ?? kinds[0];
}

function locate(node: Node, word: Word): OwnLocation {
  return { line: node.line, start: word.start, end: word.end };
}

interface Defined {
  readonly kind: NameKind;
  readonly word: Word;
}

function definedBy(statement: Statement): readonly Defined[] {
  switch (statement.kind) {
    case 'object':
      return [{ kind: 'object', word: statement.name }];
    case 'colour definition':
      return [{ kind: 'colour', word: statement.name }];
    case 'paint':
      return [{ kind: 'paint', word: statement.name }];
    case 'lead':
      return [{ kind: 'lead', word: statement.name }];
    case 'group':
      return statement.groups.map(({ name }) => ({ kind: 'group', word: name }));
    case 'sitting': {
      const { value, start, end } = statement.title;
      return [{ kind: 'sitting', word: { text: value, start, end } }];
    }
    default:
      return [];
  }
}

interface Used {
  readonly kinds: readonly NameKind[];
  readonly word: Word;
}

function usedBy(statement: Statement): readonly Used[] {
  switch (statement.kind) {
    case 'works':
      return objects(statement.names);
    case 'allow':
      return excepted(statement.rule, statement.names);
    case 'without':
      return statement.names.map((word) => ({ kinds: ['object', 'colour', 'lead', 'paint'], word }));
    case 'cue':
      return objects(statement.carriedBy);
    case 'path':
      return objects(statement.stops);
    case 'edges':
      return objects(statement.against);
    case 'lead':
      return [
        ...objects(statement.along ? [statement.along.object] : []),
        ...objects(namesOfPlaces(statement)),
      ];
    case 'focus':
    case 'at':
    case 'points':
    case 'shape':
      return objects(namesOfPlaces(statement));
    case 'colour':
    case 'glaze':
    case 'ground':
    case 'colour definition':
      return colours([statement.colour]);
    case 'paint':
      return colours([statement.full, statement.tint?.colour]);
    case 'mother':
      return [{ kinds: ['paint', 'colour'], word: statement.name }];
    case 'budget':
      return statement.of.choice === 'value'
        ? statement.shares.map(({ name }) => ({ kinds: ['group'], word: name }))
        : [];
    default:
      return [];
  }
}

function namesOfPlaces(statement: Statement): readonly Word[] {
  return placesIn(statement).flatMap((place) => nameIn(place) ?? []);
}

function objects(words: readonly Word[]): readonly Used[] {
  return words.map((word) => ({ kinds: ['object'], word }));
}

/** What a rule is about is likelier meant than a thing of another kind that has the same name. */
function excepted(rule: Word, words: readonly Word[]): readonly Used[] {
  const isAboutLeads = ruleById(rule.text.toLowerCase())?.perLead === true;
  const kinds = isAboutLeads ? (['lead', 'object'] as const) : (['object', 'lead'] as const);
  return words.map((word) => ({ kinds, word }));
}

function colours(specs: readonly (ColourSpec | undefined)[]): readonly Used[] {
  return specs.flatMap((spec) =>
    spec?.kind === 'name' ? [{ kinds: ['colour', 'paint'] as const, word: spec }] : [],
  );
}
