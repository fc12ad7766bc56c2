import { describe, expect, it } from 'vitest';
import { shippedAdvisories } from './audit.mjs';

const advisory = {
  title: 'It can be made to hang',
  url: 'https://example.org/1',
  severity: 'high',
  range: '<2.0.0',
};
const report = {
  vulnerabilities: {
    sax: { name: 'sax', nodes: ['node_modules/sax', 'node_modules/a/node_modules/sax'], via: [advisory] },
    tester: { name: 'tester', nodes: ['node_modules/tester'], via: [advisory] },
    reader: { name: 'reader', nodes: ['node_modules/reader'], via: ['tester'] },
  },
};

describe('what is known against libraries', () => {
  it('is told of those that are given away, by the very copy that is', () => {
    expect(shippedAdvisories(report, ['node_modules/a/node_modules/sax'])).toEqual([
      'sax <2.0.0, high: It can be made to hang (https://example.org/1)',
    ]);
    expect(shippedAdvisories(report, ['node_modules/b/node_modules/sax'])).toEqual([]);
  });

  it('is told of a library itself, and not of what takes it into its service', () => {
    expect(shippedAdvisories(report, ['node_modules/reader'])).toEqual([]);
  });

  it('is not taken for nothing when the registry gives no answer', () => {
    expect(() => shippedAdvisories({ message: '405 Method Not Allowed' }, [])).toThrow('405');
  });
});
