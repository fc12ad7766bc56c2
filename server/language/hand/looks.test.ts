import { describe, expect, it } from 'vitest';
import { differing, handBench, ROOM } from './test-support.js';

describe('how a thing looks', () => {
  const bare = `${ROOM}  shape circle 4 at (12, 8)  // jug\n`;
  const colours = 'colour Teal #2f6f73\n';
  it.each([
    [bare, { kind: 'resize', factor: 1.5 }, 'shape circle 6 at (12, 8)  // jug'],
    [`${bare}  resize 80%\n`, { kind: 'resize', factor: 1.5 }, 'resize 120%'],
    [
      bare.replace('circle 4', 'ellipse 4 x 6 cm'),
      { kind: 'resize', factor: 2 },
      'shape ellipse 8 x 12 cm at (12, 8)  // jug',
    ],
    [
      bare.replace('circle 4 at (12, 8)', 'outline (1, 2) (3, 4) (0, 9)'),
      { kind: 'resize', factor: 2 },
      'resize 200%',
    ],
    [bare, { kind: 'value', step: 3 }, 'value 3'],
    [`${bare}  value  2.5  // dim\n`, { kind: 'value', step: 4.2 }, 'value  4  // dim'],
    [bare, { kind: 'colour', colour: '#abcdef' }, 'colour #abcdef'],
    [
      `${bare}  colour navy  // so far\n${colours}`,
      { kind: 'colour', colour: 'teal' },
      'colour Teal  // so far',
    ],
    [`${bare}  colour navy\n`, { kind: 'colour', colour: 'navy' }, ''],
  ] as const)('%s -> %j', (text, change, after) => {
    expect(differing(text, handBench(text).after({ ...change, subject: 'object:jug' }))).toBe(after);
  });

  it.each([
    [{ kind: 'value', step: 9 }, 'The scale has steps 1 (darkest) to 5 (lightest), so there is no value 9.'],
    [{ kind: 'colour', colour: '' }, 'A colour is missing.'],
    [{ kind: 'colour', colour: 'murk' }, /./u],
    [{ kind: 'colour', colour: 'navy\nobject b' }, /./u],
    [{ kind: 'colour', colour: 'rgb(1 2 3)  // \n' }, /./u],
  ] as const)('%j is refused', (change, why) => {
    const answer = handBench(bare).write({ ...change, subject: 'object:jug' });
    expect(typeof answer === 'string' ? answer : JSON.stringify(answer)).toMatch(why);
    expect(typeof answer).toBe('string');
  });
});
