import { choiceLists, layers, type StatementKind } from '../../grammar/index.js';
import { exceptionKinds } from '../findings/exceptions.js';
import { ruleById } from '../findings/rules.js';
import type { FileReference } from '../plan/plan.js';
import type { NameKind } from './names.js';
import { isMoving, placeSlots, restOfSystem } from './place-slots.js';

/** What can stand at the caret. */
export type Slot =
  | { readonly kind: 'words'; readonly words: readonly string[] }
  | { readonly kind: 'steps' | 'systems' | 'places' | 'colours' | 'stock sizes' | 'pigments' }
  | { readonly kind: 'names'; readonly of: NameKind }
  /** The texts of the cues, with the quotes that are still to be written or without. */
  | { readonly kind: 'cues'; readonly quoted: boolean }
  /** The name of a rule, often of several words: it begins right behind the keyword. */
  | { readonly kind: 'rules' }
  /** The limit of the rule of that name. */
  | { readonly kind: 'limit'; readonly rule: string }
  | { readonly kind: 'files'; readonly of: FileReference['kind'] }
  /** A part of the SVG file at the path. */
  | { readonly kind: 'parts'; readonly path: string };

/**
 * What can follow in a statement.
 *
 * @param kind the statement
 * @param rest its words and signs behind the keyword and before the word that is being typed
 */
export function slotsFor(kind: StatementKind, rest: readonly string[]): readonly Slot[] {
  const choose = forms[kind];
  const amongNumbers = rest.lastIndexOf('(') > rest.lastIndexOf(')');
  return choose === undefined || amongNumbers ? [] : choose(rest);
}

/** Statements in whose lists nothing stands twice; the eye may come back on its path. */
export const listsEachOnce: ReadonlySet<StatementKind> = new Set([
  'budget',
  'win by',
  'edges',
  'cue',
  'works',
  'without',
]);

/** What can follow between the quotes of a sentence: the names of files and of their parts, and a cue that is there. */
export function sentenceSlots(kind: StatementKind, rest: readonly string[]): readonly Slot[] {
  switch (kind) {
    case 'based on':
      return [{ kind: 'files', of: 'plan' }];
    case 'photo':
      return [{ kind: 'files', of: 'photograph' }];
    case 'sketch':
      return [{ kind: 'files', of: 'sketch' }];
    case 'allow':
      return rest.at(-1) === 'for' ? [{ kind: 'cues', quoted: false }] : [];
    case 'shape': {
      if (rest.at(-1) === 'from') return [{ kind: 'files', of: 'drawing' }];
      const [from, path] = rest;
      return from === 'from' && path !== undefined && rest.at(-1) === 'part'
        ? [{ kind: 'parts', path: unquoted(path) }]
        : [];
    }
    default:
      return [];
  }
}

type Choose = (rest: readonly string[]) => readonly Slot[];

const words = (list: readonly string[]): Slot => ({ kind: 'words', words: list });
const names = (of: NameKind): Slot => ({ kind: 'names', of });
const units = words(choiceLists.LengthUnit);

/** These, right behind the keyword. */
const only =
  (...slots: readonly Slot[]): Choose =>
  (rest) =>
    rest.length === 0 ? slots : [];

/** First these, and behind whatever was given, those. */
const then =
  (first: readonly Slot[], next: readonly Slot[]): Choose =>
  (rest) =>
    rest.length === 0 ? first : notYetGiven(next, rest);

/** A word of a list that stands there already is not asked again. */
function notYetGiven(slots: readonly Slot[], rest: readonly string[]): readonly Slot[] {
  return slots.filter((slot) => slot.kind !== 'words' || !slot.words.includes(rest.at(-1) ?? ''));
}

/** A list with commas, or with `and`. */
const list =
  (...slots: readonly Slot[]): Choose =>
  (rest) =>
    beginsItem(rest) ? slots : [];

/** Behind the last of these words, what it asks for; before any of them, `before`. */
const parts =
  (before: Choose, after: Readonly<Record<string, Choose>>): Choose =>
  (rest) => {
    const at = rest.findLastIndex((word) => Object.hasOwn(after, word));
    const [word] = rest.slice(at, at + 1);
    const choose = word === undefined || at < 0 ? before : after[word];
    return choose?.(rest.slice(at + 1)) ?? [];
  };

const place: Choose = placeSlots;
const placeThen =
  (...next: readonly string[]): Choose =>
  (rest) => {
    const ended = !['of', 'at', undefined].includes(rest.at(-1)) && !isMoving(rest);
    return [...placeSlots(rest), ...(ended ? [words(next)] : [])];
  };

/** A width and a height, each with a unit if need be, and what stands behind both. */
const extent =
  (...next: readonly Slot[]): Choose =>
  (rest) => {
    const last = rest.at(-1);
    const ended = rest.includes('x') && last !== 'x';
    return [...(isNumber(last) ? [units] : []), ...(ended ? notYetGiven(next, rest) : [])];
  };
const points: Choose = (rest) => placeSlots(rest.slice(rest.lastIndexOf(')') + 1));

/** Names with a share each, and how far they may be missed. */
const shares =
  (item: Slot): Choose =>
  (rest) =>
    beginsItem(rest) ? [item] : isNumber(rest.at(-1)) ? [words(['within'])] : [];

/** `road`, `top edge of road`. */
const alongSlots: Choose = (rest) => {
  const last = rest.at(-1);
  if (last === undefined) return [names('object'), words(choiceLists.Side)];
  if (last === 'of') return [names('object')];
  if (last === 'edge' || last === 'side') return [words(['of'])];
  const isSide = rest.length === 1 && (choiceLists.Side as readonly string[]).includes(last);
  return [words(isSide ? ['edge of'] : ['from', 'through', 'to'])];
};

const forms: Partial<Readonly<Record<StatementKind, Choose>>> = {
  plan: then([], [words(['by'])]),
  without: list(names('object'), names('colour'), names('lead'), names('paint')),
  cue: parts(then([], [words(['carried by'])]), {
    carried: () => [words(['by'])],
    by: list(names('object')),
  }),
  canvas: (rest) =>
    isNumber(rest[0])
      ? extent(words(choiceLists.Orientation))(rest)
      : then([{ kind: 'stock sizes' }], [words(choiceLists.Orientation)])(rest),
  ground: then([{ kind: 'colours' }], [words(choiceLists.ColourRole)]),
  divide: (rest) => restOfSystem(rest.at(-1)) ?? list({ kind: 'systems' })(rest),
  focus: place,
  'win by': list(words(choiceLists.Means)),
  horizon: then([], [units]),
  planes: only(words(choiceLists.Trend.map((trend) => `${trend} with distance`))),
  budget: parts(only(words(choiceLists.BudgetSubject)), {
    value: shares(names('group')),
    colour: shares(words(choiceLists.ColourRole)),
    within: () => [],
  }),
  wheel: only(words(choiceLists.Wheel)),
  'colour definition': (rest) =>
    rest.length === 0 ? [] : then([{ kind: 'colours' }], [words(choiceLists.ColourRole)])(rest.slice(1)),
  object: then([], [words(choiceLists.ObjectRole)]),
  plane: only(words(choiceLists.Plane)),
  shape: parts(only(words(['rectangle', 'ellipse', 'circle', 'outline', 'smooth', 'path', 'from'])), {
    rectangle: (rest) => (isNumber(rest[0]) ? extent(words(['at'])) : placeThen('to'))(rest),
    ellipse: extent(words(['at'])),
    circle: then([], [units, words(['at'])]),
    outline: points,
    smooth: points,
    at: place,
    to: place,
    from: then([], [words(['part'])]),
    part: () => [],
  }),
  points,
  at: parts(placeThen('by'), {
    by: only(
      words([...choiceLists.Side, 'centre', 'upper left', 'upper right', 'lower left', 'lower right']),
    ),
  }),
  'size along': then([], [units, words(choiceLists.Dimension)]),
  size: then([], [units, words(choiceLists.Dimension)]),
  turn: then([], [words(['degrees'])]),
  mirror: only(words(['left to right', 'top to bottom'])),
  repeat: parts(then([], [words(['every'])]), {
    every: then([], [words(['turning', 'resized'])]),
    turning: then([], [words(['resized'])]),
    resized: () => [],
  }),
  colour: only({ kind: 'colours' }),
  glaze: only({ kind: 'colours' }),
  value: only({ kind: 'steps' }),
  edges: parts(then([words(choiceLists.Edges)], [words(['against'])]), { against: list(names('object')) }),
  detail: only(words(choiceLists.Detail)),
  lead: parts(then([], [words(['from', 'along'])]), {
    along: alongSlots,
    from: placeThen('through', 'to'),
    through: placeThen('to'),
    to: place,
  }),
  path: list(names('object')),
  paint: (rest) => paintSlots(rest),
  mother: only(names('paint')),
  film: then([], [units]),
  tube: then([], [words(['ml'])]),
  sitting: then([], [words(['on'])]),
  works: list(names('object')),
  layer: (rest) =>
    rest.at(-1) === 'body' ? [words(['colour'])] : then([words(layers)], [words(choiceLists.Body)])(rest),
  away: then([], [words(['to'])]),
  grid: only(words(['every'])),
  allow: (rest) => allowSlots(rest),
  rule: (rest) => ruleSlots(rest),
};

/** A name, a Colour Index name, and what else is told of a paint. */
function paintSlots(rest: readonly string[]): readonly Slot[] {
  switch (rest.at(-1)) {
    case undefined:
      return [];
    case 'full':
    case 'tint':
      return [{ kind: 'colours' }];
    default:
      return [
        ...(rest.length === 1 ? [{ kind: 'pigments' } as const] : []),
        words([...choiceLists.Temperature, 'full', 'tint']),
      ];
  }
}

/** A rule, what it is set aside for, as far as it is about single things, and the reason. */
function allowSlots(rest: readonly string[]): readonly Slot[] {
  const behind = rest.findIndex((word) => word === 'for' || word === 'because');
  const rule = ruleById(rest.slice(0, behind < 0 ? rest.length : behind).join(' '));
  const kinds = rule ? exceptionKinds(rule).map(({ one }) => one) : ['object' as const];
  const things = kinds.map((kind): Slot => (kind === 'cue' ? { kind: 'cues', quoted: true } : names(kind)));
  return parts(
    then(
      [{ kind: 'rules' }],
      [{ kind: 'rules' }, words(things.length > 0 ? ['for', 'because'] : ['because'])],
    ),
    {
      for: (rest) => [...list(...things)(rest), ...(rest.length === 0 ? [] : [words(['because'])])],
      because: () => [],
    },
  )(rest);
}

/** A rule, how grave it is and where it begins to be broken, as far as it has a limit. */
function ruleSlots(rest: readonly string[]): readonly Slot[] {
  const { Severity } = choiceLists;
  const behind = rest.findIndex((word) => [',', ...Severity, 'limit'].includes(word));
  const name = rest.slice(0, behind < 0 ? rest.length : behind).join(' ');
  const rule = ruleById(name);
  const limit = words(rule && !rule.limit ? [] : ['limit']);
  return parts(then([{ kind: 'rules' }], [{ kind: 'rules' }, words(Severity), limit]), {
    ',': only(words(Severity), limit),
    warning: only(limit),
    hint: only(limit),
    limit: then([{ kind: 'limit', rule: name }], rule?.limit?.unit === 'degrees' ? [words(['degrees'])] : []),
  })(rest);
}

function isNumber(word: string | undefined): boolean {
  return word !== undefined && /^[\d.]/u.test(word);
}

function beginsItem(rest: readonly string[]): boolean {
  return rest.length === 0 || rest.at(-1) === ',' || rest.at(-1) === 'and';
}

function unquoted(sentence: string): string {
  return sentence.replace(/^["“]|["”]$/gu, '').replace(/\\(.)/gu, '$1');
}
