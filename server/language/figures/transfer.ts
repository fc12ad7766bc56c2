import { t } from '../../../grammar/index.js';
import { gridInWords } from '../../drawing/transfer/words.js';
import { percent } from '../../findings/words/words.js';
import { transferGridOf } from '../../measure/transfer/grid.js';
import { ruled, rulerFor } from '../../measure/transfer/rulers.js';
import { isOnLine } from '../../plan/based-on/here.js';
import type { Snapshot } from '../snapshot.js';
import type { Style } from '../style.js';
import type { Paragraphs } from './paragraphs.js';

/** How many squares a grid has, of what size, and where the first lines are drawn. */
export function gridFigures({ plan }: Snapshot, line: number, style: Style): Paragraphs {
  const { canvas, transferGrid } = plan;
  if (transferGrid === undefined || !isOnLine(transferGrid.location, line)) return [];
  const grid = transferGridOf(plan);
  const ruler = rulerFor(canvas);
  const told = (length: number | undefined) => ruled((length ?? 0) * canvas.millimetresPerUnit, ruler);
  const isSquare = Math.abs(grid.square.width / grid.square.height - 1) < 1e-9;
  return [
    style.text(t('{0}, lettered from the left, numbered from the top.', gridInWords(grid, canvas, ruler))),
    ...(isSquare
      ? []
      : [
          style.text(
            t('They are not square: so are those on the sketch, where it has the canvas’s proportion.'),
          ),
        ]),
    style.text(
      t(
        'The first lines lie {0} from the left and {1} from the top.',
        told(grid.uprights[1]),
        told(grid.levels[1]),
      ),
    ),
  ];
}

/** How a sketch lies to the canvas. */
export function sketchFigures({ measures: { sketch } }: Snapshot, style: Style): Paragraphs {
  switch (sketch?.is) {
    case 'measured': {
      const { width, height, stretch, isTooWide } = sketch;
      const sides = [width, height] as const;
      if (stretch < 0.0005)
        return [style.text(t('{0} × {1} pixels, in the proportion of the canvas.', ...sides))];
      return [
        style.text(
          isTooWide
            ? t('{0} × {1} pixels, {2} too wide for the canvas.', ...sides, percent(stretch))
            : t('{0} × {1} pixels, {2} too high for the canvas.', ...sides, percent(stretch)),
        ),
      ];
    }
    case 'squared up':
      return [style.text(t('Its corners say which part of it is the picture.'))];
    default:
      return [];
  }
}
