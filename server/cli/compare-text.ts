import { topics } from '../findings/comparison/change.js';
import { noChangeInWords } from '../findings/comparison/compare.js';
import { capitalised } from '../plan/problems.js';
import { inks, shown } from './display.js';
import type { CompareDocument } from './schema/compare.js';
import { wrapped } from './wrapped.js';

/** What differs between two plans, for people: under the topics of a plan, what matters most to the picture first. */
export function compareText(document: CompareDocument, coloured: boolean): string {
  const { earlier, later, changes, remark, sameText } = document;
  const ink = inks(coloured);
  const head = `${ink.strong(shown(earlier.name))} -> ${ink.strong(shown(later.name))}\n`;
  const remarks = remark === undefined ? '' : wrapped(shown(remark));
  if (changes.length === 0) return `${head}${remarks}${noChangeInWords(sameText)}\n`;
  const groups = topics.flatMap((topic) => {
    const told = changes.filter((change) => change.topic === topic);
    if (told.length === 0) return [];
    const lines = told.map(({ message }) => wrapped(shown(message), '  ')).join('');
    return [`\n${ink.strong(capitalised(topic))}\n${lines}`];
  });
  return `${head}${remarks}${groups.join('')}`;
}
