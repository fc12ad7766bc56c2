import { type Edges, t } from '../../../grammar/index.js';
import { type BorderMeasure, GROUND } from '../../measure/borders/borders.js';
import { SHARPNESS, edgesBetween } from '../../measure/borders/contrast.js';
import { centreOfInterest } from '../../measure/emphasis/centre.js';
import type { StrongPlace } from '../../measure/emphasis/emphasis.js';
import { type EmphasisTrial, tryEmphasis } from '../../measure/emphasis/trial.js';
import type { Measures } from '../../measure/measures.js';
import { fromMunsell } from '../../plan/colour/munsell.js';
import { atValue } from '../../plan/colour/painted.js';
import { stepValue } from '../../plan/colour/value.js';
import type { Plan, PlanObject } from '../../plan/plan.js';
import { plainNumber } from '../../plan/problems.js';
import { stepEdit } from '../edits.js';
import { edgesEdit } from '../edits/edges.js';
import type { RuleFinding } from '../finding.js';
import { edgesAgainst, edgesTold } from '../words/emphasis.js';
import { toStep } from '../words/tones.js';
import { repaintingOf } from './repainting.js';
import { quoted } from '../words/words.js';
import { areaName } from '../../measure/areas/area-words.js';

type Advice = Pick<RuleFinding, 'advice' | 'fix'>;

/** One thing that could be painted otherwise. */
export interface Change {
  readonly object: PlanObject;
  /** Tells it from other changes of the object. */
  readonly what: string;
  /** Of many that are tried one is told. */
  readonly tell: () => Required<Advice>;
}

const FROM_HARD: readonly Edges[] = ['hard', 'firm', 'soft', 'lost'];

/**
 * The smallest change after which a place no longer draws the eye too strongly: softer edges of the one border that
 * counts most there, softer edges of the object in front as a whole, or another step for it, each tried out. Nothing
 * when none of them does.
 *
 * @param what names the condition with what it depends on
 * @param mends whether the picture would be right; asked only of changes that weaken the place
 */
export function weakening(
  plan: Plan,
  measures: Measures,
  place: StrongPlace,
  what: string,
  mends: (trial: EmphasisTrial) => boolean,
): Advice | undefined {
  return firstThat(
    changes(plan, measures, place),
    plan,
    measures,
    `${what} ${place.areas.join(' ')}`,
    ({ object }, tried) => {
      const trial = tryEmphasis(tried, [object.index], measures);
      return trial.at(place.at) < place.strength && mends(trial);
    },
  );
}

const kept = new WeakMap<BorderMeasure, Map<string, number>>();

/**
 * The first change that passes a trial. Which one it is is kept as long as the borders of the picture are the same,
 * so that a finding that stands while other lines are typed costs nothing.
 *
 * @param what names the trial with all that it depends on besides the borders and the focal point
 */
export function firstThat(
  all: readonly Change[],
  plan: Plan,
  measures: Measures,
  what: string,
  passes: (change: Change, tried: Plan) => boolean,
): Advice | undefined {
  const known = kept.get(measures.borders) ?? new Map<string, number>();
  kept.set(measures.borders, known);
  const { focus, objects } = plan;
  const centre = [...centreOfInterest(plan, measures)];
  const tried = all.map((change) => `${change.object.index} ${change.what}`);
  const key = JSON.stringify([what, focus?.at, centre, tried]);
  const index =
    known.get(key) ??
    all.findIndex((change) =>
      passes(change, { ...plan, objects: objects.with(change.object.index, change.object) }),
    );
  known.set(key, index);
  return all[index]?.tell();
}

/** Smallest first. */
function changes(plan: Plan, measures: Measures, { areas }: StrongPlace): readonly Change[] {
  const [front, behind] = areas;
  const object = plan.objects[front];
  if (!object) return [];
  return [
    ...softerBorder(plan, object, behind),
    ...softerObject(plan, object, behind),
    ...otherSteps(plan, measures, object),
  ];
}

export function softerBorder(plan: Plan, object: PlanObject, behind: number): readonly Change[] {
  const other = plan.objects[behind];
  if (!other || behind === GROUND) return [];
  return softerThan(edgesBetween(plan, object.index, behind)).map((edges) => ({
    object: { ...object, edgesAgainst: [...object.edgesAgainst, { edges, objects: [behind] }] },
    what: `${edges} against ${behind}`,
    tell: () => ({
      advice: t('Write `edges {0} against {1}` under {2}.', edges, other.name, quoted(object.name)),
      fix: {
        title: edgesAgainst(quoted(object.name), edges, quoted(other.name)),
        edits: edgesEdit(object, edges, other),
      },
    }),
  }));
}

export function softerObject(plan: Plan, object: PlanObject, behind: number): readonly Change[] {
  return softerThan(object.edges).flatMap((edges): readonly Change[] => {
    const changed = { ...object, edges };
    // What is said of this border alone stands before what is said of all.
    const after = edgesBetween(
      { ...plan, objects: plan.objects.with(object.index, changed) },
      object.index,
      behind,
    );
    if (after !== edges) return [];
    return [otherEdges(object, edges)];
  });
}

/** An object with other edges all round. */
export function otherEdges(object: PlanObject, edges: Edges): Change {
  return {
    object: { ...object, edges },
    what: edges,
    tell: () => {
      const title = edgesTold(quoted(object.name), edges);
      return { advice: `${title}.`, fix: { title, edits: edgesEdit(object, edges) } };
    },
  };
}

/** Hardest first. */
export function softerThan(edges: Edges): readonly Edges[] {
  return FROM_HARD.filter((other) => SHARPNESS[other] < SHARPNESS[edges]);
}

/** Steps no further than a quarter of the scale, nearest first, that break no intention about light and dark. */
export function otherSteps(
  plan: Plan,
  measures: Measures,
  object: PlanObject,
  way: 'nearer to' | 'farther from' = 'nearer to',
): readonly Change[] {
  const { steps } = plan.scale;
  if (object.step === undefined) return [];
  const from = Math.round(object.step);
  const repainting = repaintingOf(plan, measures);
  const furthest = Math.max(1, Math.round(steps / 4));
  const ways = Array.from({ length: furthest }, (_, index) => index + 1).flatMap((far) => [
    from - far,
    from + far,
  ]);
  return ways
    .filter((to) => to >= 1 && to <= steps)
    .filter((to) => repainting.breaksNothing(repainting.after({ object: object.index, from, to })))
    .map((to) => ({
      object: onStep(object, to, steps),
      what: `${way} ${to}`,
      tell: () => ({
        advice: otherStepWords(quoted(object.name), plainNumber(object.step ?? from), to, way),
        fix: { title: toStep(quoted(object.name), to), edits: stepEdit(object, to) },
      }),
    }));
}

function otherStepWords(name: string, from: string, to: number, way: 'nearer to' | 'farther from'): string {
  switch (way) {
    case 'nearer to':
      return t('Take {0} from step {1} to step {2}, nearer to what is round it.', name, from, to);
    case 'farther from':
      return t('Take {0} from step {1} to step {2}, farther from what is round it.', name, from, to);
  }
}

function onStep(object: PlanObject, step: number, steps: number): PlanObject {
  const value = stepValue(step, steps);
  const painted = object.colour
    ? atValue(object.colour.colour, value).shown
    : fromMunsell(undefined, value, 0);
  return { ...object, step, value, painted };
}

/** What to say where nothing of one object mends it: how far the strength would have to fall. */
export function noSingleChange(plan: Plan, { areas, strength }: StrongPlace, limit: number): string {
  const fall = Math.ceil(100 * (1 - limit / strength));
  return t(
    'No softer edge or other step of {0} alone does it: it takes {1} % less contrast there, or as much more at the focal point.',
    areaName(plan, areas[0]),
    fall,
  );
}
