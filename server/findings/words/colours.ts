import type { Subject } from './words.js';

/** A colour role in a sentence: `the dominant colour`, `the complement`, `the discords`. */
export function roleWords(role: string): string {
  switch (role) {
    case 'dominant':
      return 'the dominant colour';
    case 'complement':
      return 'the complement';
    default:
      return `the ${role}s`;
  }
}

/** The same as what a sentence is about. */
export function roleSubject(role: string): Subject {
  return { words: roleWords(role), many: role === 'discord' || role === 'neutral' };
}
