import type { Plane } from '../../../grammar/index.js';
import type { StepGroup } from '../../plan/plan.js';
import { quoted, type Subject } from './words.js';

/** A group of the value scale in a sentence: `the lights`, `the middle values`, or the painter’s own name for it. */
export function toneWords({ name }: Pick<StepGroup, 'name'>): Subject {
  switch (name.toLowerCase()) {
    case 'dark':
    case 'light':
      return { words: `the ${name.toLowerCase()}s`, many: true };
    case 'middle':
      return { words: 'the middle values', many: true };
    default:
      return /^\d+$/u.test(name)
        ? { words: `step ${name}`, many: false }
        : { words: quoted(name), many: false };
  }
}

/** `middle` is a place in the language and the middle ground in the studio. */
export function planeWords(plane: Plane): string {
  return plane === 'middle' ? 'middle ground' : plane;
}

/** Where an object is taken on the scale: `one step down, to step 3`. */
export function stepWords(from: number, to: number): string {
  const way = to > from ? 'up' : 'down';
  const steps = Math.abs(to - from);
  return `${steps === 1 ? 'one step' : `${steps} steps`} ${way}, to step ${to}`;
}
