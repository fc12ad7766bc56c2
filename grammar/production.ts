import type { ISerializedGast } from 'chevrotain';
import { lineParser } from './line-parser.js';
import { statements } from './statements.js';
import { vocabulary, wordsOf } from './tokens.js';

/** A rule of the grammar as it is shown to readers, made from the parser's own account of itself. */
export interface Production {
  readonly name: string;
  readonly body: Expression;
}

export type Expression =
  /** Written as it stands: `"object"`. */
  | { readonly kind: 'literal'; readonly text: string }
  /** A kind of word or sign that is explained in prose: `NAME`. */
  | { readonly kind: 'sign'; readonly text: string }
  /** Another rule. */
  | { readonly kind: 'part'; readonly name: string }
  | { readonly kind: 'sequence'; readonly items: readonly Expression[] }
  | { readonly kind: 'choice'; readonly items: readonly Expression[] }
  | { readonly kind: 'optional'; readonly item: Expression }
  /** Any number of times, or not at all. */
  | { readonly kind: 'repeated'; readonly item: Expression }
  /** Once or more, with a sign between. */
  | { readonly kind: 'list'; readonly item: Expression; readonly separator?: Expression };

interface SerializedProduction {
  readonly type: string;
  readonly name?: string;
  readonly definition?: readonly SerializedProduction[];
}

const typesByName = new Map(vocabulary.map((type) => [type.name, type]));

/** Rules that are only a sign between others. */
const signs: ReadonlyMap<string, Expression> = new Map<string, Expression>([
  ['separator', { kind: 'literal', text: ',' }],
  ['pause', { kind: 'optional', item: { kind: 'literal', text: ',' } }],
]);

const statementRules: ReadonlySet<string> = new Set(statements.map((entry) => entry.rule));

/** The names of the pages of the grammar: one for each rule of a statement, and `shared` for all parts. */
export function grammarPages(): readonly string[] {
  return [...statementRules, 'shared'];
}

/** The rules on a page of the grammar. */
export function productionsOn(page: string): readonly Production[] {
  const all = lineParser.productions.map((rule: ISerializedGast) => rule as SerializedProduction);
  const isOnPage = ({ name = '' }: SerializedProduction): boolean =>
    page === 'shared'
      ? !statementRules.has(name) && !signs.has(name)
      : statementRules.has(name) && name === page;
  const productions = all
    .filter(isOnPage)
    .map(({ name = '', definition = [] }) => ({ name: spoken(name), body: sequence(definition) }));
  if (productions.length === 0) throw new Error(`the grammar has no page ${page}`);
  return productions;
}

/** `colourSpec` as `colour-spec`, so that a rule reads like a word. */
function spoken(name: string): string {
  return name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
}

function sequence(definition: readonly SerializedProduction[]): Expression {
  const items: Expression[] = [];
  for (const production of definition) {
    const item = expression(production);
    const last = items.at(-1);
    const list = last && item.kind === 'repeated' ? listOf(last, item.item) : undefined;
    if (list) items[items.length - 1] = list;
    else items.push(item);
  }
  const [only] = items;
  return only && items.length === 1 ? only : { kind: 'sequence', items };
}

/** `x { "," x }` is a list. */
function listOf(first: Expression, repeated: Expression): Expression | undefined {
  const isSame = (one: Expression): boolean => JSON.stringify(one) === JSON.stringify(first);
  if (isSame(repeated)) return { kind: 'list', item: first };
  if (repeated.kind !== 'sequence' || repeated.items.length !== 2) return undefined;
  const [separator, item] = repeated.items;
  return separator && item && isSame(item) ? { kind: 'list', item: first, separator } : undefined;
}

function expression(production: SerializedProduction): Expression {
  const { type, name = '', definition = [] } = production;
  switch (type) {
    case 'Terminal':
      return terminal(name);
    case 'NonTerminal':
      return signs.get(name) ?? { kind: 'part', name: spoken(name) };
    case 'Option':
      return { kind: 'optional', item: sequence(definition) };
    case 'Repetition':
      return { kind: 'repeated', item: sequence(definition) };
    case 'RepetitionMandatory':
      return { kind: 'list', item: sequence(definition) };
    case 'Alternation':
      return choice(definition.map(expression));
    case 'Alternative':
      return sequence(definition);
    default:
      throw new Error(`no way is known to show ${type}`);
  }
}

/** A choice within a choice is one choice. */
function choice(alternatives: readonly Expression[]): Expression {
  const items = alternatives.flatMap((item) => (item.kind === 'choice' ? item.items : [item]));
  const [only] = items;
  return only && items.length === 1 ? only : { kind: 'choice', items };
}

function terminal(name: string): Expression {
  const type = typesByName.get(name);
  const words = type ? wordsOf(type) : [];
  if (words.length > 0) return choice(words.map((text) => ({ kind: 'literal', text })));
  const label = type?.LABEL ?? name;
  if (/^[-x%°,()]$/u.test(label)) return { kind: 'literal', text: label };
  return { kind: 'sign', text: label.toUpperCase().replaceAll(' ', '-') };
}
