import type { ISerializedGast } from 'chevrotain';
import { lineParser } from './lineParser.js';
import { vocabulary, wordsOf } from './tokens.js';
import { statements } from './statements.js';

interface GrammarRule {
  readonly name: string;
  readonly definition: string;
}

interface Production {
  readonly type: string;
  readonly name?: string;
  readonly definition?: readonly Production[];
}

const typesByName = new Map(vocabulary.map((type) => [type.name, type]));

/** Rules that are only a sign between others. */
const signs: ReadonlyMap<string, string> = new Map([
  ['separator', '","'],
  ['pause', '[","]'],
]);

/** Every rule for a statement, by its name in `statements`. */
function statementRules(): ReadonlyMap<string, GrammarRule> {
  const names = new Set(statements.map((entry) => entry.rule));
  return new Map(written().flatMap((rule) => (names.has(rule.name) ? [[rule.name, rule]] : [])));
}

/** The rules for the parts that statements share, such as places and lengths. */
function sharedRules(): readonly GrammarRule[] {
  const names = new Set(statements.map((entry) => entry.rule));
  return written().filter((rule) => !names.has(rule.name) && !signs.has(rule.name));
}

function written(): readonly GrammarRule[] {
  return lineParser.productions.map((rule: ISerializedGast) => {
    const { name = '', definition = [] } = rule as Production;
    return { name, definition: withoutOuterBrackets(sequence(definition)) };
  });
}

function withoutOuterBrackets(text: string): string {
  const inner = /^\( (.*) \)$/.exec(text)?.[1];
  if (inner === undefined) return text;
  let depth = 0;
  for (const sign of inner.split(' ')) {
    if (sign === '(') depth++;
    if (sign === ')') depth--;
    if (depth < 0) return text;
  }
  return inner;
}

/** `colourSpec` as `colour-spec`, so that a rule reads like a word. */
function ruleName(name: string): string {
  return name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
}

function sequence(definition: readonly Production[]): string {
  return definition.map(expression).join(' ');
}

function expression(production: Production): string {
  const { type, name = '', definition = [] } = production;
  switch (type) {
    case 'Terminal':
      return terminal(name);
    case 'NonTerminal':
      return signs.get(name) ?? ruleName(name);
    case 'Option':
      return `[ ${withoutOuterBrackets(sequence(definition))} ]`;
    case 'Repetition':
      return `{ ${withoutOuterBrackets(sequence(definition))} }`;
    case 'RepetitionMandatory':
      return `${sequence(definition)} { ${sequence(definition)} }`;
    case 'Alternation':
      return `( ${definition.map(expression).join(' | ')} )`;
    case 'Alternative':
      return sequence(definition);
    default:
      throw new Error(`the notation has no sign for ${type}`);
  }
}

function terminal(name: string): string {
  const type = typesByName.get(name);
  const words = type ? wordsOf(type) : [];
  if (words.length > 1) return `( ${words.map((word) => `"${word}"`).join(' | ')} )`;
  if (words.length === 1) return `"${words[0] ?? ''}"`;
  const label = type?.LABEL ?? name;
  return /^[-x%°,()]$/u.test(label) ? `"${label}"` : label.toUpperCase().replaceAll(' ', '-');
}

/**
 * The grammar written out, from the parser itself, for a page of the reference: the rule of one statement,
 * or those of all `shared` parts. `"word"` is written as it stands, `[ ]` may be left out, `{ }` may come any
 * number of times, `|` separates alternatives.
 */
export function notation(page: string): string {
  const statement = statementRules().get(page);
  const rules = page === 'shared' ? sharedRules() : statement ? [statement] : [];
  if (rules.length === 0) throw new Error(`the grammar has no rule ${page}`);
  return rules.map(({ name, definition }) => `${ruleName(name)} = ${definition}`).join('\n');
}
