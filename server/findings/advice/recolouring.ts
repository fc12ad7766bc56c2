import type { ColourRole } from '../../../grammar/index.js';
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
 * the picture has to spare. The dominant object keeps its colour: it is what the picture is about. Nothing takes a
 * colour that something beside it has already, for the two would merge.
 */
export function recolourings(plan: Plan, measures: Measures): readonly Recolouring[] {
  const targets = mostUsedColours(plan, measures);
  const beside = coloursBeside(plan, measures);
  return plan.objects.flatMap((object): Recolouring[] => {
    const share = measures.objects[object.index]?.share ?? 0;
    if (share === 0 || object.role === 'dominant' || object.colourLost || object.faulty) return [];
    const from = object.colour?.role;
    return targets
      .filter(
        ({ colour, role }) =>
          role !== from && !beside[object.index]?.has(keyOf(plan.colours[colour]?.colour)),
      )
      .map(({ colour, role }) => ({ object, colour, share, ...(from ? { from } : {}), to: role }));
  });
}

/** For every object the colours of what it borders on, the bare ground among it. */
function coloursBeside({ objects, canvas }: Plan, { borders }: Measures): readonly ReadonlySet<string>[] {
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

/** Of each role in use the colour that covers most; of several that cover as much the first by what they look like. */
function mostUsedColours(
  { colours }: Plan,
  { colours: measured }: Measures,
): readonly { readonly colour: number; readonly role: ColourRole }[] {
  const share = (index: number): number => inBillionths(measured.colours[index]?.share ?? 0);
  const mostFirst = [...colours.entries()].sort(
    ([one, { colour }], [other, { colour: otherColour }]) =>
      share(other) - share(one) || byLook(colour, otherColour),
  );
  return measured.roles.flatMap(({ role }) => {
    const most = mostFirst.find(([, colour]) => colour.role === role);
    return most ? [{ role, colour: most[0] }] : [];
  });
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
  return { title: `Give ${quoted(object.name)} the colour ${quoted(name)}`, edits };
}

/** Which of two has the lower cost, figure by figure; sums of the same areas may differ in their last digits. */
export function isCheaper(one: readonly number[], other: readonly number[]): boolean {
  for (const [at, figure] of one.entries()) {
    const difference = figure - (other[at] ?? 0);
    if (Math.abs(difference) > ROUNDING) return difference < 0;
  }
  return false;
}

const ROUNDING = 1e-9;
