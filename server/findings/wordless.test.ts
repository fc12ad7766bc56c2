import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, it } from 'vitest';
import { parse } from '../../grammar/index.js';
import { measure } from '../measure/measure.js';
import { Memory } from '../measure/memory.js';
import { keptWordless } from '../measure/wordless.js';
import { OutlineCache } from '../plan/outline-cache.js';
import { resolvePlan } from '../plan/resolve.js';
import { check } from './check.js';

const examples = path.resolve(import.meta.dirname, '../../examples');
const texts = readdirSync(examples)
  .filter((name) => name.endsWith('.mahl'))
  .map((name) => readFileSync(path.join(examples, name), 'utf8'));

it('leaves out what changes no figure and no finding', () => {
  for (const text of texts) {
    const plan = resolvePlan(parse(text));
    const concept = { value: 'Something else altogether.', location: { line: 0, start: 0, end: 3 } };
    const otherwise = { ...plan, concept, mood: concept, avoids: [concept], notes: [concept, concept] };
    const [measures, others] = [measure(plan), measure(otherwise)];
    expect(others).toEqual(measures);
    expect(check(otherwise, others)).toEqual(check(plan, measures));
  }
});

it('has nothing measured anew for other words', () => {
  const alone = texts.filter((text) => !text.includes('based on '));
  expect(alone.length).toBeGreaterThan(5);
  for (const text of alone) {
    const [outlines, memory] = [new OutlineCache(), new Memory()];
    const first = parse(text);
    const measured = measure(resolvePlan(first, { outlines }), memory);
    const other = text.replace(/^concept "/mu, 'concept "Otherwise: ');
    expect(other === text).toBe(!text.includes('\nconcept '));
    expect(measure(resolvePlan(parse(other, first), { outlines }), memory)).toBe(measured);
  }
});

it('is the same plan as long as nothing but words is another', () => {
  const memory = new Memory();
  const plan = resolvePlan(parse(texts[0] ?? ''));
  const ask = (changed: Partial<typeof plan>) => keptWordless({ ...plan, ...changed }, memory);
  const first = ask({});
  expect(ask({ notes: [], avoids: [] })).toBe(first);
  expect(ask({ statements: plan.statements.filter(({ statement }) => statement.kind !== 'concept') })).toBe(
    first,
  );
  expect(ask({ statements: plan.statements.slice(1) })).not.toBe(first);
  expect(ask({ objects: [...plan.objects] })).not.toBe(first);
});
