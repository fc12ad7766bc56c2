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
    const [finding] = told(scene('outline (0, 20) (30, 60) (0, 60)'));
    expect(finding).toBeUndefined();
    expect(told(scene('outline (0, 60) (20, 20) (30, 50)'))[0]).toMatchObject({
      message: 'The border of `cloth` runs into the lower left corner of the canvas.',
      at: { x: 0, y: 60 },
      objects: [1],
    });
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
