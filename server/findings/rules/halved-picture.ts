import { t } from '../../../grammar/index.js';
import { divide } from '../../plan/division.js';
import type { Plan } from '../../plan/plan.js';
import { capitalised, inWords, plainNumber } from '../../plan/problems.js';
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
  const { message, advice } = told(plan, border, level, betterLevel(plan, level, limit), limit);
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
  const { message, advice, move } = told(plan, undefined, value, better, limit);
  const found = { message, location, at: { x: canvas.width / 2, y: value } };
  const words = better && levelWords(better.at / canvas.height);
  if (drawn.length > 0) {
    const borders = inWords(drawn.map(borderWords));
    const drawThere =
      words === undefined
        ? t('Draw {0} there.', borders)
        : t('Draw {0} there, and write `horizon {1}`.', borders, words);
    return {
      ...found,
      advice: `${advice} ${capitalised(drawThere)}`,
      related: drawn.map((border) => ({
        location: border.below.shapeLocation ?? border.below.location,
        message: t('{0} lies there.', capitalised(borderWords(border))),
      })),
      objects: [...new Set(drawn.flatMap(({ above, below }) => [above.index, below.index]))],
    };
  }
  if (words === undefined) return { ...found, advice };
  return { ...found, advice, fix: { title: move, edits: [replace(location, words)] } };
}

function borderWords({ above, below }: LevelBorder): string {
  return t('the border between {0} and {1}', quoted(above.name), quoted(below.name));
}

/**
 * What is said of a level that halves the picture, that of a border or of the horizon, and the better one as an order.
 */
function told(
  { canvas }: Plan,
  border: LevelBorder | undefined,
  level: number,
  better: Level | undefined,
  limit: number,
): { readonly message: string; readonly advice: string; readonly move: string } {
  const off = Math.abs(level / canvas.height - 1 / 2);
  const { measured, wanted } = againstLimit(off, limit, canvas, { size: canvas.height, name: 'the height' });
  const what = border ? capitalised(borderWords(border)) : t('The horizon');
  const fromTop = length(level, canvas);
  const message = exceeds(off, 0)
    ? t(
        '{0} lies only {1} off half height, {2} from the top, and cuts the picture in half; more than {3} off, it does not.',
        what,
        measured,
        fromTop,
        wanted,
      )
    : t(
        '{0} lies at half height, {1} from the top, and cuts the picture in half; more than {2} off, it does not.',
        what,
        fromTop,
        wanted,
      );
  if (!better) {
    const clear = longerThan(limit * canvas.height, canvas);
    return {
      message,
      advice: t('Raise or lower it until it is {0} or more off half height.', clear),
      move: t('Raise or lower the horizon until it is {0} or more off half height', clear),
    };
  }
  const at = length(better.at, canvas);
  const isRaised = better.at < level;
  return {
    message,
    advice: isRaised
      ? t('Raise it to {0} from the top, a level of {1}.', at, quoted(better.system))
      : t('Lower it to {0} from the top, a level of {1}.', at, quoted(better.system)),
    move: isRaised
      ? t('Raise the horizon to {0} from the top', at)
      : t('Lower the horizon to {0} from the top', at),
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
