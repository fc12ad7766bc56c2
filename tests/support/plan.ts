import { parse } from '../../grammar/index.js';
import { check } from '../../server/findings/check.js';
import { isOwnEdit } from '../../server/findings/edits/own.js';
import type { Finding, Fix } from '../../server/findings/finding.js';
import { changedText, textChanges } from '../../server/findings/text-changes.js';
import { measure } from '../../server/measure/measure.js';
import type { Measures } from '../../server/measure/measures.js';
import type { Plan, PlanObject } from '../../server/plan/plan.js';
import { resolvePlan, type ResolveOptions } from '../../server/plan/resolve.js';
import { picturesByName } from './pictures-by-name.js';

/** The plan that a text states; the text must be readable. */
export function planOf(text: string, options: ResolveOptions = {}): Plan {
  const tree = parse(text);
  if (tree.problems.length > 0) throw new Error(JSON.stringify(tree.problems, undefined, 2));
  return resolvePlan(tree, options);
}

export interface Checked {
  readonly plan: Plan;
  readonly measures: Measures;
  readonly findings: readonly Finding[];
}

export function checked(text: string, options: ResolveOptions = {}): Checked {
  const plan = planOf(text, options);
  const measures = measure(plan, undefined, undefined, picturesByName(plan));
  return { plan, measures, findings: check(plan, measures) };
}

/** The text after the edits of a fix. */
export function mended(text: string, { edits }: Pick<Fix, 'edits'>): string {
  const lines = text.split('\n');
  return changedText(lines, textChanges({ edits: edits.filter(isOwnEdit) }, lines, '\n')).text;
}

export function objectNamed(plan: Plan, name: string): PlanObject {
  const object = plan.objects.find((candidate) => candidate.name === name);
  if (!object) throw new Error(`no object ${name}`);
  return object;
}

/** The box round an object's outline: left, top, right and bottom in canvas units, without traces of rounding. */
export function boxOf(plan: Plan, name: string): readonly number[] {
  const { left, top, right, bottom } = objectNamed(plan, name).outline.box;
  return [left, top, right, bottom].map((side) => Math.round(side * 1e6) / 1e6);
}

/** What is told when a plan is resolved. */
export function messages(plan: Plan): readonly string[] {
  return plan.problems.map(({ message }) => message);
}

/** Files by the path written in the plan. */
export function files(contents: Readonly<Record<string, string>>): ResolveOptions {
  return {
    readFile: (path) => {
      const text = contents[path];
      return text === undefined ? { ok: false, reason: `there is no ${path}` } : { ok: true, text };
    },
  };
}
