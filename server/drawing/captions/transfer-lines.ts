import { transferGridOf } from '../../measure/transfer/grid.js';
import { type Transfer, transferOf } from '../../measure/transfer/key-points.js';
import { counted } from '../../findings/words/words.js';
import { pathMark } from '../marks.js';
import { circlePath, linePath } from '../path-data.js';
import { isPartlyCovered } from '../transfer/line-drawing.js';
import { gridInWords } from '../transfer/words.js';
import type { Token } from '../scene.js';
import type { Reading } from '../views/reading.js';
import type { LegendLine } from './legend.js';
import { divisionLines, horizonLine, level, stroked } from './legend-lines.js';

/** The squares and how they are named, the points, and what the other lines are. */
export function transferLines(reading: Reading, leftOut: number): readonly LegendLine[] {
  const { plan, isMirrored } = reading;
  const transfer = transferOf(plan);
  return [
    ...(isMirrored
      ? [{ key: 'mirrored', text: 'left and right changed over, to be carried over from the back' }]
      : []),
    gridLine(reading, transfer),
    ...pointLines(transfer, leftOut),
    ...coveredLine(reading),
    ...horizonLine(reading),
    ...divisionLines(reading),
    ...leadLine(reading),
    ...focusLine(reading),
  ];
}

/** The grid that a plan states, over its drawing. */
export function statedGridLine(reading: Reading): readonly LegendLine[] {
  if (reading.plan.transferGrid === undefined) return [];
  const line = gridLine(reading, { grid: transferGridOf(reading.plan) }, 'quiet');
  return [{ ...line, text: `transfer grid: ${line.text}` }];
}

function gridLine(
  { plan, isMirrored }: Reading,
  { grid }: Pick<Transfer, 'grid'>,
  ink: Token = 'hint',
): LegendLine {
  const squares = gridInWords(grid, plan.canvas);
  const from = `lettered from the ${isMirrored ? 'right' : 'left'}, numbered from the top`;
  const stated = grid.isStated ? '' : `; to keep it, write ‘${grid.line}’`;
  return {
    key: 'transfer-grid',
    text: `${squares}, ${from}${stated}`,
    sign: (x, y, side) => [
      stroked(
        'transfer-grid',
        [0.25, 0.75]
          .flatMap((part) => [
            linePath([
              { x: x + part * side, y },
              { x: x + part * side, y: y + side },
            ]),
            linePath([
              { x, y: y + part * side },
              { x: x + side, y: y + part * side },
            ]),
          ])
          .join(''),
        { ink, weight: 'fine' },
      ),
    ],
  };
}

function pointLines({ objects }: Transfer, leftOut: number): readonly LegendLine[] {
  if (objects.length === 0) return [];
  const more =
    leftOut === 0
      ? ''
      : `; ${counted(leftOut)} ${leftOut === 1 ? 'has no room for its number' : 'have no room for a number'}`;
  return [
    {
      key: 'points',
      text: `points to measure off, numbered in each object${more}`,
      sign: (x, y, side) => [
        pathMark('legend:points', circlePath({ x: x + side / 2, y: y + side / 2 }, 0.16 * side), {
          fill: 'ink',
        }),
      ],
    },
  ];
}

function coveredLine({ measures }: Reading): readonly LegendLine[] {
  if (!measures.objects.some(isPartlyCovered)) return [];
  return [
    {
      key: 'covered',
      text: 'dotted: covered by what is in front',
      sign: (x, y, side) => [
        stroked('covered', level(x, y + side / 2, side), { ink: 'ink', weight: 'medium', dash: 'dotted' }),
      ],
    },
  ];
}

function leadLine({ plan }: Reading): readonly LegendLine[] {
  if (plan.leads.length === 0) return [];
  return [
    {
      key: 'lead',
      text: plan.leads.length === 1 ? 'lead' : 'leads',
      sign: (x, y, side) => [
        stroked('lead', level(x, y + side / 2, side), { ink: 'ink', weight: 'fine', dash: 'long' }),
      ],
    },
  ];
}

function focusLine({ plan }: Reading): readonly LegendLine[] {
  if (plan.focus === undefined) return [];
  return [
    {
      key: 'focus',
      text: 'focal point',
      sign: (x, y, side) => [
        stroked('focus', circlePath({ x: x + side / 2, y: y + side / 2 }, 0.36 * side), {
          ink: 'ink',
          weight: 'fine',
        }),
      ],
    },
  ];
}
