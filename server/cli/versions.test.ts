import { describe, expect, it } from 'vitest';
import { conflictSentence } from './conflict.js';
import { versionOf } from './versions.js';

describe('the name of a version', () => {
  it.each([
    ['HEAD:barn.mahl', { revision: 'HEAD', path: 'barn.mahl' }],
    ['main~2:dir/my barn.mahl', { revision: 'main~2', path: 'dir/my barn.mahl' }],
    ['HEAD@{2027-01-04 10:00}:barn.mahl', { revision: 'HEAD@{2027-01-04 10:00}', path: 'barn.mahl' }],
    [':barn.mahl', { revision: '', path: 'barn.mahl' }],
    [':2:./barn.mahl', { revision: ':2', path: './barn.mahl' }],
    ['HEAD:', { revision: 'HEAD', path: '' }],
    ['barn.mahl', undefined],
    ['C:\\plans\\barn.mahl', undefined],
    ['c:/plans/barn.mahl', undefined],
  ])('%s', (name, version) => {
    expect(versionOf(name)).toEqual(version);
  });
});

describe('a plan in the middle of a merge', () => {
  it('is known by both marks, and by nothing less', () => {
    const text = 'plan "x"\n<<<<<<< HEAD\n  value 2\n=======\n  value 3\n>>>>>>> other\n';
    expect(conflictSentence({ name: 'x.mahl', text })).toBe(
      'x.mahl is in the middle of a merge: lines 2 to 6 hold both sides. Settle them first, or compare its sides with `mahlstick compare ":2:./x.mahl" ":3:./x.mahl"`.',
    );
    expect(conflictSentence({ name: 'x.mahl', text: '// <<<<<<< HEAD\n// >>>>>>> other\n' })).toBeUndefined();
    expect(conflictSentence({ name: 'x.mahl', text: '<<<<<<< HEAD\n' })).toBeUndefined();
  });
});
