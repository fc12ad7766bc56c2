import { standing } from '../findings/check.js';
import type { Chapter, Finding } from '../findings/finding.js';
import { ruleById } from '../findings/rules.js';
import { shown, type Inks } from './display.js';
import { wrapped } from './wrapped.js';

/** What stands under a heading; nothing where there is nothing to tell. */
export function section(heading: string, body: string, ink: Inks): readonly string[] {
  return body === '' ? [] : [`${ink.strong(heading)}\n${body}`];
}

/** What the rules of a chapter find and no exception sets aside. */
export function findingsIn(chapter: Chapter, findings: readonly Finding[]): readonly Finding[] {
  return standing(findings).filter(({ rule }) => ruleById(rule)?.chapter === chapter);
}

/** The same for people, each with its severity and its advice. */
export function findingsText(chapter: Chapter, findings: readonly Finding[], ink: Inks): string {
  return findingsIn(chapter, findings)
    .map(
      ({ severity, message, advice }) =>
        graded(severity, ': ', message, ink) +
        (advice === undefined ? '' : wrapped(shown(advice), '    Try: ')),
    )
    .join('');
}

/** A text behind its severity, its further lines indented as far as the first, whatever signs its colours take. */
export function graded(severity: Finding['severity'], between: ': ' | '  ', text: string, ink: Inks): string {
  const plain = `  ${severity}`;
  return `  ${ink[severity](severity)}${wrapped(shown(text), plain + between).slice(plain.length)}`;
}
