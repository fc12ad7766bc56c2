import { frameOf } from '../../drawing/handling/framing.js';
import { surroundingsOf } from '../../drawing/handling/surroundings.js';
import { ownEdits } from '../../findings/edits/own.js';
import { changedText, type TextChange, textChanges } from '../../findings/text-changes.js';
import { type SyntaxTree, t } from '../../../grammar/index.js';
import { linesOfBase } from '../../plan/based-on/bases.js';
import type { Plan } from '../../plan/plan.js';
import { lineEndOf } from '../edits.js';
import type { Snapshot, TriedReading } from '../snapshot.js';
import { asWritten } from './as-written.js';
import { type Attempt, type NameInText, type Refusal, refusal } from './attempt.js';
import { attemptOf, objectOf } from './attempts.js';
import type { HandChange } from './change.js';

/** A change that can be made, with the plan as it is then. */
export interface Trial {
  readonly kind: 'trial';
  /** None when the text stays as it is. */
  readonly changes: readonly TextChange[];
  readonly after: TriedReading;
  readonly name?: NameInText;
}

/** A change that has been tried on the whole text: nothing in it is wrong that was not before. */
export function tried(snapshot: Snapshot, version: number, change: HandChange): Trial | Refusal {
  if (version !== snapshot.version) {
    return refusal(t('The text has changed meanwhile; try it again in the drawing as it is now.'));
  }
  const attempt = attemptOf(snapshot, change);
  if (attempt.kind === 'refused') return attempt;
  const changes = changesOf(attempt, snapshot);
  if (!changes)
    return refusal(
      t('What this would change stands in the plan that this one is based on: change it there.'),
    );
  if (changes.length === 0) return { kind: 'trial', changes, after: snapshot };
  const after = snapshot.readInstead(changedText(snapshot.lines, changes).text);
  const fault = newFault(snapshot, after);
  if (fault !== undefined) return refusal(fault);
  if (change.kind === 'size' && !hasSize(after.plan, change.subject)) {
    return refusal(t('So small it can’t be written down: leave it a little larger.'));
  }
  return { kind: 'trial', changes, after, ...(attempt.kind === 'new' ? { name: attempt.name } : {}) };
}

/** Whether an object is wide and high still: what is written is rounded, to sixteenths of an inch in places. */
function hasSize(plan: Plan, subject: string): boolean {
  const object = objectOf(plan, subject);
  return object !== undefined && frameOf(object, surroundingsOf(plan)) !== undefined;
}

function changesOf(
  attempt: Exclude<Attempt, Refusal>,
  { lines, text, plan }: Snapshot,
): readonly TextChange[] | undefined {
  if (attempt.kind === 'new') return [attempt.change];
  const written = (file: string | undefined): readonly string[] =>
    file === undefined ? lines : linesOfBase(plan.basedOn, file);
  const edits = ownEdits(
    plan,
    attempt.edits.map((edit) => asWritten(edit, written, plan.canvas.unit)),
  );
  return (
    edits &&
    textChanges({ edits }, lines, lineEndOf(text)).filter(
      ({ from, to, text: words }) =>
        from.line !== to.line || (lines[from.line] ?? '').slice(from.column, to.column) !== words,
    )
  );
}

type Told = { readonly tree: SyntaxTree; readonly plan: Plan };

/** The first error of a text that the other did not have. */
function newFault(before: Told, after: Told): string | undefined {
  const known = faultsOf(before);
  return faultsOf(after).find((fault) => {
    const index = known.indexOf(fault);
    if (index >= 0) known.splice(index, 1);
    return index < 0;
  });
}

/** Errors, and a lead that leads nowhere, which is not drawn. */
function faultsOf({ tree, plan }: Told): string[] {
  return [
    ...tree.problems.map(({ message }) => message),
    ...plan.problems
      .filter(({ severity, code }) => severity === 'error' || code === 'lead without length')
      .map(({ message }) => message),
  ];
}
