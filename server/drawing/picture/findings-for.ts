import type { Chapter, Finding } from '../../findings/finding.js';
import { chapters } from '../../findings/finding.js';
import { ruleById } from '../../findings/rules.js';
import { budgetRules } from '../captions/budgets.js';
import type { View } from '../scene.js';
import type { Reading } from '../views/reading.js';

/** A finding with its number on the sheet, and its place in the picture if it has one. */
export interface NumberedFinding {
  readonly finding: Finding;
  readonly number: number;
  readonly subject: string;
}

/** What findings a view shows: those of whole chapters of the reference, and single rules of others. */
interface Shown {
  readonly chapters: readonly Chapter[];
  readonly rules?: readonly string[];
}

/** A squint and a mirror are for looking with a fresh eye: nothing is marked there. */
const SHOWN: Readonly<Record<View, Shown>> = {
  drawing: { chapters },
  notan: { chapters: ['values'] },
  values: { chapters: ['values'], rules: ['value against colour'] },
  colour: { chapters: ['colour'], rules: ['value against colour'] },
  squint: { chapters: [] },
  mirror: { chapters: [] },
  path: { chapters: ['eye path'] },
  emphasis: { chapters: ['centre of interest'] },
};

const ON_BARS: ReadonlySet<string> = new Set([...budgetRules.value, ...budgetRules.colour]);

/** The findings that a view shows, what matters most first as they come, numbered from 1. Budgets are left to their bars. */
export function findingsFor(view: View, { findings, subjects }: Reading): readonly NumberedFinding[] {
  return findings
    .map((finding, index) => ({ finding, subject: subjects.findings[index] ?? `finding:${index}` }))
    .filter(({ finding: { rule } }) => !ON_BARS.has(rule) && isShown(rule, SHOWN[view]))
    .map((each, index) => ({ ...each, number: index + 1 }));
}

function isShown(rule: string, shown: Shown): boolean {
  if (shown.rules?.includes(rule) === true) return true;
  const chapter = ruleById(rule)?.chapter;
  // What is not in the reference is about the plan's own words, and stands with the drawing.
  return chapter === undefined ? shown.chapters.length === chapters.length : shown.chapters.includes(chapter);
}
