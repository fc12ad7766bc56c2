import { describe, expect, it } from 'vitest';
import { checked, mended } from '../../../tests/support/plan.js';
import type { Finding } from '../finding.js';

/** On Munsell's circle: 5B, at 234 degrees, rules; 5YR, at 54, lies opposite. */
function scene(...complements: readonly string[]): string {
  const colours = complements.map((colour, index) => `colour  warm-${index + 1} ${colour} complement`);
  const patches = complements.map(
    (_, index) =>
      `object  patch-${index + 1}\n  shape   rectangle (${10 + 20 * index}, 10) to (${20 + 20 * index}, 40)\n  colour  warm-${index + 1}`,
  );
  return `canvas  100 x 50 cm\nwheel   munsell\ncolour  sea 5B 5/4 dominant\n${colours.join('\n')}\nobject  water\n  plane   background\n  shape   rectangle (0, 0) to (100, 50)\n  colour  sea\n${patches.join('\n')}`;
}

function found(text: string): readonly Finding[] {
  return checked(text).findings.filter(({ rule }) => rule === 'complement off opposite');
}

describe('a complement', () => {
  // 0.36 degrees for each tenth of a hue number: 30 degrees are 8.3 of them.
  it.each([
    ['5YR 5/4', true],
    ['3.3Y 5/4', true],
    ['3.4Y 5/4', false],
    ['6.7R 5/4', true],
    ['6.6R 5/4', false],
  ])('of 5B at %s is near enough: %s', (colour, near) => {
    expect(found(scene(colour)).length === 0).toBe(near);
  });

  it('is told with where it lies, where opposite lies, how far apart they are, and the nearest colour that would do', () => {
    const text = scene('5Y 5/4');
    const [finding] = found(text);
    expect(finding).toMatchObject({
      severity: 'warning',
      message:
        '`warm-1` is to be the complement, but its hue is 5Y; opposite the dominant 5B lies 5YR, 36° away on Munsell’s circle, and up to 30° counts as opposite.',
      advice: 'Turn it to 3.3Y: `3.3Y 5.0/4.0` has the same value and chroma.',
      location: { line: 3 },
      objects: [1],
    });
    expect(finding?.fix && found(mended(text, finding.fix))).toEqual([]);
  });

  it('is told, where the turn stays within what has one name, by what it goes towards', () => {
    const text = `canvas 40 x 30 cm
colour dusk #4a5266 dominant
colour ochre #c29a4a complement
object wall
  shape rectangle (0, 0) to (40, 30)
  colour dusk
object pear
  shape circle 8 at (20, 15)
  colour ochre`;
    const [finding] = found(text);
    expect(finding?.message).toContain('its hue is yellow-orange');
    expect(finding?.advice).toMatch(/^Turn it a little towards orange: `#/);
  });

  it('is turned in the notation that it was written in', () => {
    for (const written of ['#8a7f3c', '#8A7F3C', 'rgb(138, 127, 60)', 'oklch(0.6 0.09 105)']) {
      const text = scene(written);
      const [finding] = found(text);
      const edit = finding?.fix?.edits[0];
      const style = (colour: string): string =>
        colour.replaceAll(/[\d.]+|(?<=#.*)[a-f]/g, '').replaceAll(/(?<=#.*)[A-F]/g, '');
      expect(edit?.kind === 'replace' && style(edit.text), written).toBe(style(written));
      expect(finding?.fix && found(mended(text, finding.fix))).toEqual([]);
    }
  });

  it('that is nearly a grey is not turned but called neutral', () => {
    const [finding] = found(scene('5Y 8/2'));
    expect(finding?.fix).toBeUndefined();
    expect(finding?.advice).toBe(
      'With chroma 2 it is nearly a grey, in which another hue hardly shows: call it neutral, or choose a colour of chroma 3 or more near 5YR.',
    );
    expect(found(scene('5Y 8/2').replace('5Y 8/2 complement', '5Y 8/2 neutral'))).toEqual([]);
    expect(found(scene('5YR 8/3'))).toEqual([]);
    expect(found(scene('5Y 8/3'))[0]?.fix).toBeDefined();
  });

  it('may stray twice as far in a family that lies opposite together', () => {
    // 5YR and 5Y are 0 and 36 degrees off, their mean 18; alone the second is too far.
    expect(found(scene('5YR 5/4', '5Y 5/4'))).toEqual([]);
    expect(found(scene('5Y 5/4', '5Y 6/4')).length).toBe(2);
    // 0 and 72 degrees off: together near enough, and the second further than any may be.
    const [far, ...others] = found(scene('5YR 5/6', '5GY 5/4'));
    expect(far?.message).toContain('in a family of complements up to 60° will do');
    expect(others).toEqual([]);
  });

  it('that is a grey, or that nothing is painted in, is left alone', () => {
    expect(found(scene('N 5/'))).toEqual([]);
    expect(found(`${scene('5YR 5/4')}\ncolour  spare 5G 5/4 complement`)).toEqual([]);
  });

  it('may be the ground where it shows', () => {
    const text = (width: number): string =>
      `canvas  100 x 50 cm\n  ground  5Y 5/4 complement\nwheel   munsell\ncolour  sea 5B 5/4 dominant\nobject  water\n  shape   rectangle (0, 0) to (${width}, 50)\n  colour  sea`;
    const [finding] = found(text(80));
    expect(finding?.message).toMatch(/^The ground is to be the complement/);
    expect(finding?.fix?.title).toBe('Turn the ground to `3.3Y 5.0/4.0`');
    expect(finding?.fix && found(mended(text(80), finding.fix))).toEqual([]);
    expect(found(text(100))).toEqual([]);
  });

  it('is one of three at most that are told, the worst first', () => {
    const told = found(scene('5Y 5/4', '5GY 5/4', '5G 5/4', '5Y 6/4'));
    expect(told.map(({ message }) => message.slice(0, 8))).toEqual(['`warm-3`', '`warm-2`', '`warm-1`']);
    expect(told[2]?.message).toMatch(/So is one more\.$/);
  });
});
