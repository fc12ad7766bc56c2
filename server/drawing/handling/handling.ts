import type { Handling } from '../scene.js';
import type { Reading } from '../views/reading.js';

/** What a hand can do in the drawing of a plan. */
export function handlingOf({ plan }: Reading): Handling {
  return {
    grips: [],
    guides: { lines: [], crossings: [] },
    tones: [],
    colours: [],
    painted: {},
    unit: plan.canvas.unit,
  };
}
