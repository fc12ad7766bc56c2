import { measureDocument } from '../../server/cli/measure-document.js';
import { measureText } from '../../server/cli/measure-text.js';
import { mixDocument } from '../../server/cli/mix-document.js';
import { mixText } from '../../server/cli/mix-text.js';
import { recordDocument } from '../../server/cli/record-document.js';
import { recordText } from '../../server/cli/record-text.js';
import { scheduleDocument } from '../../server/cli/schedule-document.js';
import { scheduleText } from '../../server/cli/schedule-text.js';
import { transferDocument } from '../../server/cli/transfer-document.js';
import { transferText } from '../../server/cli/transfer-text.js';
import { blurAt, distanceInWords, viewingOf } from '../../server/drawing/viewing.js';
import { length } from '../../server/findings/words/words.js';
import { checked, type Checked, planOf } from '../support/plan.js';
import { type Block, planText } from './page.js';

/** A plan of the page with what is measured and found. */
export function checkedPlan(name: string): Checked {
  return checked(planText(name));
}

/**
 * What `mahlstick measure --json` tells of a plan of the page, and what `schedule`, `mix`, `transfer` and `record`
 * tell with `--json`.
 */
export function documentsOf(name: string): readonly object[] {
  const { plan, measures } = checkedPlan(name);
  const file = `${name}.mahl`;
  return [
    measureDocument(file, plan, measures, 0),
    mixDocument(file, plan, measures.palette, 0),
    scheduleDocument(file, plan, measures.schedule, 0),
    transferDocument(plan, measures, { file, errors: 0, isMirrored: false }),
    recordDocument(file, plan, measures, 0),
  ];
}

/**
 * What `mahlstick measure` prints of a plan of the page, and below it what `transfer`, `schedule`, `mix` and `record`
 * print.
 */
function printed(name: string): string {
  const { plan, measures, findings } = checkedPlan(name);
  const schedule = scheduleText(scheduleDocument(name, plan, measures.schedule, 0), findings, false);
  const mix = mixText(mixDocument(name, plan, measures.palette, 0), findings, false);
  const carried = transferDocument(plan, measures, { file: name, errors: 0, isMirrored: false });
  const transfer = transferText(carried, plan, findings, false);
  const record = recordText(recordDocument(name, plan, measures, 0), findings, false);
  const measured = measureText(measureDocument(name, plan, measures, 0), false);
  return [measured, transfer, schedule, mix, record].join('\n');
}

/** What a block of the page is to hold, with the end of its last line. */
export function bodyOf({ language, plan, of }: Block): string {
  switch (language) {
    case 'mahl':
      return planText(plan);
    case 'text':
      return of === SEEN_FROM ? seenFrom(plan) : sectionOf(printed(plan), of);
    case 'json':
      return `${compact({ [of]: partInAny(documentsOf(plan), of) })}\n`;
  }
}

const SEEN_FROM = 'Seen from';

/** The view that is squinted at has its figures in the view itself. */
function seenFrom(name: string): string {
  const { canvas } = planOf(planText(name));
  const viewing = viewingOf(canvas);
  const blur = length(blurAt(viewing, canvas), canvas);
  return `${SEEN_FROM}\n  ${distanceInWords(viewing.distanceMillimetres, viewing.unit)}, diagonal ${length(canvas.diagonal, canvas)}, blur ${blur}\n`;
}

function sectionOf(text: string, heading: string): string {
  const section = text.split('\n\n').find((candidate) => candidate.startsWith(`${heading}\n`));
  if (section === undefined) throw new Error(`nothing is told under ${heading}`);
  return `${section.trimEnd()}\n`;
}

/** What the first document that has something at a path has there. */
export function partInAny(documents: readonly object[], path: string): unknown {
  return documents.map((document) => partOf(document, path)).find((part) => part !== undefined);
}

/**
 * What stands at a path, `emphasis.focal.means`; in a list, what its first entry has there. Nothing for a wrong one.
 */
function partOf(value: unknown, path: string): unknown {
  return path.split('.').reduce<unknown>((part, key) => {
    const whole: unknown = Array.isArray(part) ? part[0] : part;
    return typeof whole === 'object' && whole !== null ? (whole as Record<string, unknown>)[key] : undefined;
  }, value);
}

const WIDTH = 120;

/** JSON with figures of four digits, one line for whatever fits into one. */
function compact(value: unknown, indent = ''): string {
  const line = inOneLine(value);
  if (indent.length + line.length <= WIDTH && indent !== '') return line;
  if (typeof value !== 'object' || value === null) return line;
  const further = `${indent}  `;
  const isList = Array.isArray(value);
  const entries = Object.entries(value).map(
    ([key, entry]) => `${further}${isList ? '' : `${JSON.stringify(key)}: `}${compact(entry, further)}`,
  );
  return `${isList ? '[' : '{'}\n${entries.join(',\n')}\n${indent}${isList ? ']' : '}'}`;
}

function inOneLine(value: unknown): string {
  if (typeof value === 'number') return String(Number(value.toPrecision(4)));
  if (Array.isArray(value)) return `[${value.map(inOneLine).join(', ')}]`;
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  const entries = Object.entries(value).map(([key, entry]) => `${JSON.stringify(key)}: ${inOneLine(entry)}`);
  return entries.length === 0 ? '{}' : `{ ${entries.join(', ')} }`;
}
