import type { SyntaxTree } from '../../grammar/index.js';
import type { Location, Plan } from '../plan/plan.js';
import { standing } from './check.js';
import type { Finding, OwnFix, Severity } from './finding.js';
import { ruleById } from './rules.js';
import { changedText, textChanges, type TextPlace } from './text-changes.js';

/** A text read, resolved and checked. */
export interface Reading {
  readonly tree: SyntaxTree;
  readonly plan: Plan;
  readonly findings: readonly Finding[];
}

/** A rule of which so many are told may have more that are only counted. */
const MOST_TOLD = 3;

/**
 * Whether a fix does what it is offered for: its finding is gone from the text as the edits leave it, and no error or
 * warning is told of that text that was not told before.
 *
 * @param lines the text as it is, without line ends
 * @param read reads another text as the plan itself was read
 */
export function holdsGood(
  finding: Finding,
  fix: OwnFix,
  now: Reading,
  lines: readonly string[],
  read: (text: string) => Reading,
): boolean {
  const { text, onward } = changedText(lines, textChanges(fix, lines, '\n'));
  const after = remarksOf(read(text));
  const before = remarksOf(now).map((remark) => movedOn(remark, onward));
  const own = movedOn(remarkOf(finding, now.plan), onward);
  const isGone = countOf(own, after) < countOf(own, before);
  return isGone && after.filter(isGrave).every((remark) => !isNew(remark, after, before));
}

/** Whether more is told of one thing than before. */
function isNew(remark: Remark, after: readonly Remark[], before: readonly Remark[]): boolean {
  const graveBefore = before.filter(isGrave);
  const graveAfter = after.filter(isGrave);
  if (countOf(remark, graveAfter) <= countOf(remark, graveBefore)) return false;
  // One that was only counted may take the place of one that went.
  const ofRule = (all: readonly Remark[]): number => all.filter(({ rule }) => rule === remark.rule).length;
  const told = ofRule(graveBefore);
  return told < MOST_TOLD || ofRule(graveAfter) > told;
}

/** Anything that is told of a text, by what it is about. */
interface Remark {
  readonly rule: string;
  readonly severity: Severity;
  readonly at: TextPlace;
  /** Names of the objects concerned. */
  readonly objects: readonly string[];
}

function remarksOf({ tree, plan, findings }: Reading): readonly Remark[] {
  return [
    ...tree.problems.map(({ code, ...location }): Remark => ({
      rule: code,
      severity: 'error',
      at: startOf(location),
      objects: [],
    })),
    ...plan.problems.map(({ code, severity, location }): Remark => ({
      rule: code,
      severity,
      at: startOf(location),
      objects: [],
    })),
    ...standing(findings).map((finding) => remarkOf(finding, plan)),
  ];
}

function remarkOf({ rule, severity, location, objects }: Finding, plan: Plan): Remark {
  return {
    rule,
    severity,
    at: startOf(location),
    objects: objects.map((index) => plan.objects[index]?.name ?? ''),
  };
}

function startOf({ line, start }: Location): TextPlace {
  return { line, column: start };
}

function movedOn(remark: Remark, onward: (place: TextPlace) => TextPlace): Remark {
  return { ...remark, at: onward(remark.at) };
}

function isGrave({ severity }: Remark): boolean {
  return severity !== 'hint';
}

function countOf(one: Remark, all: readonly Remark[]): number {
  return all.filter((other) => isSame(one, other)).length;
}

/** The same thing told: of the same objects, where a rule is about single ones, else of the same place in the text. */
function isSame(one: Remark, other: Remark): boolean {
  if (one.rule !== other.rule) return false;
  const isSamePlace = one.at.line === other.at.line && one.at.column === other.at.column;
  const shared = one.objects.filter((name) => other.objects.includes(name)).length;
  if (one.objects.length === 0 || other.objects.length === 0) return isSamePlace;
  if (ruleById(one.rule)?.perObject !== true) return isSamePlace && shared > 0;
  if (shared === one.objects.length && shared === other.objects.length) return true;
  // Of many that are told together some may have gone.
  return isSamePlace && shared >= 2;
}
