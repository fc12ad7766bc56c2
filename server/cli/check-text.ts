import type { Severity } from '../findings/finding.js';
import type { Location } from '../plan/plan.js';
import { inks, shown, type Inks } from './display.js';
import { excerpt } from './excerpt.js';
import { addCounts, countRemarks, countsText, type Remark } from './remarks.js';

export interface CheckedPlan {
  readonly name: string;
  readonly lines: readonly string[];
  /** The lines of a plan that this one builds on, by its path from here. */
  readonly linesOf?: (file: string) => readonly string[];
  readonly remarks: readonly Remark[];
}

interface Group {
  readonly heading: string;
  readonly remarks: readonly Remark[];
}

/** What is said about plans, for people: grouped by plan and by gravity, each with the words it is about. */
export function checkText(plans: readonly CheckedPlan[], coloured: boolean): string {
  const ink = inks(coloured);
  const parts = plans.map((plan) => planText(plan, ink));
  if (plans.length > 1) {
    const counts = addCounts(plans.map(({ remarks }) => countRemarks(remarks)));
    parts.push(`${ink.strong(`${plans.length} plans`)}: ${countsText(counts)}\n`);
  }
  return parts.join('\n');
}

function planText(plan: CheckedPlan, ink: Inks): string {
  const groups = groupsOf(plan.remarks)
    .filter(({ remarks }) => remarks.length > 0)
    .map(({ heading, remarks }) => {
      const text = remarks.map((remark) => remarkText(remark, plan, ink)).join('');
      return `${ink.strong(heading)}\n${text}\n`;
    });
  return `${groups.join('')}${ink.strong(shown(plan.name))}: ${countsText(countRemarks(plan.remarks))}\n`;
}

function groupsOf(remarks: readonly Remark[]): readonly Group[] {
  const standing = remarks.filter(({ setAside }) => !setAside);
  const of = (severity: Severity) => standing.filter((remark) => remark.severity === severity);
  return [
    { heading: 'Errors', remarks: of('error') },
    { heading: 'Warnings', remarks: of('warning') },
    { heading: 'Hints', remarks: of('hint') },
    { heading: 'Set aside', remarks: remarks.filter(({ setAside }) => setAside) },
  ];
}

function remarkText(remark: Remark, plan: CheckedPlan, ink: Inks): string {
  const { severity, rule, message, advice, location, from, related, setAside } = remark;
  const place = placeText(plan, location);
  const grade = setAside ? ink.quiet('set aside') : ink[severity](severity);
  const lines = [`  ${place}  ${grade}  ${shown(message)}  ${ink.quiet(`[${rule}]`)}`];
  const shownPlace = from ?? location;
  const found = excerpt(
    shownPlace.file === undefined ? plan.lines : (plan.linesOf?.(shownPlace.file) ?? []),
    shownPlace,
  );
  if (found && !setAside) {
    if (from) lines.push(`    ${ink.quiet(`in ${placeText(plan, from)}`)}`);
    const number = String(shownPlace.line + 1);
    lines.push(`    ${ink.quiet(`${number} |`)} ${found.line}`);
    lines.push(`    ${ink.quiet(`${' '.repeat(number.length)} |`)} ${ink[severity](found.mark)}`);
  }
  if (setAside) {
    lines.push(
      `    because "${shown(setAside.reason)}" (${setAside.location.file === undefined ? '' : `${shown(setAside.location.file)}, `}line ${setAside.location.line + 1})`,
    );
  } else if (advice !== undefined) {
    lines.push(`    Try: ${shown(advice)}`);
  }
  const elsewhere = related.filter(
    (other) => other.location.file !== from?.file || other.location.line !== from?.line,
  );
  for (const other of elsewhere) {
    lines.push(`    ${ink.quiet(placeText(plan, other.location))}  ${shown(other.message)}`);
  }
  return `${lines.join('\n')}\n`;
}

/** `barn.mahl:12:9`, both counted from 1, as editors and terminals follow it. */
function placeText({ name }: CheckedPlan, { line, start, file }: Location): string {
  const folder = name.replace(/[^/\\]*$/u, '');
  return `${shown(file === undefined ? name : `${folder}${file}`)}:${line + 1}:${start + 1}`;
}
