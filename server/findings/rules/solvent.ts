import type { Rule } from '../finding.js';
import { cautionsTold } from '../seen/cautions.js';

export const solvent: Rule = {
  id: 'solvent',
  severity: 'hint',
  chapter: 'cautions',
  perObject: false,
  isCaution: true,
  mostTold: Infinity,
  summary: 'The paint is thinned with a solvent.',
  explanation:
    'Turpentine, white spirit and their like harm by their vapour, and it burns. The caution is told once, at the first medium that names one.',
  formula:
    'the words of a medium name turpentine, white spirit, mineral spirit, naphtha, oil of spike, a solvent or a thinner',
  source: 'common practice, no source',
  check: (plan) => cautionsTold(plan, (about) => about === 'solvents'),
};
