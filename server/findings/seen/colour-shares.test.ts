import { describe, expect, it } from 'vitest';
import { checked, mended } from '../../../tests/support/plan.js';
import type { Finding } from '../finding.js';

/** Three bands over 100 x 50 cm, from the top: `wall` of 12, `sky` of 30, `path` of 8. */
function scene(budget: string, colours: readonly [string, string, string]): string {
  const [sky, wall, path] = colours;
  return `canvas  100 x 50 cm\n${budget}\ncolour  air #8ea4b8 dominant\ncolour  brick #a8602c complement\nobject  sky\n  shape   rectangle (0, 12) to (100, 42)${sky}\nobject  wall\n  shape   rectangle (0, 0) to (100, 12)${wall}\nobject  path\n  shape   rectangle (0, 42) to (100, 50)${path}`;
}

const AIR = '\n  colour  air';
const BRICK = '\n  colour  brick';

function found(text: string): readonly Finding[] {
  return checked(text).findings.filter(({ rule }) => rule === 'colour budget');
}

describe('a colour budget that is missed', () => {
  it('is met by another colour for the object that comes nearest to every target', () => {
    const text = scene('budget  colour dominant 60%, complement 40% within 2%', [AIR, BRICK, AIR]);
    const told = found(text);
    expect(told.map(({ advice }) => advice)).toEqual([
      'Give `path` (16 %) the colour `brick`, which brings the dominant colour to 60 %.',
      'Give `path` (16 %) the colour `brick`, which brings the complement colour to 40 %.',
    ]);
    for (const { fix } of told) expect(found(mended(text, fix ?? { edits: [] }))).toEqual([]);
  });

  it('is met by a first colour for an object that has only a value', () => {
    const text = scene('budget  colour complement 40% within 2%', [AIR, BRICK, '\n  value   2']);
    const [told] = found(text);
    expect(told?.fix?.title).toBe('Give `path` the colour `brick`');
    const after = mended(text, told?.fix ?? { edits: [] });
    expect(found(after)).toEqual([]);
    expect(checked(after).plan.objects[2]?.step).toBe(2);
  });

  it('keeps the step of an object whose value follows from its colour', () => {
    const text = scene('budget  colour dominant 60%, complement 40% within 2%', [AIR, BRICK, AIR]);
    const after = mended(text, found(text)[0]?.fix ?? { edits: [] });
    expect(checked(after).plan.objects[2]?.step).toBe(checked(text).plan.objects[2]?.step);
  });

  it('is not met by a colour that something beside the object has, with which it would merge', () => {
    const bands = scene('budget  colour dominant 60%, complement 40% within 2%', [AIR, BRICK, AIR]);
    const beside = bands.replace('(0, 12) to (100, 42)', '(0, 0) to (100, 30)');
    const [told] = found(beside.replace('(0, 0) to (100, 12)', '(0, 30) to (100, 42)'));
    expect(told?.fix).toBeUndefined();
    expect(told?.advice).toBe('Give 16 % of the picture to the complement colour.');
  });

  it('is not met by the colour of the ground that shows beside the object, under whatever name', () => {
    const text = scene('budget  colour dominant 60%, complement 40% within 2%', [AIR, BRICK, AIR]);
    const showing = text
      .replace('canvas  100 x 50 cm', 'canvas  100 x 50 cm\n  ground  rust')
      .replace('colour  brick', 'colour  rust #a8602c\ncolour  brick')
      .replace('(0, 42) to (100, 50)', '(0, 42) to (99.9, 50)');
    expect(found(showing)[0]?.fix).toBeUndefined();
  });

  it('never asks the dominant object to change its colour', () => {
    const text = scene('budget  colour dominant 60%, complement 40% within 2%', [AIR, BRICK, AIR]);
    const [told] = found(text.replace('object  path', 'object  path, dominant'));
    expect(told?.fix).toBeUndefined();
    expect(told?.advice).toBe('Give 16 % of the picture to the complement colour.');
  });

  it('takes no share farther from its target, nor out on the other side', () => {
    // The path is 16 % of the picture: as a discord it would leave the dominant colour right, and the discords 6 %
    // over.
    const text = scene('budget  colour dominant 60%, complement 30%, discord 10% within 4%', [
      AIR,
      BRICK,
      AIR,
    ]);
    const discord = `colour  moss 5GY 5/4 discord\n`;
    const [told] = found(text.replace('colour  brick', `${discord}colour  brick`));
    expect(told?.fix).toBeUndefined();
    expect(told?.advice).toBe(
      'Give 16 % of the picture to the complement colour (6 %) and the discords (10 %).',
    );
  });

  it('says by how much when no single object is enough', () => {
    const [told] = found(scene('budget  colour complement 50% within 1%', [AIR, BRICK, AIR]));
    expect(told?.advice).toBe('Give it 26 % more of the picture: use the colour elsewhere too.');
  });
});
