import { length, percent } from '../findings/words.js';
import type { BudgetMeasure } from '../measure/measures.js';
import type { NamedProportion, ProportionMeasure } from '../measure/proportion.js';
import { toMunsell } from '../plan/colour/munsell.js';
import { toHex } from '../plan/colour/srgb.js';
import type { Colour } from '../plan/colour/colour.js';
import type { Allowance, Plan, PlanObject } from '../plan/plan.js';
import { inWords, plainNumber } from '../plan/problems.js';
import type { Snapshot } from './snapshot.js';
import type { Style } from './style.js';

/** A proportion missed by less than a stretcher is made to. */
const EXACT = 0.0005;

/** What is computed about one thing of the plan, as paragraphs for a hover or a completion. */
export type Paragraphs = readonly string[];

/** Role, plane, visible share, value and colour of an object, and what is set aside for it. */
export function objectFigures({ plan, measures }: Snapshot, object: PlanObject, style: Style): Paragraphs {
  const role = object.role === undefined ? '' : `${object.role}, `;
  const { steps } = plan.scale;
  const step =
    object.step === undefined || object.value === undefined
      ? 'Neither value nor colour is planned yet.'
      : `Step ${plainNumber(object.step)} of ${steps}, Munsell value ${plainNumber(object.value, 1)}` +
        (object.stepStated ? '.' : ', from its colour.');
  const own = plan.allowances.filter(({ objects }) => objects.includes(object.index));
  return [
    `${style.strong(object.name)}: ${style.text(`${role}${planeNames[object.plane]}`)}`,
    style.text(
      object.waiting ? 'Its shape is still being read.' : seen(measures.objects[object.index], plan),
    ),
    style.text(step),
    ...(object.painted === undefined ? [] : [paintedAs(plan, object, object.painted, style)]),
    ...own.map((allowance) => allowanceFigures(allowance, style)),
  ];
}

const planeNames: Readonly<Record<PlanObject['plane'], string>> = {
  background: 'in the background',
  middle: 'in the middle plane',
  foreground: 'in the foreground',
};

function seen(measure: Snapshot['measures']['objects'][number] | undefined, plan: Plan): string {
  if (measure === undefined) return 'Not measured.';
  const coverers = measure.coveredBy.flatMap((index) => plan.objects[index]?.name ?? []);
  const hidden =
    coverers.length === 0 ? '' : ` ${percent(measure.hiddenShare)} of it is hidden, by ${inWords(coverers)}.`;
  const off =
    measure.offCanvasShare > 0 ? ` ${percent(measure.offCanvasShare)} of it lies off the canvas.` : '';
  return `Covers ${percent(measure.share)} of the picture.${hidden}${off}`;
}

function paintedAs(plan: Plan, { colour }: PlanObject, painted: Colour, style: Style): string {
  const named = colour?.named === undefined ? undefined : plan.colours[colour.named]?.name;
  const from = named === undefined ? '' : ` ${style.text('from')} ${style.name(named)}`;
  const role = colour?.role === undefined ? '' : style.text(`, ${colour.role}`);
  return `${style.text('Painted')} ${notations(painted, style)}${from}${role}`;
}

/** `#2f6f73`, 5BG 4.2/4.0 */
export function notations(colour: Colour, style: Style): string {
  return `${style.name(toHex(colour))}, ${style.text(toMunsell(colour).text)}`;
}

/** A colour's notations and how much of the picture it covers; nothing for a colour that the plan does not have. */
export function colourFigures({ plan, measures }: Snapshot, index: number, style: Style): Paragraphs {
  const named = plan.colours[index];
  if (named === undefined) return [];
  const share = measures.colours.colours[index]?.share ?? 0;
  const budget = named.role && measures.colours.budget.find(({ key }) => key === named.role);
  return [
    `${style.strong(named.name)}: ${notations(named.colour, style)}`,
    style.text(`Covers ${percent(share)} of the picture.`),
    ...(named.role === undefined ? [] : [style.text(`Role: ${named.role}.`)]),
    ...(budget ? [style.text(`All ${budget.name} colours: ${wantedAndMeasured(budget)}.`)] : []),
  ];
}

/** Each share of a budget, as wanted and as measured. */
export function budgetFigures({ measures }: Snapshot, of: 'value' | 'colour', style: Style): Paragraphs {
  const { budget } = of === 'value' ? measures.values : measures.colours;
  if (budget.length === 0) return [style.text('No share can be measured against this budget.')];
  return [
    style.list(budget.map((entry) => `${style.strong(entry.name)}: ${style.text(wantedAndMeasured(entry))}`)),
  ];
}

function wantedAndMeasured({ target, tolerance, share, within }: BudgetMeasure): string {
  const verdict = within ? 'within the budget' : share > target ? 'too much' : 'too little';
  return `${percent(target)} wanted, within ${percent(tolerance)}; ${percent(share)} measured, ${verdict}`;
}

/** Where the focal point lies, and how far from the nearest crossing and from the middle. */
export function focusFigures({ plan, measures }: Snapshot, style: Style): Paragraphs {
  const { focus, canvas } = plan;
  if (focus === undefined || measures.focus === undefined) return [];
  const { nearest, fromCentre } = measures.focus;
  const crossing =
    nearest === undefined
      ? 'No crossing of the divisions is near.'
      : `Nearest crossing: ${nearest.crossing.name} of ${nearest.system}, ${length(nearest.distance, canvas)} away` +
        ` (${percent(nearest.distanceShare)} of the diagonal).`;
  return [
    style.text(
      `The focal point lies ${length(focus.at.x, canvas)} from the left and ${length(focus.at.y, canvas)} from the top.`,
    ),
    style.text(crossing),
    style.text(`${percent(fromCentre)} of the diagonal from the middle of the canvas.`),
  ];
}

/** Size, proportion and what the trade calls it, diagonal and ground of the canvas. */
export function canvasFigures({ plan: { canvas }, measures }: Snapshot, style: Style): Paragraphs {
  const { width, height, diagonal, unit } = canvas;
  const proportion = plainNumber(measures.proportion.ratio, 3);
  const way = width === height ? 'square' : width > height ? 'landscape' : 'upright';
  return [
    style.text(`${plainNumber(width)} x ${plainNumber(height)} ${unit}, ${way}.`),
    style.text(`Proportion ${proportion} : 1. Diagonal ${length(diagonal, canvas)}.`),
    ...proportionNames(measures.proportion).map((words) => style.text(words)),
    `${style.text('Ground')} ${notations(canvas.ground.colour, style)}`,
  ];
}

/** `2 : 3. The size of 24 x 36 in.`; nothing for a proportion that has no name. */
function proportionNames({ named }: ProportionMeasure): readonly string[] {
  const shapes = named.filter(({ kind }) => kind !== 'paper' && kind !== 'stock').map(proportionName);
  const sizes = named.filter(({ kind }) => kind === 'paper' || kind === 'stock');
  const of = (sameSize: boolean): readonly string[] =>
    sizes
      .filter((size) => size.sameSize === sameSize)
      .map((size) => (sameSize ? size.name : proportionName(size)));
  const words = [
    ...shapes.map((shape) => `${shape.charAt(0).toUpperCase()}${shape.slice(1)}.`),
    ...of(true).map((name) => `The size of ${name}.`),
    ...of(false).map((name) => `In proportion with ${name}.`),
  ];
  return words.length === 0 ? [] : [words.join(' ')];
}

function proportionName({ name, difference }: NamedProportion): string {
  if (Math.abs(difference) < EXACT) return name;
  return `${name}, ${percent(Math.abs(difference))} ${difference > 0 ? 'longer' : 'shorter'}`;
}

/** Each step of the value scale with its Munsell value and its share, and their mean. */
export function scaleFigures({ plan, measures }: Snapshot, style: Style): Paragraphs {
  const { steps, mean } = measures.values;
  const groupOf = (step: number): string => {
    const group = plan.scale.groups.find(({ from, to }) => from <= step && step <= to);
    return group === undefined ? '' : ` (${group.name})`;
  };
  return [
    style.list(
      steps.map(({ step, value, share }) =>
        style.text(
          `step ${step}${groupOf(step)}: Munsell value ${plainNumber(value, 1)}, ${percent(share)} of the picture`,
        ),
      ),
    ),
    ...(mean === undefined ? [] : [style.text(`Mean Munsell value ${plainNumber(mean, 1)}.`)]),
  ];
}

/** The steps of a group, its share and its budget; nothing for a group that the scale does not have. */
export function groupFigures({ measures }: Snapshot, key: string, style: Style): Paragraphs {
  const group = measures.values.groups.find((candidate) => candidate.key === key);
  if (group === undefined) return [];
  const budget = measures.values.budget.find((candidate) => candidate.key === key);
  const range = group.from === group.to ? `step ${group.from}` : `steps ${group.from} to ${group.to}`;
  return [
    `${style.strong(group.name)}: ${style.text(`${range}, ${percent(group.share)} of the picture`)}`,
    ...(budget === undefined ? [] : [style.text(`${wantedAndMeasured(budget)}.`)]),
  ];
}

/** A rule that is set aside, with the reason, on one line. */
export function allowanceFigures({ rule, reason }: Allowance, style: Style): string {
  return `${style.name(rule)} ${style.text('is set aside:')} ${style.text(reason)}`;
}
