import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parse } from '../../grammar/index.js';
import { resolvePlan } from '../../server/plan/resolve.js';

const readme = readFileSync(new URL('../../grammar/README.md', import.meta.url), 'utf8');
const examples = [...readme.matchAll(/^```mahl\n([\s\S]*?)^```$/gm)].map(([, text = '']) => text);

/** Most examples are pieces of a plan: what they name, and the files they draw from, are elsewhere. */
const fromElsewhere: ReadonlySet<string> = new Set(['no canvas', 'unknown name', 'unreadable file']);

describe('the examples of the reference', () => {
  it.each(examples)('mean something as a plan: %s', (example) => {
    const problems = resolvePlan(parse(example)).problems.filter(
      ({ severity, code }) => severity !== 'hint' && !fromElsewhere.has(code),
    );
    expect(problems).toEqual([]);
  });

  it('hold a whole plan, and one that another is based on, without any problem', () => {
    const whole = examples.filter(
      (example) => example.includes('canvas') && example.includes('door, dominant'),
    );
    expect(whole.map((example) => resolvePlan(parse(example)).problems)).toEqual([[], []]);
  });
});
