import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { format, parse, walk } from '../../grammar/index.js';

const text = readFileSync(new URL('last-tram.mahl', import.meta.url), 'utf8');

function kindsOf(plan: string): readonly string[] {
  const kinds: string[] = [];
  walk(parse(plan).nodes, (node, parents) => kinds.push(`${parents.length} ${node.statement.kind}`));
  return kinds;
}

it('reads a whole plan whose columns its painter has aligned by hand', () => {
  expect(parse(text).problems).toEqual([]);
  const written = text.split('\n').filter((line) => line.trim() !== '');
  expect(kindsOf(text)).toHaveLength(written.length);
});

it('sets it in the house form without a change of meaning', () => {
  expect(kindsOf(format(text))).toEqual(kindsOf(text));
  expect(format(text)).toContain('budget  value dark 30%, middle 45%, light 25% within 5%\n');
});
