import { type Edges, t } from '../../../grammar/index.js';
import { areaName } from '../../measure/areas/area-words.js';
import { GROUND } from '../../measure/borders/borders.js';
import { contrastOf, tintOf } from '../../measure/borders/contrast.js';
import { pullAtFocus } from '../../measure/eye-path/pulls.js';
import { higherFirst, inSteps } from '../../measure/areas/place-order.js';
import type { Exit } from '../../measure/eye-path/eye-path.js';
import { distance } from '../../plan/geometry/point.js';
import type { Plan } from '../../plan/plan.js';
import { capitalised, inWords } from '../../plan/problems.js';
import { addLine } from '../edits/edit.js';
import { edgesAgainst, howStrongly } from '../words/emphasis.js';
import type { Rule, RuleFinding } from '../finding.js';
import { exceeds } from '../limits.js';
import { atCorner, atEdge } from '../words/sides.js';
import { counted, length, quoted } from '../words/words.js';

/** Degrees by which the sides of a thing that narrows may turn from each other. */
const SAME_WAY = 30;
/** From the hardest that is softer than hard. */
const SOFTER: readonly Exclude<Edges, 'hard'>[] = ['firm', 'soft', 'lost'];

export const wayOut: Rule = {
  id: 'way out',
  severity: 'hint',
  chapter: 'eye path',
  perObject: true,
  summary: 'A strong border takes the eye out of the picture, and nothing stops it.',
  explanation:
    'The eye runs along a long straight contrast, and when that runs on over the edge of the picture the eye goes with it. It is told only of a border that is stronger than all that surrounds the focal point and among the strongest of the picture, and that nothing crosses on its way out. A border that is only as strong is not told, for steps are few and many borders are alike. A horizon or the edge of a table, which goes out at both sides, divides the picture and is left alone. The two long sides of a plank or a path go out together and are told as one. Painters soften such a border towards the edge, or set something across it.',
  formula:
    'straight within 15° for at least 15 % of the diagonal up to the edge, at more than 15° to it, leading away from the focal point; pull = sharpness x (0.6 dV / 10 + 0.4 dab / 100) greater than that of every border within 8 % of the diagonal of the focal point, and exceeded on at most 10 % of the length of all borders; no border of half its pull that turns from it by 30° or more within 8 % of the diagonal of where it leaves; no such border on one line with it at the opposite edge',
  source: 'common practice, no source',
  check: (plan, { eyePath, borders }) => {
    if (!plan.focus) return [];
    const atFocus = pullAtFocus(plan.canvas, plan.focus.at, borders.byFront);
    return byBorder(eyePath.exits)
      .toSorted(
        ([one], [other]) =>
          inSteps(other.pull, 1) - inSteps(one.pull, 1) ||
          inSteps(other.length, plan.canvas.diagonal) - inSteps(one.length, plan.canvas.diagonal) ||
          higherFirst(plan.canvas)(one.at, other.at),
      )
      .map((exits) => told(plan, exits, atFocus));
  },
};

/** Where one border leaves the picture, the strongest first. */
type Exits = readonly [Exit, ...Exit[]];

function byBorder(exits: readonly Exit[]): readonly Exits[] {
  const borders = new Map<string, Exits>();
  for (const exit of exits) {
    const border = exit.areas.join(' ');
    const earlier = borders.get(border);
    borders.set(border, earlier ? [...earlier, exit] : [exit]);
  }
  return [...borders.values()];
}

function told(plan: Plan, exits: Exits, atFocus: number): RuleFinding {
  const [exit] = exits;
  const { at, areas, pull } = exit;
  const [front, behind] = areas;
  const names = inWords(areas.map((area) => areaName(plan, area)));
  const object = plan.objects[front] ?? plan.objects[behind];
  const strips = inStrips(plan, exits);
  const [first, ...others] = strips.map(placeOfStrip);
  const borders = strips[0]?.length ?? 1;
  const elsewhere = [...new Set(others)].filter((place) => place !== first);
  const told = [
    names,
    length(exit.length, plan.canvas),
    others.includes(first ?? '') ? t('{0}, more than once', first ?? '') : (first ?? ''),
    howStrongly(pull, atFocus),
  ] as const;
  const isStrip = borders > 1;
  const also =
    elsewhere.length === 0
      ? ''
      : ` ${isStrip ? t('They do so {0} too.', inWords(elsewhere)) : t('It does so {0} too.', inWords(elsewhere))}`;
  return {
    message:
      (isStrip
        ? t(
            '{4} borders between {0} run side by side, straight for {1}, and out {2}; they pull {3} as anything at the focal point, and nothing stops them.',
            ...told,
            capitalised(counted(borders)),
          )
        : t(
            'The border between {0} runs straight for {1} and out {2}; it pulls {3} as anything at the focal point, and nothing stops it.',
            ...told,
          )) + also,
    ...softened(plan, exit, atFocus),
    location: object?.location ?? { line: 0, start: 0, end: 0 },
    at,
    objects: [front, behind].filter((area) => area !== GROUND),
  };
}

/** Where the sides of one plank or path leave the picture together, each once, in the order of the exits. */
function inStrips(plan: Plan, exits: Exits): readonly Exits[] {
  const strips: Exits[] = [];
  for (const exit of exits) {
    const at = strips.findIndex((strip) => strip.some((other) => areOneStrip(plan, exit, other)));
    const strip = strips[at];
    if (strip) strips[at] = [...strip, exit];
    else strips.push([exit]);
  }
  return strips;
}

/** Whether two ways out are the sides of one thing: they go the same way, and are longer than it is wide. */
function areOneStrip({ canvas }: Plan, one: Exit, other: Exit): boolean {
  const turn = Math.abs(((one.heading - other.heading + 540) % 360) - 180);
  const wide = distance(one.at, other.at);
  return (
    !exceeds(turn, SAME_WAY) &&
    !exceeds(wide / canvas.diagonal, Math.min(one.length, other.length) / canvas.diagonal)
  );
}

/** At an edge, though one side is near a corner; round a corner, at the corner between. */
function placeOfStrip(strip: Exits): string {
  const [exit, ...others] = strip;
  if (others.length === 0) return exit.corner ? atCorner(exit.corner) : atEdge(exit.side);
  const sides = strip.map(({ side }) => side);
  const level = sides.includes('top') ? 'upper' : sides.includes('bottom') ? 'lower' : undefined;
  const upright = sides.find((side) => side === 'left' || side === 'right');
  return level && upright ? atCorner(`${level} ${upright}`) : atEdge(exit.side);
}

/** The hardest edges with which the border pulls no more than what is at the focal point. */
function softened(
  plan: Plan,
  { areas: [front, behind] }: Exit,
  atFocus: number,
): Pick<RuleFinding, 'advice' | 'fix'> {
  const [before, after] = [plan.objects[front], plan.objects[behind]];
  const [one, other] = [tintOf(plan, front), tintOf(plan, behind)];
  const enough = SOFTER.find((edges) => !exceeds(contrastOf(one, other, edges).pull, atFocus));
  if (enough && before && after) {
    return {
      advice: softer(enough, after.name, quoted(before.name)),
      fix: {
        title: edgesAgainst(quoted(before.name), enough, quoted(after.name)),
        edits: [addLine(before.node, 'edges', `${enough} against ${after.name}`)],
      },
    };
  }
  const object = before ?? after;
  return {
    advice: t(
      'Set something across it near the edge, at least half as strong, or bring {0} nearer to its neighbour in value.',
      quoted(object?.name ?? ''),
    ),
  };
}

function softer(edges: Exclude<Edges, 'hard'>, other: string, name: string): string {
  switch (edges) {
    case 'firm':
      return t('Make its edges firm: write `edges firm against {0}` under {1}.', other, name);
    case 'soft':
      return t('Make its edges soft: write `edges soft against {0}` under {1}.', other, name);
    case 'lost':
      return t('Make its edges lost: write `edges lost against {0}` under {1}.', other, name);
  }
}
