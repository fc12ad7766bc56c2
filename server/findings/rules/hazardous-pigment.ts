import type { Rule } from '../finding.js';
import { cautionsTold } from '../seen/cautions.js';

export const hazardousPigment: Rule = {
  id: 'hazardous pigment',
  severity: 'hint',
  chapter: 'cautions',
  perObject: false,
  isCaution: true,
  mostTold: Infinity,
  summary: 'A paint of the palette holds a metal or another pigment that can hurt.',
  explanation:
    'Some of the finest pigments are poisons: cadmium, cobalt, lead, chromium, manganese, mercury, arsenic, antimony and nickel colours. They harm most in the lungs, in the mouth and on the skin. The caution is told once for each of them, at the first paint that holds it.',
  formula:
    'a paint whose Colour Index name is that of a pigment with a known hazard, or, without one that is known, whose own name says so (`cadmium-red`, but not `cadmium-red-hue`); once for each hazard',
  source:
    'which pigments: from memory; care: common practice, no source; lead carbonates and sulphates: REACH Annex XVII, entries 16 and 17',
  check: (plan) =>
    cautionsTold(plan, (about) => about !== 'solvents' && about !== 'oily rags' && about !== 'dust'),
};
