import { t } from '../../../grammar/index.js';
import { GROUND } from '../../measure/borders/borders.js';
import type { Measures } from '../../measure/measures.js';
import type { Tone } from '../../measure/notan/notan.js';
import type { Plan, PlanObject } from '../../plan/plan.js';
import { capitalised, plainNumber } from '../../plan/problems.js';
import { stepEdit } from '../edits.js';
import type { Rule, RuleFinding } from '../finding.js';
import { repaintingOf } from '../advice/repainting.js';
import { type Spot, spotsOf } from '../seen/scattered-spots.js';
import { toneWords, toStep } from '../words/tones.js';
import { counted, heading, percent, quoted, someOf } from '../words/words.js';

const FEWEST = 3;
/** Part of the picture from which on a piece of a tone is a mass that something can sink into. */
const MASS = 0.02;
const MOST_NAMED = 3;

export const spots: Rule = {
  id: 'spots',
  severity: 'hint',
  chapter: 'values',
  limit: { value: 0.02, unit: 'part', of: 'the picture' },
  perObject: true,
  summary: 'A tone lies about the picture in small scattered pieces.',
  explanation:
    'Light and dark hold a picture together in a few large shapes. Three or more small ones of a tone, apart from each other and from its large ones, pepper it and pull the eye about. Pieces of one object count once, as a row of posts or a flock is one decision; so do pieces within 10 % of the diagonal of each other. What belongs to a principal object, glimpses of something that is large elsewhere, and touches under 0.1 % of the picture do not count.',
  formula: 'pieces of one tone with 0.1 % <= share of the picture < limit, gathered as told: three or more',
  source: 'common practice, no source',
  check: (plan, measures, limit) =>
    measures.notan.tones.flatMap((tone): RuleFinding[] => {
      const found = spotsOf(plan, measures, tone, limit);
      if (found.length < FEWEST) return [];
      const all = found.map((spot) => spotWords(plan, spot));
      const objects = found.flatMap(({ areas }) => areas.filter((area) => area !== GROUND));
      const first = plan.objects[objects[0] ?? -1];
      return [
        {
          message: t(
            '{0} small pieces of {1} lie scattered about the picture, each under {2} of it: {3}.',
            capitalised(counted(found.length)),
            toneWords(tone).words,
            percent(limit),
            someOf(all, MOST_NAMED),
          ),
          ...advice(plan, measures, tone, found),
          location: first?.valueLocation ?? first?.location ?? heading(plan),
          related: objects.slice(1).flatMap((index) => {
            const object = plan.objects[index];
            return object
              ? [{ location: object.location, message: t('{0} is one of them.', quoted(object.name)) }]
              : [];
          }),
          objects,
        },
      ];
    }),
};

function spotWords(plan: Plan, { areas, share }: Spot): string {
  const names = areas.map((area) =>
    area === GROUND ? t('bare ground') : quoted(plan.objects[area]?.name ?? ''),
  );
  const [first = '', second] = names;
  return second === undefined
    ? `${first} (${percent(share)})`
    : t('{0} with {1} ({2})', first, second, percent(share));
}

interface Sinking {
  readonly object: PlanObject;
  readonly into: PlanObject;
  readonly step: number;
}

/** The smallest spot that can sink into what is round it, as a fix when that leaves fewer than three. */
function advice(
  plan: Plan,
  measures: Measures,
  tone: Tone,
  found: readonly Spot[],
): Pick<RuleFinding, 'advice' | 'fix'> {
  const sinking = firstSinking(plan, measures, tone, found.toReversed());
  if (!sinking) {
    const smallest = found.slice(-1).map((spot) => spotWords(plan, spot));
    return {
      advice: t(
        'Bring them together, or join {0} to a larger piece of {1}.',
        smallest.join(''),
        toneWords(tone).words,
      ),
    };
  }
  const { object, into, step } = sinking;
  const told = [quoted(object.name), quoted(into.name), plainNumber(step)] as const;
  if (found.length > FEWEST)
    return {
      advice: t('Let {0} sink into {1}, on step {2}, and so with others, or bring them together.', ...told),
    };
  return {
    advice: t('Let {0} sink into {1}, on step {2}, or bring them together.', ...told),
    fix: { title: toStep(quoted(object.name), plainNumber(step)), edits: stepEdit(object, step) },
  };
}

function firstSinking(
  plan: Plan,
  measures: Measures,
  tone: Tone,
  found: readonly Spot[],
): Sinking | undefined {
  for (const spot of found) {
    const sinking = sinkingOf(plan, measures, tone, spot);
    if (sinking) return sinking;
  }
  return undefined;
}

/** A spot of a single object as it takes the step of the large piece that it borders on for longest. */
function sinkingOf(plan: Plan, measures: Measures, tone: Tone, { areas }: Spot): Sinking | undefined {
  const object = plan.objects[areas[0] ?? GROUND];
  if (areas.length > 1 || object?.step === undefined) return undefined;
  const round = measures.borders.borders
    .filter(({ front, behind }) => front === object.index || behind === object.index)
    .map(({ front, behind }) => plan.objects[front === object.index ? behind : front]);
  const into = round.find((other) => {
    const tones = measures.notan.tones.filter(({ key }) => key !== tone.key);
    const [masses] = tones.flatMap(({ pieces }) =>
      pieces.filter(({ areas: own }) => own.includes(other?.index ?? GROUND)),
    );
    return other?.step !== undefined && masses !== undefined && masses.share >= MASS;
  });
  if (into?.step === undefined) return undefined;
  const step = Math.round(into.step);
  const repainting = repaintingOf(plan, measures);
  const after = repainting.after({ object: object.index, from: Math.round(object.step), to: step });
  return repainting.breaksNothing(after) ? { object, into, step } : undefined;
}
