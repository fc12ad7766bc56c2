import { t } from '../../../grammar/index.js';
import { type Hold, holdsOf } from '../../drawing/handling/grips.js';
import { subjectsOf } from '../../drawing/views/subjects.js';
import type { Plan, PlanObject } from '../../plan/plan.js';
import type { Snapshot } from '../snapshot.js';
import { type Attempt, refusal } from './attempt.js';
import type { HandChange } from './change.js';
import { focusOnCrossing } from './focus.js';
import { resize, takeColour, takeStep } from './looks.js';
import { moveTo } from './moves.js';
import { drawBox, drawLine } from './shapes.js';
import { sizeTo } from './sizes.js';
import { moveSketchCorner, placeGreyPatch } from './sketch-corners.js';

/** What a change comes to in the text. */
export function attemptOf(snapshot: Snapshot, change: HandChange): Attempt {
  const { plan } = snapshot;
  switch (change.kind) {
    case 'move': {
      const hold = holdOf(snapshot, change.grip);
      return hold ? moveTo(snapshot, hold, change.to) : gone();
    }
    case 'size': {
      const hold = holdOf(snapshot, change.subject);
      return hold ? sizeTo(snapshot, hold, change) : gone();
    }
    case 'sketch corner':
      return moveSketchCorner(snapshot, change);
    case 'grey patch':
      return placeGreyPatch(snapshot, change);
    case 'resize':
      return ofObject(snapshot, change.subject, (object) => resize(plan, object, change.factor));
    case 'value':
      return ofObject(snapshot, change.subject, (object) => takeStep(plan, object, change.step));
    case 'colour':
      return ofObject(snapshot, change.subject, (object) => takeColour(plan, object, change.colour));
    case 'new box':
      return drawBox(snapshot, change);
    case 'new line':
      return drawLine(snapshot, change);
    case 'crossing':
      return focusOnCrossing(snapshot, change.name);
  }
}

function holdOf({ plan }: Snapshot, key: string): Hold | undefined {
  return holdsOf(plan, subjectsOf(plan, [])).find(({ grip }) => grip.key === key);
}

/** The change of an object, by the key of its subject in the drawing. */
function ofObject({ plan }: Snapshot, subject: string, change: (object: PlanObject) => Attempt): Attempt {
  const object = objectOf(plan, subject);
  return object ? change(object) : gone();
}

/** The object of a subject in the drawing, if it is in the plan still. */
export function objectOf(plan: Plan, subject: string): PlanObject | undefined {
  return plan.objects[subjectsOf(plan, []).objects.indexOf(subject)];
}

function gone(): Attempt {
  return refusal(t('What was to be changed is not in the plan any more.'));
}
