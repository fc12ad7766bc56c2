import { describe, expect, it } from 'vitest';
import { cells, inks, shown, table } from './display.js';

describe('shown', () => {
  it('leaves no control that a terminal would obey', () => {
    expect(shown('a\u001b[31mred\u0007\u009b2J')).toBe('a\ufffd[31mred\ufffd\ufffd2J');
    expect(shown('one\ttwo\r\nthree')).toBe('one two\ufffd\ufffdthree');
  });

  it('leaves no mark that turns the direction of the line', () => {
    expect(shown('safe\u202egpj.exe\u2069')).toBe('safe\ufffdgpj.exe\ufffd');
  });

  it('leaves every script as it is', () => {
    for (const text of ['γάτα', '柿の木', 'काग़ज़', '🖌️', 'a\u0301']) expect(shown(text)).toBe(text);
  });
});

describe('cells', () => {
  it('counts the columns that a terminal gives', () => {
    expect(cells('barn')).toBe(4);
    expect(cells('a\u0301')).toBe(1);
    expect(cells('柿の木')).toBe(6);
  });
});

describe('table', () => {
  it('sets columns under one another, figures to the right, nothing behind the last word', () => {
    const rows = [
      ['object', 'seen', ''],
      ['sky', '19.0 %', 'ridge'],
      ['柿', '7.3 %', ''],
    ];
    expect(table(rows, ['left', 'right', 'left'], '  ')).toBe(
      ['  object    seen', '  sky     19.0 %  ridge', '  柿       7.3 %', ''].join('\n'),
    );
  });
});

describe('inks', () => {
  it('colours only where it is wanted', () => {
    expect(inks(false).error('no')).toBe('no');
    expect(inks(true).error('no')).toBe('\u001b[31mno\u001b[39m');
  });
});
