import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { checked, mended, type Checked } from '../../tests/support/plan.js';
import { format } from '../../grammar/index.js';
import { standing } from './check.js';
import type { Finding } from './finding.js';
import { rules, ruleSlug } from './rules.js';

/**
 * Every rule has two small plans that lie on the two sides of its limit and differ in few lines: `breaks`, which its
 * page in the reference shows, and `keeps`.
 */
const folder = path.join(import.meta.dirname, 'plans');
const MOST_LINES = 32;
const MOST_DIFFERENT_LINES = 6;

type Side = 'breaks' | 'keeps';

function fileOf(rule: string, side: Side): string {
  return path.join(folder, `${ruleSlug(rule)}.${side}.mahl`);
}

function textOf(rule: string, side: Side): string {
  const file = fileOf(rule, side);
  return existsSync(file) ? readFileSync(file, 'utf8') : '';
}

function of(rule: string, { findings }: Checked): readonly Finding[] {
  return standing(findings).filter((finding) => finding.rule === rule);
}

function errors({ plan }: Checked): readonly string[] {
  return plan.problems.filter(({ severity }) => severity === 'error').map(({ message }) => message);
}

function warnings({ findings }: Checked): readonly string[] {
  return standing(findings)
    .filter(({ severity }) => severity === 'warning')
    .map(({ rule, message }) => `${rule}: ${message}`);
}

describe.each(rules.map(({ id }) => id))('%s', (rule) => {
  it('has a plan that breaks it and one that keeps it', () => {
    expect(existsSync(fileOf(rule, 'breaks'))).toBe(true);
    expect(existsSync(fileOf(rule, 'keeps'))).toBe(true);
  });

  it.each(['breaks', 'keeps'] as const)(
    'has a short plan with a title in the house style that %s it',
    (side) => {
      const text = textOf(rule, side);
      const read = checked(text);
      expect(format(text)).toBe(text);
      expect(text.split('\n').length).toBeLessThanOrEqual(MOST_LINES);
      expect(read.plan.title?.value).toBeTruthy();
      expect(errors(read)).toEqual([]);
      expect(warnings(read).filter((warning) => !warning.startsWith(`${rule}: `))).toEqual([]);
    },
  );

  it('tells the two apart, which differ in few lines', () => {
    const breaks = textOf(rule, 'breaks');
    const keeps = textOf(rule, 'keeps');
    expect(of(rule, checked(breaks)).length).toBeGreaterThan(0);
    expect(of(rule, checked(keeps)).map(({ message }) => message)).toEqual([]);
    const linesOfKeeps = new Set(keeps.split('\n'));
    const changed = breaks.split('\n').filter((line) => !linesOfKeeps.has(line));
    expect(changed.length).toBeLessThanOrEqual(MOST_DIFFERENT_LINES);
  });

  it('says one thing to try, and where it gives a fix the finding goes and no error comes', () => {
    const text = textOf(rule, 'breaks');
    const before = checked(text);
    for (const { advice, fix, message } of of(rule, before)) {
      expect(advice ?? '').toMatch(/^\S.*[.?!]$/s);
      if (!fix) continue;
      const after = checked(mended(text, fix));
      expect(errors(after)).toEqual([]);
      expect(of(rule, after).length, fix.title).toBeLessThan(of(rule, before).length);
      expect(of(rule, after).map((finding) => finding.message)).not.toContain(message);
      const known = new Set(warnings(before));
      expect(
        warnings(after).filter((warning) => !known.has(warning) && !warning.startsWith(`${rule}: `)),
      ).toEqual([]);
    }
  });

  it('says in whole sentences what was measured', () => {
    for (const { message, at } of of(rule, checked(textOf(rule, 'breaks')))) {
      expect(message).toMatch(/^[A-Z`“\d].*[.?!]$/s);
      expect(message).not.toMatch(/undefined|NaN|Infinity|``|  /);
      if (at) expect(Number.isFinite(at.x) && Number.isFinite(at.y)).toBe(true);
    }
  });
});
