import { marked, nearestWord, said, t } from '../../grammar/index.js';
import type { Measures } from '../measure/measures.js';
import { isOwn } from '../plan/based-on/here.js';
import type { Allowance, LimitUnit, Location, OwnLocation, Plan, RuleSetting } from '../plan/plan.js';
import { inWords } from '../plan/problems.js';
import { exceptionKinds, type ExceptionKind, isTooNarrow, namesSetAside } from './exceptions.js';
import type { Finding, OwnEdit, OwnFix, Rule, RuleFinding, RuleLimit } from './finding.js';
import { folded } from './folding.js';
import { type Found, foundBy } from './told.js';
import { ruleById, rules } from './rules.js';
import { exceeds } from './limits.js';
import { greatestOf, NO_SETTINGS, type RuleChange, type RuleSettings } from './settings.js';
import { eitherOf, limitForm, limitInWords, quoted } from './words/words.js';

export const NEEDLESS_EXCEPTION = 'needless exception';
export const NO_SUCH_RULE = 'no such rule';
export const IDLE_SETTING = 'idle setting';
export const WRONG_UNIT = 'limit in another unit';
export const OUT_OF_REACH = 'limit out of reach';
export const TOO_NARROW_EXCEPTION = 'too narrow exception';

/**
 * What the rules find in a plan, what matters most to the picture first. Findings that the plan sets aside are there
 * too, with the reason in `allowed`. What a `rule` line of the plan says of a rule goes before what `settings` say, and
 * that before the rule itself. A pure function: the same plan gives the same findings.
 */
export function check(
  plan: Plan,
  measures: Measures,
  settings: RuleSettings = NO_SETTINGS,
): readonly Finding[] {
  // Of half a plan nothing holds.
  if (plan.basedOn?.lacking !== undefined) return [];
  const own = ownExceptions(plan);
  const byRule = rules.map((rule): readonly Found[] => {
    const { severity, limit } = asSet(rule, plan, settings);
    return severity === 'off' ? [] : foundBy(rule, plan, measures, limit, severity);
  });
  const used = new Set(byRule.flatMap((found) => found.flatMap(({ allowance }) => allowance ?? [])));
  return [
    ...byRule.flatMap((found) => folded(plan, found)),
    ...unknownRules(own),
    ...unfitSettings(own),
    ...exceptionsTooNarrow(own),
    ...needlessExceptions(own, used, settings),
  ];
}

/** What a plan that this one builds on sets aside and changes of rules is looked at there. */
function ownExceptions(plan: Plan): Plan {
  if (!plan.basedOn) return plan;
  return {
    ...plan,
    allowances: plan.allowances.filter(({ location }) => isOwn(location)),
    ruleSettings: plan.ruleSettings.filter(({ location }) => isOwn(location)),
  };
}

/** The findings that stand: those that the plan does not set aside. */
export function standing(findings: readonly Finding[]): readonly Finding[] {
  return findings.filter(({ allowed }) => !allowed);
}

function asSet(rule: Rule, plan: Plan, settings: RuleSettings): RuleChange & { readonly limit: number } {
  const stated = plan.ruleSettings.findLast((candidate) => candidate.rule === rule.id);
  const change = settings.get(rule.id);
  const limit =
    stated?.limit && rule.limit && isUsable(stated.limit, rule.limit) ? stated.limit.value : undefined;
  const severity =
    stated?.severity ?? (rule.isCaution && change?.severity === 'off' ? 'hint' : change?.severity);
  return {
    ...(severity ? { severity } : {}),
    limit: limit ?? change?.limit ?? rule.limit?.value ?? 0,
  };
}

type StatedLimit = NonNullable<RuleSetting['limit']>;

function isUsable({ unit, value }: StatedLimit, own: RuleLimit): boolean {
  return unit === own.unit && !exceeds(value, greatestOf(own));
}

function unknownRules(plan: Plan): readonly Finding[] {
  return [...plan.allowances, ...plan.ruleSettings].flatMap(({ rule, location }) => {
    if (ruleById(rule)) return [];
    const turnedOff = /^(.+) off$/.exec(rule)?.[1];
    if (turnedOff !== undefined && ruleById(turnedOff)) {
      return ownFinding(NO_SUCH_RULE, 'warning', location, {
        message: t('There is no rule called {0}.', quoted(rule)),
        advice: t(
          'A plan does not turn a rule off but says why it does not hold: `allow {0} because "…"`.',
          turnedOff,
        ),
      });
    }
    const nearest = nearestWord(
      rule,
      rules.map(({ id }) => id),
    );
    return ownFinding(NO_SUCH_RULE, 'warning', location, {
      message:
        t('There is no rule called {0}.', quoted(rule)) +
        (nearest ? ` ${t('Did you mean {0}?', quoted(nearest))}` : ''),
      ...(nearest
        ? {
            fix: {
              title: t('Change to {0}', quoted(nearest)),
              edits: [replaceOwn(location, nearest)],
            },
          }
        : {}),
    });
  });
}

/** `rule` lines that change nothing. One whose limit was refused is told of that already. */
function unfitSettings(plan: Plan): readonly Finding[] {
  return plan.ruleSettings.flatMap(({ rule: id, severity, limit, location }) => {
    const rule = ruleById(id);
    if (!rule) return [];
    if (limit && !rule.limit) {
      return ownFinding(IDLE_SETTING, 'warning', limit.location, {
        message: t('{0} has no limit, so this one changes nothing.', quoted(id)),
        advice: t('Take the limit out; `rule {0} hint` or `rule {0} warning` changes how it is told.', id),
      });
    }
    if (limit && rule.limit && limit.unit !== rule.limit.unit) return inOtherUnit(id, rule.limit, limit);
    if (limit && rule.limit && !isUsable(limit, rule.limit)) return outOfReach(id, rule.limit, limit);
    const refused = plan.problems.some((problem) => problem.location.line === location.line);
    if (severity ?? limit ?? refused) return [];
    return ownFinding(IDLE_SETTING, 'hint', location, {
      message: t('This line changes nothing of {0}.', quoted(id)),
      advice: rule.limit
        ? t('Say `warning` or `hint`, or give a limit such as `limit {0}`.', limitForm(rule.limit))
        : t('Say `warning` or `hint`.'),
    });
  });
}

const UNIT_NAMES: Readonly<Record<LimitUnit, string>> = {
  part: marked('a share in %'),
  degrees: marked('an angle in degrees'),
  number: marked('a plain number'),
};

function outOfReach(id: string, own: RuleLimit, { location }: StatedLimit): Finding {
  const greatest = limitForm({ unit: own.unit, value: greatestOf(own) });
  return ownFinding(OUT_OF_REACH, 'error', location, {
    message: t(
      'The limit of {0} may be at most {1}: beyond that nothing is looked at.',
      quoted(id),
      limitInWords({ ...own, value: greatestOf(own) }),
    ),
    advice: t(
      'Write `rule {0} limit {1}`, or less; without this line it is {2}.',
      id,
      greatest,
      limitInWords(own),
    ),
    fix: { title: t('Change to {0}', quoted(greatest)), edits: [replaceOwn(location, greatest)] },
  });
}

/** The number itself is kept where it makes sense in the other unit. */
function inOtherUnit(id: string, own: RuleLimit, { value, unit, location }: StatedLimit): Finding {
  const written = unit === 'part' ? value * 100 : value;
  const same = own.unit === 'part' ? written / 100 : written;
  const meant = limitForm({ unit: own.unit, value: exceeds(same, greatestOf(own)) ? own.value : same });
  return ownFinding(WRONG_UNIT, 'warning', location, {
    message: t(
      'The limit of {0} is {1}, and this is {2}, so it changes nothing.',
      quoted(id),
      said(UNIT_NAMES[own.unit]),
      said(UNIT_NAMES[unit]),
    ),
    advice: t('Write `rule {0} limit {1}`, say; without this line it is {2}.', id, meant, limitInWords(own)),
    fix: { title: t('Change to {0}', quoted(meant)), edits: [replaceOwn(location, meant)] },
  });
}

function exceptionsTooNarrow(plan: Plan): readonly Finding[] {
  return plan.allowances.flatMap((allowance) => {
    const { rule: id, objects, location } = allowance;
    const rule = ruleById(id);
    if (!rule || !isTooNarrow(allowance, rule)) return [];
    const kinds = exceptionKinds(rule);
    const whom = inWords(namesSetAside(plan, allowance));
    return ownFinding(TOO_NARROW_EXCEPTION, 'warning', location, {
      message:
        kinds.length === 0
          ? t('{0} is about the whole picture, so it can’t be set aside for {1} alone.', quoted(id), whom)
          : t(
              '{0} is about single {1}, so it can’t be set aside for {2}.',
              quoted(id),
              eitherOf(kinds.map(({ one }) => kindWords(one))),
              whom,
            ),
      advice:
        kinds.length === 0
          ? t('Write `allow {0} because "…"` at the left margin.', id)
          : t('Write {0}.', eitherOf(kinds.map(({ form }) => quoted(`allow ${id} for ${form} because "…"`)))),
      objects,
    });
  });
}

function kindWords(kind: ExceptionKind['one']): string {
  switch (kind) {
    case 'object':
      return t('objects');
    case 'lead':
      return t('leads');
    case 'cue':
      return t('cues');
  }
}

function needlessExceptions(
  plan: Plan,
  used: ReadonlySet<Allowance>,
  settings: RuleSettings,
): readonly Finding[] {
  return plan.allowances.flatMap((allowance) => {
    const { rule: id, location, objects } = allowance;
    const names = namesSetAside(plan, allowance);
    const rule = ruleById(id);
    if (used.has(allowance) || !rule || isTooNarrow(allowance, rule)) return [];
    // A rule that somebody has turned off for themselves finds nothing anywhere.
    if (asSet(rule, plan, settings).severity === 'off') return [];
    return ownFinding(NEEDLESS_EXCEPTION, 'hint', location, {
      message:
        names.length > 0
          ? t('{0} is set aside for {1}, but it finds nothing there.', quoted(id), inWords(names))
          : t('{0} is set aside, but it finds nothing there.', quoted(id)),
      advice: t('Take this line out; the rule will speak up when it is broken.'),
      fix: { title: t('Take this line out'), edits: [{ kind: 'take out line', line: location.line }] },
      objects,
    });
  });
}

function ownFinding(
  rule: string,
  severity: Finding['severity'],
  location: Location,
  found: Omit<RuleFinding, 'location' | 'remedy' | 'fix'> & { readonly fix?: OwnFix },
): Finding {
  return { related: [], objects: [], ...found, rule, severity, location: inOwnText(location) };
}

function replaceOwn(location: Location, text: string): OwnEdit {
  return { kind: 'replace', location: inOwnText(location), text };
}

/** Lines about rules are looked at in the plan's own text alone. */
function inOwnText({ line, start, end }: Location): OwnLocation {
  return { line, start, end };
}
