import { t } from '../../../grammar/index.js';
import { length, percent } from '../../findings/words/words.js';
import type { FocalEmphasis } from '../../measure/emphasis/emphasis.js';
import type { Plan } from '../../plan/plan.js';
import type { Snapshot } from '../snapshot.js';
import type { Style } from '../style.js';
import { type Paragraphs, prose } from './paragraphs.js';
import { meeting } from '../../measure/areas/area-words.js';

/**
 * Where the focal point lies, how far from the nearest crossing and from the middle, and how it stands among the strong
 * places.
 */
export function focusFigures({ plan, measures }: Snapshot, style: Style): Paragraphs {
  const { focus, canvas } = plan;
  if (focus === undefined || measures.focus === undefined) return [];
  const { nearest, fromCentre } = measures.focus;
  const crossing =
    nearest === undefined
      ? t('No crossing of the divisions is near.')
      : t(
          'Nearest crossing: {0} of {1}, {2} away ({3} of the diagonal).',
          nearest.crossing.name,
          nearest.system,
          length(nearest.distance, canvas),
          percent(nearest.distanceShare),
        );
  const { focal } = measures.emphasis;
  return [
    style.text(
      t(
        'The focal point lies {0} from the left and {1} from the top.',
        length(focus.at.x, canvas),
        length(focus.at.y, canvas),
      ),
    ),
    style.text(crossing),
    style.text(t('{0} of the diagonal from the middle of the canvas.', percent(fromCentre))),
    ...(focal === undefined ? [] : rankFigures(plan, focal).map((words) => prose(words, style))),
  ];
}

function rankFigures(plan: Plan, { strength, rank, elsewhere, areas }: FocalEmphasis): readonly string[] {
  if (strength <= 0)
    return plan.objects.length === 0
      ? []
      : [t('No border marks the focal point: nothing there draws the eye.')];
  const [next] = elsewhere;
  const there = t('It draws the eye most where {0}.', meeting(plan, areas));
  const place =
    rank === 1
      ? t('It is the strongest place of the picture.')
      : t('It is number {0} of the strong places of the picture.', rank);
  if (next === undefined) return [place, there];
  const other = [meeting(plan, next.areas), percent(next.strength / strength)] as const;
  const against =
    rank === 1
      ? t('The next, where {0}, is {1} as strong.', ...other)
      : t('The strongest, where {0}, is {1} as strong.', ...other);
  return [`${place} ${against}`, there];
}

/** By which means the focal point wins the eye, those that the plan states first. */
export function meansFigures({ measures }: Snapshot, style: Style): Paragraphs {
  const means = measures.emphasis.focal?.means ?? [];
  if (means.length === 0) return [];
  const line = ({ means: name, holds, inWords }: (typeof means)[number]): string =>
    `${style.strong(name)} ${style.text(holds ? t('holds:') : t('does not hold:'))} ${prose(inWords, style)}`;
  const stated = means.filter((each) => each.stated);
  const others = means.filter((each) => !each.stated && each.holds);
  return [
    ...(stated.length === 0 ? [] : [style.list(stated.map(line))]),
    ...(others.length === 0
      ? []
      : [style.text(t('It wins by more than is stated:')), style.list(others.map(line))]),
  ];
}
