import { describe, expect, it } from 'vitest';
import { mended, planOf } from '../../tests/support/plan.js';
import { measure } from '../measure/measure.js';
import { check, standing } from './check.js';
import type { Finding } from './finding.js';
import type { RuleChange } from './settings.js';

/** Ground shows on a tenth of it. */
const PLAN =
  'canvas  100 x 50 cm\nfocus   upper right\n' +
  'object  wall\n  plane   background\n  shape   rectangle (0, 0) to (90, 50)\n  value   4\n' +
  'object  lamp, dominant\n  shape   circle 10 at focus\n  value   5';

function ofRule(rule: string, text: string, change?: RuleChange): readonly Finding[] {
  const plan = planOf(text);
  const findings = check(plan, measure(plan), new Map(change ? [['bare ground', change]] : []));
  return standing(findings).filter((finding) => finding.rule === rule);
}

function severityOf(text: string, change?: RuleChange): string | undefined {
  return ofRule('bare ground', text, change)[0]?.severity;
}

describe('a setting of the editor', () => {
  it('changes how a rule is told, its limit, or that it is told at all', () => {
    expect(severityOf(PLAN)).toBe('hint');
    expect(severityOf(PLAN, { severity: 'warning' })).toBe('warning');
    expect(severityOf(PLAN, { severity: 'off' })).toBeUndefined();
    expect(severityOf(PLAN, { limit: 0.1 })).toBeUndefined();
    expect(severityOf(PLAN, { limit: 0.05, severity: 'warning' })).toBe('warning');
  });

  it('comes after what the plan says, each for itself', () => {
    expect(severityOf(`${PLAN}\nrule    bare ground warning`, { severity: 'off' })).toBe('warning');
    expect(severityOf(`${PLAN}\nrule    bare ground limit 5%`, { limit: 0.5 })).toBe('hint');
    expect(severityOf(`${PLAN}\nrule    bare ground limit 5%`, { severity: 'off' })).toBeUndefined();
    expect(severityOf(`${PLAN}\nrule    bare ground hint`, { limit: 0.5 })).toBeUndefined();
  });

  it('does not make an exception needless that others need', () => {
    const aside = `${PLAN}\nallow   bare ground because "it is the sky"`;
    expect(ofRule('needless exception', aside, { severity: 'off' })).toEqual([]);
    expect(ofRule('needless exception', aside, { limit: 0.5 })).toHaveLength(1);
  });
});

describe('a `rule` line', () => {
  it('has its limit in the unit of the rule, and says so with a form that is right', () => {
    const text = `${PLAN}\nrule    bare ground limit 12`;
    const [finding] = ofRule('limit in another unit', text);
    expect(finding?.message).toBe(
      'The limit of `bare ground` is a share in %, and this is a plain number, so it changes nothing.',
    );
    expect(finding?.advice).toBe(
      'Write `rule bare ground limit 12%`, say; without this line it is 2 % of the picture.',
    );
    const after = mended(text, finding?.fix ?? { edits: [] });
    expect(after).toContain('rule    bare ground limit 12%');
    expect(ofRule('limit in another unit', after)).toEqual([]);
    expect(severityOf(after)).toBeUndefined();
  });

  it('keeps the limit of the rule while its own can’t be used', () => {
    expect(severityOf(`${PLAN}\nrule    bare ground warning limit 40 degrees`)).toBe('warning');
  });

  it('is no way to turn a rule off', () => {
    expect(ofRule('no such rule', `${PLAN}\nrule    bare ground off`)[0]?.advice).toBe(
      'A plan does not turn a rule off but says why it does not hold: `allow bare ground because "…"`.',
    );
  });
});
