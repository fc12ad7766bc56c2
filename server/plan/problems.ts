import type { Node, Span } from '../../grammar/index.js';
import { nearestWord, t } from '../../grammar/index.js';
import type { Location, PlanProblem, PlanProblemCode } from './plan.js';

/** A problem where it was met, which may be in the text of a plan that the plan builds on. */
export type FoundProblem = Omit<PlanProblem, 'location' | 'from'> & { readonly location: Location };

/** Names compared in all, to find those that were meant: as many as take a moment. */
const MOST_COMPARED = 50_000;

/** Gathers what could not be resolved, in the order it was met. */
export class Problems {
  readonly #list: FoundProblem[] = [];
  #compared = 0;

  get list(): readonly FoundProblem[] {
    return this.#list;
  }

  error(code: PlanProblemCode, message: string, location: Location, extra: ProblemExtra = {}): void {
    this.#add('error', code, message, location, extra);
  }

  warn(code: PlanProblemCode, message: string, location: Location, extra: ProblemExtra = {}): void {
    this.#add('warning', code, message, location, extra);
  }

  hint(code: PlanProblemCode, message: string, location: Location): void {
    this.#add('hint', code, message, location, {});
  }

  /** A name that nothing in the plan has, with the nearest one as a fix. */
  unknownName(what: NamedThing, name: string, known: readonly string[], location: Location): void {
    this.nameNotFound(noneCalled(what, name), name, known, location);
  }

  /** A name that nothing has where it is looked for, as `message` says, with the nearest one as a fix. */
  nameNotFound(message: string, name: string, known: readonly string[], location: Location): void {
    const nearest = this.#nearest(name, known);
    this.error(
      'unknown name',
      nearest === undefined ? message : `${message} ${t('Did you mean {0}?', `\`${nearest}\``)}`,
      location,
      nearest === undefined
        ? {}
        : { fix: { title: t('Change to {0}', `\`${nearest}\``), replacement: nearest } },
    );
  }

  /** A name that something before has already. */
  repeatedName(what: RepeatedThing, name: string, location: Location, earlier: Location): void {
    this.error('repeated name', alreadyCalled(what, name, earlier.line + 1), location, {
      related: [{ location: earlier, message: t('`{0}` is first named here.', name) }],
    });
  }

  /** None any more once too many names have been compared. */
  #nearest(name: string, known: readonly string[]): string | undefined {
    this.#compared += known.length;
    return this.#compared > MOST_COMPARED ? undefined : nearestWord(name, known);
  }

  #add(
    severity: PlanProblem['severity'],
    code: PlanProblemCode,
    message: string,
    location: Location,
    extra: ProblemExtra,
  ): void {
    this.#list.push({ severity, code, message, location, related: [], ...extra });
  }
}

/** What a name may be looked for as. */
type NamedThing =
  'colour' | 'colour role' | 'object' | 'object or lead' | 'paint' | 'stock size' | 'value group or step';

function noneCalled(what: NamedThing, name: string): string {
  switch (what) {
    case 'colour':
      return t('There is no colour called `{0}` in this plan.', name);
    case 'colour role':
      return t('There is no colour role called `{0}` in this plan.', name);
    case 'object':
      return t('There is no object called `{0}` in this plan.', name);
    case 'object or lead':
      return t('There is no object or lead called `{0}` in this plan.', name);
    case 'paint':
      return t('There is no paint called `{0}` in this plan.', name);
    case 'stock size':
      return t('There is no stock size called `{0}` in this plan.', name);
    case 'value group or step':
      return t('There is no value group or step called `{0}` in this plan.', name);
  }
}

type RepeatedThing = 'colour' | 'group' | 'lead' | 'object' | 'paint';

function alreadyCalled(what: RepeatedThing, name: string, line: number): string {
  switch (what) {
    case 'colour':
      return t('There is already a colour called `{0}`, on line {1}. This one is left out.', name, line);
    case 'group':
      return t('There is already a group called `{0}`, on line {1}. This one is left out.', name, line);
    case 'lead':
      return t('There is already a lead called `{0}`, on line {1}. This one is left out.', name, line);
    case 'object':
      return t('There is already an object called `{0}`, on line {1}. This one is left out.', name, line);
    case 'paint':
      return t('There is already a paint called `{0}`, on line {1}. This one is left out.', name, line);
  }
}

type ProblemExtra = Partial<Pick<PlanProblem, 'related' | 'fix'>>;

export function locate({ line, file }: Pick<Node, 'line' | 'file'>, { start, end }: Span): Location {
  return file === undefined ? { line, start, end } : { line, start, end, file };
}

/** A number as a painter reads it: at most `decimals` places, no trailing zeros. */
export function plainNumber(value: number, decimals = 2): string {
  return String(Number(value.toFixed(decimals)));
}

const THIN_SPACE = '\u{202f}';

/** A whole number in groups of three, `200 000`: a comma would be a point to whoever writes decimals with one. */
export function thousands(count: number): string {
  return String(count).replaceAll(/\B(?=(?:\d{3})+$)/gu, THIN_SPACE);
}

/** `a`, `a and b`, `a, b and c`. */
export function inWords(items: readonly string[]): string {
  if (items.length < 2) return items.join('');
  return t('{0} and {1}', items.slice(0, -1).join(', '), items.at(-1) ?? '');
}

/** With a capital at its beginning. */
export function capitalised(text: string): string {
  const [first = '', ...rest] = text;
  return `${first.toUpperCase()}${rest.join('')}`;
}
