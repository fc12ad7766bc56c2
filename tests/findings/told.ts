import { parse } from '../../grammar/index.js';
import { check } from '../../server/findings/check.js';
import type { Finding } from '../../server/findings/finding.js';
import { measure } from '../../server/measure/measure.js';
import type { Point } from '../../server/plan/geometry/point.js';
import type { Plan } from '../../server/plan/plan.js';
import { resolvePlan } from '../../server/plan/resolve.js';
import { type Names, usualNames, type WrittenPicture } from './picture-text.js';

/** Only this rule, or all but these (`RULE="way out"`, `WITHOUT="rival, spots"`), to look into one. */
const only = process.env['RULE'];
const without = new Set(process.env['WITHOUT']?.split(/,\s*/));

function isLookedAt({ rule }: Finding): boolean {
  return (only === undefined || rule === only) && !without.has(rule);
}

/** Parts of the diagonal by which two places may differ and be the same. */
const SAME_PLACE = 0.005;

/** A plan that was read and checked. */
export interface Read {
  readonly plan: Plan;
  readonly findings: readonly Finding[];
  readonly written: WrittenPicture;
}

export function read(writing: WrittenPicture): Read {
  const plan = resolvePlan(parse(writing.text));
  return { plan, findings: check(plan, measure(plan)), written: writing };
}

/** What a finding is about, whatever the picture's names, size and order: rule, line, objects. */
function gist({ written: { about } }: Read, { rule, severity, objects, location }: Finding): string {
  return JSON.stringify([rule, severity, about[location.line], [...objects].sort((a, b) => a - b)]);
}

export interface Told {
  readonly gist: string;
  readonly at: Point | undefined;
}

/** The findings with places as parts of the diagonal; `back` takes a place to where it is in the first picture. */
export function told(reading: Read, back: (at: Point) => Point = (at) => at): readonly Told[] {
  const { diagonal } = reading.plan.canvas;
  return reading.findings.filter(isLookedAt).map((finding) => {
    const at = finding.at && back(finding.at);
    return { gist: gist(reading, finding), at: at && { x: at.x / diagonal, y: at.y / diagonal } };
  });
}

/** What is told of one picture and not of the other, in whatever order. */
export function toldApart(
  one: readonly Told[],
  other: readonly Told[],
): { readonly missing: readonly Told[]; readonly added: readonly Told[] } {
  const left = [...other];
  const missing = one.filter(({ gist, at }) => {
    const index = left.findIndex((candidate) => candidate.gist === gist && isSamePlace(candidate.at, at));
    if (index >= 0) left.splice(index, 1);
    return index < 0;
  });
  return { missing, added: left };
}

function isSamePlace(one: Point | undefined, other: Point | undefined): boolean {
  if (!one || !other) return one === other;
  return Math.hypot(one.x - other.x, one.y - other.y) <= SAME_PLACE;
}

/** What is said, with the usual names for those that the text uses. */
export function sentences({ findings }: Read, names: Names): readonly string[] {
  const usual = new Map<string, string>();
  for (let index = 0; index < 10; index++) {
    usual.set(names.object(index), usualNames.object(index));
    usual.set(names.colour(index), usualNames.colour(index));
    usual.set(names.lead(index), usualNames.lead(index));
  }
  const longestFirst = [...usual.keys()].sort((a, b) => b.length - a.length).join('|');
  const name = new RegExp(`\\b(?:${longestFirst})\\b`, 'g');
  return findings
    .filter(isLookedAt)
    .map(({ rule, message, advice = '', fix }) =>
      `${rule}: ${message} ${advice} ${fix?.title ?? ''}`.replace(name, (word) => usual.get(word) ?? word),
    );
}
