import { describe, expect, it } from 'vitest';
import type { BudgetBars } from '../../../server/drawing/scene.js';
import { budgetChanges } from './budget-changes.js';

const bars = (dark: number, within: boolean, light: number): readonly BudgetBars[] => [
  {
    of: 'value',
    tolerance: 0.05,
    bars: [
      { key: 'dark', name: 'dark', target: 0.3, share: dark, within, swatches: [] },
      { key: 'light', name: 'light', target: 0.1, share: light, within: true, swatches: [] },
    ],
  },
];

describe('what a change does to the budgets', () => {
  it('is told where it can be read off the bars', () => {
    expect(budgetChanges(bars(0.3, true, 0.1), bars(0.341, true, 0.104))).toEqual(['dark 30 % → 34 %']);
    expect(budgetChanges(bars(0.3, true, 0.1), bars(0.301, true, 0.1))).toEqual([]);
  });

  it('tells shares of values and of colours apart', () => {
    const colours = bars(0.3, true, 0.1).map((each) => ({ ...each, of: 'colour' as const }));
    const later = bars(0.4, true, 0.1).map((each) => ({ ...each, of: 'colour' as const }));
    expect(budgetChanges(colours, later)).toEqual(['dark colour 30 % → 40 %']);
  });

  it('says when a share comes to be as wanted, or no more', () => {
    expect(budgetChanges(bars(0.3, true, 0.1), bars(0.4, false, 0.1))).toEqual([
      'dark 30 % → 40 %, not as wanted now',
    ]);
    expect(budgetChanges(bars(0.4, false, 0.1), bars(0.3, true, 0.1))).toEqual([
      'dark 40 % → 30 %, as wanted now',
    ]);
  });
});
