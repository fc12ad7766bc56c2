import { t } from '../../../grammar/index.js';
import type { Measures } from '../../measure/measures.js';
import { percent } from '../captions/words.js';
import type { Counts, StripPart } from './figures.js';

/** `dark 24 %, middle 31 %, light 45 % (wanted 40 %)`: what is out of the budget says what was wanted. */
export function stripInWords({ parts }: { readonly parts: readonly Omit<StripPart, 'hex'>[] }): string {
  return parts
    .map(({ name, share, target, within }) => {
      const told = `${name.toLowerCase()} ${percent(share)}`;
      return within === false && target !== undefined ? t('{0} (wanted {1})', told, percent(target)) : told;
    })
    .join(', ');
}

/** `2 warnings, 1 hint`, `nothing found` */
export function countsInWords({ errors, warnings, hints }: Counts): string {
  const told = [
    ...(errors === 0 ? [] : [errors === 1 ? t('1 error') : t('{0} errors', errors)]),
    ...(warnings === 0 ? [] : [warnings === 1 ? t('1 warning') : t('{0} warnings', warnings)]),
    ...(hints === 0 ? [] : [hints === 1 ? t('1 hint') : t('{0} hints', hints)]),
  ];
  return told.length === 0 ? t('nothing found') : told.join(', ');
}

/** `high key` */
export function keyInWords(key: NonNullable<Measures['values']['key']>): string {
  switch (key) {
    case 'low':
      return t('low key');
    case 'middle':
      return t('middle key');
    case 'high':
      return t('high key');
  }
}
