import type { Plan, Sitting } from '../../plan/plan.js';
import type { Memory } from '../memory.js';
import type { PaletteMeasure } from '../mixing/mixing.js';
import type { ScheduleMeasure } from '../sittings/schedule.js';
import { keptWordless } from '../wordless.js';
import { recordFigures, type SeenInPlan } from './figures.js';
import type { Photographs, SquaredAnswer, SquaredPicture, Squaring } from './photographs.js';
import type { RecordMeasure, SittingRecord } from './record.js';
import { targetsAfter } from './targets.js';

/** What of the other measures the record goes by. */
export interface MeasuredForRecord extends SeenInPlan {
  readonly schedule?: ScheduleMeasure;
  readonly palette?: PaletteMeasure;
}

/** What the photographs of the sittings tell; nothing where no sitting names one. */
export function measureRecord(
  plan: Plan,
  { schedule, palette, ...seen }: MeasuredForRecord,
  photographs: Photographs,
  memory: Memory,
): RecordMeasure | undefined {
  if (!schedule || plan.sittings.every(({ photo }) => !photo)) return undefined;
  const shown = schedule.sittings.flatMap(({ sitting: index }): readonly Shown[] => {
    const sitting = plan.sittings[index];
    const squaring = sitting && squaringOf(plan, sitting);
    return squaring ? [{ sitting, index, answer: photographs.squared(squaring) }] : [];
  });
  const inputs = [keptWordless(plan, memory), schedule, palette, ...shown.map(({ answer }) => answer)];
  return memory.recall('record', '', inputs, () => {
    const targets = targetsAfter(plan, schedule, palette?.mixing);
    const records = new Map<number, SittingRecord>();
    let before: { readonly index: number; readonly picture: SquaredPicture } | undefined;
    for (const { sitting, index, answer } of shown) {
      if (!answer) records.set(index, { sitting: index, is: 'on its way' });
      else if (!answer.ok) records.set(index, { sitting: index, is: 'unreadable', reason: answer.reason });
      else {
        const { picture } = answer;
        const photographed = { sitting, index, picture, targets: targets.get(index) ?? [], before };
        const figures = recordFigures(plan, seen, photographed, memory);
        records.set(index, { sitting: index, is: 'measured', picture, figures });
        before = { index, picture };
      }
    }
    return { sittings: plan.sittings.flatMap((_, index) => records.get(index) ?? []) };
  });
}

/** A sitting that names a photograph, and what is known of that. */
interface Shown {
  readonly sitting: Sitting;
  /** Index into `plan.sittings`. */
  readonly index: number;
  readonly answer: SquaredAnswer | undefined;
}

/** How the photograph of a sitting is to be squared up; nothing without one. */
export function squaringOf({ canvas }: Plan, { photo }: Sitting): Squaring | undefined {
  if (!photo) return undefined;
  const { file, corners, grey } = photo;
  return { path: file, corners, ...(grey ? { grey } : {}), proportion: canvas.width / canvas.height };
}
