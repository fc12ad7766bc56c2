import { describe, expect, it } from 'vitest';
import { planOf } from '../../tests/support/plan.js';
import { stockNames, stockSize } from './stock.js';

describe('stock sizes', () => {
  it('knows French stretcher numbers', () => {
    // Facts of the trade; three published listings agree on these rows.
    expect(stockSize('figure 20')).toEqual({ long: 73, short: 60, unit: 'cm' });
    expect(stockSize('Paysage 120')).toEqual({ long: 195, short: 114, unit: 'cm' });
    expect(stockSize('marine 0')).toEqual({ long: 18, short: 10, unit: 'cm' });
  });

  it('halves paper sizes as ISO 216 does', () => {
    // ISO 216:2007, tables of the A and B series, mm.
    const a = [1189, 841, 594, 420, 297, 210, 148, 105, 74, 52, 37];
    const b = [1414, 1000, 707, 500, 353, 250, 176, 125, 88, 62, 44];
    a.forEach((long, size) => expect(stockSize(`A${size}`)?.long).toBe(long));
    b.forEach((long, size) => expect(stockSize(`B${size}`)?.long).toBe(long));
    expect(stockSize('A10')).toEqual({ long: 37, short: 26, unit: 'mm' });
  });

  it('knows the sizes that are sold in inches, by their sides', () => {
    // Facts of the trade; sellers' published listings agree on these rows.
    expect(stockSize('16 x 20 in')).toEqual({ long: 20, short: 16, unit: 'in' });
    expect(stockSize('24 x 36 in')).toEqual({ long: 36, short: 24, unit: 'in' });
    expect(stockSize('14 x 18 in')).toEqual({ long: 18, short: 14, unit: 'in' });
    expect(stockSize('12 x 12 in')).toEqual({ long: 12, short: 12, unit: 'in' });
    expect(stockSize('17 x 20 in')).toBeUndefined();
  });

  it('are written in a plan by the names they are listed under', () => {
    for (const name of stockNames()) {
      const { canvas, problems } = planOf(`canvas  ${name}`);
      const { long, short, unit } = stockSize(name) ?? {};
      expect(problems).toEqual([]);
      expect([
        Math.max(canvas.width, canvas.height),
        Math.min(canvas.width, canvas.height),
        canvas.unit,
      ]).toEqual([long, short, unit]);
    }
  });

  it('knows no others', () => {
    expect(stockSize('figure 7')).toBeUndefined();
    expect(stockSize('A11')).toBeUndefined();
    expect(stockSize('napkin')).toBeUndefined();
  });

  it('reads every name it lists', () => {
    expect(stockNames().filter((name) => !stockSize(name))).toEqual([]);
    expect(new Set(stockNames()).size).toBe(stockNames().length);
    expect(stockNames()).toHaveLength(3 * 20 + 22 + 23 + 18);
  });
});
