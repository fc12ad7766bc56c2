import type { Comparison } from '../../findings/comparison/compare.js';
import { composeReading, readingOf } from '../compose.js';
import type { Mark, ComparedView, Scene } from '../scene.js';
import type { Reading } from '../views/reading.js';
import { earlierMarks, laterMarks } from './marks.js';

/** Both pictures of a comparison in one view, each with what changed marked on it instead of findings. */
export interface ComparedScenes {
  readonly earlier: Scene;
  readonly later: Scene;
}

/**
 * @param em height of the letters in units of each canvas; by the size of its sheet unless said
 */
export function comparedScenes(
  comparison: Comparison,
  view: ComparedView,
  em: { readonly earlier: number; readonly later: number } | undefined = undefined,
): ComparedScenes {
  const { earlier, later } = comparison;
  const sceneOf = (
    { plan, measures }: Comparison['earlier'],
    size: number | undefined,
    marksOf: (reading: Reading) => readonly Mark[],
  ): Scene => {
    const reading = readingOf(plan, measures, [], { em: size });
    const scene = composeReading(reading, view);
    const marks = marksOf(reading);
    return {
      ...scene,
      // Below the names, which stay readable.
      layers: scene.layers.map((layer) =>
        layer.name === 'construction' ? { ...layer, marks: [...layer.marks, ...marks] } : layer,
      ),
    };
  };
  return {
    earlier: sceneOf(earlier, em?.earlier, ({ subjects }) => earlierMarks(comparison, subjects)),
    later: sceneOf(later, em?.later, ({ subjects, layout }) => laterMarks(comparison, subjects, layout.em)),
  };
}
