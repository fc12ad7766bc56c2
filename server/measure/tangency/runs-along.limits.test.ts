import { describe, expect, it } from 'vitest';
import { planOf } from '../../../tests/support/plan.js';
import { runsAlong } from './runs-along.js';

/** On a canvas whose diagonal is 100 cm, so that a centimetre is one per cent of it; common practice, no source. */
function runAlong(one: string, other: string): boolean {
  const { canvas, objects } = planOf(
    `canvas  80 x 60 cm\nobject  wall\n  shape   ${one}\nobject  shed\n  shape   ${other}\n`,
  );
  const [wall, shed] = objects;
  return wall !== undefined && shed !== undefined && runsAlong(wall.outline, shed.outline, canvas);
}

describe('two shapes run along each other', () => {
  const wall = 'rectangle (10, 10) to (30, 30)';

  it('within 0.8 % of the diagonal', () => {
    const shed = (apart: number) => `rectangle (${30 + apart}, 10) to (50, 30)`;
    expect([0.75, 0.85].map((apart) => runAlong(wall, shed(apart)))).toEqual([true, false]);
  });

  it('for three tenths of the extent of the smaller', () => {
    // The wall is 28.3 cm from corner to corner; round its corner there is 1.1 cm more within reach.
    const shed = (beside: number) => `rectangle (30.4, ${30 - beside}) to (40, 50)`;
    expect([7.8, 6.9].map((beside) => runAlong(wall, shed(beside)))).toEqual([true, false]);
  });
});
