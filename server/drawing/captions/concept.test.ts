import { describe, expect, it } from 'vitest';
import { marksOf, sceneOf } from '../test-plans.js';

const plan = `concept "The last lit stall holds the aisle."
mood tired, warm
cue "crushed fennel" carried by stall
cue "water on stone"
avoid "a crowd scene"
avoid "prettiness"
canvas 60 x 40 cm
object stall
  shape rectangle (10, 10) to (30, 30)
  value 4`;

function captions(text: string, view: 'drawing' | 'values'): readonly string[] {
  return marksOf(sceneOf(text, view), 'captions').flatMap((mark) =>
    mark.kind === 'text' ? [mark.text] : [],
  );
}

describe('the concept on the sheet of the drawing', () => {
  it('has the mood, the cues with what carries them, and what to avoid', () => {
    const said = captions(plan, 'drawing');
    expect(said).toContain('The last lit stall holds the aisle.');
    expect(said).toContain('Mood: tired, warm');
    expect(said).toContain('“crushed fennel”, carried by stall');
    expect(said).toContain('“water on stone”, which nothing carries yet');
    expect(said).toContain('To avoid: a crowd scene; prettiness');
  });

  it('says of a cue that nothing of what carries it is seen', () => {
    const curtain = '\nobject curtain\n  shape rectangle (5, 5) to (35, 35)\n  value 3';
    expect(captions(`${plan}${curtain}`, 'drawing')).toContain(
      '“crushed fennel”, carried by stall, of which nothing is seen',
    );
  });

  it('is left to the drawing by the other views', () => {
    expect(captions(plan, 'values').join()).not.toContain('Mood');
  });

  it('tells how many cues more there are than it has room for', () => {
    const many = Array.from({ length: 9 }, (_, index) => `cue "smell ${index}"`).join('\n');
    expect(captions(`${many}\n${plan}`, 'drawing')).toContain('and five more cues');
    const seven = Array.from({ length: 5 }, (_, index) => `cue "smell ${index}"`).join('\n');
    expect(captions(`${seven}\n${plan}`, 'drawing')).toContain('and one more cue');
  });

  it('wraps what is long', () => {
    const long = captions(plan.replace('tired, warm', 'tired and warm and '.repeat(20)), 'drawing');
    expect(long.filter((line) => line.includes('tired and warm')).length).toBe(3);
  });
});
