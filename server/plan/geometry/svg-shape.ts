import { marked, reasonOf } from '../../../grammar/index.js';
import { ellipse } from './outline.js';
import { type CommandsReading, commandsOfPathData } from './path-data.js';
import type { PathCommand } from './path.js';
import { type Box, boxDiagonal, boxHeight, boxWidth, isUsable } from './point.js';
import { Refusal } from './refusal.js';
import type { SvgElement } from './svg-tree.js';
import { numbersOf } from './svg-transform.js';

/** Elements that draw a shape which can be filled. */
export const SHAPE_NAMES: ReadonlySet<string> = new Set([
  'path',
  'rect',
  'circle',
  'ellipse',
  'polygon',
  'polyline',
  'line',
]);

/** CSS pixels, SVG's user unit, to a unit: CSS Values and Units 3, section 6.2. */
const PIXELS: Readonly<Record<string, number>> = {
  '': 1,
  px: 1,
  pt: 96 / 72,
  pc: 16,
  in: 96,
  cm: 96 / 2.54,
  mm: 96 / 25.4,
};
/** Handle of a cubic for a quarter of an ellipse: 4/3 tan(22.5 degrees); off by 2.7e-4 of the radius at most. */
const QUARTER_HANDLE = (4 / 3) * Math.tan(Math.PI / 8);

type Axis = 'across' | 'down' | 'diagonal';

/**
 * The drawing commands of one basic shape or path, in its own user units, before its `transform`. `viewport` is
 * what lengths in % refer to. A shape that SVG does not draw at all, such as a rect without width, gives no command.
 */
export function commandsOfShape(element: SvgElement, viewport: Box | undefined): CommandsReading {
  const length = (name: string, axis: Axis): number => {
    const text = element.attributes.get(name);
    if (text === undefined) return 0;
    const value = lengthOf(text, viewport, axis);
    if (value === undefined)
      throw new Refusal(
        reasonOf(marked('{0}="{1}" of a {2} is not a length'), name, text.slice(0, 24), element.name),
      );
    return value;
  };
  try {
    switch (element.name) {
      case 'path':
        return pathCommands(element.attributes.get('d') ?? '');
      case 'rect':
        return done(rectCommands(element, length));
      case 'circle': {
        const radius = length('r', 'diagonal');
        return done(ellipseCommands(length('cx', 'across'), length('cy', 'down'), radius, radius));
      }
      case 'ellipse': {
        const auto = element.attributes.get('ry') === undefined ? 'rx' : 'ry';
        const other = element.attributes.get('rx') === undefined ? 'ry' : 'rx';
        return done(
          ellipseCommands(
            length('cx', 'across'),
            length('cy', 'down'),
            length(other, 'across'),
            length(auto, 'down'),
          ),
        );
      }
      case 'polygon':
      case 'polyline':
        return pointsCommands(element.attributes.get('points') ?? '', element.name);
      default:
        return { ok: false, reason: reasonOf(marked('a {0} has no area'), element.name) };
    }
  } catch (error) {
    if (error instanceof Refusal) return { ok: false, reason: error.reason };
    throw error;
  }
}

/** A length in user units: bare, in absolute CSS units, or in % of the viewport. None when it is anything else. */
export function lengthOf(text: string, viewport: Box | undefined, axis: Axis): number | undefined {
  const found = /^\s*([+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?)\s*(px|pt|pc|in|cm|mm|%|)\s*$/i.exec(text);
  if (!found) return undefined;
  const value = Number(found[1]);
  const unit = (found[2] ?? '').toLowerCase();
  const pixels = unit === '%' ? percent(value, viewport, axis) : value * (PIXELS[unit] ?? NaN);
  return pixels !== undefined && isUsable(pixels) ? pixels : undefined;
}

function percent(value: number, viewport: Box | undefined, axis: Axis): number | undefined {
  if (!viewport) return undefined;
  switch (axis) {
    case 'across':
      return (value / 100) * boxWidth(viewport);
    case 'down':
      return (value / 100) * boxHeight(viewport);
    case 'diagonal':
      return (value / 100) * (boxDiagonal(viewport) / Math.SQRT2);
  }
}

function pathCommands(data: string): CommandsReading {
  if (data.trim() === '' || data.trim() === 'none') return done([]);
  const reading = commandsOfPathData(data);
  return reading.ok
    ? reading
    : { ok: false, reason: reasonOf(marked('a path in it cannot be read: {0}'), reading.reason) };
}

function pointsCommands(text: string, name: string): CommandsReading {
  const numbers = numbersOf(text);
  if (!numbers || numbers.length % 2 !== 0)
    return { ok: false, reason: reasonOf(marked('the points of a {0} cannot be read'), name) };
  if (!numbers.every(isUsable))
    return { ok: false, reason: reasonOf(marked('a number of a {0} is too large to be drawn'), name) };
  const path: PathCommand[] = [];
  for (let i = 0; i + 1 < numbers.length; i += 2) {
    path.push({ kind: i === 0 ? 'M' : 'L', x: numbers[i] ?? 0, y: numbers[i + 1] ?? 0 });
  }
  return done(path.length > 0 ? [...path, { kind: 'Z' }] : []);
}

function rectCommands(
  element: SvgElement,
  length: (name: string, axis: Axis) => number,
): readonly PathCommand[] {
  const [left, top] = [length('x', 'across'), length('y', 'down')];
  const [width, height] = [length('width', 'across'), length('height', 'down')];
  if (!(width > 0 && height > 0)) return [];
  const given = (name: string) => element.attributes.get(name) !== undefined;
  const rx = Math.min(
    width / 2,
    Math.max(0, length(given('rx') ? 'rx' : 'ry', given('rx') ? 'across' : 'down')),
  );
  const ry = Math.min(
    height / 2,
    Math.max(0, length(given('ry') ? 'ry' : 'rx', given('ry') ? 'down' : 'across')),
  );
  const [right, bottom] = [left + width, top + height];
  if (rx === 0 || ry === 0) {
    return [
      { kind: 'M', x: left, y: top },
      { kind: 'L', x: right, y: top },
      { kind: 'L', x: right, y: bottom },
      { kind: 'L', x: left, y: bottom },
      { kind: 'Z' },
    ];
  }
  const [hx, hy] = [rx * (1 - QUARTER_HANDLE), ry * (1 - QUARTER_HANDLE)];
  return [
    { kind: 'M', x: left + rx, y: top },
    { kind: 'L', x: right - rx, y: top },
    { kind: 'C', x1: right - hx, y1: top, x2: right, y2: top + hy, x: right, y: top + ry },
    { kind: 'L', x: right, y: bottom - ry },
    { kind: 'C', x1: right, y1: bottom - hy, x2: right - hx, y2: bottom, x: right - rx, y: bottom },
    { kind: 'L', x: left + rx, y: bottom },
    { kind: 'C', x1: left + hx, y1: bottom, x2: left, y2: bottom - hy, x: left, y: bottom - ry },
    { kind: 'L', x: left, y: top + ry },
    { kind: 'C', x1: left, y1: top + hy, x2: left + hx, y2: top, x: left + rx, y: top },
    { kind: 'Z' },
  ];
}

/** As the language's own ellipse; flattened by the caller once it is in place. */
function ellipseCommands(x: number, y: number, radiusX: number, radiusY: number): readonly PathCommand[] {
  return radiusX > 0 && radiusY > 0 ? ellipse({ x, y }, radiusX, radiusY, 1).path : [];
}

function done(path: readonly PathCommand[]): CommandsReading {
  return { ok: true, path };
}
