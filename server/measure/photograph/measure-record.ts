import type { Plan, Sitting } from '../../plan/plan.js';
import type { Photographs, Squaring } from './photographs.js';
import type { RecordMeasure, SittingRecord } from './record.js';

/** What the photographs of the sittings tell; nothing where no sitting names one. */
export function measureRecord(plan: Plan, photographs: Photographs): RecordMeasure | undefined {
  const sittings = plan.sittings.flatMap((sitting, index): readonly SittingRecord[] => {
    const squaring = squaringOf(plan, sitting);
    if (!squaring) return [];
    const answer = photographs.squared(squaring);
    if (answer?.ok === false) return [{ sitting: index, is: 'unreadable', reason: answer.reason }];
    return [{ sitting: index, is: 'on its way' }];
  });
  return sittings.length === 0 ? undefined : { sittings };
}

/** How the photograph of a sitting is to be squared up. */
export function squaringOf({ canvas }: Plan, { photo }: Sitting): Squaring | undefined {
  if (!photo) return undefined;
  const { file, corners, grey } = photo;
  return { path: file, corners, ...(grey ? { grey } : {}), proportion: canvas.width / canvas.height };
}
