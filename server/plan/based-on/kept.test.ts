import { expect, it } from 'vitest';
import { parse, type SyntaxTree } from '../../../grammar/index.js';
import { OutlineCache } from '../outline-cache.js';
import type { Plan } from '../plan.js';
import { resolvePlan } from '../resolve.js';

const BASE =
  'canvas 60 x 40 cm\nobject rack\n  shape smooth (1, 1) (9, 2) (8, 9)\nobject door\n  shape circle 4\n  at rack\n';

it('an edit builds nothing anew of what it does not touch', () => {
  const outlines = new OutlineCache();
  const read = (text: string, base: string, before?: SyntaxTree): { plan: Plan; tree: SyntaxTree } => {
    const tree = parse(text, before);
    return { tree, plan: resolvePlan(tree, { outlines, readFile: () => ({ ok: true, text: base }) }) };
  };
  const first = read('based on "a.mahl"\nobject peel\n  shape circle 3', BASE);
  const typed = read('based on "a.mahl"\nobject peel\n  shape circle 35', BASE, first.tree);
  const [rack, door, peel] = first.plan.objects;
  expect(typed.plan.objects[0]?.outline).toBe(rack?.outline);
  expect(typed.plan.objects[1]?.outline).toBe(door?.outline);
  expect(typed.plan.objects[2]?.outline).not.toBe(peel?.outline);
  // The base is not read again, and its statements are the same objects.
  expect(typed.plan.objects[0]?.node).toBe(rack?.node);
  const changed = read(
    'based on "a.mahl"\nobject peel\n  shape circle 35',
    `${BASE}object hook\n`,
    typed.tree,
  );
  expect(changed.plan.objects[0]?.outline).toBe(rack?.outline);
  expect(changed.plan.objects.map(({ name }) => name)).toEqual(['rack', 'door', 'hook', 'peel']);
});
