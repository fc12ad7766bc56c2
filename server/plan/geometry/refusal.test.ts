import { expect, it } from 'vitest';
import { speaking } from '../../../grammar/index.js';
import { planOf } from '../../../tests/support/plan.js';
import { german } from '../../entry/german.js';
import { OutlineCache } from '../outline-cache.js';

it('why a shape can’t be read is told in the language that is spoken, also of one that is kept', () => {
  const text = 'canvas 40 x 30 cm\nobject jug\n  shape path "M0 0 L9"\n  value 3\n';
  const outlines = new OutlineCache();
  const told = () => planOf(text, { outlines }).problems.map(({ message }) => message);
  expect(told()).toEqual(['The shape can’t be read: a number is missing at its end.']);
  expect(speaking(german, told)).toEqual(['Die Form lässt sich nicht lesen: am Ende fehlt eine Zahl.']);
  expect(told()).toEqual(['The shape can’t be read: a number is missing at its end.']);
  expect(outlines.built).toBe(1);
});
