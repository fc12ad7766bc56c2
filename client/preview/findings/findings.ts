import { marked, said, t } from '../../../grammar/localised.js';
import type { Scene } from '../../../server/drawing/scene.js';
import { gravestFirst } from '../../../server/language/telling-order.js';
import type { ListedFinding } from '../messages.js';
import { findingNumbers } from '../plate.js';

/** A finding as it stands in the list below the drawing. */
export interface FindingRow extends ListedFinding {
  /** One thing to try, where the drawing tells it apart from what was found. */
  readonly advice?: string;
  /** The number of its mark in the picture, if it has one there. */
  readonly number?: string;
  /** Keys of its subjects in the drawing, for marking them together. */
  readonly subjects: readonly string[];
}

/**
 * The list, each row tied to its marks in the drawing. It is in the order in which everything is told (`gravestFirst`),
 * so that the numbers of the marks count up in it; in every view it is the same.
 */
export function findingRows(
  findings: readonly ListedFinding[],
  scene: Scene | undefined,
): readonly FindingRow[] {
  const marked = markedFindings(scene);
  const numbers = scene === undefined ? new Map<string, string>() : findingNumbers(scene);
  return gravestFirst(findings).map((finding): FindingRow => {
    const same = (marked.get(finding.location.line) ?? []).filter(({ message }) =>
      finding.message.startsWith(message),
    );
    const message = same[0]?.message ?? finding.message;
    const advice = finding.message.slice(message.length).trim();
    const number = same.flatMap(({ key }) => numbers.get(key) ?? [])[0];
    return {
      ...finding,
      message,
      ...(advice === '' ? {} : { advice }),
      ...(number === undefined ? {} : { number }),
      subjects: same.map(({ key }) => key),
    };
  });
}

/** The findings of a drawing by their line. */
function markedFindings(
  scene: Scene | undefined,
): ReadonlyMap<number, readonly { readonly key: string; readonly message: string }[]> {
  const marked = new Map<number, { key: string; message: string }[]>();
  for (const [key, subject] of Object.entries(scene?.subjects ?? {})) {
    if (subject.kind !== 'finding') continue;
    const line = marked.get(subject.location.line) ?? [];
    line.push({ key, message: subject.message });
    marked.set(subject.location.line, line);
  }
  return marked;
}

/**
 * What a live region says when the findings have changed: `undefined` when they say the same as before, wherever
 * they now stand in the text.
 */
export function announcement(
  before: readonly ListedFinding[],
  after: readonly ListedFinding[],
): string | undefined {
  const left = before.map(({ message }) => message);
  const fresh: string[] = [];
  for (const { message } of after) {
    const index = left.indexOf(message);
    if (index < 0) fresh.push(message);
    else left.splice(index, 1);
  }
  if (fresh.length === 0 && left.length === 0) return undefined;
  if (after.length === 0) return t('No findings left.');
  const [first] = fresh;
  const total = t('{0} now.', counted(after.length, 'finding'));
  if (first === undefined) return t('{0} settled, {1}', counted(left.length, 'finding'), total);
  return fresh.length === 1 ? `${first} ${total}` : t('{0} new findings, {1}', fresh.length, total);
}

/** One of what is counted, and several. */
const counts = {
  finding: [marked('{0} finding'), marked('{0} findings')],
  error: [marked('{0} error'), marked('{0} errors')],
  warning: [marked('{0} warning'), marked('{0} warnings')],
  hint: [marked('{0} hint'), marked('{0} hints')],
} as const;

/** `1 finding`, `3 findings` */
export function counted(count: number, noun: keyof typeof counts): string {
  const [one, several] = counts[noun];
  return said(count === 1 ? one : several, count);
}

/** `1 error, 2 warnings`, or `No findings`. */
export function summary(findings: readonly Pick<ListedFinding, 'severity'>[]): string {
  const parts = (['error', 'warning', 'hint'] as const).flatMap((severity) => {
    const count = findings.filter((finding) => finding.severity === severity).length;
    return count === 0 ? [] : [counted(count, severity)];
  });
  return parts.length === 0 ? t('No findings') : parts.join(', ');
}

/**
 * A message in pieces: words of the plan, which stand between backticks, and the rest, in which a number stays with
 * its per cent sign.
 */
export function messagePieces(
  message: string,
): readonly { readonly text: string; readonly quoted: boolean }[] {
  return message
    .split('`')
    .map((text, index) => ({ text: text.replaceAll(/(\d) %/g, '$1\u00a0%'), quoted: index % 2 === 1 }))
    .filter(({ text }) => text !== '');
}
