import { describe, expect, it } from 'vitest';
import { transferOf } from '../../measure/transfer/key-points.js';
import { worked } from '../test-plans.js';
import { pointMarks } from './point-marks.js';

/** So many hexagons in rows of ten, none over another. */
function hexagons(count: number): string {
  const objects = Array.from({ length: count }, (_, index) => {
    const [x, y] = [20 * (index % 10), 20 * Math.floor(index / 10)];
    return `object stone-${index}\n  shape outline (${x + 4}, ${y + 10}) (${x + 7}, ${y + 5}) (${x + 13}, ${y + 5}) (${x + 16}, ${y + 10}) (${x + 13}, ${y + 15}) (${x + 7}, ${y + 15})\n`;
  });
  return `canvas 200 x 200 cm\n${objects.join('')}`;
}

describe('points to measure off', () => {
  it.each([10, 90])('are numbered or counted, of %i objects', (count) => {
    const { plan } = worked(hexagons(count));
    const { marks, leftOut } = pointMarks(
      transferOf(plan).objects,
      (object) => `object:${object}`,
      (object) => `Stone ${object}`,
      {
        em: 2,
        picture: { x: 0, y: 0, width: 200, height: 200 },
        taken: [],
        ink: 'ink',
        paper: 'mount',
      },
    );
    const numbered = marks.filter(({ kind }) => kind === 'text').length;
    expect(numbered).toBeGreaterThan(0);
    expect(numbered + leftOut).toBe(6 * count);
  });
});
