import type { Location, OwnLocation, Plan } from '../plan.js';

/** Whether a place is one of the plan's own text. */
export function isOwn(location: Location): location is OwnLocation {
  return location.file === undefined;
}

/** Whether a place is on a line of the plan's own text. */
export function isOnLine(location: Location | undefined, line: number): boolean {
  return location !== undefined && isOwn(location) && location.line === line;
}

/** Where the plan itself says what stands at a place: there, or where it names the plan that it is based on. */
export function placeHere({ basedOn }: Pick<Plan, 'basedOn'>, location: Location): OwnLocation {
  return isOwn(location) ? location : (basedOn?.location ?? { line: 0, start: 0, end: 0 });
}

/** ` (From `oven.mahl`, line 12.)` behind what is told of a place in another plan; nothing behind what is told of this one. */
export function origin({ file, line }: Location): string {
  return file === undefined ? '' : ` (From \`${file}\`, line ${line + 1}.)`;
}
