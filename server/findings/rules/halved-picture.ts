import { divide } from '../../plan/division.js';
import type { Plan } from '../../plan/plan.js';
import { inWords, plainNumber } from '../../plan/problems.js';
import { replace } from '../edits/edit.js';
import type { Rule, RuleFinding } from '../finding.js';
import { type LevelBorder, levelBorders } from '../seen/level-border.js';
import { exceeds } from '../limits.js';
import { againstLimit, length, longerThan, quoted } from '../words/words.js';

export const halvedPicture: Rule = {
  id: 'halved picture',
  severity: 'hint',
  chapter: 'division',
  limit: { value: 0.03, unit: 'part', of: 'the height, from its middle' },
  perObject: true,
  summary: 'The horizon, or another level border, cuts the picture in half.',
  explanation:
    'A horizon at half height makes two pictures of one size: sky and ground contend, and neither leads. A little higher or lower, one of them has the picture. So does every border between two objects of the background that runs level from side to side, whatever horizon is stated. Where both lie at one height, they are told once.',
  formula:
    '|height of the horizon or of a level border / height of the canvas - 1/2| <= limit; both lie at one height within 1 % of it',
  source:
    'H. R. Poore, Pictorial Composition (1903), on the weakness of what lies equally far from two sides; the limit is common practice',
  check: (plan, measures, limit) => {
    const { horizon, canvas } = plan;
    const halves = levelBorders(
      plan,
      measures,
      (1 / 2 - limit) * canvas.height,
      (1 / 2 + limit) * canvas.height,
    );
    const isHalf = horizon && !exceeds(Math.abs(horizon.value / canvas.height - 1 / 2), limit);
    const drawn = isHalf ? halves.filter(({ level }) => isAt(plan, level, horizon.value)) : [];
    return [
      ...(isHalf ? [ofHorizon(plan, horizon, drawn, limit)] : []),
      ...halves.filter((border) => !drawn.includes(border)).map((border) => ofBorder(plan, border, limit)),
    ];
  },
};

/** Part of the height within which a border is drawn where the horizon is stated. */
const ONE_HEIGHT = 0.01;

function isAt({ canvas }: Plan, level: number, horizon: number): boolean {
  return !exceeds(Math.abs(level - horizon) / canvas.height, ONE_HEIGHT);
}

function ofBorder(plan: Plan, border: LevelBorder, limit: number): RuleFinding {
  const { level, above, below } = border;
  const what = `The ${borderWords(border)}`;
  const { message, advice } = told(plan, what, level, betterLevel(plan, level, limit), limit);
  return {
    message,
    advice,
    location: below.shapeLocation ?? below.location,
    at: { x: plan.canvas.width / 2, y: level },
    objects: [above.index, below.index],
  };
}

/** With the borders that are drawn there: then the line of the plan alone mends nothing. */
function ofHorizon(
  plan: Plan,
  { value, location }: NonNullable<Plan['horizon']>,
  drawn: readonly LevelBorder[],
  limit: number,
): RuleFinding {
  const { canvas } = plan;
  const better = betterLevel(plan, value, limit);
  const { message, advice, move } = told(plan, 'The horizon', value, better, limit);
  const found = { message, location, at: { x: canvas.width / 2, y: value } };
  const words = better && levelWords(better.at / canvas.height);
  if (drawn.length > 0) {
    const written = words === undefined ? '' : `, and write ${quoted(`horizon ${words}`)}`;
    return {
      ...found,
      advice: `${advice} Draw the ${inWords(drawn.map(borderWords))} there${written}.`,
      related: drawn.map((border) => ({
        location: border.below.shapeLocation ?? border.below.location,
        message: `The ${borderWords(border)} lies there.`,
      })),
      objects: [...new Set(drawn.flatMap(({ above, below }) => [above.index, below.index]))],
    };
  }
  if (words === undefined) return { ...found, advice };
  return { ...found, advice, fix: { title: move, edits: [replace(location, words)] } };
}

function borderWords({ above, below }: LevelBorder): string {
  return `border between ${quoted(above.name)} and ${quoted(below.name)}`;
}

/** What is said of a level that halves the picture, and the better one as an order. */
function told(
  { canvas }: Plan,
  what: string,
  level: number,
  better: Level | undefined,
  limit: number,
): { readonly message: string; readonly advice: string; readonly move: string } {
  const off = Math.abs(level / canvas.height - 1 / 2);
  const { measured, wanted } = againstLimit(off, limit, canvas, { size: canvas.height, name: 'the height' });
  const where = exceeds(off, 0) ? `only ${measured} off half height` : 'at half height';
  const to = better
    ? `${better.at < level ? 'Raise' : 'Lower'} it to ${length(better.at, canvas)} from the top`
    : `Raise or lower it until it is ${longerThan(limit * canvas.height, canvas)} or more off half height`;
  return {
    message: `${what} lies ${where}, ${length(level, canvas)} from the top, and cuts the picture in half; more than ${wanted} off, it does not.`,
    advice: better ? `${to}, a level of ${quoted(better.system)}.` : `${to}.`,
    move: to.replace(' it ', ' the horizon '),
  };
}

interface Level {
  readonly system: string;
  /** Canvas units from the top. */
  readonly at: number;
}

/**
 * The level of the plan's divisions nearest to the horizon that does not halve the picture; of the golden section
 * when they have none. Of two as near, the one that leaves more room to the part in which the focal point lies, and
 * without one the lower, for a large sky.
 */
function betterLevel(plan: Plan, horizon: number, limit: number): Level | undefined {
  const { canvas, divisions, focus } = plan;
  const levels = [...divisions, { system: 'golden' as const, ...divide(canvas, 'golden') }].map(
    ({ system, lines }) =>
      lines
        .filter(({ from, to }) => from.y === to.y && from.y > 0 && from.y < canvas.height)
        .map(({ from }): Level => ({ system, at: from.y }))
        .filter(({ at }) => exceeds(Math.abs(at / canvas.height - 1 / 2), limit)),
  );
  const stated = levels.slice(0, -1).flat();
  const candidates = stated.length > 0 ? stated : (levels.at(-1) ?? []);
  const rises = focus !== undefined && focus.at.y > horizon;
  const rank = ({ at }: Level): number => Math.abs(at - horizon) / canvas.height;
  return [...candidates].sort((one, other) => {
    const nearer = rank(one) - rank(other);
    if (Math.abs(nearer) > TIE) return nearer;
    return rises ? one.at - other.at : other.at - one.at;
  })[0];
}

/** Distances that differ less are alike; part of the height. */
const TIE = 1e-9;
/** Denominators that a painter writes. */
const DENOMINATORS = [3, 4, 5];

/** A part of the height as a plan says it: `2/3`, `38.2%`. */
function levelWords(part: number): string {
  const denominator = DENOMINATORS.find((below) => Math.abs(Math.round(part * below) - part * below) < TIE);
  return denominator === undefined
    ? `${plainNumber(part * 100, 1)}%`
    : `${Math.round(part * denominator)}/${denominator}`;
}
