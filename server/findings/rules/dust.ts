import type { Rule } from '../finding.js';
import { cautionsTold } from '../seen/cautions.js';

export const dust: Rule = {
  id: 'dust',
  severity: 'hint',
  chapter: 'cautions',
  perObject: false,
  isCaution: true,
  mostTold: Infinity,
  summary: 'Dry pigment or pastel makes dust.',
  explanation:
    'Dry colour is easily breathed in, whatever it is made of, and metals in it harm most that way. The caution is told once, at the first medium that names it.',
  formula: 'the words of a medium name pigment, pastel, chalk or charcoal',
  source: 'common practice, no source',
  check: (plan) => cautionsTold(plan, (about) => about === 'dust'),
};
