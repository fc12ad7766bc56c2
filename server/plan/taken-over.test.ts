import { expect, it } from 'vitest';
import { parse, type SyntaxTree } from '../../grammar/index.js';
import { OutlineCache } from './outline-cache.js';
import type { Plan } from './plan.js';
import { resolvePlan } from './resolve.js';

const text = `plan    "Yard"
concept "Everything leans."
canvas  40 x 30 cm
  ground  #8a7a66
divide  thirds
focus   upper right
scale   5
budget  value 1 50%, 5 50%
colour  slate #44525e dominant
object  tower, dominant
  shape   rectangle 4 x 5 at upper right
  colour  slate
object  cloud
  shape   smooth (1, 2) (8, 3) (5, 6)
object  door
  shape   rectangle 1 x 2 at bottom of tower
  edges   lost against cloud
lead    lane from lower left corner to focus
`;

/** The plan before and after a change, which is the same as one of which nothing is taken over. */
function changed(from: string, to: string): readonly [Plan, Plan] {
  const outlines = new OutlineCache();
  let tree: SyntaxTree | undefined;
  const read = (now: string): Plan => {
    tree = parse(now, tree);
    const plan = resolvePlan(tree, { outlines });
    expect(plan).toEqual(resolvePlan(parse(now)));
    return plan;
  };
  expect(text).toContain(from);
  return [read(text), read(text.replace(from, to))];
}

/** The parts that are not the very same in both. */
const others = ([before, after]: readonly [Plan, Plan]) =>
  (Object.keys(after) as (keyof Plan)[]).filter((part) => !Object.is(before[part], after[part]));

it('leaves every part of a plan the same one but what an edit changes', () => {
  expect(others(changed('leans.', 'leans to the right.'))).toEqual(['statements', 'concept']);
  expect(others(changed('"Yard"\n', '"Yard"  // in May\n'))).toEqual(['statements']);
  expect(others(changed('  colour  slate\n', '  colour  slate\n  edges  soft\n'))).toEqual([
    'statements',
    'objects',
    'leads',
  ]);
  expect(others(changed('#8a7a66', '#8a7a67'))).toEqual(['statements', 'canvas']);
  expect(others(changed('budget  value 1 50%, 5 50%\n', '\n'))).toEqual(['statements']);
});

it('takes over nothing that has come to be left out, or been added', () => {
  const [before, after] = changed('focus   upper right\n', '\n');
  expect(before.focus).toBeDefined();
  expect(after.focus).toBeUndefined();
  const [bare, toned] = changed('scale   5\n', 'scale   5\nmood    quiet\n');
  expect([bare.mood, toned.mood?.value]).toEqual([undefined, 'quiet']);
});
