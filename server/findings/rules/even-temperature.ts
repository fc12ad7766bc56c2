import { t } from '../../../grammar/index.js';
import type { Measures } from '../../measure/measures.js';
import { inBillionths } from '../../measure/areas/place-order.js';
import { type Temperature, temperatureOf, warmthOf } from '../../plan/colour/hue-warmth.js';
import { atValue } from '../../plan/colour/painted.js';
import type { Plan } from '../../plan/plan.js';
import { doesNoHarm } from '../advice/budgets.js';
import {
  changeOf,
  coloursByUse,
  recolouringFix,
  recolouringsWith,
  type Recolouring,
} from '../advice/recolouring.js';
import type { Remedy, Rule, RuleFinding } from '../finding.js';
import { exceeds } from '../limits.js';
import { enoughPercent, heading, objectShare, percent, quoted } from '../words/words.js';

/** No one thing larger than this part of the picture is turned: that would be another picture. */
const MOST_TURNED = 0.25;
/** Warm and cool together have to cover this much before they can be said to be at odds. */
const MOST_OF_PICTURE = 0.8;

export const evenTemperature: Rule = {
  id: 'even temperature',
  severity: 'hint',
  chapter: 'colour',
  limit: { value: 0.05, unit: 'part', of: 'the picture' },
  perObject: false,
  summary: 'Warm and cool colours cover nearly the same area.',
  explanation:
    'A picture is mostly warm or mostly cool, and the other temperature gives it life; in equal parts they quarrel. Warm hues run from red-violet over red and orange to yellow, cool ones from yellow-green over green and blue to violet, on the painters’ wheel whatever wheel the plan chooses. A colour of a Munsell chroma under 1 as painted is neutral.',
  formula: '|warm area - cool area| <= limit, and warm + cool > 80 % of the picture',
  source:
    'common practice, no source; the two halves of the wheel as in Itten, The Art of Color (1961), cold-warm contrast',
  check: (plan, measures, limit): readonly RuleFinding[] => {
    const { warm, cool } = measures.hues.temperature;
    if (exceeds(Math.abs(warm - cool), limit) || !exceeds(warm + cool, MOST_OF_PICTURE)) return [];
    return [
      {
        message: t(
          'Warm colours cover {0} of the picture and cool ones {1}: neither leads. One should be ahead by more than {2}.',
          percent(warm),
          percent(cool),
          percent(limit),
        ),
        remedy: () => remedy(plan, measures, limit),
        location: plan.colours[0]?.location ?? heading(plan),
      },
    ];
  },
};

type Leading = 'warm' | 'cool';

/**
 * Which temperature is to lead: that of the dominant colour, else the greater; and the smallest object of the other
 * that makes it lead when it is painted so, in one of the plan's colours where it can be.
 */
function remedy(plan: Plan, measures: Measures, limit: number): Remedy {
  const { temperature } = measures.hues;
  const wanted = dominantTemperature(plan, measures);
  const leader = wanted ?? (temperature.warm >= temperature.cool ? 'warm' : 'cool');
  const turning = turningObjects(plan, measures, limit, leader);
  const [smallest] = turning;
  const lead = letLead(leader, wanted !== undefined);
  if (!smallest)
    return {
      advice: `${lead} ${repaint(leader, enoughPercent(missing(measures, limit, leader)))}`,
    };
  const recolouring = smallestRecolouring(plan, measures, turning, leader);
  const fix = recolouring && recolouringFix(plan, recolouring);
  const name = recolouring && plan.colours[recolouring.colour]?.name;
  if (!fix || name === undefined) {
    return {
      advice: `${lead} ${paintOne(leader, objectShare(plan, smallest), shares(measures, leader, smallest.share))}`,
    };
  }
  const { object, share } = recolouring;
  return {
    advice: `${lead} ${t(
      'Give {0} the colour {1}, which makes them {2}.',
      objectShare(plan, { object: object.index, share }),
      quoted(name),
      shares(measures, leader, share),
    )}`,
    fix,
  };
}

/** `Let the warm colours lead, as the dominant colour is.` */
function letLead(leader: Leading, asDominant: boolean): string {
  if (leader === 'warm')
    return asDominant
      ? t('Let the warm colours lead, as the dominant colour is.')
      : t('Let the warm colours lead.');
  return asDominant
    ? t('Let the cool colours lead, as the dominant colour is.')
    : t('Let the cool colours lead.');
}

function repaint(leader: Leading, share: string): string {
  return leader === 'warm'
    ? t('Paint a little more than {0} of the picture warm instead of cool.', share)
    : t('Paint a little more than {0} of the picture cool instead of warm.', share);
}

function paintOne(leader: Leading, object: string, after: string): string {
  return leader === 'warm'
    ? t('{0} painted warm makes them {1}.', object, after)
    : t('{0} painted cool makes them {1}.', object, after);
}

/** The objects of the other temperature each of which would make the leader lead, the smallest first. */
function turningObjects(
  { objects }: Plan,
  measures: Measures,
  limit: number,
  leader: Leading,
): readonly { readonly object: number; readonly share: number }[] {
  const { objects: hues } = measures.hues;
  const other = otherThan(leader);
  const enough = missing(measures, limit, leader);
  return objects
    .map(({ index }) => ({ object: index, share: measures.objects[index]?.share ?? 0 }))
    .filter(
      ({ object, share }) =>
        hues[object]?.temperature === other && exceeds(share, enough) && !exceeds(share, MOST_TURNED),
    )
    .sort((one, next) => inBillionths(one.share) - inBillionths(next.share));
}

/** What has to change over for the leader to be ahead by the limit, part of the picture. */
function missing({ hues: { temperature } }: Measures, limit: number, leader: Leading): number {
  return (limit - temperature[leader] + temperature[otherThan(leader)]) / 2;
}

/** One of them in a colour that the plan has, by which no budget of colours comes farther off; the smallest. */
function smallestRecolouring(
  plan: Plan,
  measures: Measures,
  turning: readonly { readonly object: number }[],
  leader: Leading,
): Recolouring | undefined {
  const colours = coloursByUse(plan, measures);
  const budget = plan.colourBudget?.location ? measures.colours.budget : [];
  const suits = (one: Recolouring): boolean =>
    temperatureAs(plan, one) === leader &&
    budget.every((entry) => doesNoHarm(entry, entry.difference + changeOf(one, entry.key)));
  for (const { object } of turning) {
    const turned = plan.objects.slice(object, object + 1);
    const [one] = recolouringsWith(plan, measures, colours, suits, turned);
    if (one) return one;
  }
  return undefined;
}

/** What a painter would call the object in its new colour, at the value that it keeps. */
function temperatureAs(plan: Plan, { object, colour }: Recolouring): Temperature | undefined {
  const painted = plan.colours[colour]?.colour;
  if (!painted || object.value === undefined) return undefined;
  return temperatureOf(warmthOf(painted), atValue(painted, object.value).chromaReached);
}

/** `58 % against 42 %` */
function shares({ hues: { temperature } }: Measures, leader: Leading, turned: number): string {
  const other = otherThan(leader);
  return t('{0} against {1}', percent(temperature[leader] + turned), percent(temperature[other] - turned));
}

function otherThan(leader: Leading): Leading {
  return leader === 'warm' ? 'cool' : 'warm';
}

function dominantTemperature(plan: Plan, { hues, objects }: Measures): Leading | undefined {
  const area = { warm: 0, cool: 0, neutral: 0 };
  for (const { index, colour } of plan.objects) {
    const hue = hues.objects[index];
    if (hue && colour?.role === 'dominant') area[hue.temperature] += objects[index]?.share ?? 0;
  }
  if (area.warm === area.cool) return undefined;
  return area.warm > area.cool ? 'warm' : 'cool';
}
