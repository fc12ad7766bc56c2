import { t } from '../../../grammar/index.js';
import type { Border } from '../../measure/borders/borders.js';
import type { Measures } from '../../measure/measures.js';
import type { Plan, PlanObject } from '../../plan/plan.js';
import { plainNumber } from '../../plan/problems.js';
import { every } from '../../plan/select.js';
import { addLine } from '../edits/edit.js';
import { stepEdit } from '../edits.js';
import type { Rule, RuleFinding } from '../finding.js';
import { exceeds } from '../limits.js';
import { repaintingOf } from '../advice/repainting.js';
import { toStep } from '../words/tones.js';
import { isPrincipal } from '../words/principals.js';
import { againstLimit, quoted } from '../words/words.js';

/** Steps apart from which on two areas are told from each other. */
const SAME_STEP = 0.5;
/** Of a firm edge: what is softer is meant to be lost. */
const FIRM = 0.7;
/** Part of the picture from which on an object matters without being a principal. */
const LARGE = 0.05;
/** Distance in CIELAB a*, b* from which on two colours differ at a glance. */
const CLEARLY_ANOTHER_COLOUR = 25;

interface Merged {
  readonly border: Border;
  readonly front: PlanObject;
  readonly behind: PlanObject;
}

export const mergedNeighbours: Rule = {
  id: 'merged neighbours',
  severity: 'hint',
  chapter: 'values',
  limit: { value: 0.15, unit: 'part', of: 'the diagonal' },
  perObject: true,
  mostTold: 3,
  summary: 'Two neighbours lie on the same value step along a border that is to be firm.',
  explanation:
    'Where two areas of one value meet, the edge between them is gone in black and white, and nearly gone in paint. That is a lost edge, and often a fine thing; but a plan that asks for a firm or hard edge there means something else. Only borders that matter count: of a principal object, or between two that are large.',
  formula:
    'steps less than 0.5 apart, border / diagonal > limit, the edge stated firm or hard, and one of the two dominant or secondary or both 5 % of the picture or more',
  source: 'common practice, no source',
  check: (plan, measures, limit) => {
    const merged: Merged[] = [];
    for (const border of measures.borders.borders) {
      // Longest first: in a large picture nearly all are shorter.
      if (!exceeds(border.length / plan.canvas.diagonal + NEARLY_ALIKE, limit)) break;
      const front = plan.objects[border.front];
      const behind = plan.objects[border.behind];
      if (!front || !behind || !isMerged(plan, border, limit, front.step, behind.step)) continue;
      if (matters(measures, front, behind)) merged.push({ border, front, behind });
    }
    return merged.map((pair) => finding(plan, measures, pair, limit));
  },
};

/** Part of the diagonal: of two borders whose lengths differ by less, the longer one may come second. */
const NEARLY_ALIKE = 1e-4;

/** Whether two areas would merge on these steps, although the plan says that their edge is to be seen. */
function isMerged(
  { canvas, objects }: Plan,
  { front, behind, length: along, sharpness }: Border,
  limit: number,
  stepInFront: number | undefined,
  stepBehind: number | undefined,
): boolean {
  if (stepInFront === undefined || stepBehind === undefined) return false;
  if (!exceeds(SAME_STEP, Math.abs(stepInFront - stepBehind))) return false;
  return exceeds(along / canvas.diagonal, limit) && sharpness >= FIRM && isStated(objects, front, behind);
}

/** Edges that nobody has decided on yet are firm in the drawing, but no intention. */
function isStated(objects: readonly PlanObject[], front: number, behind: number): boolean {
  const against = (one: number, other: number): boolean =>
    objects[one]?.edgesAgainst.some((edges) => edges.objects.includes(other)) ?? false;
  const children = objects[front]?.node.children ?? [];
  const general = every(children, 'edges').some(({ statement }) => statement.against.length === 0);
  return general || against(front, behind) || against(behind, front);
}

function matters({ objects }: Measures, front: PlanObject, behind: PlanObject): boolean {
  const both = [front, behind];
  return both.some(isPrincipal) || both.every(({ index }) => !exceeds(LARGE, objects[index]?.share ?? 0));
}

function finding(
  plan: Plan,
  measures: Measures,
  { border, front, behind }: Merged,
  limit: number,
): RuleFinding {
  const [one, other] = [quoted(front.name), quoted(behind.name)];
  const [step, otherStep] = [plainNumber(front.step ?? 0), plainNumber(behind.step ?? 0)];
  const { measured, wanted } = againstLimit(border.length / plan.canvas.diagonal, limit, plan.canvas);
  const isHard = border.sharpness > FIRM;
  const told = [one, other, measured, step, otherStep] as const;
  const where =
    front.step === behind.step
      ? isHard
        ? t('{0} and {1} are both on step {3} and meet along {2}, where the edge is to be hard.', ...told)
        : t('{0} and {1} are both on step {3} and meet along {2}, where the edge is to be firm.', ...told)
      : isHard
        ? t('{0} and {1} are on steps {3} and {4} and meet along {2}, where the edge is to be hard.', ...told)
        : t(
            '{0} and {1} are on steps {3} and {4} and meet along {2}, where the edge is to be firm.',
            ...told,
          );
  const merging =
    border.colourContrast > CLEARLY_ANOTHER_COLOUR
      ? t(
          'In black and white they merge there, and colour alone keeps them apart; up to {0} is let pass.',
          wanted,
        )
      : t('They merge there; up to {0} is let pass.', wanted);
  return {
    message: `${where} ${merging}`,
    remedy: () => advice(plan, measures, { border, front, behind }, limit),
    location: front.valueLocation ?? front.location,
    related: [
      {
        location: behind.valueLocation ?? behind.location,
        message: t('{0} is on step {1}.', other, otherStep),
      },
    ],
    objects: [front.index, behind.index],
  };
}

/** One of the two a step up or down, if that merges it with no other neighbour; else the edge lost. */
function advice(
  plan: Plan,
  measures: Measures,
  { front, behind }: Merged,
  limit: number,
): Pick<RuleFinding, 'advice' | 'fix'> {
  const change = repaintingOf(plan, measures).smallestChange(
    (_, { object, from, to }) =>
      Math.abs(to - from) === 1 &&
      !measures.borders.borders.some((border) => {
        if (border.front !== object && border.behind !== object) return false;
        const stepOf = (area: number) => (area === object ? to : plan.objects[area]?.step);
        return isMerged(plan, border, limit, stepOf(border.front), stepOf(border.behind));
      }),
    [front.index, behind.index],
  );
  const object = change && plan.objects[change.object];
  const lost = `lost against ${behind.name}`;
  if (change && object) {
    const { from, to } = change;
    const told = [quoted(object.name), to, lost, quoted(front.name)] as const;
    return {
      advice:
        to > from
          ? t('Take {0} one step up, to step {1}; or let the edge go, with `edges {2}` under {3}.', ...told)
          : t(
              'Take {0} one step down, to step {1}; or let the edge go, with `edges {2}` under {3}.',
              ...told,
            ),
      fix: { title: toStep(quoted(object.name), to), edits: stepEdit(object, to) },
    };
  }
  return {
    advice: t(
      'Let the edge go, with `edges {0}` under {1}: no step up or down of one of the two keeps everything else as it is planned.',
      lost,
      quoted(front.name),
    ),
    fix: {
      title: t('Lose the edge of {0}', quoted(front.name)),
      edits: [addLine(front.node, 'edges', lost)],
    },
  };
}
