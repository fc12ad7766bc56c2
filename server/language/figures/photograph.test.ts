import { describe, expect, it } from 'vitest';
import { planOf } from '../../../tests/support/plan.js';
import { measure } from '../../measure/measure.js';
import { photographsAsTold } from '../../measure/photograph/test-support.js';
import type { Snapshot } from '../snapshot.js';
import { openPlan } from '../test-support.js';
import { photographFigures } from './photograph.js';

const TEXT = `canvas  40 x 30 cm
object  wall
  shape   rectangle (0, 0) to (40, 30)
  value   3
object  cup, dominant
  shape   circle 12 at (26, 16)
  value   1
sitting "Lay in" on 2027-03-01
  works   wall, cup
  photo   "cup 1 step lighter.jpg"
sitting "Cup" on 2027-03-09
  works   cup
  photo   "burnt out, wall 0.5 steps darker.jpg"
sitting "Later"
  photo   "later.jpg"
sitting "Missing"
  photo   "missing.jpg"
`;

function told(file: string): readonly string[] {
  const plan = planOf(TEXT);
  const measures = measure(plan, undefined, undefined, photographsAsTold(plan));
  const line = TEXT.split('\n').findIndex((each) => each.includes(`"${file}"`));
  const style = { text: (words: string) => words };
  return photographFigures({ plan, measures } as Snapshot, line, style as never).map(String);
}

describe('the hover of a photograph', () => {
  it('tells values and what is farthest from the plan', () => {
    expect(told('cup 1 step lighter.jpg')).toEqual([
      'Values from 2.9 to 5.2 of ten, 4.8 on average: the darks 9.4 %, the middle values 90.6 % and the lights 0 %.',
      'Farthest from its planned value: cup one step lighter.',
    ]);
  });

  it('tells what came nearer and went away, and what can’t be trusted', () => {
    expect(told('burnt out, wall 0.5 steps darker.jpg').slice(1)).toEqual([
      'Farthest from its planned value: wall 0.5 steps darker.',
      'Nearer to the plan since “Lay in”: cup.',
      'Farther from the plan since “Lay in”: wall.',
      'On 8 % of the canvas it is burnt out, so how light that is can’t be told.',
    ]);
  });

  it('says what it waits for, and why there is nothing', () => {
    expect(told('later.jpg')).toEqual(['The photograph is being measured.']);
    expect(told('missing.jpg')).toEqual(['There is no such file.']);
  });

  it('stands at the word `photo` in the editor, with what it means', () => {
    const { service, uri, position } = openPlan(TEXT.replace('photo   "later.jpg"', '|photo   "later.jpg"'));
    const hover = JSON.stringify(service.hover(uri, position));
    expect(hover).toContain('The photograph is being measured.');
    expect(hover).toContain('A photograph of the canvas after the sitting.');
  });
});
