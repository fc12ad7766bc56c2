import type { Finding, Severity } from '../../findings/finding.js';
import { ruleById } from '../../findings/rules.js';
import { counted } from '../../findings/words/words.js';
import { inWords } from '../../plan/problems.js';
import { type Block, EMPTY_BLOCK, stacked } from '../captions/block.js';
import { headingMarks } from '../captions/heading.js';
import { lines } from '../captions/title.js';
import { inQuotes } from '../captions/words.js';
import { pathMark, textMark } from '../marks.js';
import { badgePath } from '../picture/finding-marks.js';
import type { List } from './fitting.js';

/** The findings that stand, the gravest first. */
export function standingList(findings: readonly Finding[], width: number, em: number): List {
  // Cautions have a place of their own on the sheet.
  const standing = findings.filter(
    ({ allowed, rule }) => allowed === undefined && ruleById(rule)?.chapter !== 'cautions',
  );
  const indent = 1.7 * em;
  return {
    key: 'standing',
    heading: 'To look at',
    remark: severitiesInWords(standing),
    entries: standing.map((finding, index) => {
      const words = sentence(`standing:${index}`, finding.message, width - indent, em, 'ink');
      return {
        height: words.height,
        marks: (x, y) => [
          pathMark(
            `standing:${index}:sign`,
            badgePath(finding.severity, { x: x + 0.6 * em, y: y + 0.62 * em }, 0.36 * em),
            { fill: finding.severity },
          ),
          ...words.marks(x + indent, y),
        ],
      };
    }),
    more: (count) => `and ${counted(count)} more`,
  };
}

/** What the plan sets aside, each with the painter's reason. */
export function setAsideList(findings: readonly Finding[], width: number, em: number): List {
  const aside = findings.flatMap(({ allowed, message, rule }) =>
    allowed === undefined ? [] : [{ rule, message, reason: allowed.reason }],
  );
  return {
    key: 'aside',
    heading: 'Set aside on purpose',
    remark: aside.length === 0 ? '' : String(aside.length),
    entries: aside.map(({ message, reason }, index) =>
      stacked(
        [
          sentence(`aside:${index}:reason`, `“${reason}”`, width, em, 'ink'),
          sentence(`aside:${index}`, message, width, em, 'quiet'),
        ],
        0,
      ),
    ),
    more: (count) => `and ${counted(count)} more`,
  };
}

/** What stands in place of an empty list. */
export function nothingFound(width: number, em: number): Block {
  const line = sentence(
    'standing:none',
    'Nothing that was measured stands against the plan.',
    width,
    em,
    'quiet',
  );
  const heading: Block = {
    height: 1.35 * em,
    marks: (x, y) => headingMarks('standing', 'To look at', '', { x, y, width, em }),
  };
  return stacked([heading, line], 0.35 * em);
}

/** `two warnings and three hints` */
function severitiesInWords(findings: readonly Finding[]): string {
  const count = (wanted: Severity) => findings.filter(({ severity }) => severity === wanted).length;
  const words = (['error', 'warning', 'hint'] as const).flatMap((severity) => {
    const many = count(severity);
    return many === 0 ? [] : [`${counted(many)} ${severity}${many === 1 ? '' : 's'}`];
  });
  return inWords(words);
}

function sentence(key: string, text: string, width: number, em: number, ink: 'ink' | 'quiet'): Block {
  if (text.trim() === '') return EMPTY_BLOCK;
  return lines(
    key,
    inQuotes(text),
    3,
    { size: 0.86 * em, leading: 1.22 * em, width },
    (id, line, x, y, size) => textMark(id, line, x, y, { size, ink }),
  );
}
