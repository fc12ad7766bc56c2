import { describe, expect, it } from 'vitest';
import type { Point } from '../../plan/geometry/point.js';
import type { BorderStretch } from '../borders/borders.js';
import { type Exit, measureExits as exitsAmong } from './exits.js';

/** Sides 3 : 4, so that the diagonal is 50. */
const CANVAS = { width: 40, height: 30, diagonal: 50 };
const FOCUS = { x: 26, y: 20 };

/** Of borders of which one half belongs to one area in front, the other to another. */
function measureExits(
  canvas: typeof CANVAS,
  focus: Point | undefined,
  stretches: readonly BorderStretch[],
): readonly Exit[] {
  const half = Math.floor(stretches.length / 2);
  const byFront = [stretches.slice(0, half), stretches.slice(half)].map((own, front) => ({
    front,
    stretches: own,
  }));
  return exitsAmong(canvas, focus, { stretches, byFront });
}

interface Line {
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
  readonly pull: number;
  readonly front?: number;
}

/** Straight borders cut into stretches of at most half a percent of the diagonal. */
function borders(...lines: readonly Line[]): readonly BorderStretch[] {
  return lines.flatMap(({ from: [ax, ay], to: [bx, by], pull, front = 0 }) => {
    const whole = Math.hypot(bx - ax, by - ay);
    const count = Math.ceil(whole / 0.25);
    const turn = Math.atan2(by - ay, bx - ax);
    return Array.from({ length: count }, (_, i): BorderStretch => {
      const part = (i + 0.5) / count;
      return {
        at: { x: ax + (bx - ax) * part, y: ay + (by - ay) * part },
        length: whole / count,
        direction: ((turn % Math.PI) + Math.PI) % Math.PI,
        front,
        behind: -1,
        valueContrast: pull,
        colourContrast: 0,
        sharpness: 1,
        pull,
      };
    });
  });
}

/** A quiet shape at the focal point, and enough other quiet borders that a strong one is a small part of all. */
const QUIET: readonly Line[] = [
  { from: [24, 20], to: [28, 20], pull: 0.2, front: 1 },
  ...[8, 10, 12, 14].map((y): Line => ({ from: [10, y], to: [30, y], pull: 0.1, front: 2 })),
  { from: [10, 8], to: [10, 28], pull: 0.1, front: 2 },
];

const WAY_OUT: Line = { from: [20, 15], to: [0, 5], pull: 0.5 };

function found(...lines: readonly Line[]) {
  return measureExits(CANVAS, FOCUS, borders(...QUIET, ...lines));
}

function mirrored(stretches: readonly BorderStretch[]): readonly BorderStretch[] {
  return stretches.map((stretch) => ({
    ...stretch,
    at: { x: 40 - stretch.at.x, y: stretch.at.y },
    direction: (Math.PI - stretch.direction) % Math.PI,
  }));
}

describe('a strong border that runs out of the picture', () => {
  it('is told with where it leaves and how long it runs straight to there', () => {
    const [exit, ...others] = found(WAY_OUT);
    expect(others).toEqual([]);
    expect(exit).toMatchObject({ side: 'left', areas: [0, -1] });
    expect(exit?.at.x).toBeCloseTo(0, 9);
    expect(exit?.at.y).toBeCloseTo(5, 9);
    expect(exit?.pull).toBeCloseTo(0.5, 9);
    expect(exit?.length).toBeCloseTo(Math.hypot(20, 10), 0);
    expect(exit?.heading).toBeCloseTo((Math.atan2(-10, -20) * 180) / Math.PI, 6);
    expect(exit?.corner).toBeUndefined();
  });

  it('is told at the corner it runs into', () => {
    expect(found({ ...WAY_OUT, to: [0, 1] })[0]?.corner).toBe('upper left');
  });

  it.each<[string, readonly Line[]]>([
    ['when it is no stronger than what surrounds the focal point', [{ ...WAY_OUT, pull: 0.2 }]],
    ['when it is short: 15 % of the diagonal are 7.5', [{ from: [6, 8], to: [0, 5], pull: 0.5 }]],
    ['when it does not reach the edge', [{ ...WAY_OUT, to: [2, 6] }]],
    ['when it runs along the edge', [{ from: [20, 1.2], to: [1, 0], pull: 0.5 }]],
    [
      'when it bends by more than 15 degrees',
      [
        { from: [6, 15], to: [4, 9], pull: 0.5 },
        { from: [4, 9], to: [0, 5], pull: 0.5 },
      ],
    ],
    [
      'when something half as strong stands across it',
      [WAY_OUT, { from: [2, 3], to: [2, 8], pull: 0.25, front: 3 }],
    ],
    [
      'when it is one with a border that runs out at the other side, as a horizon is',
      [
        { from: [12, 10], to: [0, 10], pull: 0.5 },
        { from: [28, 10.5], to: [40, 10.5], pull: 0.5 },
      ],
    ],
    ['when it leads towards the focal point', [{ from: [1, 27.4], to: [10, 30], pull: 0.5 }]],
  ])('is left alone %s', (_, lines) => {
    expect(found(...lines)).toEqual([]);
  });

  it('is told of one half of a horizon that has no other half', () => {
    expect(found({ from: [12, 10], to: [0, 10], pull: 0.5 })).toHaveLength(1);
  });

  it('is not stopped by what is weaker, farther off or runs beside it', () => {
    expect(found(WAY_OUT, { from: [2, 3], to: [2, 8], pull: 0.24, front: 3 })).toHaveLength(1);
    expect(found(WAY_OUT, { from: [5, 3], to: [5, 10], pull: 0.4, front: 3 })).toHaveLength(1);
    expect(found(WAY_OUT, { from: [10, 9], to: [0.5, 4], pull: 0.4, front: 3 })).toHaveLength(1);
  });

  it('is a part of the strongest only: more than a tenth of all borders may not pull more', () => {
    const hard: readonly Line[] = [30, 32, 34].map((x) => ({
      from: [x, 4],
      to: [x, 12],
      pull: 0.9,
      front: 4,
    }));
    expect(found(WAY_OUT, ...hard)).toEqual([]);
  });

  it('is not looked for without a focal point, or with nothing at it', () => {
    const stretches = borders(...QUIET, WAY_OUT);
    expect(measureExits(CANVAS, undefined, stretches)).toEqual([]);
    expect(measureExits(CANVAS, { x: 39, y: 29 }, stretches)).toEqual([]);
    expect(measureExits(CANVAS, FOCUS, [])).toEqual([]);
  });

  it('is the same mirrored, and at any size', () => {
    const stretches = borders(...QUIET, WAY_OUT);
    const flip = ({ x, y }: Point): Point => ({ x: 40 - x, y });
    const [plain] = measureExits(CANVAS, FOCUS, stretches);
    const [other] = measureExits(CANVAS, flip(FOCUS), mirrored(stretches));
    expect(other?.side).toBe('right');
    expect(other?.at.x).toBeCloseTo(40 - (plain?.at.x ?? NaN), 9);
    expect(other?.length).toBeCloseTo(plain?.length ?? NaN, 9);
    const grown = stretches.map((one) => ({
      ...one,
      at: { x: one.at.x * 3, y: one.at.y * 3 },
      length: one.length * 3,
    }));
    const [large] = measureExits({ width: 120, height: 90, diagonal: 150 }, { x: 78, y: 60 }, grown);
    expect(large?.length).toBeCloseTo(3 * (plain?.length ?? NaN), 6);
  });
});
