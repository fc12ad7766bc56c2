import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { parse } from '../../../grammar/index.js';
import { resolvePlan } from '../resolve.js';
import { facts } from './test-support.js';

const readme = readFileSync(new URL('../../../grammar/README.md', import.meta.url), 'utf8');
const section = readme.slice(readme.indexOf('### based on, without'), readme.indexOf('### concept, mood'));
const [base = '', heir = ''] = [...section.matchAll(/^```mahl\n([\s\S]*?)^```$/gm)].map(
  ([, text = '']) => text,
);

it('the reference’s plan that is based on another does what is said of it', () => {
  const plan = resolvePlan(parse(heir), {
    readFile: (file) =>
      file === 'oven.mahl' ? { ok: true, text: base } : { ok: false, reason: 'There is no such file.' },
  });
  const before = facts(resolvePlan(parse(base)));
  const after = facts(plan);
  expect(plan.problems).toEqual([]);
  expect([
    ...before.filter((fact) => !after.includes(fact)).map((fact) => `- ${fact}`),
    ...after.filter((fact) => !before.includes(fact)).map((fact) => `+ ${fact}`),
  ]).toEqual([
    '- colour ember #f0a23c discord',
    '- object door, dominant, middle, 32.6 21.7 41.6 27.7, #f0a23c, 5, firm',
    '- object baker, -, middle, 16.0 13.0 24.0 39.0, -, 3, firm',
    expect.stringMatching(/^- lead shelf /),
    '- path door, baker, oven',
    '+ colour ember #e0702c discord',
    '+ object door, dominant, middle, 32.6 12.3 41.6 18.3, #e0702c, 5, firm',
    '+ object loaf, -, middle, 38.5 38.0 42.5 42.0, -, -, firm',
    expect.stringMatching(/^\+ lead shelf /),
    '+ path door, oven',
  ]);
  expect(plan.objects.at(-1)?.name).toBe('loaf');
});
