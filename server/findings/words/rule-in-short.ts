import { marked, said } from '../../../grammar/index.js';
import type { Rule } from '../finding.js';
import { limitInWords } from './words.js';

/**
 * What a rule is about, how grave that is and where it begins: in the editor's settings, in hovers and where rules are
 * offered.
 */
export function ruleInShort({ summary, severity, limit, isCaution }: Rule): string {
  const { plain, limited, cautioned } = usually[severity];
  if (isCaution) return said(cautioned, said(summary));
  return limit ? said(limited, said(summary), limitInWords(limit)) : said(plain, said(summary));
}

const usually = {
  hint: {
    plain: marked('{0} Usually a hint.'),
    limited: marked('{0} Usually a hint, with the limit {1}.'),
    cautioned: marked('{0} Usually a hint; a plan sets it aside with a reason, a setting does not.'),
  },
  warning: {
    plain: marked('{0} Usually a warning.'),
    limited: marked('{0} Usually a warning, with the limit {1}.'),
    cautioned: marked('{0} Usually a warning; a plan sets it aside with a reason, a setting does not.'),
  },
} as const;
