import { describe, expect, it } from 'vitest';
import { parse, type SyntaxTree } from '../../grammar/index.js';
import { OutlineCache } from './outline-cache.js';
import type { Plan } from './plan.js';
import { resolvePlan } from './resolve.js';

const text = `canvas  40 x 30 cm
divide  thirds
colour  slate #44525e
object  tower
  shape   rectangle 4 x 5 at upper right
  colour  slate
object  door
  shape   rectangle 1 x 2 at bottom of tower
  value   2
object  cloud
  shape   smooth (1, 2) (8, 3) (5, 6)
  value   4
`;

/** The plan after each of the changes, each worked out with what was kept, and compared with the plan as afresh. */
function plansAfter(...changes: readonly (readonly [from: string, to: string])[]): readonly Plan[] {
  const outlines = new OutlineCache();
  let tree: SyntaxTree | undefined;
  let now = text;
  return [['', ''] as const, ...changes].map(([from, to]) => {
    now = now.replace(from, to);
    tree = parse(now, tree);
    const plan = resolvePlan(tree, { outlines });
    expect(plan).toEqual(resolvePlan(parse(now)));
    return plan;
  });
}

/** Which objects are the same in both, by their names. */
const same = ([before, after]: readonly Plan[]) =>
  after?.objects.filter((object, index) => object === before?.objects[index]).map(({ name }) => name);

describe('objects from one tree to the next', () => {
  it('are the same where their statements are', () => {
    expect(same(plansAfter(['value   4', 'value   3']))).toEqual(['tower', 'door']);
    expect(same(plansAfter(['4 x 5', '5 x 5']))).toEqual(['door', 'cloud']);
    expect(same(plansAfter(['4 x 5', '4 x 6']))).toEqual(['cloud']);
  });

  it.each<[string, string, string]>([
    ['the canvas', '40 x 30', '41 x 30'],
    ['the division', 'thirds', 'golden'],
    ['a line above', 'divide', '\ndivide'],
    ['a colour', '#44525e', '#44525f'],
    ['the scale', 'divide', 'scale 7\ndivide'],
    ['an earlier object', 'object  tower', 'object  first\nobject  tower'],
  ])('come out as afresh where %s is another', (_, from, to) => {
    const [before, after] = plansAfter([from, to]);
    expect(after).not.toEqual(before);
  });

  it('are told of again where they have a problem', () => {
    const plans = plansAfter(['value   4', 'value   9'], ['thirds', 'golden'], ['4 x 5', '0 x 5']);
    expect(plans.map(({ problems }) => problems.length)).toEqual([0, 1, 1, 2]);
  });
});
