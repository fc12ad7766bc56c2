import { marked, said, t } from '../../../grammar/localised.js';
import type { Spot } from '../../../server/drawing/scene.js';
import type { HandChange } from '../../../server/language/hand/change.js';
import { mostPoints } from './change-schema.js';
import { distance } from './place.js';

/** What can be drawn anew. */
export const tools = ['rectangle', 'ellipse', 'outline', 'lead'] as const;
export type Tool = (typeof tools)[number];

const toolWords: Readonly<Record<Tool, string>> = {
  rectangle: marked('rectangle'),
  ellipse: marked('ellipse'),
  outline: marked('outline'),
  lead: marked('lead'),
};

/** What a tool draws, as it is called within a sentence. */
export function toolWord(tool: Tool): string {
  return said(toolWords[tool]);
}

/** How many points a new shape needs at least. */
export const leastPoints: Readonly<Record<Tool, number>> = { rectangle: 2, ellipse: 2, outline: 3, lead: 2 };

/** A shape that is being drawn: its points so far, as places of the drawing. A box has two corners. */
export interface Draft {
  readonly tool: Tool;
  readonly points: readonly Spot[];
}

export function isBox(tool: Tool): tool is 'rectangle' | 'ellipse' {
  return tool === 'rectangle' || tool === 'ellipse';
}

/** With one more point; the same draft when that would lie where the last does, or is one too many. */
export function withPoint(draft: Draft, at: Spot): Draft {
  const last = draft.points.at(-1);
  const isFull = draft.points.length >= (isBox(draft.tool) ? 2 : mostPoints);
  if (isFull || (last !== undefined && distance(last, at) === 0)) return draft;
  return { ...draft, points: [...draft.points, at] };
}

export function withoutLastPoint(draft: Draft): Draft {
  return { ...draft, points: draft.points.slice(0, -1) };
}

const shapeLacks = marked('A shape has {0} points or more.');
const lackOf: Readonly<Record<Tool, string>> = {
  rectangle: shapeLacks,
  ellipse: shapeLacks,
  outline: marked('An outline has {0} points or more.'),
  lead: marked('A lead has {0} points or more.'),
};

/**
 * The corner of a box that is as wide as it is high; one that is drawn straight down or across goes to the lower right.
 */
export function evenSided(from: Spot, to: Spot): Spot {
  const side = Math.max(Math.abs(to.x - from.x), Math.abs(to.y - from.y));
  return {
    x: to.x < from.x ? from.x - side : from.x + side,
    y: to.y < from.y ? from.y - side : from.y + side,
  };
}

/** What a draft with its points as places of the plan comes to, or what it lacks, as a sentence. */
export function finished({ tool, points }: Draft): HandChange | string {
  if (points.length < leastPoints[tool]) return said(lackOf[tool], leastPoints[tool]);
  if (!isBox(tool)) return { kind: 'new line', form: tool, points };
  const [from, to] = points;
  if (from === undefined || to === undefined || from.x === to.x || from.y === to.y)
    return t('A shape is wider and higher than nothing.');
  return { kind: 'new box', form: tool, from, to };
}

/** Path data of a draft with the cross at `at` as its next point, from places of the drawing. */
export function draftPath({ tool, points }: Draft, at: Spot | undefined): string {
  const all = at === undefined ? points : [...points, at];
  const [first, ...rest] = all;
  if (first === undefined) return '';
  if (!isBox(tool))
    return `M${first.x} ${first.y}${rest.map(({ x, y }) => `L${x} ${y}`).join('')}${tool === 'outline' && rest.length > 1 ? 'Z' : ''}`;
  const other = rest.at(-1);
  if (other === undefined) return '';
  if (tool === 'rectangle') return `M${first.x} ${first.y}H${other.x}V${other.y}H${first.x}Z`;
  const [rx, ry] = [Math.abs(other.x - first.x) / 2, Math.abs(other.y - first.y) / 2];
  const [left, middle] = [Math.min(first.x, other.x), (first.y + other.y) / 2];
  return `M${left} ${middle}a${rx} ${ry} 0 1 0 ${2 * rx} 0a${rx} ${ry} 0 1 0 ${-2 * rx} 0Z`;
}
