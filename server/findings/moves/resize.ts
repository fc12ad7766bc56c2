import { t } from '../../../grammar/index.js';
import type { Measures } from '../../measure/measures.js';
import { wholeOf } from '../../measure/areas/parts.js';
import { type Trial, trialOf } from '../../measure/trial.js';
import { scale } from '../../plan/geometry/matrix.js';
import { type Outline, transform } from '../../plan/geometry/outline.js';
import { boxCentre } from '../../plan/geometry/point.js';
import type { Plan, PlanObject } from '../../plan/plan.js';
import { every } from '../../plan/select.js';
import { sizeEdit } from '../edits.js';
import type { Fix } from '../finding.js';
import { percent, quoted } from '../words/words.js';
import { movedWith } from './shift.js';

/** An object at another size: so many times as wide and as high. */
export interface Resizing {
  readonly object: number;
  readonly factor: number;
}

/** The picture with an object, and what lies on it, at another size about the middle of the object. */
export function resized(
  plan: Plan,
  { areas, parts }: Pick<Measures, 'areas' | 'parts'>,
  { object, factor }: Resizing,
): Trial {
  const box = plan.objects[object]?.outline.box;
  if (!box) return trialOf(plan, areas, new Map());
  const matrix = scale(factor, factor, boxCentre(box));
  const shapes = wholeOf(parts, object).flatMap((part): readonly (readonly [number, Outline])[] => {
    const shape = plan.objects[part]?.outline;
    return shape ? [[part, transform(shape, matrix)]] : [];
  });
  return trialOf(plan, areas, new Map(shapes));
}

/**
 * Whether the text can give an object another size about its middle, and with it all that `resized` changes: not when
 * other things lie on it or are placed by it, which would stay behind, nor when it is repeated, for the copies would
 * stand as far apart as before, nor when it is set down by another place than its middle.
 */
export function isResizable(plan: Plan, parts: Measures['parts'], { index, node }: PlanObject): boolean {
  if (movedWith(plan, parts, index).length > 1 || every(node.children, 'repeat').length > 0) return false;
  return every(node.children, 'at').every(({ statement }) => statement.by === undefined);
}

/** The edits that resize an object, where they can. */
export function resizingFix(
  plan: Plan,
  parts: Measures['parts'],
  { object, factor }: Resizing,
): Fix | undefined {
  const one = plan.objects[object];
  if (!one || !isResizable(plan, parts, one)) return undefined;
  const edits = sizeEdit(plan, one, factor, 'onward');
  return edits && { title: t('Make {0} {1} as wide and as high', quoted(one.name), percent(factor)), edits };
}
