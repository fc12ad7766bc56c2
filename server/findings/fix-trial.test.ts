import { describe, expect, it } from 'vitest';
import { parse } from '../../grammar/index.js';
import { measure } from '../measure/measure.js';
import { resolvePlan } from '../plan/resolve.js';
import { check } from './check.js';
import type { OwnFix } from './finding.js';
import { holdsGood, type Reading } from './fix-trial.js';

function read(text: string): Reading {
  const tree = parse(text);
  const plan = resolvePlan(tree);
  return { tree, plan, findings: check(plan, measure(plan)) };
}

/** Whether the edit of one word in the text does what it would be offered for. */
function mends(text: string, rule: string, from: string, to: string): boolean {
  const now = read(text);
  const finding = now.findings.find((candidate) => candidate.rule === rule);
  const lines = text.split('\n');
  const line = lines.findIndex((one) => one.includes(from));
  const start = lines[line]?.indexOf(from) ?? -1;
  if (!finding || start < 0) throw new Error(`no ${rule} or no ${from}`);
  const fix: OwnFix = {
    title: '',
    edits: [{ kind: 'replace', location: { line, start, end: start + from.length }, text: to }],
  };
  return holdsGood(finding, fix, now, lines, read);
}

const PLAN = `canvas  100 x 50 cm
focus   upper left
budget  value light 60%, middle 40% within 5%
object  wall
  plane   background
  shape   rectangle (0, 0) to (100, 30)
  value   4
object  floor
  plane   background
  shape   rectangle (0, 30) to (100, 50)
  value   2
object  lamp, dominant
  shape   circle 10 at focus
  value   5`;

describe('a fix that is tried on the whole text', () => {
  it('holds good when its finding is gone and nothing is told that was not', () => {
    expect(mends(PLAN, 'value budget', '  value   2', '  value   3')).toBe(true);
  });

  it('does not while its finding stands', () => {
    expect(mends(PLAN, 'value budget', '  value   2', '  value   1')).toBe(false);
  });

  it('does not when it breaks something else that the plan states', () => {
    // Dominant by mistake, the lamp would be off the focal point.
    const text = PLAN.replace('circle 10 at focus', 'circle 10 at (80, 40)').replace(', dominant', '');
    expect(mends(text, 'one dominant', 'object  lamp', 'object  lamp, dominant')).toBe(false);
    expect(mends(text, 'one dominant', 'object  wall', 'object  wall, dominant')).toBe(true);
  });

  it('does not when the text can be read no longer', () => {
    expect(mends(PLAN, 'value budget', '  value   2', '  value   three')).toBe(false);
  });

  it('may bring a rule of thumb that was kept before', () => {
    // Two principals are an even number, which is no more than a hint.
    const text = PLAN.replace('object  floor', 'object  floor, secondary').replace(
      '  value   2',
      '  value   3',
    );
    const second = `${text}\nobject  door, dominant\n  shape   rectangle (70, 10) to (80, 40)\n  value   1`;
    expect(mends(second, 'one dominant', 'object  door, dominant', 'object  door')).toBe(true);
  });

  it('knows a finding that stands on another line afterwards', () => {
    expect(mends(PLAN, 'value budget', 'focus', 'note    "unfinished"\nfocus')).toBe(false);
  });
});
