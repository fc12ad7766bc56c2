import { describe, expect, it } from 'vitest';
import { checked } from '../../../tests/support/plan.js';

const CANVAS = 'canvas  80 x 60 cm\nfocus   upper left';

function stall(name: string, place: string, size = '10 x 20'): string {
  return `object  ${name}, dominant\n  shape   rectangle ${size} at ${place}\n  value   2`;
}

/** Which are told not to lead, whatever the order of the text. */
function lesser(...objects: readonly string[]): readonly (readonly string[])[] {
  return [objects, objects.toReversed()].map((order) => {
    const { plan, findings } = checked([CANVAS, ...order].join('\n'));
    return findings
      .filter(({ rule }) => rule === 'one dominant')
      .flatMap((finding) => finding.objects.map((index) => plan.objects[index]?.name ?? ''))
      .sort();
  });
}

describe('of several dominant objects', () => {
  it('the one at the focal point leads', () => {
    const there = stall('there', 'focus', '4 x 4');
    expect(lesser(there, stall('large', '(65, 40)'))).toEqual([['large'], ['large']]);
  });

  it('else the one of which most is seen', () => {
    const larger = stall('larger', '(65, 45)', '11 x 20');
    expect(lesser(larger, stall('higher', '(65, 15)'))).toEqual([['higher'], ['higher']]);
  });

  it('else the higher, then the one nearer to the middle, in whatever order they are written', () => {
    expect(lesser(stall('high', '(65, 15)'), stall('low', '(45, 45)'))).toEqual([['low'], ['low']]);
    expect(lesser(stall('near', '(45, 45)'), stall('far', '(70, 45)'))).toEqual([['far'], ['far']]);
  });

  it('each of the others is told', () => {
    const three = [stall('a', '(65, 15)'), stall('b', '(45, 45)'), stall('c', '(70, 45)')];
    expect(lesser(...three)).toEqual([
      ['b', 'c'],
      ['b', 'c'],
    ]);
  });
});
