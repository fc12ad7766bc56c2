import { percent } from '../../findings/words/words.js';
import type { ObjectMeasure } from '../../measure/measures.js';
import type { Colour } from '../../plan/colour/colour.js';
import type { Plan, PlanObject } from '../../plan/plan.js';
import { inWords, plainNumber } from '../../plan/problems.js';
import type { Snapshot } from '../snapshot.js';
import type { Style } from '../style.js';
import { allowanceFigures, notations, type Paragraphs } from './paragraphs.js';

/** So many that cover an object are named. */
const COVERS_NAMED = 3;

/** Role, plane, visible share, weight, value and colour of an object, the cues it carries and what is set aside for it. */
export function objectFigures(snapshot: Snapshot, object: PlanObject, style: Style): Paragraphs {
  const { plan, measures } = snapshot;
  const role = object.role === undefined ? '' : `${object.role}, `;
  const { steps } = plan.scale;
  const step =
    object.step === undefined || object.value === undefined
      ? 'Neither value nor colour is planned yet.'
      : `Step ${plainNumber(object.step)} of ${steps}, Munsell value ${plainNumber(object.value, 1)}` +
        (object.stepStated ? '.' : ', from its colour.');
  const own = plan.allowances.filter(({ objects }) => objects.includes(object.index));
  const cues = plan.cues.filter(({ carriedBy }) => carriedBy.includes(object.index));
  return [
    `${style.strong(object.name)}: ${style.text(`${role}${planeNames[object.plane]}`)}`,
    style.text(
      object.waiting ? 'Its shape is still being read.' : seen(measures.objects[object.index], plan),
    ),
    style.text(step),
    ...(object.painted === undefined ? [] : [paintedAs(snapshot, object, object.painted, style)]),
    ...weight(snapshot, object).map((words) => style.text(words)),
    ...cues.map(({ value }) => style.text(`Carries the cue “${value}”.`)),
    ...own.map((allowance) => allowanceFigures(allowance, style)),
  ];
}

const planeNames: Readonly<Record<PlanObject['plane'], string>> = {
  background: 'in the background',
  middle: 'in the middle plane',
  foreground: 'in the foreground',
};

function seen(measure: ObjectMeasure | undefined, plan: Plan): string {
  if (measure === undefined) return 'Not measured.';
  const off =
    measure.offCanvasShare > 0 ? ` ${percent(measure.offCanvasShare)} of it lies off the canvas.` : '';
  return `Covers ${percent(measure.share)} of the picture.${hidden(measure, plan)}${off}`;
}

function hidden({ hiddenShare, mostCovering, coveredBy }: ObjectMeasure, plan: Plan): string {
  const first = mostCovering.slice(0, COVERS_NAMED).flatMap((index) => plan.objects[index]?.name ?? []);
  if (first.length === 0) return '';
  const more = first.length < COVERS_NAMED ? 0 : coveredBy.length - first.length;
  const covers = more > 0 ? [...first, `${more} more`] : first;
  return ` ${percent(hiddenShare)} of it is hidden, by ${inWords(covers)}.`;
}

function paintedAs(
  { plan, measures }: Snapshot,
  { colour, index, chroma }: PlanObject,
  painted: Colour,
  style: Style,
): string {
  const named = colour?.named === undefined ? undefined : plan.colours[colour.named]?.name;
  const from = named === undefined ? '' : ` ${style.text('from')} ${style.name(named)}`;
  const role = colour?.role === undefined ? '' : style.text(`, ${colour.role}`);
  const temperature = measures.hues.objects[index]?.temperature;
  const warmth = temperature === undefined ? '' : style.text(`, ${temperature}`);
  const short =
    chroma === undefined || chroma.wanted - chroma.reached < 0.05
      ? ''
      : style.text(
          `. Of its chroma ${plainNumber(chroma.wanted, 1)}, ${plainNumber(chroma.reached, 1)} can be had at this value`,
        );
  return `${style.text('Painted')} ${notations(painted, style)}${from}${role}${warmth}${short}`;
}

/** What it does on the steelyard; nothing for what has no weight. */
function weight({ measures: { balance } }: Snapshot, { index }: PlanObject): readonly string[] {
  const own = balance.weights.find(({ object }) => object === index);
  if (own === undefined || own.weight <= 0 || balance.total <= 0) return [];
  const side =
    Math.abs(own.arm) < 0.005 ? 'at the middle' : own.arm > 0 ? 'right of the middle' : 'left of the middle';
  const arm = Math.abs(own.arm) < 0.005 ? '' : `${percent(Math.abs(own.arm))} of the width `;
  return [`Carries ${percent(own.weight / balance.total)} of the visual weight, ${arm}${side}.`];
}
