import { describe, expect, it } from 'vitest';
import { columnsOf, deepestLevel, Indentation } from './indentation.js';

function depths(...indentations: readonly string[]): readonly string[] {
  const indentation = new Indentation();
  return indentations.map((blanks) => {
    const { depth, uneven } = indentation.next(blanks);
    return uneven ? `${depth} ${uneven.because}` : `${depth}`;
  });
}

describe('indentation', () => {
  it('opens a level for every deeper line and closes it again', () => {
    expect(depths('', '  ', '    ', '    ', '  ', '')).toEqual(['0', '1', '2', '2', '1', '0']);
  });

  it('takes any depth for a level, block by block', () => {
    expect(depths('', '   ', '', '\t', '\t\t', '\t')).toEqual(['0', '1', '0', '1', '2', '1']);
  });

  it('lets a tab go on to the next multiple of four', () => {
    expect(columnsOf('\t')).toBe(4);
    expect(columnsOf('  \t ')).toBe(5);
  });

  it('reads a column between two levels as the nearer one, and says so', () => {
    expect(depths('', '        ', '      ')).toEqual(['0', '1', '1 no such block']);
    expect(depths('', '        ', '  ', '  ')).toEqual(['0', '1', '0 no such block', '0 no such block']);
  });

  it('says where one block mixes tabs and spaces', () => {
    expect(depths('', '\t', '    ')).toEqual(['0', '1', '1 tabs and spaces']);
  });

  it('moves the left margin when the text as a whole was indented', () => {
    expect(depths('  ', '    ', '', '  ')).toEqual(['0', '1', '0 no such block', '1']);
  });

  it('goes no deeper than the deepest level', () => {
    const lines = Array.from({ length: 100 }, (_, index) => ' '.repeat(index));
    expect(depths(...lines).at(-1)).toBe(`${deepestLevel - 1} no such block`);
  });
});
