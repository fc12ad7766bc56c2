import type { Plan } from '../plan/plan.js';
import { isSameData } from '../plan/same-data.js';
import { type VisibleAreas, visibleAreas } from './areas/areas.js';
import { measureBalance } from './objects/balance.js';
import { measureBorders } from './borders/borders.js';
import { measureColours } from './colours.js';
import { measureEmphasis } from './emphasis/emphasis.js';
import { measureEyePath } from './eye-path/eye-path.js';
import { measureFocus } from './emphasis/focus.js';
import { measureHues } from './hues/hues.js';
import { keptOfObjects, keptOrder } from './kept-lists.js';
import type { Measures } from './measures.js';
import { Memory } from './memory.js';
import { Mixer } from './mixing/mixer.js';
import { measurePalette } from './mixing/palette.js';
import { measureNotan } from './notan/notan.js';
import { measureObjects, sharesOf } from './objects/objects.js';
import { keptParts } from './areas/parts.js';
import { noPhotographs, type Photographs } from './photograph/photographs.js';
import { measureRecord } from './photograph/measure-record.js';
import { measurePlanes } from './values/planes.js';
import { measureProportion } from './proportion.js';
import { measureSchedule } from './sittings/schedule.js';
import { keptSpacing } from './objects/spacing.js';
import { measureSketch, type SketchMeasure } from './transfer/sketch.js';
import { keptTangents } from './objects/tangents.js';
import { measureValues } from './values/values.js';
import { keptWordless } from './wordless.js';

/** Works out mixtures at once, for all who don't bring a mixer of their own. */
const atOnce = Mixer.eager();

/**
 * Everything measured on a plan: a pure function of it, and never a throw. A memory kept from one version of a
 * document to the next saves work and changes no result. A patient mixer may leave out `palette.mixing` until it is
 * worked out; photographs that are on their way are measured once they are known.
 */
export function measure(
  plan: Plan,
  memory: Memory = new Memory(),
  mixer: Mixer = atOnce,
  photographs: Photographs = noPhotographs,
): Measures {
  const wordless = keptWordless(plan, memory);
  memory.turnOver(wordless);
  const seen = memory.recall('seen', '', [wordless], () => measureSeen(plan, memory));
  const { areas, objects } = seen;
  const shares = sharesOf(objects);
  const palette = measurePalette(plan, shares, areas.bareShare, mixer, memory);
  const schedule = memory.recall('schedule', '', [wordless, palette], () =>
    measureSchedule(plan, { shares, ...(palette ? { palette } : {}) }),
  );
  const record = measureRecord(
    plan,
    { areas, shares, ...(schedule ? { schedule } : {}), ...(palette ? { palette } : {}) },
    photographs,
    memory,
  );
  const measured = measureSketch(plan, photographs);
  const sketch = memory.recall<SketchMeasure | undefined>('sketch', '', [measured], (last) =>
    isSameData(last, measured) ? last : measured,
  );
  return memory.recall('measures', '', [seen, palette, schedule, sketch, record], () => ({
    ...seen,
    ...(palette ? { palette } : {}),
    ...(schedule ? { schedule } : {}),
    ...(sketch ? { sketch } : {}),
    ...(record ? { record } : {}),
  }));
}

/** What follows from the plan alone, without mixtures, days and pictures beside it. */
function measureSeen(
  plan: Plan,
  memory: Memory,
): Omit<Measures, 'palette' | 'schedule' | 'sketch' | 'record'> {
  const { width, height } = plan.canvas;
  const order = keptOrder(plan, memory);
  const outlines = keptOfObjects('outlines', plan, memory, ({ outline }) => outline);
  const areas = memory.recall(
    'areas',
    '',
    [width, height, order, outlines],
    (last: VisibleAreas | undefined) => {
      const layers = order.flatMap((index) => plan.objects[index] ?? []);
      return visibleAreas(plan.canvas, layers, undefined, last);
    },
  );
  const objects = measureObjects(plan, areas, memory);
  const shares = sharesOf(objects);
  const parts = keptParts(plan, memory);
  const focus = measureFocus(plan, areas);
  const borders = measureBorders(plan, areas, memory);
  const seen = { areas, borders, shares, parts, ...(focus ? { focus } : {}) };
  const emphasis = measureEmphasis(plan, seen, memory);
  return {
    areas,
    borders,
    emphasis,
    objects,
    values: measureValues(plan, shares, areas.bareShare),
    colours: measureColours(plan, shares, areas.bareShare),
    hues: measureHues(plan, areas, shares, memory),
    planes: measurePlanes(plan, shares),
    notan: measureNotan(plan, areas, memory),
    proportion: measureProportion(plan.canvas),
    parts,
    balance: measureBalance(plan, areas, parts),
    spacing: keptSpacing(plan, areas, parts, memory),
    tangents: keptTangents(plan, areas, parts, memory),
    eyePath: measureEyePath(plan, { areas, borders, emphasis }, memory),
    ...(focus ? { focus } : {}),
  };
}
