import type { Plan } from '../../plan/plan.js';
import { plainNumber } from '../../plan/problems.js';
import { quoted } from '../words/words.js';
import { type Change, type Compared, changeOf, places } from './change.js';

/** What differs in the sketch and the grid for transfer, which are beside the picture. */
export function besideChanges({ earlier, later }: Compared): readonly Change[] {
  const [before, now] = [earlier.plan, later.plan];
  return [
    ...changeOf(
      'canvas',
      [before.sketch?.file, now.sketch?.file],
      {
        new: (file) => `There is a sketch now, ${quoted(file)}.`,
        gone: (file) => `There is no sketch any more; it was ${quoted(file)}.`,
        changed: (file, old) => `The sketch is ${quoted(file)} instead of ${quoted(old)}.`,
      },
      places(before.sketch?.location, now.sketch?.location),
    ),
    ...changeOf(
      'canvas',
      [gridText(before), gridText(now)],
      {
        new: (grid) => `There is a grid for transfer now: ${grid}.`,
        gone: () => 'There is no grid for transfer any more.',
        changed: (grid, old) => `The grid for transfer is ${grid} instead of ${old}.`,
      },
      places(before.transferGrid?.location, now.transferGrid?.location),
    ),
  ];
}

function gridText({ transferGrid, canvas }: Plan): string | undefined {
  if (transferGrid === undefined) return undefined;
  const { value } = transferGrid;
  return 'every' in value
    ? `a line every ${plainNumber(value.every, 2)} ${canvas.unit}`
    : `${value.columns} by ${value.rows}`;
}
