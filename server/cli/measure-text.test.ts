import { describe, expect, it } from 'vitest';
import { halves, measured } from '../../tests/support/command-line.js';
import { measureText } from './measure-text.js';

describe('measureText', () => {
  const text = measureText(measured(halves), false);

  it('heads the sheet with title, size and ground', () => {
    expect(text).toMatch(/^Halves\n20 x 10 cm, 1 : 2, ground #ffffff, value 10\n/);
  });

  it.each([
    ['figure 20', 'figure 20, 73 x 60 cm, '],
    ['73 x 60 cm', 'figure 20, 73 x 60 cm, '],
    ['60 x 73 cm', 'figure 20, 60 x 73 cm, '],
    ['210 x 297 mm', 'A4, 210 x 297 mm, '],
    ['18 x 14 in', '18 x 14 in, a stock size, '],
    ['406 x 508 mm', '16 x 20 in, 406 x 508 mm, '],
    ['74 x 57 cm', '74 x 57 cm, ground '],
  ])('heads a canvas of %s with %s', (canvas, heading) => {
    expect(
      measureText(measured(`canvas ${canvas}\n`), false)
        .split('\n')[1]
        ?.startsWith(heading),
    ).toBe(true);
  });

  it('tells at what angle leads arrive', () => {
    const leads = 'lead    lane from left edge at 50% to focus\nlead    drip from top edge at 25% to focus\n';
    const street = `canvas  40 x 40 cm\nfocus   (10, 20)\n${leads}`;
    expect(measureText(measured(street), false)).toMatch(/^ {2}lane, drip +arrive 90° apart$/m);
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

  it('tells what the design does: tones, hues, emphasis, balance, eye path', () => {
    const scene = measureText(
      measured(
        `canvas 40 x 30 cm
focus (30, 15)
  win by value
colour night 5PB 2/4 dominant
colour lamp 5Y 8/8 complement
object sky
  plane background
  shape rectangle (0, 0) to (40, 30)
  colour night
object lantern, dominant
  shape rectangle 6 x 6 at focus
  colour lamp
lead kerb from left edge at 15 to focus
path lantern
`,
      ),
      false,
    );
    expect(scene).toMatch(/^ {2}dark +97\.0 % +one piece$/m);
    expect(scene).toMatch(/^ {2}complement +yellow +mean value 8, chroma 8$/m);
    expect(scene).toContain('the focal point ranks first; shares are of the focal point');
    expect(scene).toMatch(/^ {2}value +holds +there is contrast of value only there$/m);
    expect(scene).toMatch(/^ {2}kerb +from the left +runs into the focal point$/m);
    expect(scene).toMatch(/^ {2}stop 1 +lantern +\d/m);
    expect(scene).toMatch(/^ {2}lantern +\d+\.\d % +25\.0 % right$/m);
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
