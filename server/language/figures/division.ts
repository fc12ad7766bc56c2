import { t } from '../../../grammar/index.js';
import { counted, length, percent } from '../../findings/words/words.js';
import { isOnLine } from '../../plan/based-on/here.js';
import type { Canvas, Division } from '../../plan/plan.js';
import { inWords, plainNumber } from '../../plan/problems.js';
import type { Snapshot } from '../snapshot.js';
import type { Style } from '../style.js';
import type { Paragraphs } from './paragraphs.js';

/**
 * Where the lines of the systems on a `divide` line lie, how many crossings they make, and which is nearest to the
 * focal point.
 */
export function divisionFigures({ plan, measures }: Snapshot, line: number, style: Style): Paragraphs {
  const systems = plan.divisions.filter(({ location }) => isOnLine(location, line));
  if (systems.length === 0) return [];
  const nearest = measures.focus?.nearest;
  const own = systems.some(({ system }) => system === nearest?.system) ? nearest : undefined;
  return [
    style.list(
      systems.map(
        (division) =>
          `${style.strong(division.system)} ${style.text(`${linesInWords(division, plan.canvas)}; ${crossings(division)}`)}`,
      ),
    ),
    ...(own === undefined
      ? []
      : [
          style.text(
            t(
              'The focal point is {0} from the nearest crossing, {1} of {2} ({3} of the diagonal).',
              length(own.distance, plan.canvas),
              own.crossing.name,
              own.system,
              percent(own.distanceShare),
            ),
          ),
        ]),
  ];
}

/** `lines 34.4 and 55.6 cm from the left, 22.9 and 37.1 cm from the top, and 2 that slope` */
function linesInWords({ lines }: Division, { unit }: Canvas): string {
  const upright = lines.filter(({ from, to }) => from.x === to.x).map(({ from }) => from.x);
  const level = lines.filter(({ from, to }) => from.y === to.y).map(({ from }) => from.y);
  const sloping = lines.length - upright.length - level.length;
  const told = (distances: readonly number[]): string =>
    `${inWords([...new Set(distances.map((each) => plainNumber(each, 2)))])} ${unit}`;
  const lists = [
    ...(upright.length === 0 ? [] : [t('{0} from the left', told(upright))]),
    ...(level.length === 0 ? [] : [t('{0} from the top', told(level))]),
    ...(sloping === 0 ? [] : [sloping === 1 ? t('one that slopes') : t('{0} that slope', counted(sloping))]),
  ];
  return t('lines {0}', lists.join(', '));
}

function crossings({ crossings: { length: count } }: Division): string {
  if (count === 0) return t('no crossings');
  return count === 1 ? t('one crossing') : t('{0} crossings', counted(count));
}
