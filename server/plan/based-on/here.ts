import { type Node, t } from '../../../grammar/index.js';
import type { Location, OwnLocation, Plan } from '../plan.js';

/** Whether a place is one of the plan's own text. */
export function isOwn(location: Location): location is OwnLocation {
  return location.file === undefined;
}

/** Whether a place is on a line of the plan's own text. */
export function isOnLine(location: Location | undefined, line: number): boolean {
  return location !== undefined && isOwn(location) && location.line === line;
}

/** Whether a place is in the block of a statement, in the text that the statement stands in. */
export function isInBlock({ file, line: first, lastLine }: Node, place: Location): boolean {
  return file === place.file && first <= place.line && place.line <= lastLine;
}

/** Whether a place is in the block of a statement, or in what that changes of another plan. */
export function isIn(statement: Node, place: Location): boolean {
  const { changes } = statement;
  return isInBlock(statement, place) || (changes !== undefined && isIn(changes, place));
}

/** Where the plan itself says what stands at a place: there, or where it names the plan that it is based on. */
export function placeHere({ basedOn }: Pick<Plan, 'basedOn'>, location: Location): OwnLocation {
  return isOwn(location) ? location : (basedOn?.location ?? { line: 0, start: 0, end: 0 });
}

/**
 * What is told of a place, with where that is when it is in a plan that the plan builds on:
 * `… is let pass (from `oven.mahl`, line 12).`
 */
export function withOrigin(message: string, { file, line }: Location): string {
  if (file === undefined) return message;
  const [stop = ''] = /[.?!]$/u.exec(message) ?? [];
  return `${t('{0} (from `{1}`, line {2})', message.slice(0, message.length - stop.length), file, line + 1)}${stop}`;
}
