import type { Change } from '../findings/comparison/change.js';
import type { Comparison } from '../findings/comparison/compare.js';
import { placeOf, round } from './figures.js';
import { type CompareDocument, compareSchemaId } from './schema/compare.js';

/** One of the two plans, as the document names it. */
export type ComparedSide = CompareDocument['earlier'];

/** What differs between two plans, for programs; its schema is `schema/compare-1.json`. */
export function compareDocument(
  { changes, remark }: Comparison,
  sides: { readonly earlier: ComparedSide; readonly later: ComparedSide },
  sameText: boolean,
): CompareDocument {
  return {
    schema: compareSchemaId,
    version: 1,
    ...sides,
    same: changes.length === 0,
    sameText,
    ...(remark === undefined ? {} : { remark }),
    changes: changes.map(changeEntry),
  };
}

function changeEntry(change: Change): CompareDocument['changes'][number] {
  const { topic, kind, message, object, figure, move, earlier, later } = change;
  return {
    topic,
    kind,
    message,
    ...(object === undefined ? {} : { object }),
    ...(figure ? { figure: { ...figure, from: round(figure.from), to: round(figure.to) } } : {}),
    ...(move ? { move: { right: round(move.right), down: round(move.down) } } : {}),
    ...(earlier ? { earlier: placeOf(earlier) } : {}),
    ...(later ? { later: placeOf(later) } : {}),
  };
}
