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
