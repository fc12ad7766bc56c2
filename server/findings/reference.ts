import { parse, type ProblemCode } from '../../grammar/index.js';
import { measure } from '../measure/measure.js';
import { noPhotographs, type Photographs } from '../measure/photograph/photographs.js';
import type { Plan, PlanProblemCode } from '../plan/plan.js';
import { resolvePlan } from '../plan/resolve.js';
import {
  check,
  IDLE_SETTING,
  NEEDLESS_EXCEPTION,
  NO_SUCH_RULE,
  OUT_OF_REACH,
  TOO_NARROW_EXCEPTION,
  WRONG_UNIT,
} from './check.js';
import { exceptionKinds } from './exceptions.js';
import { type Chapter, chapters, type Rule } from './finding.js';
import { ruleSlug, rules } from './rules.js';
import { limitForm, limitInWords } from './words/words.js';

type Code = ProblemCode | PlanProblemCode;

/** What can be wrong with the text or with what it refers to, code by code. */
const PROBLEMS: Readonly<Record<Code, string>> = {
  'unreadable text': 'Characters that belong to no word, number, colour or sentence.',
  'unknown word':
    'A word that means nothing where it stands. The nearest word that does is offered as a fix.',
  'misplaced statement': 'A statement in a block where it can’t stand. The message says where it belongs.',
  'incomplete statement': 'A statement that ends before it is whole.',
  'unexpected text': 'More on the line than the statement takes.',
  'unclosed sentence': 'A sentence without its closing quotes.',
  'uneven indentation': 'A line indented to a depth that no block around it has.',
  'unknown version': 'The plan asks for a version of the language that this Mahlstick does not know.',
  'unknown name':
    'A name that nothing in the plan has. The nearest name that something has is offered as a fix.',
  'repeated name': 'Two things of one kind under one name. The first counts.',
  'repeated statement': 'A statement given twice where one is enough. The last counts.',
  'circular reference':
    'Things that are placed by each other, so that none has a place; colours given by each other; plans that are based on each other, so that none is the first.',
  'unreadable colour':
    'A colour that is no hex, CSS Color 4 or Munsell notation, or is none that paint can have.',
  'unreadable shape': 'Path data or a part of an SVG file that can’t be drawn.',
  'unreadable file': 'A file that is not there, is too large, or lies where a plan may not read.',
  'number out of range': 'A number that makes no sense where it stands.',
  'no canvas': 'The plan gives no canvas; 40 x 30 cm is taken.',
  'no such crossing': 'A crossing that the division of this canvas does not have.',
  'lead without length': 'A lead that starts where it aims, so that it leads nowhere.',
  'error in another plan':
    'The plan that this one is based on has errors of its own; what they touch is left out here too. The first is told, and the editor leads to each.',
  'left out with it':
    'What the plan this one is based on says by a thing that `without` leaves out, and what therefore goes too.',
};

const OWN: Readonly<Record<string, string>> = {
  [NO_SUCH_RULE]: 'An `allow` or `rule` line names a rule that is not on this page.',
  [IDLE_SETTING]:
    'A `rule` line changes nothing: it gives a limit to a rule that has none, or says neither how the rule is told nor a limit.',
  [WRONG_UNIT]:
    'A `rule` line gives a limit in % where the rule counts in degrees or numbers, or the other way round.',
  [OUT_OF_REACH]:
    'A `rule` line gives a limit beyond which the rule looks at nothing. The greatest that it may be is told.',
  [TOO_NARROW_EXCEPTION]:
    'A rule is set aside for single objects, leads or cues, and it is about the whole picture or about other things.',
  [NEEDLESS_EXCEPTION]: 'A rule is set aside where it would not have spoken up.',
};

/** A rule's plan that breaks it, as text; nothing for one that is not to be shown. */
export type PlanThatBreaks = (rule: string) => string | undefined;

/** The pictures that a plan names. */
export type PicturesOf = (plan: Plan) => Photographs;

/**
 * The reference of all findings as Markdown; `README.md` beside this file holds it and a test keeps them alike. Each
 * rule shows a plan that breaks it, drawn in `drawings`, and what is then said.
 * @param photographs the pictures that those plans name
 */
export function findingsReference(
  planThatBreaks: PlanThatBreaks = () => undefined,
  photographs: PicturesOf = () => noPhotographs,
): string {
  const inUse = chapters.filter((chapter) => rules.some((rule) => rule.chapter === chapter));
  return [
    '# What Mahlstick finds',
    '',
    'A plan states intentions. A finding says where the plan breaks one of them, or a rule of thumb of the trade: what',
    'was measured, what was wanted, where, and one thing to try. Rules of thumb are heuristics, and painters break them',
    'on purpose; any rule can be set aside in the plan with a reason, for the whole plan or, where it is about single',
    'objects, leads or cues, for one of them:',
    '',
    '```mahl',
    'allow   bare ground because "the toned linen is the evening sky"',
    '```',
    '',
    'A finding is a warning where it breaks what the plan itself states, and otherwise a hint. That and the limit of a',
    'rule can be set for one plan,',
    '',
    '```mahl',
    'rule    bare ground warning limit 5%',
    '```',
    '',
    'and for all plans in the setting `mahlstick.rules` of the editor, where a rule can be turned off as well:',
    '',
    '```json',
    '"mahlstick.rules": { "even count": "off", "bare ground": { "severity": "warning", "limit": 5 } }',
    '```',
    '',
    'What the plan says goes before what the editor says.',
    '',
    '## All rules',
    '',
    ...inUse.map((chapter) => `- [${heading(chapter)}](#${ruleSlug(chapter)}): ${linksOf(chapter)}`),
    '',
    'Then [exceptions](#exceptions) and [what can’t be read](#what-cant-be-read). This page is generated from the rules',
    'themselves (`reference.ts`), and each drawing from the plan below it.',
    '',
    ...inUse.flatMap((chapter) => [
      `## ${heading(chapter)}`,
      '',
      ...howMeasured(chapter),
      ...rules
        .filter((rule) => rule.chapter === chapter)
        .flatMap((rule) => section(rule, planThatBreaks(rule.id), photographs)),
    ]),
    '## Exceptions',
    '',
    ...Object.entries(OWN).flatMap(([code, meaning]) => [`### ${code}`, '', meaning, '']),
    '## What can’t be read',
    '',
    ...Object.entries(PROBLEMS).flatMap(([code, meaning]) => [`### ${code}`, '', meaning, '']),
  ]
    .join('\n')
    .trimEnd()
    .concat('\n');
}

/** Where a code is explained on that page: the anchor that Markdown gives its heading. */
export function referenceAnchor(code: string): string {
  return `#${ruleSlug(code)}`;
}

/** The concept is in words, and nothing in it is measured. */
function howMeasured(chapter: Chapter): readonly string[] {
  if (chapter === 'concept' || chapter === 'cautions') return [];
  return [`How this is measured: [${heading(chapter)}](../measure/README.md#${ruleSlug(chapter)}).`, ''];
}

function heading(chapter: Chapter): string {
  return chapter.charAt(0).toUpperCase() + chapter.slice(1);
}

function linksOf(chapter: Chapter): string {
  return rules
    .filter((rule) => rule.chapter === chapter)
    .map(({ id }) => `[${id}](${referenceAnchor(id)})`)
    .join(', ');
}

function section(rule: Rule, plan: string | undefined, photographs: PicturesOf): readonly string[] {
  const { id, severity, summary, explanation, formula, source, limit } = rule;
  const most = limit?.most === undefined ? '' : `, at most ${limitForm({ ...limit, value: limit.most })}`;
  const aside = exceptionKinds(rule).map(
    ({ one, form }) => `for one ${one}: \`allow ${id} for ${form} because "…"\``,
  );
  const other = severity === 'hint' ? 'warning' : 'hint';
  return [
    `### ${id}`,
    '',
    `${summary} ${explanation}`,
    '',
    ...(plan === undefined ? [] : [`![A plan that breaks it](drawings/${ruleSlug(id)}.svg)`, '']),
    `- Told as: a ${severity}`,
    `- Formula: ${formula}`,
    ...(limit ? [`- Limit: ${limitInWords(limit)}`] : []),
    `- Source: ${source}`,
    `- Set aside: ${[`\`allow ${id} because "…"\``, ...aside].join(', or ')}`,
    `- Set: \`rule ${id} ${other}\`${limit ? `, \`rule ${id} limit ${limitForm(limit)}\`${most}` : ''}`,
    '',
    ...(plan === undefined ? [] : example(id, plan, photographs)),
  ];
}

function example(rule: string, text: string, photographs: PicturesOf): readonly string[] {
  const plan = resolvePlan(parse(text));
  const measures = measure(plan, undefined, undefined, photographs(plan));
  const said = check(plan, measures).filter((finding) => finding.rule === rule);
  return [
    '<details><summary>The plan, and what is said of it</summary>',
    '',
    '```mahl',
    text.trimEnd(),
    '```',
    '',
    ...said.flatMap(({ message, advice }) => [`> ${message}${advice === undefined ? '' : ` ${advice}`}`, '']),
    '</details>',
    '',
  ];
}
