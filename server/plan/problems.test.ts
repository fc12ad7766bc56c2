import { describe, expect, it } from 'vitest';
import { Problems } from './problems.js';

const location = { line: 0, start: 0, end: 3 };

describe('a name that nothing has', () => {
  it('is told with the nearest one as a fix', () => {
    const problems = new Problems();
    problems.unknownName('object', 'jgu', ['bowl', 'jug'], location);
    expect(problems.list).toMatchObject([
      {
        message: 'There is no object called `jgu` in this plan. Did you mean `jug`?',
        fix: { replacement: 'jug' },
      },
    ]);
  });

  it('is told alone once as many have been compared as take a moment', () => {
    const problems = new Problems();
    const known = ['jug', ...Array.from({ length: 19_999 }, (_, index) => `b${index}`)];
    for (let time = 0; time < 3; time++) problems.unknownName('object', 'jgu', known, location);
    expect(problems.list.map(({ fix }) => fix?.replacement)).toEqual(['jug', 'jug', undefined]);
    expect(problems.list[2]?.message).toBe('There is no object called `jgu` in this plan.');
  });
});
