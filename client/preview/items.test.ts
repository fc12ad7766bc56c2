import { describe, expect, it } from 'vitest';
import { itemsAtLine, itemsOf } from './items.js';
import { stillLife } from './still-life.js';

const items = itemsOf(stillLife);
const item = (key: string) => items.find((candidate) => candidate.key === key);

describe('the items of a drawing', () => {
  it('are what is drawn, in the order of the text', () => {
    expect(items.map(({ key }) => key)).toEqual([
      'budget:value',
      'object:cloth',
      'object:jug',
      'finding:even count',
      'lead:edge',
    ]);
  });

  it('say what they are and where they are written', () => {
    expect(item('object:jug')?.label).toBe('Jug: dominant, 12 % of the picture, line 7');
    expect(item('lead:edge')?.label).toBe('lead edge, line 12');
    expect(item('finding:even count')?.label).toBe('Warning: There are two objects. line 7');
  });

  it('have the outline of what is filled, without the hatching in it', () => {
    expect(item('object:jug')?.outline).toEqual(['M20 8h8v14h-8z']);
    expect(item('lead:edge')?.outline).toEqual(['M0 22L24 12']);
    expect(item('budget:value')?.outline).toEqual([]);
  });

  it('have the line round them in a photograph too', () => {
    const line = {
      kind: 'path',
      key: 'record:object:jug:outline',
      d: 'M60 8h8v14h-8z',
      stroke: { ink: '#000000', weight: 'hair' },
      subject: 'object:jug',
    } as const;
    const layers = [...stillLife.layers, { name: 'construction' as const, marks: [line] }];
    const jug = itemsOf({ ...stillLife, layers }).find(({ key }) => key === 'object:jug');
    expect(jug?.outline).toEqual(['M20 8h8v14h-8z', 'M60 8h8v14h-8z']);
  });

  it('are thin when a pointer needs help to hit them', () => {
    expect(items.filter(({ thin }) => thin).map(({ key }) => key)).toEqual(['lead:edge']);
  });
});

describe('the items at the cursor', () => {
  it('are those whose block holds its line, first and last included', () => {
    expect([...itemsAtLine(items, 6)]).toEqual(['object:jug']);
    expect([...itemsAtLine(items, 9)]).toEqual(['object:jug']);
    expect([...itemsAtLine(items, 3)]).toEqual(['object:cloth']);
    expect([...itemsAtLine(items, 1)]).toEqual(['budget:value']);
  });

  it('are none between the blocks', () => {
    expect(itemsAtLine(items, 10).size).toBe(0);
    expect(itemsAtLine(items, 400).size).toBe(0);
  });
});
