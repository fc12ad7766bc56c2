import { t } from '../../../grammar/index.js';
import { frameOf } from '../../measure/comparison/frame.js';
import { pairObjects } from '../../measure/comparison/pairs.js';
import { placeHere } from '../../plan/based-on/here.js';
import type { Canvas } from '../../plan/plan.js';
import { besideChanges } from './beside.js';
import { type Change, type Compared, type EvaluatedPlan, places, topics } from './change.js';
import { colourChanges, paletteChanges } from './colours.js';
import { eyePathChanges } from './eye-path.js';
import { objectChanges } from './objects.js';
import { findingChanges, ruleChanges } from './rules.js';
import { settingChanges } from './setting.js';
import { sittingChanges } from './sittings.js';
import { textChanges } from './texts.js';
import { valueChanges } from './values.js';
import { sizeInWords } from './wording.js';

/** Two plans held against each other, and what differs, what matters most to the picture first. */
export interface Comparison extends Compared {
  readonly changes: readonly Change[];
  /** How places were compared where the canvases differ, as a sentence. */
  readonly remark?: string;
}

/**
 * What a painter would say is another picture or another plan. Comments, the form of the text, the order of its lines
 * where it does not show and whatever rounds to nothing make no change. A pure function of both.
 */
export function comparePlans(earlier: EvaluatedPlan, later: EvaluatedPlan): Comparison {
  const frame = frameOf(earlier.plan.canvas, later.plan.canvas);
  const objects = pairObjects(earlier.plan, later.plan, frame);
  const compared: Compared = { earlier, later, frame, objects };
  const changes = [
    ...settingChanges(compared),
    ...objectChanges(compared),
    ...eyePathChanges(compared),
    ...valueChanges(compared),
    ...colourChanges(compared),
    ...paletteChanges(compared),
    ...sittingChanges(compared),
    ...findingChanges(compared),
    ...ruleChanges(compared),
    ...textChanges(compared),
    ...besideChanges(compared),
  ];
  const remark = frame.isSameSize ? undefined : sizesRemark(earlier.plan.canvas, later.plan.canvas);
  return {
    ...compared,
    // Sorting keeps what has one topic in its order.
    changes: changes
      .map((change) => ({
        ...change,
        message: change.message.replace(/([.!?…]”)\.$/u, '$1'),
        // What stands in a plan that one of them builds on is gone to where that one names it.
        ...places(
          change.earlier && placeHere(earlier.plan, change.earlier),
          change.later && placeHere(later.plan, change.later),
        ),
      }))
      .sort((one, other) => topics.indexOf(one.topic) - topics.indexOf(other.topic)),
    ...(remark === undefined ? {} : { remark }),
  };
}

/** What to say where there is no change. */
export function noChangeInWords(isSameText: boolean): string {
  return isSameText ? t('The same plan, word for word.') : t('The same picture; only the text differs.');
}

/** What to say where the canvases are not of one size. */
export function sizesRemark(before: Canvas, now: Canvas): string {
  return t(
    'The canvases differ ({0}, {1}), so places are compared in parts of the canvas.',
    sizeInWords(before),
    sizeInWords(now),
  );
}
