import { describe, expect, it } from 'vitest';
import { sceneOf, worked } from '../../server/drawing/test-plans.js';
import { appended, exampleFor } from './example.js';

const begun = (text: string): string => text + appended(text, exampleFor(sceneOf(text, 'drawing')).text);

describe('the example for a plan in which nothing is drawn', () => {
  it.each([
    ['', 40, 30],
    ['plan "Fruit"', 40, 30],
    ['canvas 40 x 30 cm\n', 40, 30],
    ['canvas 6 x 4 in', 6, 4],
    ['canvas 1.2 x 2.4 m\n\n', 1.2, 2.4],
  ])('after %j is a plan without fault, whose object lies on the canvas', (text, width, height) => {
    const { plan, measures } = worked(begun(text));
    expect(plan.problems).toEqual([]);
    expect(plan.canvas).toMatchObject({ width, height });
    expect(plan.objects.map((object) => object.name)).toEqual(['pear']);
    // The whole of an ellipse of these parts of the canvas; cut by an edge it would be less.
    const whole = (Math.PI / 4) * 0.225 * 0.4;
    expect(Math.abs((measures.objects[0]?.share ?? 0) / whole - 1)).toBeLessThan(0.1);
  });

  it('stands below the text, with one empty line between', () => {
    expect(begun('canvas 40 x 30 cm')).toMatch(/^canvas 40 x 30 cm\n\nobject pear/);
    expect(begun('canvas 40 x 30 cm\n')).toMatch(/^canvas 40 x 30 cm\n\nobject pear/);
    expect(begun('canvas 40 x 30 cm\n\n')).toMatch(/^canvas 40 x 30 cm\n\nobject pear/);
    expect(begun('canvas 40 x 30 cm\r\n\r\n')).toMatch(/^canvas 40 x 30 cm\r\n\r\nobject pear/);
    expect(begun('')).toMatch(/^canvas/);
    expect(begun('  ')).toMatch(/^ {2}\ncanvas/);
  });
});
