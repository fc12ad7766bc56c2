import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { parse } from '../../grammar/index.js';
import { check } from '../../server/findings/check.js';
import type { Finding } from '../../server/findings/finding.js';
import { measure } from '../../server/measure/measure.js';
import type { Plan } from '../../server/plan/plan.js';
import { resolvePlan } from '../../server/plan/resolve.js';
import { mirroredPlan } from './mirrored-plan.js';

const folder = path.resolve(import.meta.dirname, '../../examples');
const names = readdirSync(folder).filter((name) => name.endsWith('.mahl'));
/** Parts of the diagonal by which two places may differ and be the same. */
const SAME_PLACE = 0.005;

function planOf(text: string): Plan {
  return resolvePlan(parse(text), {
    readFile: (file) => ({ ok: true, text: readFileSync(path.join(folder, file), 'utf8') }),
  });
}

function found(plan: Plan): readonly Finding[] {
  return check(plan, measure(plan));
}

/** What a finding is about, and where it is: parts of the diagonal from the left edge and from the top. */
function gist(plan: Plan, { rule, severity, objects, location, at }: Finding, over: boolean): object {
  const place = (along: number): number => Math.round(along / plan.canvas.diagonal / SAME_PLACE);
  return {
    rule,
    severity,
    line: location.line,
    objects: [...objects].sort((a, b) => a - b),
    ...(at ? { at: [place(over ? plan.canvas.width - at.x : at.x), place(at.y)] } : {}),
  };
}

describe.each(names)('%s', (name) => {
  const text = readFileSync(path.join(folder, name), 'utf8');
  const plan = planOf(text);
  const usual = found(plan).map((finding) => gist(plan, finding, false));

  it('has the same findings with left and right changed over', () => {
    const over = mirroredPlan(plan);
    expect(found(over).map((finding) => gist(over, finding, true))).toEqual(usual);
  });

  it('has the same findings in millimetres, a tenth or less as large', () => {
    const small = planOf(text.replace(/(?<=\d) (?:cm|in)\b/g, ' mm'));
    expect(found(small).map((finding) => gist(small, finding, false))).toEqual(usual);
  });
});
