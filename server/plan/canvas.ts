import {
  type CanvasSize,
  type Extent,
  type LengthUnit,
  type Node,
  type StatementOf,
  t,
} from '../../grammar/index.js';
import { parseColour, type Colour } from './colour/colour.js';
import { nearestStep, valueOf } from './colour/value.js';
import type { ColourBook } from './colours.js';
import { millimetresPer } from './lengths.js';
import type { Canvas, Ground } from './plan.js';
import { locate, type Problems } from './problems.js';
import { every, sentenceOf, sentencesOf, single, statementLocation } from './select.js';
import { stockNames, stockSize } from './stock.js';

/** What a plan without a canvas is drawn on. */
const ASSUMED = { width: 40, height: 30, unit: 'cm' } as const;
/** No canvas is larger or smaller, and the geometry stays exact in between: 100 m and 1 mm. */
const LARGEST_MILLIMETRES = 100_000;
const SMALLEST_MILLIMETRES = 1;
/** A white priming, a little warm. */
const PRIMING = '#f3efe6';

interface Size {
  readonly width: number;
  readonly height: number;
  readonly unit: LengthUnit;
  readonly stock?: string;
}

type Orientation = NonNullable<CanvasSize['orientation']>['choice'];

/** The canvas without its ground; the ground's colour may be a name, which needs the colours first. */
export type BareCanvas = Omit<Canvas, 'ground'>;

/**
 * The canvas's measures; 40 x 30 cm when the plan gives none that can be read, with a warning when it gives none.
 *
 * @param isLost whether a line that was to give it could not be read, which is told there
 */
export function resolveCanvas(nodes: readonly Node[], problems: Problems, isLost: boolean): BareCanvas {
  const node = single(nodes, 'canvas', problems);
  if (!node && !isLost) {
    problems.warn(
      'no canvas',
      t('The plan gives no canvas, so it is drawn on 40 x 30 cm. Write `canvas 40 x 30 cm`.'),
      {
        line: 0,
        start: 0,
        end: 0,
      },
    );
  }
  const size = node ? statedSize(node.statement, node, problems) : ASSUMED;
  const support = node && sentenceOf(single(node.children, 'support', problems));
  const medium = node && sentenceOf(single(node.children, 'medium', problems));
  return {
    width: size.width,
    height: size.height,
    diagonal: Math.hypot(size.width, size.height),
    unit: size.unit,
    millimetresPerUnit: millimetresPer(size.unit),
    ...('stock' in size && size.stock !== undefined ? { stock: size.stock } : {}),
    ...(support ? { support: support.value } : {}),
    ...(medium ? { medium: medium.value, mediumLocation: medium.location } : {}),
    notes: node ? sentencesOf(every(node.children, 'note')) : [],
    ...(node ? { location: statementLocation(node) } : {}),
  };
}

/** The toned ground; a white priming when none is stated. */
export function resolveGround(
  nodes: readonly Node[],
  steps: number,
  book: ColourBook,
  problems: Problems,
): Ground {
  const canvas = nodes.filter(({ statement }) => statement.kind === 'canvas').at(-1);
  const node = canvas && single(canvas.children, 'ground', problems);
  const found = node && book.find(node.statement.colour, node);
  const colour = found?.colour ?? priming();
  const value = valueOf(colour);
  const role = node?.statement.role?.choice ?? found?.role;
  return {
    colour,
    value,
    step: nearestStep(value, steps),
    ...(role ? { role } : {}),
    ...(found ? { location: found.location } : {}),
  };
}

function priming(): Colour {
  const parsed = parseColour(PRIMING);
  if (!parsed.ok) throw new Error(parsed.reason);
  return parsed.colour;
}

/** Without a word of which side is up, width comes first, and a stock size lies on its long side. */
function statedSize(statement: StatementOf<'canvas'>, node: Node, problems: Problems): Size {
  const { size } = statement;
  const orientation = size.orientation?.choice;
  if (size.by === 'extent') {
    const stated = extentSize(size.extent, node, problems);
    return stated && orientation ? turned(stated, orientation) : (stated ?? ASSUMED);
  }
  const stock = stockSize(size.stock.text);
  if (!stock) {
    problems.unknownName('stock size', size.stock.text, stockNames(), locate(node, size.stock));
    return ASSUMED;
  }
  const { long, short, unit } = stock;
  return turned({ width: long, height: short, unit, stock: size.stock.text }, orientation ?? 'landscape');
}

/** The same canvas with its long side up, or lying. */
function turned(size: Size, orientation: Orientation): Size {
  const long = Math.max(size.width, size.height);
  const short = Math.min(size.width, size.height);
  return orientation === 'upright'
    ? { ...size, width: short, height: long }
    : { ...size, width: long, height: short };
}

function extentSize(extent: Extent, node: Node, problems: Problems): Size | undefined {
  const location = locate(node, extent);
  const { width, height } = extent;
  if (width.unit === '%' || height.unit === '%') {
    problems.error('number out of range', t('A canvas is measured in cm, mm, m or in, not in %.'), location);
    return undefined;
  }
  const unit = width.unit ?? 'cm';
  if (width.unit === undefined) {
    problems.hint('number out of range', t('No unit is given for the canvas; it is read as cm.'), location);
  }
  const heightInUnit =
    height.unit === undefined || height.unit === unit
      ? height.value
      : (height.value * millimetresPer(height.unit)) / millimetresPer(unit);
  const isPossible = (side: number): boolean => {
    const millimetres = side * millimetresPer(unit);
    return millimetres >= SMALLEST_MILLIMETRES && millimetres <= LARGEST_MILLIMETRES;
  };
  if (!isPossible(width.value) || !isPossible(heightInUnit)) {
    problems.error('number out of range', t('The sides of a canvas measure from 1 mm to 100 m.'), location);
    return undefined;
  }
  return { width: width.value, height: heightInUnit, unit };
}
