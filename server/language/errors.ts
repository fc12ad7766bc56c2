import { marked, said } from '../../grammar/index.js';
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
  const { one, many } = sentences[whatBecomesOfIt];
  return errors === 1 ? said(one, name) : said(many, name, errors);
}

const sentences = {
  'left out': {
    one: marked("{0} has 1 error; what can't be read is left out."),
    many: marked("{0} has {1} errors; what can't be read is left out."),
  },
  'not compared': {
    one: marked("{0} has 1 error; what can't be read is not compared."),
    many: marked("{0} has {1} errors; what can't be read is not compared."),
  },
  'not drawn': {
    one: marked("{0} has 1 error; what can't be read is not drawn."),
    many: marked("{0} has {1} errors; what can't be read is not drawn."),
  },
  'not measured': {
    one: marked("{0} has 1 error; what can't be read is not measured."),
    many: marked("{0} has {1} errors; what can't be read is not measured."),
  },
} as const;
