import { expect, it } from 'vitest';
import { marketPlan } from '../../tests/support/market.js';
import { parse } from '../../grammar/index.js';
import { check } from '../findings/check.js';
import { measure } from '../measure/measure.js';
import { Memory } from '../measure/memory.js';
import { OutlineCache } from '../plan/outline-cache.js';
import { resolvePlan } from '../plan/resolve.js';
import { compose } from './compose.js';
import type { Scene } from './scene.js';
import { sceneChange } from './scene-change.js';

/** A document whose versions are drawn one after the other. */
function drawn(memory: Memory) {
  const outlines = new OutlineCache();
  return (text: string): Scene => {
    const plan = resolvePlan(parse(text), { outlines });
    const measures = measure(plan, memory);
    return compose(plan, measures, check(plan, measures), 'drawing', { memory });
  };
}

it('an edit that moves nothing asks for no place of a name again, and one that does asks once', () => {
  const memory = new Memory();
  const draw = drawn(memory);
  const text = marketPlan(20);
  const worked = () => [memory.worked('cells'), memory.worked('names')];
  draw(text);
  expect(worked()).toEqual([1, 1]);
  draw(text.replace('value 4', 'value 6').replace('one woman listens', 'one woman looks up'));
  expect(worked()).toEqual([1, 1]);
  draw(text.replace('shape circle 3 at (86, 11)', 'shape circle 3 at (60, 60)'));
  expect(worked()).toEqual([2, 2]);
});

it('views of one version that are drawn in turn ask for no place of a name again', () => {
  const memory = new Memory();
  const plan = resolvePlan(parse(marketPlan(20)), { outlines: new OutlineCache() });
  const measures = measure(plan, memory);
  const findings = check(plan, measures);
  for (const view of ['drawing', 'values', 'colour', 'drawing', 'values', 'colour'] as const)
    compose(plan, measures, findings, view, { memory });
  expect(memory.worked('names')).toBe(3);
});

it('what is kept of versions before leaves no trace in the drawing', () => {
  const draw = drawn(new Memory());
  const text = marketPlan(20);
  const versions = [
    text,
    text.replace('value 4', 'value 6'),
    text.replace('circle 3 at (86, 11)', 'circle 3 at (60, 60)'),
    text.replace('object clock', 'object town-clock'),
    text.replace('object listener, dominant', 'object listener'),
    text,
  ];
  for (const version of versions) expect(draw(version)).toEqual(drawn(new Memory())(version));
});

it('other words in a plan change the head of the captions and leave the rest the very same', () => {
  const memory = new Memory();
  const plan = resolvePlan(parse(marketPlan(20)), { outlines: new OutlineCache() });
  const measures = measure(plan, memory);
  const findings = check(plan, measures);
  const drawing = (concept: string, options = {}): Scene => {
    const said = { ...plan, concept: { value: concept, location: { line: 0, start: 0, end: 1 } } };
    const scene = compose(said, measures, findings, 'drawing', { ...options, memory });
    expect(scene).toEqual(compose(said, measures, findings, 'drawing', options));
    return scene;
  };
  const before = drawing('One listens.');
  const after = drawing('One woman looks up.');
  expect(sceneChange(before, after).layers.map(({ name, marks }) => [name, marks.length])).toEqual([
    ['mount', 1],
    ['picture', 1],
    ['construction', 1],
    ['names', 1],
    ['findings', 1],
    ['captions', 3],
  ]);
  const others = after.layers.flatMap(({ marks }, layer) =>
    marks.filter((mark) => !before.layers[layer]?.marks.includes(mark)),
  );
  expect(others.map(({ key }) => key)).toEqual([
    'title',
    'caption',
    'canvas',
    'mood',
    'cue:0',
    'cue:1',
    'avoid',
  ]);
  expect(drawing('A longer one. '.repeat(40)).sheet.height).toBeGreaterThan(after.sheet.height);
  expect(drawing('One listens.', { isNarrow: true }).em).toBeGreaterThan(after.em);
  expect(drawing('One listens.', { glazes: false }).layers).toEqual(before.layers);
});
