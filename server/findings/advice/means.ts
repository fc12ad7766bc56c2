import { t } from '../../../grammar/index.js';
import { contrastBetween } from '../../measure/borders/contrast.js';
import type { BorderMeasure, BorderStretch } from '../../measure/borders/borders.js';
import { type Centre, centreOfInterest } from '../../measure/emphasis/centre.js';
import { tryContrast, triedStretches } from '../../measure/emphasis/trial.js';
import { type MeansMeasure, isQuiet } from '../../measure/emphasis/means.js';
import { bustleRound, detailRound, isInRing, type SeenPart } from '../../measure/emphasis/means-round.js';
import { sharpnessRound } from '../../measure/emphasis/means-sharpness.js';
import type { Measures } from '../../measure/measures.js';
import { distance } from '../../plan/geometry/point.js';
import type { Plan, PlanObject } from '../../plan/plan.js';
import { plainNumber } from '../../plan/problems.js';
import { detailEdit } from '../edits/edges.js';
import {
  type Change,
  firstThat,
  otherEdges,
  otherSteps,
  softerBorder,
  softerObject,
  softerThan,
} from './emphasis.js';
import type { RuleFinding } from '../finding.js';
import { exceeds } from '../limits.js';
import { quoted } from '../words/words.js';
import { meeting } from '../../measure/areas/area-words.js';

type Advice = Pick<RuleFinding, 'advice' | 'fix'>;

/** Part by which a place elsewhere may be stronger in value or colour. */
const TENTH = 0.1;
const MOST_TRIED = 5;

/** One thing to try so that the focal point has one of the means by which it is to win. */
export function meansAdvice(plan: Plan, measures: Measures, measure: MeansMeasure): Advice {
  switch (measure.means) {
    case 'value':
      return contrastAdvice('value', plan, measures, measure);
    case 'colour':
      return contrastAdvice('colour', plan, measures, measure);
    case 'edges':
      return edgesAdvice(plan, measures, measure);
    case 'detail':
      return detailAdvice(plan, measures, measure);
    case 'scale':
      return scaleAdvice(plan, measures, measure);
    case 'isolation':
      return isolationAdvice(plan, measures);
  }
}

function centreObjects(plan: Plan, measures: Measures): readonly PlanObject[] {
  return objectsOf(plan, centreOfInterest(plan, measures));
}

function objectsOf({ objects }: Plan, centre: Centre): readonly PlanObject[] {
  return [...centre.keys()].flatMap((index) => objects[index] ?? []);
}

/**
 * For value another step for the object at the focal point; else softer edges where the strongest contrast elsewhere
 * is, or for value another step for what lies in front there.
 */
function contrastAdvice(
  of: 'value' | 'colour',
  plan: Plan,
  measures: Measures,
  measure: MeansMeasure,
): Advice {
  const [front, behind] = measure.areas ?? [];
  const other = front === undefined ? undefined : plan.objects[front];
  const steps = (object: PlanObject | undefined, way?: 'farther from') =>
    of === 'value' && object ? otherSteps(plan, measures, object, way) : [];
  const changes = [
    ...steps(centreObjects(plan, measures)[0], 'farther from'),
    ...(other && behind !== undefined
      ? [...softerBorder(plan, other, behind), ...softerObject(plan, other, behind)]
      : []),
    ...steps(other),
  ];
  const found = firstThat(changes, plan, measures, `means ${of}`, ({ object }, tried) => {
    const { there, elsewhere } = tryContrast(of, tried, [object.index], measures);
    const most = there * (1 + TENTH);
    return there > 0 && !exceeds(elsewhere(most), most);
  });
  return found ?? { advice: moreContrast(of, measure) };
}

function moreContrast(of: 'value' | 'colour', { there, elsewhere }: MeansMeasure): string {
  if (there === 0)
    return of === 'value'
      ? t('Set what lies there off from what is behind it in value.')
      : t('Set what lies there off from what is behind it in colour.');
  const more = Math.ceil(100 * (elsewhere / (1 + TENTH) / there - 1));
  const less = Math.ceil(100 * (1 - ((1 + TENTH) * there) / elsewhere));
  return of === 'value'
    ? t(
        'It takes {0} % more contrast of value there, by longer or harder borders or a greater difference, or {1} % less at the other place.',
        more,
        less,
      )
    : t(
        'It takes {0} % more contrast of colour there, by longer or harder borders or a greater difference, or {1} % less at the other place.',
        more,
        less,
      );
}

/** Hard edges for an object at the focal point, or softer ones for what has most of the other borders. */
function edgesAdvice(plan: Plan, measures: Measures, { there, elsewhere }: MeansMeasure): Advice {
  const own = centreOfInterest(plan, measures);
  const centre = objectsOf(plan, own);
  const changes = [
    ...centre.filter(({ edges }) => edges !== 'hard').map((object) => otherEdges(object, 'hard')),
    ...longestBordered(measures.borders)
      .filter((index) => !centre.some((object) => object.index === index))
      .flatMap((index) => plan.objects[index] ?? [])
      .flatMap((object) => softerThan(object.edges).map((edges) => otherEdges(object, edges))),
  ];
  const found = firstThat(changes, plan, measures, 'means edges', ({ object }, tried) => {
    const after = sharpnessRound(tried, measures.borders, own, object.index);
    return exceeds(after.there, after.elsewhere);
  });
  if (found) return found;
  return {
    advice:
      there === 0
        ? t('Set what lies there off from what is behind it, with hard edges.')
        : t(
            'Sharpen what lies there beyond {0} on the whole, or soften more than one object elsewhere.',
            plainNumber(elsewhere),
          ),
  };
}

/** The objects in front of the longest borders, the longest first. */
function longestBordered({ borders }: BorderMeasure): readonly number[] {
  return [...new Set(borders.filter(({ pull }) => pull > 0).map(({ front }) => front))].slice(0, MOST_TRIED);
}

/** Fine detail for the object there, or little for what else is seen round the focal point, or elsewhere. */
function detailAdvice(plan: Plan, measures: Measures, { elsewhere }: MeansMeasure): Advice {
  const seenThere = measures.emphasis.focal?.seenThere ?? [];
  const shares = measures.objects.map(({ share }) => share);
  const changes = detailChanges(plan, measures, seenThere);
  const key = `means detail ${JSON.stringify(plan.objects.map(({ detail }) => detail))}`;
  const found = firstThat(changes, plan, measures, key, (_, tried) => {
    const after = detailRound(tried, seenThere, shares);
    return exceeds(after.there, after.elsewhere);
  });
  return (
    found ?? {
      advice: t(
        'Bring the detail there above {0} on the whole: no other detail of one object alone does it.',
        plainNumber(elsewhere),
      ),
    }
  );
}

function detailChanges(plan: Plan, measures: Measures, seenThere: readonly SeenPart[]): readonly Change[] {
  const change = (object: PlanObject, detail: 'fine' | 'little'): Change => ({
    object: { ...object, detail },
    what: detail,
    tell: () => {
      const name = quoted(object.name);
      return {
        advice:
          detail === 'fine' ? t('Paint {0} in fine detail.', name) : t('Leave {0} with little detail.', name),
        fix: { title: detailTitle(name, detail), edits: detailEdit(object, detail) },
      };
    },
  });
  const there = [
    ...centreObjects(plan, measures),
    ...seenThere.flatMap(({ area }) => plan.objects[area] ?? []),
  ];
  const areasThere = new Set(seenThere.map(({ area }) => area));
  const elsewhere = plan.objects
    .filter(({ index }) => !areasThere.has(index))
    .toSorted(
      (one, other) => (measures.objects[other.index]?.share ?? 0) - (measures.objects[one.index]?.share ?? 0),
    );
  return [
    ...there.filter(({ detail }) => detail !== 'fine').map((object) => change(object, 'fine')),
    ...elsewhere.filter(({ detail }) => detail !== 'little').map((object) => change(object, 'little')),
  ];
}

function detailTitle(name: string, detail: 'fine' | 'little'): string {
  switch (detail) {
    case 'fine':
      return t('Give {0} fine detail', name);
    case 'little':
      return t('Give {0} little detail', name);
  }
}

function scaleAdvice(plan: Plan, measures: Measures, { there, elsewhere }: MeansMeasure): Advice {
  const [object] = centreObjects(plan, measures);
  if (!object || there === 0) return { advice: t('Set the dominant object at the focal point.') };
  const times = plainNumber(Math.sqrt(elsewhere / there) + 0.005, 2);
  return {
    advice: t(
      'To be the largest, {0} has to be {1} times as wide and as high, or the other that much smaller.',
      quoted(object.name),
      times,
    ),
  };
}

/** Softer edges of the border that makes most of the ring busy. */
function isolationAdvice(plan: Plan, measures: Measures): Advice {
  const centre = centreOfInterest(plan, measures);
  const busiest = busiestBorder(plan, measures.borders.stretches, centre);
  const object = busiest && plan.objects[busiest.front];
  if (!object) return { advice: t('Leave more room round the focal point.') };
  const changes = [
    ...softerBorder(plan, object, busiest.behind),
    ...softerObject(plan, object, busiest.behind),
  ];
  const found = firstThat(changes, plan, measures, 'means isolation', (change, tried) =>
    isQuiet(
      bustleRound(tried, [triedStretches(tried, [change.object.index], measures.borders.stretches)], centre),
    ),
  );
  return (
    found ?? {
      advice: t(
        'Most of it is where {0}: move {1} away from the focal point, or bring it nearer in value and colour to what is behind it.',
        meeting(plan, [busiest.front, busiest.behind]),
        quoted(object.name),
      ),
    }
  );
}

function busiestBorder(
  plan: Plan,
  stretches: readonly BorderStretch[],
  centre: Centre,
): { readonly front: number; readonly behind: number } | undefined {
  const { focus, canvas } = plan;
  const lengths = new Map<string, { front: number; behind: number; length: number }>();
  for (const { at, front, behind, length } of stretches) {
    if (centre.has(front) || centre.has(behind) || !focus) continue;
    if (!isInRing(distance(at, focus.at) / canvas.diagonal)) continue;
    const key = `${front} ${behind}`;
    const border = lengths.get(key) ?? { front, behind, length: 0 };
    border.length += length;
    lengths.set(key, border);
  }
  let most: { readonly front: number; readonly behind: number; readonly bustle: number } | undefined;
  for (const { front, behind, length } of lengths.values()) {
    const bustle = length * contrastBetween(plan, front, behind).pull;
    if (bustle > (most?.bustle ?? 0)) most = { front, behind, bustle };
  }
  return most;
}
