import {
  canonicalWord,
  type ClassifiedText,
  type Length,
  marked,
  type Node,
  said,
  type StatementKind,
  t,
} from '../../../grammar/index.js';
import { weekdayAndDay } from '../../findings/words/days.js';
import { percent } from '../../findings/words/words.js';
import { dayOf } from '../../measure/sittings/days.js';
import type { Bases } from '../../plan/based-on/bases.js';
import { stepValue } from '../../plan/colour/value.js';
import { type Axis, canvasUnits, divisionPlace, millimetresPer } from '../../plan/lengths.js';
import { CAUTION_FIRST, cautionsAboutPaint } from '../../plan/materials/cautions.js';
import { pigmentOf } from '../../plan/materials/pigments.js';
import { plainNumber } from '../../plan/problems.js';
import { basePathOf } from '../library.js';
import type { Snapshot } from '../snapshot.js';
import type { Style } from '../style.js';
import { touches } from '../text.js';
import { pigmentFigures } from './paint.js';
import type { Paragraphs } from './paragraphs.js';
import { termMeaning } from './terms.js';

/** What one word, number or day of a statement means or comes to; nothing for one that says nothing by itself. */
export function tokenFigures(
  { plan, tree, lines }: Snapshot,
  node: Node,
  token: ClassifiedText,
  style: Style,
): Paragraphs {
  const written = (lines[token.line] ?? '').slice(token.start, token.end);
  switch (token.class) {
    case 'keyword':
    case 'choice': {
      const meaning = termMeaning(canonicalWord(written), node.statement.kind);
      return meaning === undefined ? [] : [`${style.strong(written)}: ${style.text(meaning)}`];
    }
    case 'number':
    case 'unit':
      return [...stepFigures(node, plan.scale.steps, token), ...lengthFigures(node, plan.canvas, token)].map(
        (words) => style.text(words),
      );
    case 'date':
      return [style.text(writtenDay(written))];
    case 'reference':
      return [
        style.text(
          referenceFigure(
            node,
            canonicalWord(written),
            basePathOf(tree) !== undefined,
            plan.basedOn?.lacking,
          ),
        ),
      ];
    case 'colour':
      return colourIndexFigures(node, written).map((words) => style.text(words));
    default:
      return [];
  }
}

/** What is known of the pigment that stands under a Colour Index name. */
function colourIndexFigures({ statement }: Node, written: string): readonly string[] {
  const name = statement.kind === 'paint' ? statement.name.text : '';
  const pigment = pigmentOf(written, name);
  if (pigment === undefined) return [t('{0}: the number of its pigment in the Colour Index.', written)];
  const cautions = cautionsAboutPaint({ index: written, name });
  return [
    t('{0}: {1}, by its number in the Colour Index.', written, pigment.name),
    ...pigmentFigures(pigment),
    ...(cautions.length === 0 ? [] : [...cautions, said(CAUTION_FIRST)]),
  ];
}

/** What is said of a name that nothing in the plan gives. */
function referenceFigure(
  { statement: { kind } }: Node,
  word: string,
  hasBase: boolean,
  lacking: Bases['lacking'],
): string {
  const role = kind === 'budget' ? termMeaning(word, kind) : undefined;
  if (role !== undefined) return role;
  if (kind === 'without')
    return hasBase
      ? t('A name of the plan that this one is based on.')
      : t('This plan is based on no other from which this could be left out.');
  if (lacking !== undefined)
    return t('This plan does not give this name; it may come from the plan that it is based on.');
  return hasBase
    ? t('Neither this plan nor the one that it is based on has this name.')
    : t('Nothing in this plan has this name.');
}

function stepFigures({ statement }: Node, steps: number, { start }: ClassifiedText): readonly string[] {
  const step =
    statement.kind === 'value'
      ? statement.step
      : statement.kind === 'group'
        ? statement.groups.flatMap(({ from, to }) => [from, to]).find((one) => touches(one, start))
        : undefined;
  if (step === undefined || step.value < 1 || step.value > steps) return [];
  return [
    t(
      'Step {0} of {1}, of which 1 is the darkest: Munsell value {2}.',
      plainNumber(step.value),
      steps,
      plainNumber(stepValue(step.value, steps), 1),
    ),
  ];
}

interface FoundLength {
  readonly length: Length;
  /** Along which side it runs, where the statement tells. */
  readonly axis?: Axis;
}

function lengthFigures(
  { statement }: Node,
  canvas: Snapshot['plan']['canvas'],
  { start }: ClassifiedText,
): readonly string[] {
  if (toldOtherwise.has(statement.kind)) return [];
  const found = lengthAt(statement, start, axisOfStatement(statement.kind));
  if (found === undefined) return [];
  const { length, axis } = found;
  if (axis === undefined) {
    if (length.unit === undefined || length.unit === '%' || length.unit === canvas.unit) return [];
    const units = (length.value * millimetresPer(length.unit)) / canvas.millimetresPerUnit;
    return [`${plainNumber(units)} ${canvas.unit}.`];
  }
  const isDivision = statement.kind === 'uprights' || statement.kind === 'levels';
  const units = (isDivision ? divisionPlace : canvasUnits)(length, canvas, axis);
  const side = axis === 'across' ? canvas.width : canvas.height;
  return [
    said(
      (units < 0 ? backwards : onwards)[axis],
      `${plainNumber(Math.abs(units))} ${canvas.unit}`,
      percent(Math.abs(units) / side),
    ),
  ];
}

const onwards: Readonly<Record<Axis, string>> = {
  across: marked('{0} across, {1} of the width.'),
  down: marked('{0} down, {1} of the height.'),
};
const backwards: Readonly<Record<Axis, string>> = {
  across: marked('{0} to the left, {1} of the width.'),
  down: marked('{0} up, {1} of the height.'),
};

/**
 * What the lengths of these come to is told with the statement itself, or they are none on the canvas: places in a
 * sketch or photograph, and the thickness of paint.
 */
const toldOtherwise: ReadonlySet<StatementKind> = new Set(['canvas', 'horizon', 'corners', 'grey', 'film']);

function axisOfStatement(kind: Node['statement']['kind']): Axis | undefined {
  if (kind === 'uprights') return 'across';
  return kind === 'levels' ? 'down' : undefined;
}

/** The length that stands at a column of a statement, however deep, with the side that it runs along. */
function lengthAt(value: unknown, column: number, axis: Axis | undefined): FoundLength | undefined {
  if (Array.isArray(value)) return firstOf(value, (item) => lengthAt(item, column, axis));
  if (typeof value !== 'object' || value === null) return undefined;
  if (isLength(value))
    return touches(value, column) ? { length: value, ...(axis === undefined ? {} : { axis }) } : undefined;
  const own = 'direction' in value ? axisOfDirection(value.direction) : axis;
  return firstOf(Object.entries(value), ([name, inner]) => lengthAt(inner, column, axes[name] ?? own));
}

const axes: Readonly<Partial<Record<string, Axis>>> = {
  x: 'across',
  width: 'across',
  y: 'down',
  height: 'down',
};

function axisOfDirection(direction: unknown): Axis {
  return direction === 'left' || direction === 'right' ? 'across' : 'down';
}

function firstOf<T, R>(items: readonly T[], find: (item: T) => R | undefined): R | undefined {
  for (const item of items) {
    const found = find(item);
    if (found !== undefined) return found;
  }
  return undefined;
}

function isLength(value: object): value is Length {
  return 'fraction' in value && 'value' in value && typeof value.value === 'number';
}

/** `Tuesday 1 December 2026` */
function writtenDay(written: string): string {
  const day = dayOf(written);
  return day === undefined ? t('There is no such day in the calendar.') : weekdayAndDay(day);
}
