import { type ColourRole, t } from '../../../grammar/index.js';
import { inBillionths } from '../../measure/areas/place-order.js';
import { type BorderMeasure, GROUND } from '../../measure/borders/borders.js';
import type { Measures } from '../../measure/measures.js';
import type { Colour } from '../../plan/colour/colour.js';
import type { Plan, PlanObject } from '../../plan/plan.js';
import { addLine, replace } from '../edits/edit.js';
import { stepEdit } from '../edits.js';
import type { Fix, FixEdit } from '../finding.js';
import { byLook } from '../seen/look.js';
import { quoted } from '../words/words.js';

/** An object given another of the plan's colours. */
export interface Recolouring {
  readonly object: PlanObject;
  /** Index into `plan.colours`. */
  readonly colour: number;
  /** Part of the picture that changes its role. */
  readonly share: number;
  readonly from?: ColourRole | undefined;
  readonly to?: ColourRole | undefined;
}

/**
 * Each seen object given a colour of another role, or its first colour, of every role the one that covers most, which
 * the picture has to spare: of these what suits.
 */
export function recolourings(
  plan: Plan,
  measures: Measures,
  suits: (one: Recolouring) => boolean,
): readonly Recolouring[] {
  const colours = coloursByUse(plan, measures);
  const most = measures.colours.roles.flatMap(
    ({ role }) => colours.find((colour) => plan.colours[colour]?.role === role) ?? [],
  );
  return recolouringsWith(plan, measures, most, (one) => one.from !== one.to && suits(one));
}

/**
 * Each seen object, or each of some, given each of some colours, which are indices into `plan.colours`: of these what
 * suits. The dominant object keeps its own: it is what the picture is about. Nothing takes a colour that something
 * beside it has already, for the two would merge.
 */
export function recolouringsWith(
  plan: Plan,
  measures: Measures,
  colours: readonly number[],
  suits: (one: Recolouring) => boolean,
  objects = plan.objects,
): readonly Recolouring[] {
  const found: Recolouring[] = [];
  for (const object of objects) {
    const share = measures.objects[object.index]?.share ?? 0;
    if (share === 0 || object.role === 'dominant' || object.colourLost || object.faulty) continue;
    const from = object.colour?.role;
    for (const colour of colours) {
      const one = { object, colour, share, from, to: plan.colours[colour]?.role };
      if (suits(one) && !merges(plan, measures, one)) found.push(one);
    }
  }
  return found;
}

/** Whether something beside the object, the bare ground among it, has the colour already. */
function merges({ objects, colours, canvas }: Plan, { borders }: Measures, one: Recolouring): boolean {
  const given = colours[one.colour]?.colour;
  return (besideEach(borders).get(one.object.index) ?? []).some((area) =>
    isSameColour(given, area === GROUND ? canvas.ground.colour : objects[area]?.colour?.colour),
  );
}

/** Colours of other names may be one colour. */
function isSameColour(one: Colour | undefined, other: Colour | undefined): boolean {
  return one !== undefined && other !== undefined && one.lab.every((part, at) => part === other.lab[at]);
}

const kept = new WeakMap<BorderMeasure, ReadonlyMap<number, readonly number[]>>();

/** For every area those that it borders on, found once for all rules that ask. */
function besideEach(borders: BorderMeasure): ReadonlyMap<number, readonly number[]> {
  const known = kept.get(borders);
  if (known) return known;
  const beside = new Map<number, number[]>();
  const add = (area: number, other: number): void => {
    const all = beside.get(area);
    if (all) all.push(other);
    else beside.set(area, [other]);
  };
  for (const { front, behind } of borders.borders) {
    add(front, behind);
    add(behind, front);
  }
  kept.set(borders, beside);
  return beside;
}

/**
 * Indices into `plan.colours`, what covers most first; of several that cover as much the first by what they look like.
 */
export function coloursByUse({ colours }: Plan, { colours: measured }: Measures): readonly number[] {
  const share = (index: number): number => inBillionths(measured.colours[index]?.share ?? 0);
  return [...colours.entries()]
    .sort(
      ([one, { colour }], [other, { colour: otherColour }]) =>
        share(other) - share(one) || byLook(colour, otherColour),
    )
    .map(([index]) => index);
}

/** By how much a role's part of the picture changes. */
export function changeOf({ share, from, to }: Recolouring, role: string): number {
  return share * (Number(to === role) - Number(from === role));
}

/** The edits that recolour an object; it keeps its step of the value scale. */
export function recolouringFix(plan: Plan, { object, colour }: Recolouring): Fix | undefined {
  const name = plan.colours[colour]?.name;
  if (name === undefined) return undefined;
  const edits: readonly FixEdit[] = [
    object.colour ? replace(object.colour.location, name) : addLine(object.node, 'colour', name),
    ...(object.stepStated || object.step === undefined ? [] : stepEdit(object, object.step)),
  ];
  return { title: t('Give {0} the colour {1}', quoted(object.name), quoted(name)), edits };
}
