import type { SittingRecord } from '../../measure/photograph/record.js';
import type { Reading } from '../views/reading.js';
import type { ShownRecord } from '../scene.js';

export type MeasuredRecord = Extract<SittingRecord, { readonly is: 'measured' }>;

/** The sittings that name a photograph, in the order of the text. */
export function recordsOf({ measures }: Pick<Reading, 'measures'>): readonly SittingRecord[] {
  return measures.record?.sittings ?? [];
}

/** Those of them that could be measured. */
export function measuredOf(records: readonly SittingRecord[]): readonly MeasuredRecord[] {
  return records.filter((record): record is MeasuredRecord => record.is === 'measured');
}

/** The one that was asked for if it has a photograph, else the latest that could be measured, else the last. */
export function chosenRecord(
  records: readonly SittingRecord[],
  asked: number | undefined,
): SittingRecord | undefined {
  return (
    records.find(({ sitting }) => sitting === asked) ??
    records.findLast(({ is }) => is === 'measured') ??
    records.at(-1)
  );
}

/** What of the record can be chosen, and what is. */
export function shownRecord(reading: Reading): ShownRecord | undefined {
  const { plan, subjects, sitting: asked } = reading;
  const records = recordsOf(reading);
  const chosen = chosenRecord(records, asked);
  if (chosen === undefined) return undefined;
  return {
    sittings: records.flatMap(({ sitting }) => {
      const name = plan.sittings[sitting]?.title;
      const subject = subjects.sittings[sitting];
      return name === undefined || subject === undefined ? [] : [{ sitting, subject, name }];
    }),
    chosen: chosen.sitting,
  };
}
