import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { plate } from '../support/plate.js';
import type { View } from '../../server/drawing/scene.js';
import type { Chapter } from '../../server/findings/finding.js';
import { rules, ruleSlug } from '../../server/findings/rules.js';
import { checked } from '../support/plan.js';
import { withShownPhotographs } from '../support/shown-photographs.js';

/**
 * The drawings of the reference of findings: each rule's plan that breaks it, with the marks of what is found. After a
 * change that is meant to be seen, run this file with UPDATE_REFERENCE=1, look at the drawings, and commit them.
 */
const findings = path.resolve(import.meta.dirname, '../../server/findings');
const drawings = path.join(findings, 'drawings');

/** What shows best what a chapter is about. */
const VIEW_OF_CHAPTER: Readonly<Record<Chapter, View>> = {
  concept: 'drawing',
  division: 'drawing',
  'centre of interest': 'drawing',
  objects: 'drawing',
  'eye path': 'path',
  values: 'values',
  colour: 'colour',
  palette: 'palette',
  sittings: 'sittings',
  record: 'record',
  transfer: 'drawing',
  cautions: 'palette',
};

const VIEW_OF_RULE: Readonly<Record<string, View>> = {
  rival: 'emphasis',
  'unmet means': 'emphasis',
  'strong edge': 'emphasis',
  'value against colour': 'colour',
  'chroma out of reach': 'colour',
};

async function drawn(rule: (typeof rules)[number]): Promise<string> {
  const file = path.join(findings, 'plans', `${ruleSlug(rule.id)}.breaks.mahl`);
  const { plan, measures, findings: all } = checked(readFileSync(file, 'utf8'));
  const own = all.filter((finding) => finding.rule === rule.id);
  return plate(
    plan,
    await withShownPhotographs(measures),
    own,
    VIEW_OF_RULE[rule.id] ?? VIEW_OF_CHAPTER[rule.chapter],
  );
}

describe('the drawings of the reference', () => {
  it.each(rules.map((rule) => ({ rule, id: rule.id })))('$id looks as it did', async ({ rule }) => {
    const file = path.join(drawings, `${ruleSlug(rule.id)}.svg`);
    const svg = await drawn(rule);
    if (process.env['UPDATE_REFERENCE']) {
      mkdirSync(drawings, { recursive: true });
      writeFileSync(file, svg);
    }
    expect(svg).toMatch(/<svg [^>]*height="\d+"[^>]* width="\d+"/);
    expect(existsSync(file) ? readFileSync(file, 'utf8') : '').toBe(svg);
  });

  it('have none left of a rule that is gone', () => {
    const wanted = rules.map(({ id }) => `${ruleSlug(id)}.svg`);
    const left = (existsSync(drawings) ? readdirSync(drawings) : []).filter((name) => !wanted.includes(name));
    if (process.env['UPDATE_REFERENCE']) left.forEach((name) => rmSync(path.join(drawings, name)));
    else expect(left).toEqual([]);
  });
});
