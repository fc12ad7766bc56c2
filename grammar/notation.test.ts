import { describe, expect, it } from 'vitest';
import { notation } from './notation.js';

describe('notation', () => {
  it('writes a statement out with its words, options and repetitions', () => {
    expect(notation('object')).toBe(
      'object = "object" new-name [ "," ( "dominant" | "secondary" | "minor" ) ]',
    );
    expect(notation('divide')).toBe('divide = "divide" system { "," system }');
  });

  it('writes all shared parts out on one page', () => {
    expect(notation('shared').split('\n')).toContain('extent = length "x" length');
  });

  it('refuses a page that does not exist', () => {
    expect(() => notation('frame')).toThrow('frame');
  });
});
