import { compareLeads } from '../../measure/comparison/leads.js';
import type { Plan } from '../../plan/plan.js';
import { quoted } from '../words/words.js';
import {
  type Change,
  type Compared,
  byKey,
  calledIn,
  changeOf,
  comeAndGone,
  nowCalled,
  places,
} from './change.js';
import { moveInWords } from './wording.js';

/** What differs in leads and the path of the eye. */
export function eyePathChanges(compared: Compared): readonly Change[] {
  const { earlier, later, frame } = compared;
  const leads = byKey(earlier.plan.leads, later.plan.leads, ({ key }) => key);
  return [
    ...comeAndGone('eye path', leads, {
      new: ({ name }) => `The lead ${quoted(name)} is new.`,
      gone: ({ name }) => `The lead ${quoted(name)} is gone.`,
    }),
    ...leads.both.flatMap(([before, now]): readonly Change[] => {
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
      const where = places(before.location, now.location);
      return [{ topic: 'eye path', kind: 'moved', message: `${name} ${way}.`, ...where }];
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
