import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { picturesByName } from '../../tests/support/pictures-by-name.js';
import { chapters } from './finding.js';
import { findingsReference, referenceAnchor } from './reference.js';
import { ruleById, rules, ruleSlug } from './rules.js';

const page = path.join(import.meta.dirname, 'README.md');

function planThatBreaks(rule: string): string | undefined {
  const file = path.join(import.meta.dirname, 'plans', `${ruleSlug(rule)}.breaks.mahl`);
  return existsSync(file) ? readFileSync(file, 'utf8') : undefined;
}

describe('the reference of findings', () => {
  const reference = findingsReference(planThatBreaks, picturesByName);

  it('is the page beside the rules (UPDATE_REFERENCE=1 writes it anew)', () => {
    if (process.env['UPDATE_REFERENCE']) writeFileSync(page, reference);
    expect(readFileSync(page, 'utf8')).toBe(reference);
  });

  it('shows what is said of every rule’s plan', () => {
    for (const { id } of rules) {
      const from = reference.indexOf(`\n### ${id}\n`);
      const to = reference.indexOf('\n#', from + 1);
      expect(reference.slice(from, to), id).toMatch(/```mahl\n[\s\S]*```\n\n> \S/);
    }
  });

  it('lists every rule once, under its chapter, in the order of the studio', () => {
    const list = reference.slice(reference.indexOf('## All rules'), reference.indexOf('Then [exceptions]'));
    const listed = [...list.matchAll(/\[([^\]]+)\]\(#[^)]*\)[,\n]/g)].map((match) => match[1]);
    expect(listed).toEqual(
      chapters.flatMap((chapter) => rules.filter((rule) => rule.chapter === chapter).map(({ id }) => id)),
    );
  });

  it('has a heading for every code that a finding links to', () => {
    const headings = [...reference.matchAll(/^##+ (.*)$/gm)].map((match) => match[1]?.toLowerCase() ?? '');
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
