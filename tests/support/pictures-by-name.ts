import type { Photographs } from '../../server/measure/photograph/photographs.js';
import { photographsAsTold } from '../../server/measure/photograph/test-support.js';
import type { Plan } from '../../server/plan/plan.js';
import { sizesByName } from './sizes-by-name.js';

/** Pictures that are what their names say: photographs of the painting (`photographsAsTold`), sketches of a size. */
export function picturesByName(plan: Plan): Photographs {
  return { ...photographsAsTold(plan), sizeOf: sizesByName.sizeOf };
}
