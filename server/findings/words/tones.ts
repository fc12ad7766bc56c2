import { type Plane, t } from '../../../grammar/index.js';
import type { StepGroup } from '../../plan/plan.js';
import { plainNumber } from '../../plan/problems.js';
import { quoted, type Subject } from './words.js';

/** A group of the value scale in a sentence: `the lights`, `the middle values`, or the painter’s own name for it. */
export function toneWords({ name }: Pick<StepGroup, 'name'>): Subject {
  switch (name.toLowerCase()) {
    case 'dark':
      return { words: t('the darks'), many: true };
    case 'light':
      return { words: t('the lights'), many: true };
    case 'middle':
      return { words: t('the middle values'), many: true };
    default:
      return /^\d+$/u.test(name)
        ? { words: t('step {0}', name), many: false }
        : { words: quoted(name), many: false };
  }
}

/** So many steps, with one place: `1.2 steps`, `one step`. */
export function stepsInWords(steps: number): string {
  const told = plainNumber(Math.abs(steps), 1);
  return told === '1' ? t('one step') : t('{0} steps', told);
}

/** `middle` is a place in the language and the middle ground in the studio. */
export function planeWords(plane: Plane): string {
  switch (plane) {
    case 'background':
      return t('background');
    case 'middle':
      return t('middle ground');
    case 'foreground':
      return t('foreground');
  }
}

/** An object taken elsewhere on the scale, as the title of a fix: `` Take `wall` to step 3 ``. */
export function toStep(name: string, to: number | string): string {
  return t('Take {0} to step {1}', name, to);
}
