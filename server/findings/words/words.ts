import { marked, said, t } from '../../../grammar/index.js';
import { placeHere } from '../../plan/based-on/here.js';
import { inWords, plainNumber } from '../../plan/problems.js';
import type { Canvas, OwnLocation, Plan } from '../../plan/plan.js';
import type { ObjectShare } from '../../measure/objects/objects.js';
import type { RuleLimit } from '../finding.js';
import { exceeds } from '../limits.js';

const MOST_DECIMALS = 6;

/** A share as a painter reads it: `34 %`, `4.5 %`; what is there but rounds to nothing is `under 0.1 %`. */
export function percent(share: number): string {
  const rounded = plainNumber(share * 100, 1);
  return rounded === '0' && share > 0 ? t('under 0.1 %') : `${rounded} %`;
}

/** Two parts of the picture: `6.8 % and 6.5 % of the picture`, or `5.3 % of the picture each` when they read alike. */
export function bothShares(one: number, other: number): string {
  const [first, second] = [percent(one), percent(other)];
  return first === second
    ? t('{0} of the picture each', first)
    : t('{0} and {1} of the picture', first, second);
}

/** Two shares of which one is the greater, with as many places as it takes to see that it is. */
export function sharesApart(one: number, other: number): readonly [string, string] {
  const told = [percent(one), percent(other)] as const;
  if (told[0] !== told[1]) return told;
  for (let decimals = 2; decimals <= MOST_DECIMALS; decimals++) {
    const [finer, against] = [plainNumber(one * 100, decimals), plainNumber(other * 100, decimals)];
    if (finer !== against) return [`${finer} %`, `${against} %`];
  }
  return told;
}

/** Parts of the picture are told to it. */
const LEAST = 0.001;

/** A share that is asked for, told so that it is enough: in tenths of a percent, one at least. */
export function enoughPercent(share: number): string {
  return percent(Math.max(1, Math.ceil(share / LEAST - 1e-6)) * LEAST);
}

/** A share that lies outside a tolerance, with as many places as it takes to see that it does. */
export function percentOutside(share: number, target: number, tolerance: number): string {
  for (let decimals = 1; decimals <= MOST_DECIMALS; decimals++) {
    const rounded = Number((share * 100).toFixed(decimals)) / 100;
    if (!exceeds(Math.abs(rounded - target), tolerance)) continue;
    return decimals === 1 ? percent(share) : `${plainNumber(share * 100, decimals)} %`;
  }
  return percent(share);
}

/** `twice`, `2.9 times`; with two places where one would not show that it is beyond the limit. */
export function timesAbove(times: number, limit: number): string {
  const told = plainNumber(times, exceeds(Number(plainNumber(times, 1)), limit) ? 1 : 2);
  return told === '2' ? t('twice') : t('{0} times', told);
}

/** A limit as a plan states it: `5%`, `40 degrees`, `2`. */
export function limitForm({ value, unit }: Pick<RuleLimit, 'value' | 'unit'>): string {
  switch (unit) {
    case 'part':
      return `${plainNumber(value * 100)}%`;
    case 'degrees':
      return `${plainNumber(value)} degrees`;
    case 'number':
      return plainNumber(value);
  }
}

/** A limit as a painter reads it, with what it is of: `5 % of the diagonal`, `30 degrees between the two hues`. */
export function limitInWords(limit: RuleLimit): string {
  switch (limit.unit) {
    case 'part':
      return said(`{0} of ${limit.of}`, percent(limit.value));
    case 'degrees':
      return said(`{0} ${limit.of}`, t('{0} degrees', plainNumber(limit.value)));
    case 'number':
      return said(`{0} ${limit.of}`, plainNumber(limit.value));
  }
}

/** A length on the canvas with its unit, no finer than about a millimetre on a rule: `3.2 cm`, `447 mm`, `0.35 in`. */
export function length(canvasUnits: number, canvas: Pick<Canvas, 'unit'>): string {
  return `${plainNumber(canvasUnits, decimalsFor(canvasUnits, canvas))} ${canvas.unit}`;
}

/** The shortest length that is told and is longer than a given one. */
export function longerThan(canvasUnits: number, canvas: Pick<Canvas, 'unit'>): string {
  const steps = 10 ** decimalsFor(canvasUnits, canvas);
  return length((Math.floor(canvasUnits * steps + ON_A_STEP) + 1) / steps, canvas);
}

/** Part of a step by which rounding may miss it. */
const ON_A_STEP = 1e-6;

function decimalsFor(canvasUnits: number, { unit }: Pick<Canvas, 'unit'>): number {
  const size = Math.abs(canvasUnits);
  switch (unit) {
    case 'mm':
      return size < 10 ? 1 : 0;
    case 'cm':
      return 1;
    case 'm':
      return size < 0.1 ? 3 : 2;
    case 'in':
      return size < 1 ? 2 : 1;
  }
}

/**
 * A length as measured and the one it is held against, each as a part of the diagonal: `36.8 cm` and
 * `5.6 cm (5 % of the diagonal)`; the first with as many places as it takes to see on which side of the other it lies.
 */
export function againstLimit(
  share: number,
  limit: number,
  canvas: Pick<Canvas, 'unit' | 'diagonal'>,
  whole: Whole = { size: canvas.diagonal, name: 'the diagonal' },
): {
  readonly measured: string;
  readonly wanted: string;
  /** What is measured rounds to no length at all. */
  readonly isNothing: boolean;
} {
  const [measured, wanted] = apart(share * whole.size, limit * whole.size, canvas);
  return {
    measured,
    isNothing: measured === length(0, canvas),
    wanted: lengthAndPart(wanted, percent(limit), whole),
  };
}

/** What a length is a part of. */
interface Whole {
  /** Canvas units. */
  readonly size: number;
  readonly name: 'the diagonal' | 'the height' | 'the width';
}

function lengthAndPart(told: string, part: string, { name }: Whole): string {
  switch (name) {
    case 'the diagonal':
      return t('{0} ({1} of the diagonal)', told, part);
    case 'the height':
      return t('{0} ({1} of the height)', told, part);
    case 'the width':
      return t('{0} ({1} of the width)', told, part);
  }
}

function apart(one: number, other: number, canvas: Pick<Canvas, 'unit'>): readonly [string, string] {
  const told = [length(one, canvas), length(other, canvas)] as const;
  if (told[0] !== told[1]) return told;
  for (let decimals = 1; decimals <= MOST_DECIMALS; decimals++) {
    const [finer, against] = [plainNumber(one, decimals), plainNumber(other, decimals)];
    if (finer !== against) return [`${finer} ${canvas.unit}`, `${against} ${canvas.unit}`];
  }
  return told;
}

/** What a sentence is about, and whether it goes on as of many: `the lights`, `the complement`. */
export interface Subject {
  readonly words: string;
  readonly many: boolean;
}

export function quoted(name: string): string {
  return `\`${name}\``;
}

/** The name of an object as it stands in the text. */
export function objectName({ objects }: Pick<Plan, 'objects'>, index: number): string {
  return quoted(objects[index]?.name ?? '');
}

/** `snow` (21 %) */
export function objectShare(plan: Plan, { object, share }: ObjectShare): string {
  return `${objectName(plan, object)} (${percent(share)})`;
}

const NUMBERS = [
  marked('none'),
  marked('one'),
  marked('two'),
  marked('three'),
  marked('four'),
  marked('five'),
  marked('six'),
  marked('seven'),
  marked('eight'),
  marked('nine'),
  marked('ten'),
  marked('eleven'),
  marked('twelve'),
];

/** A small number as it is said: `three`; from thirteen on in figures. */
export function counted(count: number): string {
  return said(NUMBERS[count] ?? String(count));
}

/** The first of some names or the like, and how many more there are: `a`, `b` and two more. */
export function someOf(items: readonly string[], most: number): string {
  const more = items.length - most;
  return inWords(more > 0 ? [...items.slice(0, most), andMore(more)] : items);
}

/** `one`, `one or another` */
export function eitherOf(items: readonly string[]): string {
  return items.reduce((one, other) => t('{0} or {1}', one, other));
}

function andMore(count: number): string {
  return count === 1 ? t('one more') : t('{0} more', counted(count));
}

/**
 * Where to tell what concerns the plan as a whole, in its own text: at its title, its canvas or its first line, or
 * where it says what it is based on when those stand there.
 */
export function heading(plan: Plan): OwnLocation {
  return placeHere(plan, plan.title?.location ?? plan.canvas.location ?? { line: 0, start: 0, end: 0 });
}
