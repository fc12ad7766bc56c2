import { setFlagsFromString } from 'node:v8';
import vm from 'node:vm';
import { expect, it } from 'vitest';
import { parse } from '../../grammar/index.js';
import { planUri } from '../../server/language/test-support.js';
import { measure } from '../../server/measure/measure.js';
import { Memory } from '../../server/measure/memory.js';
import { OutlineCache } from '../../server/plan/outline-cache.js';
import { resolvePlan } from '../../server/plan/resolve.js';
import { steadyChanges, steadyEditor, steadyPlan } from './steady.js';

// What 100,000 edits do to the heap is looked at by `npm run fuzz -- memory`.

setFlagsFromString('--expose-gc');
const collect = vm.runInNewContext('gc') as () => void;

/** What nothing holds any more is let go of. */
async function collected(): Promise<void> {
  for (let turn = 0; turn < 3; turn++) {
    await new Promise((resolve) => setTimeout(resolve, 0));
    collect();
  }
}

it('lets go of every version of a plan that was edited since, and of all that was worked out of it', async () => {
  const editor = steadyEditor(5);
  const { service } = editor;
  const seen: WeakRef<object>[] = [];
  for (let stretch = 0; stretch < 12; stretch++) {
    await editor.edit(20);
    service.diagnostics(planUri);
    const { tree, plan, measures, findings } = service.snapshot(planUri) ?? {};
    for (const one of [tree, plan, measures, findings]) seen.push(new WeakRef(one ?? {}));
  }
  await collected();
  const alive = seen.filter((one) => one.deref() !== undefined);
  // The last of each, and the tree that the next one takes from.
  expect(alive.length).toBeLessThanOrEqual(8);
  expect(editor.failures).toEqual([]);
});

it('keeps after 2,000 edits what it keeps of a plan that was never edited', () => {
  const change = steadyChanges(6);
  const [outlines, memory] = [new OutlineCache(), new Memory()];
  let text = steadyPlan;
  let most = 0;
  for (let edits = 1; edits <= 2_000; edits++) {
    text = change(text);
    const plan = resolvePlan(parse(text), { outlines });
    if (edits % 100 === 0) measure(plan, memory);
    most = Math.max(most, outlines.kept);
  }
  const [freshOutlines, freshMemory] = [new OutlineCache(), new Memory()];
  // What the version before did not ask for is dropped with the next.
  for (let time = 0; time < 2; time++) {
    measure(resolvePlan(parse(steadyPlan), { outlines }), memory);
    measure(resolvePlan(parse(steadyPlan), { outlines: freshOutlines }), freshMemory);
  }
  expect(most).toBeGreaterThan(freshOutlines.kept);
  expect([outlines.kept, memory.kept]).toEqual([freshOutlines.kept, freshMemory.kept]);
});
