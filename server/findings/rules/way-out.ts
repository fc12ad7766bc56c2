import type { Edges } from '../../../grammar/index.js';
import { GROUND } from '../../measure/borders/borders.js';
import { contrastOf, tintOf } from '../../measure/borders/contrast.js';
import { pullAtFocus } from '../../measure/eye-path/exits.js';
import { higherFirst, inSteps } from '../../measure/areas/place-order.js';
import type { Exit } from '../../measure/eye-path/eye-path.js';
import type { Plan } from '../../plan/plan.js';
import { inWords } from '../../plan/problems.js';
import { addLine } from '../edits/edit.js';
import { howStrongly } from '../words/emphasis.js';
import type { Rule, RuleFinding } from '../finding.js';
import { exceeds } from '../limits.js';
import { length, quoted } from '../words/words.js';

/** From the hardest that is softer than hard. */
const SOFTER: readonly Edges[] = ['firm', 'soft', 'lost'];

export const wayOut: Rule = {
  id: 'way out',
  severity: 'hint',
  chapter: 'eye path',
  perObject: true,
  summary: 'A strong border takes the eye out of the picture, and nothing stops it.',
  explanation:
    'The eye runs along a long straight contrast, and when that runs on over the edge of the picture the eye goes with it. It is told only of a border that is stronger than all that surrounds the focal point and among the strongest of the picture, and that nothing crosses on its way out. A horizon or the edge of a table, which goes out at both sides, divides the picture and is left alone. Painters soften such a border towards the edge, or set something across it.',
  formula:
    'straight within 15° for at least 15 % of the diagonal up to the edge, at more than 15° to it, leading away from the focal point; pull = sharpness x (0.6 dV / 10 + 0.4 dab / 100) greater than that of every border within 8 % of the diagonal of the focal point, and exceeded on at most 10 % of the length of all borders; no border of half its pull that turns from it by 30° or more within 8 % of the diagonal of where it leaves; no such border on one line with it at the opposite edge',
  source: 'common practice, no source',
  check: (plan, { eyePath, borders }) => {
    if (!plan.focus) return [];
    const atFocus = pullAtFocus(plan.canvas, plan.focus.at, borders.stretches);
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
  const [exit, ...others] = exits;
  const { at, areas, pull } = exit;
  const [front, behind] = areas;
  const names = areas.map((area) =>
    area === GROUND ? 'the bare ground' : quoted(plan.objects[area]?.name ?? ''),
  );
  const object = plan.objects[front] ?? plan.objects[behind];
  const out = placeOf(exit);
  const again = others.map(placeOf);
  const elsewhere = [...new Set(again)].filter((place) => place !== out);
  const twice = again.includes(out) ? ', more than once' : '';
  const also = elsewhere.length > 0 ? ` It does so at ${inWords(elsewhere)} too.` : '';
  return {
    message: `The border between ${names.join(' and ')} runs straight for ${length(exit.length, plan.canvas)} and out at ${out}${twice}; it pulls ${howStrongly(pull, atFocus)} as anything at the focal point, and nothing stops it.${also}`,
    ...softened(plan, exit, atFocus),
    location: object?.location ?? { line: 0, start: 0, end: 0 },
    at,
    objects: [front, behind].filter((area) => area !== GROUND),
  };
}

function placeOf({ side, corner }: Exit): string {
  return corner ? `the ${corner} corner` : `the ${side} edge`;
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
      advice: `Make its edges ${enough}: write ${quoted(`edges ${enough} against ${after.name}`)} under ${quoted(before.name)}.`,
      fix: {
        title: `Make the edges of ${quoted(before.name)} ${enough} against ${quoted(after.name)}`,
        edits: [addLine(before.node, 'edges', `${enough} against ${after.name}`)],
      },
    };
  }
  const object = before ?? after;
  return {
    advice: `Set something across it near the edge, at least half as strong, or bring ${quoted(object?.name ?? '')} nearer to its neighbour in value.`,
  };
}
