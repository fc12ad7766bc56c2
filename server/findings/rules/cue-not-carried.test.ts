import { describe, expect, it } from 'vitest';
import { checked, files, mended } from '../../../tests/support/plan.js';

const OBJECTS =
  'canvas  40 x 30 cm\nobject  kettle\n  shape   circle 8\n  value   2\n' +
  'object  lid\n  plane   background\n  shape   circle 4\n  value   4';

function told(cue: string, objects = OBJECTS) {
  const text = `cue     ${cue}\n${objects}`;
  const findings = checked(text).findings.filter(({ rule }) => rule === 'cue not carried');
  return { text, findings, messages: findings.map(({ message, advice }) => [message, advice]) };
}

describe('a cue that nothing carries', () => {
  it('is told with how to write what carries it', () => {
    expect(told('"the smell of gas"').messages).toEqual([
      [
        'No object carries the cue “the smell of gas”.',
        'Write `carried by` and the names of the objects that tell it behind the sentence.',
      ],
    ]);
  });

  it('is told by its first words where it is long', () => {
    const long =
      'the gas meter in the hall that ticks all night and keeps the lodger on the second floor awake';
    expect(told(`"${long}"`).messages[0]?.[0]).toBe(
      'No object carries the cue “the gas meter in the hall that ticks all night and keeps the lodger on the …”.',
    );
  });

  it('is tied to the one object that it names', () => {
    const { text, findings, messages } = told('"the Kettle, just before it sings"  // five o’clock');
    expect(messages[0]?.[1]).toBe('It speaks of `kettle`: write `carried by kettle` behind it.');
    const after = mended(text, findings[0]?.fix ?? { edits: [] });
    expect(after).toContain('sings" carried by kettle  // five o’clock');
    expect(checked(after).plan.cues[0]?.carriedBy).toEqual([0]);
  });

  it.each(['"the kettle lifts its lid"', '"kettles in a row"'])('is not tied by a guess: %s', (cue) => {
    expect(told(cue).findings[0]?.fix).toBeUndefined();
  });

  it('is nothing to tell before there are objects', () => {
    expect(told('"the smell of gas"', 'canvas  40 x 30 cm').findings).toEqual([]);
  });
});

it('a cue of another plan is left alone where a name in it is told to be unknown', () => {
  const base = files({ 'stove.mahl': `cue     "the smell of gas" carried by ketle\n${OBJECTS}` });
  const { plan, findings } = checked('based on "stove.mahl"', base);
  expect(plan.problems.map(({ code }) => code)).toEqual(['error in another plan']);
  expect(findings.filter(({ rule }) => rule === 'cue not carried')).toEqual([]);
});

describe('a cue whose objects are not seen', () => {
  it('is told', () => {
    expect(told('"a rattle" carried by lid').messages).toEqual([
      [
        'The cue “a rattle” is carried by `lid`, and nothing of it is seen.',
        'Bring `lid` to light, or let something carry the cue that is seen.',
      ],
    ]);
  });

  it('is carried when one of them is', () => {
    expect(told('"a rattle" carried by lid, kettle').findings).toEqual([]);
  });
});
