import { t } from '../../../grammar/index.js';
import { ruleById } from '../../findings/rules.js';
import { counted } from '../../findings/words/words.js';
import { type Block, EMPTY_BLOCK, stacked } from './block.js';
import { badge } from '../picture/finding-marks.js';
import type { ShownFinding } from '../picture/findings-for.js';
import { headingMarks } from './heading.js';
import { textMark } from '../marks.js';
import { wrapped } from './text-width.js';
import { inQuotes } from './words.js';

/** A sheet is read at a glance; the rest of a long list is left to the editor and the command line. */
const MOST_LISTED = 8;
const MOST_OF_CAUTION = 12;

/** What to look at, with the numbers that the marks in the picture bear. */
export function findingsBlock(shown: readonly ShownFinding[], width: number, em: number): Block {
  if (shown.length === 0) return EMPTY_BLOCK;
  const size = 0.9 * em;
  const leading = 1.3 * em;
  const indent = 1.9 * em;
  const title = t('To look at');
  const heading: Block = {
    height: 1.35 * em,
    marks: (x, y) => headingMarks('findings', title, '', { x, y, width, em }),
  };
  const listed = shown.slice(0, MOST_LISTED).map(({ finding, mark, subject }): Block => {
    // A caution is told whole or it is none.
    const most = ruleById(finding.rule)?.chapter === 'cautions' ? MOST_OF_CAUTION : 3;
    const lines = wrapped(inQuotes(finding.message), size, width - indent, most);
    return {
      height: Math.max(1, lines.length) * leading,
      marks: (x, y) => [
        ...badge(
          `${subject}:listed`,
          finding,
          mark?.number,
          { x: x + 0.75 * em, y: y + 0.62 * em },
          em,
          subject,
        ),
        ...lines.map((line, index) =>
          textMark(`${subject}:line:${index}`, line, x + indent, y + index * leading + 0.95 * em, {
            size,
            ink: 'ink',
            subject,
          }),
        ),
      ],
    };
  });
  const more = shown.length - MOST_LISTED;
  const restInWords = t('and {0} more', counted(more));
  const rest: Block = {
    height: leading,
    marks: (x, y) => [
      textMark('findings:more', restInWords, x + indent, y + 0.95 * em, {
        size,
        ink: 'quiet',
      }),
    ],
  };
  return stacked([heading, ...listed, ...(more > 0 ? [rest] : [])], 0.22 * em);
}
