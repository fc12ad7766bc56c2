import { percent } from '../captions/words.js';
import type { Counts, StripPart } from './figures.js';

/** `dark 24 %, middle 31 %, light 45 % (wanted 40 %)`: what is out of the budget says what was wanted. */
export function stripInWords({ parts }: { readonly parts: readonly Omit<StripPart, 'hex'>[] }): string {
  return parts
    .map(({ name, share, target, within }) => {
      const wanted = within === false && target !== undefined ? ` (wanted ${percent(target)})` : '';
      return `${name.toLowerCase()} ${percent(share)}${wanted}`;
    })
    .join(', ');
}

/** `2 warnings, 1 hint`, `nothing found` */
export function countsInWords({ errors, warnings, hints }: Counts): string {
  const some = (count: number, word: string): readonly string[] =>
    count === 0 ? [] : [`${count} ${word}${count === 1 ? '' : 's'}`];
  const told = [...some(errors, 'error'), ...some(warnings, 'warning'), ...some(hints, 'hint')];
  return told.length === 0 ? 'nothing found' : told.join(', ');
}
