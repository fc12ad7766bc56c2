import { marked, said, t } from '../../../grammar/index.js';
import { percent } from '../../findings/words/words.js';
import type { ObjectMeasure } from '../../measure/measures.js';
import type { Colour } from '../../plan/colour/colour.js';
import type { Plan, PlanObject } from '../../plan/plan.js';
import { inWords, plainNumber } from '../../plan/problems.js';
import type { Snapshot } from '../snapshot.js';
import type { Style } from '../style.js';
import { allowanceFigures, notations, type Paragraphs, woven } from './paragraphs.js';

/** So many that cover an object are named. */
const COVERS_NAMED = 3;

/**
 * Role, plane, visible share, weight, value and colour of an object, the cues it carries and what is set aside for it.
 */
export function objectFigures(snapshot: Snapshot, object: PlanObject, style: Style): Paragraphs {
  const { plan, measures } = snapshot;
  const own = plan.allowances.filter(({ objects }) => objects.includes(object.index));
  const cues = plan.cues.filter(({ carriedBy }) => carriedBy.includes(object.index));
  return [
    `${style.strong(object.name)}: ${style.text(said(standings[object.role ?? 'none'][object.plane]))}`,
    style.text(
      object.waiting ? t('Its shape is still being read.') : seen(measures.objects[object.index], plan),
    ),
    style.text(stepInWords(plan, object)),
    ...(object.painted === undefined ? [] : [paintedAs(snapshot, object, object.painted, style)]),
    ...weight(snapshot, object).map((words) => style.text(words)),
    ...cues.map(({ value }) => style.text(t('Carries the cue “{0}”.', value))),
    ...own.map((allowance) => allowanceFigures(allowance, style)),
  ];
}

const standings: Readonly<
  Record<NonNullable<PlanObject['role']> | 'none', Readonly<Record<PlanObject['plane'], string>>>
> = {
  none: {
    background: marked('in the background'),
    middle: marked('in the middle plane'),
    foreground: marked('in the foreground'),
  },
  dominant: {
    background: marked('dominant, in the background'),
    middle: marked('dominant, in the middle plane'),
    foreground: marked('dominant, in the foreground'),
  },
  secondary: {
    background: marked('secondary, in the background'),
    middle: marked('secondary, in the middle plane'),
    foreground: marked('secondary, in the foreground'),
  },
  minor: {
    background: marked('minor, in the background'),
    middle: marked('minor, in the middle plane'),
    foreground: marked('minor, in the foreground'),
  },
};

function stepInWords({ scale: { steps } }: Plan, { step, value, stepStated }: PlanObject): string {
  if (step === undefined || value === undefined) return t('Neither value nor colour is planned yet.');
  const told = [plainNumber(step), steps, plainNumber(value, 1)] as const;
  return stepStated
    ? t('Step {0} of {1}, Munsell value {2}.', ...told)
    : t('Step {0} of {1}, Munsell value {2}, from its colour.', ...told);
}

function seen(measure: ObjectMeasure | undefined, plan: Plan): string {
  if (measure === undefined) return t('Not measured.');
  const off =
    measure.offCanvasShare > 0 ? [t('{0} of it lies off the canvas.', percent(measure.offCanvasShare))] : [];
  return [t('Covers {0} of the picture.', percent(measure.share)), ...hidden(measure, plan), ...off].join(
    ' ',
  );
}

function hidden({ hiddenShare, mostCovering, coveredBy }: ObjectMeasure, plan: Plan): readonly string[] {
  const first = mostCovering.slice(0, COVERS_NAMED).flatMap((index) => plan.objects[index]?.name ?? []);
  if (first.length === 0) return [];
  const more = first.length < COVERS_NAMED ? 0 : coveredBy.length - first.length;
  const covers = more > 0 ? [...first, t('{0} more', more)] : first;
  return [t('{0} of it is hidden, by {1}.', percent(hiddenShare), inWords(covers))];
}

function paintedAs(
  { plan, measures }: Snapshot,
  { colour, index, chroma }: PlanObject,
  painted: Colour,
  style: Style,
): string {
  const named = colour?.named === undefined ? undefined : plan.colours[colour.named]?.name;
  const as = notations(painted, style);
  const from =
    named === undefined
      ? woven(marked('Painted {0}'), style, as)
      : woven(marked('Painted {0} from {1}'), style, as, style.name(named));
  const temperature = measures.hues.objects[index]?.temperature;
  const more = [
    ...(colour?.role === undefined ? [] : [colour.role]),
    ...(temperature === undefined ? [] : [said(temperatures[temperature])]),
  ];
  const short =
    chroma === undefined || chroma.wanted - chroma.reached < 0.05
      ? ''
      : t(
          '. Of its chroma {0}, {1} can be had at this value',
          plainNumber(chroma.wanted, 1),
          plainNumber(chroma.reached, 1),
        );
  return `${from}${style.text(`${more.map((each) => `, ${each}`).join('')}${short}`)}`;
}

const temperatures = { warm: marked('warm'), cool: marked('cool'), neutral: marked('neutral') } as const;

/** What it does on the steelyard; nothing for what has no weight. */
function weight({ measures: { balance } }: Snapshot, { index }: PlanObject): readonly string[] {
  const own = balance.weights.find(({ object }) => object === index);
  if (own === undefined || own.weight <= 0 || balance.total <= 0) return [];
  const share = percent(own.weight / balance.total);
  const arm = percent(Math.abs(own.arm));
  if (Math.abs(own.arm) < 0.005) return [t('Carries {0} of the visual weight, at the middle.', share)];
  return [
    own.arm > 0
      ? t('Carries {0} of the visual weight, {1} of the width right of the middle.', share, arm)
      : t('Carries {0} of the visual weight, {1} of the width left of the middle.', share, arm),
  ];
}
