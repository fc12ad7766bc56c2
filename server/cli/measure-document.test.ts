import { describe, expect, it } from 'vitest';
import { halves, measured } from '../../tests/support/command-line.js';

describe('measureDocument', () => {
  const halved = measured(halves);

  it('gives shares as parts of one', () => {
    expect(halved.objects.map(({ name, share, hiddenShare }) => [name, share, hiddenShare])).toEqual([
      ['left', 0.5, 0],
      ['quarter', 0.25, 0],
      ['gone', 0, 1],
    ]);
    expect(halved.objects[2]?.coveredBy).toEqual(['left']);
    expect(halved.values.bareShare).toBe(0.25);
    expect(halved.colours.named).toEqual([{ name: 'ink', colour: '#1a1a1a', role: 'dominant', share: 0.5 }]);
  });

  it('measures budgets against their targets', () => {
    expect(
      halved.values.budget.map(({ name, share, target, within }) => [name, share, target, within]),
    ).toEqual([
      ['dark', 0.5, 0.5, true],
      ['light', 0.5, 0.3, false],
    ]);
  });

  it('says null where nothing is seen of a dominant object, since JSON knows no infinity', () => {
    const hidden = measured(
      `${halves}object over\n  plane foreground\n  shape rectangle (0, 0) to (20, 10)\n  value 2\n`,
    );
    expect(hidden.focus?.dominants).toEqual([{ object: 'left', holds: false, distanceShare: null }]);
    expect(JSON.parse(JSON.stringify(hidden))).toEqual(hidden);
  });
});
