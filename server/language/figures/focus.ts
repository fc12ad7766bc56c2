import { length, percent } from '../../findings/words/words.js';
import type { FocalEmphasis } from '../../measure/emphasis/emphasis.js';
import type { Plan } from '../../plan/plan.js';
import type { Snapshot } from '../snapshot.js';
import type { Style } from '../style.js';
import { type Paragraphs, prose } from './paragraphs.js';
import { areaName } from '../../measure/areas/area-words.js';

/** Where the focal point lies, how far from the nearest crossing and from the middle, and how it stands among the strong places. */
export function focusFigures({ plan, measures }: Snapshot, style: Style): Paragraphs {
  const { focus, canvas } = plan;
  if (focus === undefined || measures.focus === undefined) return [];
  const { nearest, fromCentre } = measures.focus;
  const crossing =
    nearest === undefined
      ? 'No crossing of the divisions is near.'
      : `Nearest crossing: ${nearest.crossing.name} of ${nearest.system}, ${length(nearest.distance, canvas)} away` +
        ` (${percent(nearest.distanceShare)} of the diagonal).`;
  const { focal } = measures.emphasis;
  return [
    style.text(
      `The focal point lies ${length(focus.at.x, canvas)} from the left and ${length(focus.at.y, canvas)} from the top.`,
    ),
    style.text(crossing),
    style.text(`${percent(fromCentre)} of the diagonal from the middle of the canvas.`),
    ...(focal === undefined ? [] : rankFigures(plan, focal).map((words) => prose(words, style))),
  ];
}

function rankFigures(plan: Plan, { strength, rank, elsewhere, areas }: FocalEmphasis): readonly string[] {
  if (strength <= 0)
    return plan.objects.length === 0 ? [] : ['No border marks the focal point: nothing there draws the eye.'];
  const [next] = elsewhere;
  const there = `It draws the eye most where ${areaName(plan, areas[0])} meets ${areaName(plan, areas[1])}.`;
  const place =
    rank === 1
      ? 'It is the strongest place of the picture.'
      : `It is number ${rank} of the strong places of the picture.`;
  const other =
    next === undefined
      ? ''
      : ` ${rank === 1 ? 'The next' : 'The strongest'}, where ${areaName(plan, next.areas[0])} meets ${areaName(plan, next.areas[1])}, is ${percent(next.strength / strength)} as strong.`;
  return [`${place}${other}`, there];
}

/** By which means the focal point wins the eye, those that the plan states first. */
export function meansFigures({ measures }: Snapshot, style: Style): Paragraphs {
  const means = measures.emphasis.focal?.means ?? [];
  if (means.length === 0) return [];
  const line = ({ means: name, holds, inWords }: (typeof means)[number]): string =>
    `${style.strong(name)} ${style.text(holds ? 'holds:' : 'does not hold:')} ${prose(inWords, style)}`;
  const stated = means.filter((each) => each.stated);
  const others = means.filter((each) => !each.stated && each.holds);
  return [
    ...(stated.length === 0 ? [] : [style.list(stated.map(line))]),
    ...(others.length === 0
      ? []
      : [style.text('It wins by more than is stated:'), style.list(others.map(line))]),
  ];
}
