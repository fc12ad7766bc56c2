import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parse } from '../../grammar/index.js';
import { check } from '../../server/findings/check.js';
import type { Finding } from '../../server/findings/finding.js';
import { measure } from '../../server/measure/measure.js';
import type { Point } from '../../server/plan/geometry/point.js';
import type { Plan } from '../../server/plan/plan.js';
import { resolvePlan } from '../../server/plan/resolve.js';
import {
  type Names,
  type Order,
  otherNames,
  usualNames,
  type WrittenPicture,
  written,
} from './picture-text.js';
import { mirrored, type Picture, picture, scaled } from './pictures.js';

/** Another seed and more runs from outside, to look further than every test run does. */
const seed = Number(process.env['SEED'] ?? 11);
const runs = Number(process.env['RUNS'] ?? 30);
/** Always the same pictures, so that it is certain that they break most rules. */
const ALWAYS = { seed: 11, numRuns: 30 };
/** Only this rule, or all but these (`RULE="way out"`, `WITHOUT="rival, spots"`), to look into one. */
const only = process.env['RULE'];
const without = new Set(process.env['WITHOUT']?.split(/,\s*/));

function isLookedAt({ rule }: Finding): boolean {
  return (only === undefined || rule === only) && !without.has(rule);
}

/** Parts of the diagonal by which two places may differ and be the same. */
const SAME_PLACE = 0.005;

interface Read {
  readonly plan: Plan;
  readonly findings: readonly Finding[];
  readonly written: WrittenPicture;
}

function read(writing: WrittenPicture): Read {
  const plan = resolvePlan(parse(writing.text));
  return { plan, findings: check(plan, measure(plan)), written: writing };
}

/** What a finding is about, whatever the picture's names, size and order: rule, line, objects. */
function gist({ written: { about } }: Read, { rule, severity, objects, location }: Finding): string {
  return JSON.stringify([rule, severity, about[location.line], [...objects].sort((a, b) => a - b)]);
}

interface Told {
  readonly gist: string;
  readonly at: Point | undefined;
}

/** The findings with places as parts of the diagonal; `back` takes a place to where it is in the first picture. */
function told(reading: Read, back: (at: Point) => Point = (at) => at): readonly Told[] {
  const { diagonal } = reading.plan.canvas;
  return reading.findings.filter(isLookedAt).map((finding) => {
    const at = finding.at && back(finding.at);
    return { gist: gist(reading, finding), at: at && { x: at.x / diagonal, y: at.y / diagonal } };
  });
}

function expectSame(picture: string, one: readonly Told[], other: readonly Told[]): void {
  const left = [...other];
  const missing = one.filter(({ gist, at }) => {
    const index = left.findIndex((candidate) => candidate.gist === gist && isSamePlace(candidate.at, at));
    if (index >= 0) left.splice(index, 1);
    return index < 0;
  });
  expect({ missing, added: left }, picture).toEqual({ missing: [], added: [] });
}

function isSamePlace(one: Point | undefined, other: Point | undefined): boolean {
  if (!one || !other) return one === other;
  return Math.hypot(one.x - other.x, one.y - other.y) <= SAME_PLACE;
}

/** What is said, with the usual names for those that the text uses. */
function sentences({ findings }: Read, names: Names): readonly string[] {
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

/** An order that a number stands for. */
function shuffled(shuffle: number): Order {
  return (lines) =>
    lines
      .map((line, index) => ({ line, key: Math.sin((index + 1) * shuffle) }))
      .sort((one, other) => one.key - other.key)
      .map(({ line }) => line);
}

function holds(test: (picture: Picture, shuffle: number) => void): void {
  fc.assert(fc.property(picture, fc.integer({ min: 1, max: 1000 }), test), { seed, numRuns: runs });
}

describe('the findings of a picture', () => {
  it('are those of most rules, among many pictures', () => {
    const rules = new Set<string>();
    fc.assert(
      fc.property(picture, (one) => {
        const { plan, findings } = read(written(one));
        // A shape may be so flat that it has no edge for a lead.
        expect(
          plan.problems.filter(({ severity, code }) => severity === 'error' && code !== 'unreadable shape'),
        ).toEqual([]);
        findings.forEach(({ rule }) => rules.add(rule));
      }),
      ALWAYS,
    );
    expect(rules.size).toBeGreaterThan(20);
  });

  it('are the same when left and right change over', () => {
    holds((one) => {
      const writing = written(one);
      const over = read(written(mirrored(one)));
      const back = ({ x, y }: Point): Point => ({ x: one.width - x, y });
      expectSame(writing.text, told(read(writing)), told(over, back));
    });
  });

  it.each([0.1, 3])('are the same %f times as large', (factor) => {
    holds((one) => {
      const writing = written(one);
      expectSame(writing.text, told(read(writing)), told(read(written(scaled(one, factor)))));
    });
  });

  it('are told in the same words under other names', () => {
    holds((one) => {
      const renamed = sentences(read(written(one, otherNames)), otherNames);
      const usual = read(written(one));
      expect(renamed, usual.written.text).toEqual(sentences(usual, usualNames));
    });
  });

  it('are told in the same words when lines stand in another order', () => {
    holds((one, shuffle) => {
      const reordered = sentences(read(written(one, usualNames, shuffled(shuffle))), usualNames);
      const usual = read(written(one));
      expect(reordered, usual.written.text).toEqual(sentences(usual, usualNames));
    });
  });
});
