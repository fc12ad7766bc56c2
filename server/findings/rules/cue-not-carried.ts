import { t } from '../../../grammar/index.js';
import type { Measures } from '../../measure/measures.js';
import type { Cue, Plan, PlanObject } from '../../plan/plan.js';
import { rightBehind } from '../edits/edit.js';
import type { Rule, RuleFinding } from '../finding.js';
import { hasFault, isErrorTold } from '../limits.js';
import { cueOpening } from '../words/cues.js';
import { quoted, someOf } from '../words/words.js';

const MOST_NAMED = 4;

export const cueNotCarried: Rule = {
  id: 'cue not carried',
  severity: 'hint',
  chapter: 'concept',
  perObject: true,
  perCue: true,
  summary: 'Nothing in the picture carries one of its cues.',
  explanation:
    'A cue is a sound, a smell or a touch that tells the story. It reaches somebody who looks only through what is painted, so some object has to carry it, and has to be seen. It is a warning where the plan says what carries it and nothing of that is seen.',
  formula: 'a `cue` without `carried by`, or visible area of all that carry it = 0',
  source: 'common practice, no source',
  check: (plan, measures) =>
    plan.objects.length === 0
      ? []
      : plan.cues.flatMap((cue, index): RuleFinding[] => {
          // Names that nothing has are told already, and may well be meant to carry it.
          if (hasError(plan, cue)) return [];
          const found = cue.carriedBy.length === 0 ? [notCarried(plan, cue)] : unseen(plan, measures, cue);
          return found.map((one) => ({ ...one, cue: index }));
        }),
};

function hasError(plan: Plan, { location: { file, line } }: Cue): boolean {
  return isErrorTold(plan, (place) => place.file === file && place.line === line);
}

function notCarried(plan: Plan, cue: Cue): RuleFinding {
  const { location } = cue;
  const named = namedIn(plan, cue);
  const words = named && `carried by ${named.name}`;
  return {
    message: t('No object carries the cue “{0}”.', cueOpening(cue.value)),
    advice: words
      ? t('It speaks of {0}: write `{1}` behind it.', quoted(named.name), words)
      : t('Write `carried by` and the names of the objects that tell it behind the sentence.'),
    location,
    ...(words
      ? {
          fix: {
            title: t('Let {0} carry it', quoted(named.name)),
            edits: [
              {
                kind: 'replace',
                location: rightBehind(location),
                text: ` ${words}`,
              },
            ],
          },
        }
      : {}),
  };
}

/** The one object whose name is a word of the cue. */
function namedIn({ objects }: Plan, { value }: Cue): PlanObject | undefined {
  const words = new Set(
    value
      .normalize('NFC')
      .toLowerCase()
      .split(/[^\p{L}\p{M}\p{N}-]+/u),
  );
  const [named, ...others] = objects.filter(({ key }) => words.has(key));
  return others.length > 0 ? undefined : named;
}

function unseen(plan: Plan, measures: Measures, cue: Cue): readonly RuleFinding[] {
  const carriers = cue.carriedBy.flatMap((index) => plan.objects[index] ?? []);
  const tells = (object: PlanObject): boolean =>
    (measures.objects[object.index]?.share ?? 0) > 0 || hasFault(plan, object);
  if (carriers.some(tells)) return [];
  const names = someOf(
    carriers.map(({ name }) => quoted(name)),
    MOST_NAMED,
  );
  const several = carriers.length > 1;
  return [
    {
      message: several
        ? t('The cue “{0}” is carried by {1}, and nothing of them is seen.', cueOpening(cue.value), names)
        : t('The cue “{0}” is carried by {1}, and nothing of it is seen.', cueOpening(cue.value), names),
      advice: several
        ? t('Bring one of them to light, or let something carry the cue that is seen.')
        : t('Bring {0} to light, or let something carry the cue that is seen.', names),
      severity: 'warning',
      location: cue.location,
      related: carriers.map(({ name, location }) => ({
        location,
        message: t('{0} is not seen.', quoted(name)),
      })),
      objects: carriers.map(({ index }) => index),
    },
  ];
}
