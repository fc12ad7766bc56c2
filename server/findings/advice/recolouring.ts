import { type ColourRole, t } from '../../../grammar/index.js';
import { inBillionths } from '../../measure/areas/place-order.js';
import { GROUND } from '../../measure/borders/borders.js';
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
  readonly from?: ColourRole;
  readonly to?: ColourRole;
}

/**
 * Each seen object given a colour of another role, or its first colour: of every role the one that covers most, which
 * the picture has to spare.
 */
export function recolourings(plan: Plan, measures: Measures): readonly Recolouring[] {
  const colours = coloursByUse(plan, measures);
  const most = measures.colours.roles.flatMap(
    ({ role }) => colours.find((colour) => plan.colours[colour]?.role === role) ?? [],
  );
  return recolouringsWith(plan, measures, most).filter(({ from, to }) => from !== to);
}

/**
 * Each seen object given each of some colours, which are indices into `plan.colours`. The dominant object keeps its
 * own: it is what the picture is about. Nothing takes a colour that something beside it has already, for the two
 * would merge.
 */
export function recolouringsWith(
  plan: Plan,
  measures: Measures,
  colours: readonly number[],
): readonly Recolouring[] {
  const beside = coloursBeside(plan, measures);
  return plan.objects.flatMap((object): Recolouring[] => {
    const share = measures.objects[object.index]?.share ?? 0;
    if (share === 0 || object.role === 'dominant' || object.colourLost || object.faulty) return [];
    const from = object.colour?.role;
    return colours
      .filter((colour) => !beside[object.index]?.has(keyOf(plan.colours[colour]?.colour)))
      .map((colour) => {
        const to = plan.colours[colour]?.role;
        return { object, colour, share, ...(from ? { from } : {}), ...(to ? { to } : {}) };
      });
  });
}

type Beside = readonly ReadonlySet<string>[];

const kept = new WeakMap<Measures, { readonly plan: Plan; readonly beside: Beside }>();

/** For every object the colours of what it borders on, the bare ground among it; found once for all rules that ask. */
function coloursBeside(plan: Plan, measures: Measures): Beside {
  const known = kept.get(measures);
  if (known?.plan === plan) return known.beside;
  const beside = findBeside(plan, measures);
  kept.set(measures, { plan, beside });
  return beside;
}

function findBeside({ objects, canvas }: Plan, { borders }: Measures): Beside {
  const beside = objects.map(() => new Set<string>());
  const colourOf = (area: number): Colour | undefined =>
    area === GROUND ? canvas.ground.colour : objects[area]?.colour?.colour;
  for (const { front, behind } of borders.borders) {
    beside[front]?.add(keyOf(colourOf(behind)));
    beside[behind]?.add(keyOf(colourOf(front)));
  }
  return beside;
}

/** Colours of other names may be one colour. */
function keyOf(colour: Colour | undefined): string {
  return colour?.lab.join(' ') ?? '';
}

/** Indices into `plan.colours`, what covers most first; of several that cover as much the first by what they look like. */
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
