import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { findingsReference, referenceAnchor } from './reference.js';
import { ruleById, rules } from './rules.js';

const page = path.join(import.meta.dirname, 'README.md');

describe('the reference of findings', () => {
  it('is the page beside the rules (UPDATE_REFERENCE=1 writes it anew)', () => {
    if (process.env['UPDATE_REFERENCE']) writeFileSync(page, findingsReference());
    expect(readFileSync(page, 'utf8')).toBe(findingsReference());
  });

  it('has a heading for every code that a finding links to', () => {
    const headings = [...findingsReference().matchAll(/^### (.*)$/gm)].map((match) => match[1] ?? '');
    expect(new Set(headings).size).toBe(headings.length);
    expect(rules.every(({ id }) => headings.includes(id))).toBe(true);
    expect(referenceAnchor('value budget')).toBe('#value-budget');
  });
});

describe('the rules', () => {
  it('have ids in words, and say what they are, how they are computed and where they come from', () => {
    for (const rule of rules) {
      expect(rule.id).toMatch(/^[a-z]+( [a-z]+)*$/);
      expect(ruleById(rule.id)).toBe(rule);
      expect(rule.summary).toMatch(/^[A-Z].*\.$/);
      expect(rule.explanation).toMatch(/^[A-Z].*\.$/s);
      expect(rule.formula).not.toBe('');
      expect(rule.source).not.toBe('');
    }
    expect(new Set(rules.map(({ id }) => id)).size).toBe(rules.length);
  });
});
