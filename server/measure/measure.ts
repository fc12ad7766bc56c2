import type { Plan } from '../plan/plan.js';
import { visibleAreas } from './areas.js';
import { measureBorders } from './borders.js';
import { measureColours } from './colours.js';
import { measureFocus } from './focus.js';
import { measureHues } from './hues.js';
import type { Measures } from './measures.js';
import { Memory } from './memory.js';
import { measureNotan } from './notan.js';
import { measureObjects } from './objects.js';
import { measurePlanes } from './planes.js';
import { measureProportion } from './proportion.js';
import { measureValues } from './values.js';

/**
 * Everything measured on a plan: a pure function of it, and never a throw. A memory kept from one version of a
 * document to the next saves work and changes no result.
 */
export function measure(plan: Plan, memory: Memory = new Memory()): Measures {
  memory.turnOver();
  const layers = plan.coveringOrder.flatMap((index) => plan.objects[index] ?? []);
  const areas = visibleAreas(plan.canvas, layers);
  const objects = measureObjects(plan, areas);
  const shares = objects.map(({ share }) => share);
  const focus = measureFocus(plan, areas);
  return {
    areas,
    borders: measureBorders(plan, areas, memory),
    objects,
    values: measureValues(plan, shares, areas.bareShare),
    colours: measureColours(plan, shares, areas.bareShare),
    hues: measureHues(plan, areas, shares, memory),
    planes: measurePlanes(plan, shares),
    notan: measureNotan(plan, areas, memory),
    proportion: measureProportion(plan.canvas),
    ...(focus ? { focus } : {}),
  };
}
