import { expect, test } from 'vitest';
import { openPlan } from './test-support.js';

const text =
  'plan "The last tram"\ncanvas 40 x 30 cm\nbased on "base.mahl"\nobject Doorway\nobject sky\nlead wires from left edge to sky\n';
const base = { 'file:///studio/base.mahl': { ok: true, text: 'colour dew #ffffff\n' } } as const;

async function found(query: string): Promise<readonly string[]> {
  const { service } = openPlan(text, undefined, base);
  const around = await service.surroundings();
  return service
    .workspaceSymbols(query, around)
    .map(({ name, containerName }) => `${name} in ${containerName}`);
}

test('what holds the letters in their order, in all known plans', async () => {
  expect(await found('dw')).toEqual(['Doorway in plan.mahl', 'dew in base.mahl']);
  expect(await found('LAST')).toEqual(['The last tram in plan.mahl']);
  expect(await found('zz')).toEqual([]);
});

test('everything that has a name, and nothing that has none', async () => {
  expect(await found('')).toEqual([
    'The last tram in plan.mahl',
    'Doorway in plan.mahl',
    'sky in plan.mahl',
    'wires in plan.mahl',
    'dew in base.mahl',
  ]);
});
