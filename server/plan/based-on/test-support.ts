import type { Colour } from '../colour/colour.js';
import type { Plan } from '../plan.js';

function written({ notation }: Colour): string {
  return 'text' in notation ? notation.text : notation.kind;
}

/** What a plan comes to, one fact a line, without where it stands. */
export function facts(plan: Plan): readonly string[] {
  const nameOf = (index: number): string => plan.objects[index]?.name ?? '?';
  return [
    `title ${plan.title?.value ?? 'none'}`,
    `canvas ${plan.canvas.width} x ${plan.canvas.height}`,
    `ground ${written(plan.canvas.ground.colour)}`,
    `divide ${plan.divisions.map(({ system }) => system).join(', ')}`,
    `focus ${plan.focus ? `${plan.focus.at.x.toFixed(1)}, ${plan.focus.at.y.toFixed(1)} by ${plan.focus.winBy.map(({ value }) => value).join(', ')}` : 'none'}`,
    `steps ${plan.scale.steps}`,
    `value budget ${(plan.valueBudget?.shares ?? []).map(({ key, target }) => `${key} ${target}`).join(', ')}`,
    `colour budget ${(plan.colourBudget?.shares ?? []).map(({ key, target }) => `${key} ${target}`).join(', ')}`,
    ...plan.cues.map(({ value, carriedBy }) => `cue ${value} by ${carriedBy.map(nameOf).join(', ')}`),
    ...plan.colours.map(({ name, role, colour }) => `colour ${name} ${written(colour)} ${role ?? ''}`.trim()),
    ...plan.objects.map(
      ({ name, role, plane, outline: { box }, colour, step, edges, edgesAgainst }) =>
        `object ${[
          name,
          role ?? '-',
          plane,
          [box.left, box.top, box.right, box.bottom].map((side) => side.toFixed(1)).join(' '),
          colour ? written(colour.colour) : '-',
          step ?? '-',
          edges,
          ...edgesAgainst.map((one) => `${one.edges} against ${one.objects.map(nameOf).join(' ')}`),
        ].join(', ')}`,
    ),
    ...plan.leads.map(
      ({ name, points }) =>
        `lead ${name} ${points.map(({ x, y }) => `${x.toFixed(0)} ${y.toFixed(0)}`).join(', ')}`,
    ),
    `path ${(plan.path?.value ?? []).map(nameOf).join(', ')}`,
    ...(plan.palette?.paints ?? []).map(({ name, index }) => `paint ${name} ${index ?? '-'}`),
    `mother ${plan.palette?.mother?.value ?? 'none'}`,
    ...plan.sittings.map(
      ({ title, date, works, layer }) =>
        `sitting ${title} ${date ?? '-'} ${works.map(nameOf).join(' ')} ${layer?.value ?? '-'}`,
    ),
  ];
}
