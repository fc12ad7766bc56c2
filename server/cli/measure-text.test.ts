import { describe, expect, it } from 'vitest';
import { halves, measured } from '../../tests/support/command-line.js';
import { measureText } from './measure-text.js';

describe('measureText', () => {
  const text = measureText(measured(halves), false);

  it('heads the sheet with title, size and ground', () => {
    expect(text).toMatch(/^Halves\n20 x 10 cm, ground #ffffff, value 10\n/);
  });

  it('lists crossings, objects and budgets in columns', () => {
    expect(text).toContain('upper left    6.67 cm from the left  3.33 cm from the top');
    expect(text).toMatch(/^ {2}left +dominant +middle +1 +ink +50\.0 %$/m);
    expect(text).toMatch(/^ {2}gone +background +3 +#\w{6} +0\.0 % +100\.0 % +left$/m);
    expect(text).toMatch(/^ {2}dark +50\.0 % +50\.0 % +5\.0 % +kept$/m);
    expect(text).toMatch(/^ {2}light +50\.0 % +30\.0 % +5\.0 % +20\.0 % too much$/m);
    expect(text).toContain('at the upper left crossing of thirds');
    expect(text).toContain('`left` holds it');
  });

  it('says what is bare and what is without a value', () => {
    expect(text).toContain('bare ground 25.0 %');
    const unplanned = measureText(
      measured('canvas 9 x 9 cm\nobject a\n  shape rectangle (0, 0) to (9, 9)\n'),
      false,
    );
    expect(unplanned).toContain('without value or colour 100.0 %');
    expect(unplanned).toMatch(/^Untitled plan\n/);
  });
});
