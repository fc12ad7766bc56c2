import { parse } from '../../../grammar/index.js';
import { check } from '../../../server/findings/check.js';
import { measure } from '../../../server/measure/measure.js';
import { resolvePlan } from '../../../server/plan/resolve.js';
import { planOfLines } from '../documents/plan.js';
import type { Contestant } from './contestant.js';

const document = (lines: number, seed: number): string => planOfLines(lines, seed).text;

/** Text to tree alone. */
export const oursParse: Contestant = {
  name: 'mahlstick, parse',
  does: 'parse',
  document,
  read: (text) => parse(text).problems.length,
};

/** Text to plan: names bound, outlines built, colours read. */
export const ours: Contestant = {
  name: 'mahlstick, parse and resolve',
  does: 'parse, resolve',
  document,
  read: (text) => {
    const tree = parse(text);
    return tree.problems.length + resolvePlan(tree).problems.length;
  },
};

/** Text to findings, with nothing kept from before. */
export const oursChecked: Contestant = {
  name: 'mahlstick, all the way to findings',
  does: 'parse, resolve, measure, check',
  document,
  read: (text) => {
    const tree = parse(text);
    const plan = resolvePlan(tree);
    return tree.problems.length + plan.problems.length + check(plan, measure(plan)).length;
  },
};
