import { t } from '../../../grammar/index.js';
import type { Subject } from './words.js';

/** A colour role in a sentence: `the dominant colour`, `the complement`, `the discords`. */
export function roleWords(role: string): string {
  switch (role) {
    case 'dominant':
      return t('the dominant colour');
    case 'complement':
      return t('the complement');
    case 'discord':
      return t('the discords');
    case 'neutral':
      return t('the neutrals');
    default:
      return `the ${role}s`;
  }
}

/** The same as what a sentence is about. */
export function roleSubject(role: string): Subject {
  return { words: roleWords(role), many: role === 'discord' || role === 'neutral' };
}
