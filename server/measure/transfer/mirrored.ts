import type { Point } from '../../plan/geometry/point.js';
import type { Canvas } from '../../plan/plan.js';
import type { TransferGrid } from './grid.js';
import type { KeyPoint, Transfer } from './key-points.js';
import type { PlaceKind } from './shape-points.js';

/**
 * What is measured off to carry a drawing over from the back, as through tracing paper or by a monotype: left and right
 * changed over. Squares keep their names, so that each holds the same piece of the picture, and points their numbers.
 */
export function mirroredTransfer(transfer: Transfer, { width }: Pick<Canvas, 'width'>): Transfer {
  const over = ({ x, y }: Point): Point => ({ x: width - x, y });
  const { grid, objects, places, divisions } = transfer;
  return {
    grid: mirroredGrid(grid, { width }),
    objects: objects.map((object) => ({
      ...object,
      pieces: object.pieces.map((piece) => ({
        ...piece,
        ...(piece.turn === undefined ? {} : { turn: piece.turn === 90 ? 90 : -piece.turn }),
        points: piece.points.map((point): KeyPoint => ({
          ...point,
          at: over(point.at),
          kind: OPPOSITE[point.kind] ?? point.kind,
          ...(point.edge === 'left' || point.edge === 'right'
            ? { edge: point.edge === 'left' ? 'right' : 'left' }
            : {}),
        })),
      })),
    })),
    places: places.map((place) => ({
      ...place,
      name:
        place.of === 'horizon'
          ? place.name.replace(/left|right/u, (side) => (side === 'left' ? 'right' : 'left'))
          : place.name,
      at: over(place.at),
    })),
    divisions: divisions.map(({ uprights, slopes, ...rest }) => ({
      ...rest,
      uprights: uprights.map((x) => width - x).reverse(),
      slopes: slopes.map(({ from, to }) => ({ from: over(to), to: over(from) })),
    })),
  };
}

/** The same grid seen from the back. */
export function mirroredGrid(grid: TransferGrid, { width }: Pick<Canvas, 'width'>): TransferGrid {
  return { ...grid, isMirrored: true, uprights: grid.uprights.map((x) => width - x).reverse() };
}

const OPPOSITE: Partial<Record<KeyPoint['kind'], PlaceKind>> = {
  leftmost: 'rightmost',
  rightmost: 'leftmost',
};
