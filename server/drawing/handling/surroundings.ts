import { nameKey } from '../../../grammar/index.js';
import type { PlaceSurroundings } from '../../plan/places.js';
import type { Plan } from '../../plan/plan.js';
import { Problems } from '../../plan/problems.js';

/**
 * What places in the text of a resolved plan refer to. What can't be told of one has been reported when it was
 * resolved.
 */
export function surroundingsOf({ canvas, divisions, focus, objects }: Plan): PlaceSurroundings {
  const boxes = new Map(
    objects.flatMap(({ key, outline }) => (outline.path.length > 0 ? [[key, outline.box] as const] : [])),
  );
  return {
    canvas,
    divisions,
    problems: new Problems(),
    focus: () => focus?.at,
    boxOf: ({ text }) => boxes.get(nameKey(text)),
  };
}
