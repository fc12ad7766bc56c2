import { choiceLists } from '../../grammar/index.js';
import type { Slot } from './slots.js';

const { Row, Column, Side } = choiceLists;

/**
 * What can follow in a place.
 *
 * @param rest the words and signs of the place before the word that is being typed
 */
export function placeSlots(rest: readonly string[]): readonly Slot[] {
  const last = rest.at(-1);
  const before = rest.at(-2);
  const system = restOfSystem(last);
  if (system !== undefined) return system;
  if (last === undefined) return [{ kind: 'places' }, { kind: 'names', of: 'object' }];
  if (last === 'of' && (before === 'edge' || before === 'side')) return [{ kind: 'names', of: 'object' }];
  if (last === 'of') return [{ kind: 'systems' }, { kind: 'names', of: 'object' }];
  if (isOneOf(Row, before) && isOneOf(Column, last)) return [words('of', 'corner')];
  if (isOneOf(Side, before) && (last === 'edge' || last === 'side')) return [words('at', 'of')];
  if (isOneOf(Row, last)) return [words(...Column, ...(isOneOf(Side, last) ? ['edge', 'of'] : []))];
  if (isOneOf(Side, last)) return [words('edge', 'of')];
  if (!isMoving(rest) || last === ',') return [];
  const directions = words(...choiceLists.Direction);
  return isOneOf(choiceLists.LengthUnit, last)
    ? [directions]
    : [words(...choiceLists.LengthUnit), directions];
}

/**
 * True from the comma behind a place until it has been said how far and which way to move from there: `, 3 cm left`.
 */
export function isMoving(rest: readonly string[]): boolean {
  const move = rest.slice(rest.lastIndexOf(')') + 1);
  return move.includes(',') && !isOneOf(choiceLists.Direction, move.at(-1));
}

/** What follows the first word of a division whose name has several; `undefined` behind any other word. */
export function restOfSystem(last: string | undefined): readonly Slot[] | undefined {
  if (last === 'two') return [words('to three')];
  return last === 'root' ? [words('2', '3', '4', '5')] : undefined;
}

function words(...list: readonly string[]): Slot {
  return { kind: 'words', words: list };
}

function isOneOf(list: readonly string[], word: string | undefined): boolean {
  return word !== undefined && list.includes(word);
}
