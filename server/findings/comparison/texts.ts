import type { Stated } from '../../plan/plan.js';
import { type Change, type Compared, byKey, changeOf, comeAndGone, places } from './change.js';
import { said } from './wording.js';

/** What differs in the words about the picture: title, concept, mood, cues, what is to be avoided, notes. */
export function textChanges({ earlier, later }: Compared): readonly Change[] {
  const [before, now] = [earlier.plan, later.plan];
  const one = (
    what: string,
    old: Stated<string> | undefined,
    text: Stated<string> | undefined,
  ): readonly Change[] =>
    changeOf(
      'words',
      [old?.value, text?.value],
      {
        new: (words) => `The ${what} is new: ${said(words)}.`,
        gone: (words) => `The ${what} is gone; it was ${said(words)}.`,
        changed: (words, were) => `The ${what} is ${said(words)} instead of ${said(were)}.`,
      },
      places(old?.location, text?.location),
    );
  return [
    ...one('title', before.title, now.title),
    ...changeOf('words', [before.by, now.by], {
      new: (name) => `The painter is named now: ${name}.`,
      gone: (name) => `The painter is no longer named; it was ${name}.`,
      changed: (name, old) => `The painter is ${name} instead of ${old}.`,
    }),
    ...one('concept', before.concept, now.concept),
    ...one('mood', before.mood, now.mood),
    ...listed('Cue', before.cues, now.cues),
    ...listed('What to avoid', before.avoids, now.avoids),
    ...noteChanges('The plan', before.notes, now.notes),
    ...noteChanges('The canvas', before.canvas.notes, now.canvas.notes),
  ];
}

function listed(
  what: string,
  before: readonly Stated<string>[],
  now: readonly Stated<string>[],
): readonly Change[] {
  return comeAndGone('words', byKey(before, now, textOf), {
    new: ({ value }) => `${what}, new: ${said(value)}.`,
    gone: ({ value }) => `${what}, gone: ${said(value)}.`,
  });
}

/** Notes that a thing has lost or got. */
export function noteChanges(
  whose: string,
  before: readonly Stated<string>[],
  now: readonly Stated<string>[],
  about: Pick<Change, 'object'> = {},
): readonly Change[] {
  return comeAndGone(
    'words',
    byKey(before, now, textOf),
    {
      new: ({ value }) => `${whose} has a new note: ${said(value)}.`,
      gone: ({ value }) => `${whose} has lost a note: ${said(value)}.`,
    },
    about,
  );
}

function textOf({ value }: Stated<string>): string {
  return value;
}
