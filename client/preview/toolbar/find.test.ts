import { describe, expect, it } from 'vitest';
import { type Findable, findables, matching } from './find.js';
import { stillLife } from '../still-life.js';

const named = (...names: readonly string[]): readonly Findable[] =>
  names.map((name) => ({ key: `object:${name}`, kind: 'object', name }));
const found = (all: readonly Findable[], typed: string) => matching(all, typed).map(({ name }) => name);

describe('what can be found', () => {
  it('are the objects and leads that are drawn, in the order of the text', () => {
    expect(findables(stillLife).map(({ key }) => key)).toEqual(['object:cloth', 'object:jug', 'lead:edge']);
  });

  it('is nothing that is not drawn', () => {
    const bare = { ...stillLife, layers: stillLife.layers.filter(({ name }) => name !== 'construction') };
    expect(findables(bare).map(({ kind }) => kind)).toEqual(['object', 'object']);
  });
});

describe('finding by name', () => {
  it('has those first that begin with what was typed, then those of which a word does', () => {
    const all = named('old oak', 'broad oaks', 'soaked cloth', 'oak');
    expect(found(all, 'oak')).toEqual(['oak', 'old oak', 'broad oaks', 'soaked cloth']);
  });

  it('has all before anything is typed, and none for what nothing is called', () => {
    expect(found(named('jug', 'cloth'), ' ')).toEqual(['jug', 'cloth']);
    expect(found(named('jug', 'cloth'), 'pear')).toEqual([]);
  });

  it.each([
    ['JUG', 'jug'],
    ['strasse', 'Straße'],
    ['ΠΎΡΓΟΣ', 'πύργος'],
    ['башня', 'Старая Башня'],
    ['塔', '石の塔'],
    ['برج', 'برج قديم'],
    ['e\u0301tang', 'Étang'],
    ['ｊｕｇ', 'jug'],
  ])('takes %s for a part of %s', (typed, name) => {
    expect(found(named('other', name), typed)).toEqual([name]);
  });
});
