import { describe, expect, it } from 'vitest';
import { checked, mended } from '../../../tests/support/plan.js';
import type { Finding } from '../finding.js';

function told(text: string): readonly Finding[] {
  return checked(text).findings.filter(({ rule }) => rule === 'filled corner');
}

const scene = (shape: string) => `canvas  80 x 60 cm
object  wall
  plane   background
  shape   rectangle (0, 0) to (80, 60)
  value   4
object  cloth
  shape   ${shape}
  value   2`;

describe('filled corner', () => {
  it('tells the corner and the object', () => {
    expect(told(scene('outline (0, 60) (20, 20) (30, 50)'))[0]).toMatchObject({
      message: 'The border of `cloth` runs into the lower left corner of the canvas.',
      at: { x: 0, y: 60 },
      objects: [1],
    });
  });

  it.each([
    [
      'in one straight line',
      'outline (0, 40) (30, 60) (0, 60)',
      'cuts off the lower left corner of the canvas in one straight line.',
    ],
    [
      'also when it goes on beyond the edges',
      'outline (-15, 30) (45, 70) (-15, 70)',
      'cuts off the lower left corner of the canvas in one straight line.',
    ],
    [
      'as a rectangle',
      'rectangle (50, -5) to (90, 15)',
      'fills the upper right corner of the canvas exactly, as a rectangle.',
    ],
  ])('tells a thing that takes a corner %s', (_, shape, words) => {
    expect(told(scene(shape)).map(({ message }) => message)).toEqual([`\`cloth\` ${words}`]);
  });

  it.each([
    [
      '0.2 % of the diagonal off the straight line',
      (off: number) => `outline (0, 40) (${15 + 0.55 * off}, ${50 - 0.83 * off}) (30, 60) (0, 60)`,
    ],
    [
      '0.2 % of the diagonal off the rectangle',
      (off: number) => `outline (0, 40) (15, ${40 - off}) (30, 40) (30, 60) (0, 60)`,
    ],
  ])('tells what is no more than %s', (_, shape) => {
    expect([0.19, 0.21].map((off) => told(scene(shape(off))).length)).toEqual([1, 0]);
  });

  it('moves a box out of it, and says of one that can’t be moved where it may be broken', () => {
    const text = scene('rectangle (60, 45) to (80, 60)');
    const [finding] = told(text);
    expect(finding?.advice).toMatch(/^Move `cloth` [\d.]+ cm .*, which takes it out of the corner\.$/);
    expect(finding?.fix).toBeDefined();
    if (finding?.fix) expect(told(mended(text, finding.fix))).toEqual([]);
    expect(told(scene('rectangle (60, 10) to (80, 60)'))).toEqual([]);
    const wedged =
      scene('rectangle (0, 40) to (20, 60)') +
      '\nobject  post\n  shape   rectangle (20, 30) to (22, 60)\n  value   1' +
      '\nobject  lid\n  shape   rectangle (2, 34) to (20, 40)\n  value   1';
    expect(told(wedged)[0]?.advice).toBe('Bend or break one side of that rectangle, by 2 cm or more.');
  });

  it('moves a thing out of it, and says of a ground where it may end instead', () => {
    const text = scene('outline (0, 60) (20, 20) (30, 50)');
    const [finding] = told(text);
    expect(finding?.advice).toMatch(/^Move `cloth` [\d.]+ cm .*, which takes it out of the corner\.$/);
    expect(finding?.fix).toBeDefined();
    if (finding?.fix) expect(told(mended(text, finding.fix))).toEqual([]);
    expect(told(scene('outline (0, 0) (40, 30) (40, 60) (0, 60)'))[0]?.advice).toBe(
      'Let it end 2 cm or more beside the corner, on the top edge or on the left edge.',
    );
  });
});
