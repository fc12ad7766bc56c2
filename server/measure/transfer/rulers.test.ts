import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inSixteenths, onRuler, ruled, rulerFor, worstRounding } from './rulers.js';

describe('lengths as they are read off a ruler', () => {
  it.each([
    [0, '0'],
    [5.375, '5 3/8'],
    [0.75, '3/4'],
    [12, '12'],
    [0.5 / 16, '1/16'],
    [0.49 / 16, '0'],
    [2 + 31.6 / 32, '3'],
    [-1.5, '-1 1/2'],
    [-0.01, '0'],
  ])('%f inches are %s', (inches, wanted) => {
    expect(inSixteenths(inches)).toBe(wanted);
  });

  it('are whole millimetres, in centimetres where the canvas is', () => {
    expect(ruled(123.4, 'mm')).toBe('123 mm');
    expect(ruled(123.4, 'cm')).toBe('12.3 cm');
    expect(ruled(120, 'cm')).toBe('12 cm');
    expect(ruled(136.525, 'in')).toBe('5 3/8 in');
  });

  it('go by the canvas, but no rule is marked in metres', () => {
    expect((['mm', 'cm', 'm', 'in'] as const).map((unit) => rulerFor({ unit }))).toEqual([
      'mm',
      'cm',
      'cm',
      'in',
    ]);
  });

  it('miss by half a mark at most, and say by how much', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1e5, noNaN: true }),
        fc.constantFrom('cm' as const, 'in' as const),
        (length, ruler) => {
          const off = Math.abs(onRuler(length, ruler) - length);
          expect(off).toBeLessThanOrEqual((ruler === 'in' ? 25.4 / 32 : 0.5) + 1e-9);
          expect(worstRounding([0, length], ruler)).toBe(off);
        },
      ),
    );
  });

  it('are fractions that can not be reduced, as near as a sixteenth can be', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 5000 }), (sixteenths) => {
        const text = inSixteenths(sixteenths / 16);
        const [, whole, part, of] = /^(?:(\d+) ?)??(?:(\d+)\/(\d+))?$/u.exec(text) ?? [];
        if (part !== undefined) expect(Number(part) % 2).toBe(1);
        expect(Number(whole ?? 0) * 16 + (16 * Number(part ?? 0)) / Number(of ?? 1)).toBe(sixteenths);
      }),
    );
  });
});
