import type { Rule } from '../finding.js';
import { cautionsTold } from '../seen/cautions.js';

export const oilyRags: Rule = {
  id: 'oily rags',
  severity: 'hint',
  chapter: 'cautions',
  perObject: false,
  isCaution: true,
  mostTold: Infinity,
  summary: 'Rags with drying oil can catch fire by themselves.',
  explanation:
    'Linseed, walnut, poppy and safflower oil and alkyds dry by taking up air, which warms them. In a crumpled rag the warmth can’t get out, and such rags have burnt houses down. The caution is told once, at the first medium that names oil.',
  formula: 'the words of a medium name oil, a drying oil or an alkyd',
  source: 'NFPA tip sheet “Safety with Oily Rags”',
  check: (plan) => cautionsTold(plan, (about) => about === 'oily rags'),
};
