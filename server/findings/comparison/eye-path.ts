import { compareLeads } from '../../measure/comparison/leads.js';
import type { Plan } from '../../plan/plan.js';
import { quoted } from '../words/words.js';
import { type Change, type Compared, byKey, calledIn, changeOf, nowCalled, places } from './change.js';
import { moveInWords } from './wording.js';

/** What differs in leads and the path of the eye. */
export function eyePathChanges(compared: Compared): readonly Change[] {
  const { earlier, later, frame } = compared;
  const { both, come, gone } = byKey(earlier.plan.leads, later.plan.leads, ({ key }) => key);
  const where = (before?: { readonly location: Change['later'] }, now?: typeof before) =>
    places(before?.location, now?.location);
  return [
    ...come.map((lead): Change => ({
      topic: 'eye path',
      kind: 'new',
      message: `The lead ${quoted(lead.name)} is new.`,
      ...where(undefined, lead),
    })),
    ...gone.map((lead): Change => ({
      topic: 'eye path',
      kind: 'gone',
      message: `The lead ${quoted(lead.name)} is gone.`,
      ...where(lead),
    })),
    ...both.flatMap(([before, now]): readonly Change[] => {
      const name = `The lead ${quoted(now.name)}`;
      const change = compareLeads(before, now, frame);
      if (change === undefined) return [];
      const end = change.end === undefined ? '' : moveInWords(change.end, frame);
      const start = change.start === undefined ? '' : moveInWords(change.start, frame);
      const told = [
        ...(start === '' ? [] : [`begins ${start} from where it did`]),
        ...(end === '' ? [] : [`ends ${end} from where it did`]),
      ];
      const way = told.length === 0 ? 'runs another way' : told.join(' and ');
      return [{ topic: 'eye path', kind: 'moved', message: `${name} ${way}.`, ...where(before, now) }];
    }),
    ...changeOf(
      'eye path',
      [stops(earlier.plan, nowCalled(compared)), stops(later.plan, calledIn(later.plan))],
      {
        new: (path) => `The path of the eye is said now: ${path}.`,
        gone: (path) => `The path of the eye is no longer said; it was ${path}.`,
        changed: (path, old) => `The path of the eye goes over ${path} instead of ${old}.`,
      },
      places(earlier.plan.path?.location, later.plan.path?.location),
    ),
  ];
}

function stops({ path }: Plan, nameOf: (object: number) => string): string | undefined {
  return path?.value.map((object) => quoted(nameOf(object))).join(', ');
}
