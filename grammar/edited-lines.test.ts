import { getHeapStatistics, setFlagsFromString } from 'node:v8';
import vm from 'node:vm';
import { expect, it } from 'vitest';
import { parse } from './parse.js';

setFlagsFromString('--expose-gc');
const collect = vm.runInNewContext('gc') as () => void;

function heap(): number {
  collect();
  return getHeapStatistics().used_heap_size;
}

it('keeps of a text only the lines that came with it once these are edited one after the other', () => {
  const lines = Array.from({ length: 10_000 }, (_, index) => `note "${index} ${'and so on '.repeat(10)}"`);
  let tree = parse(lines.join('\n'));
  const size = lines.join('\n').length;
  const before = heap();
  for (let edit = 0; edit < 40; edit++) {
    lines[edit] = `note "this is line ${edit}, which was written anew"`;
    tree = parse(lines.join('\n'), tree);
  }
  expect(heap() - before).toBeLessThan(10 * size);
  expect(tree.nodes).toHaveLength(lines.length);
});
