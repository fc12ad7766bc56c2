import type { Snapshot } from './snapshot.js';

/** How many errors a text has: what can't be read in it, and what can't be resolved. */
export function errorCount({ tree, plan }: Pick<Snapshot, 'tree' | 'plan'>): number {
  return tree.problems.length + plan.problems.filter(({ severity }) => severity === 'error').length;
}

/** `barn.mahl has 2 errors; what can't be read is left out.` */
export function errorsSentence(
  name: string,
  errors: number,
  whatBecomesOfIt: 'left out' | 'not compared' | 'not drawn' | 'not measured',
): string {
  return `${name} has ${errors} error${errors === 1 ? '' : 's'}; what can't be read is ${whatBecomesOfIt}.`;
}
