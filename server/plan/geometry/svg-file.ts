import { type Reason, marked, reasonOf } from '../../../grammar/index.js';
import { thousands } from '../problems.js';
import { IDENTITY, type Matrix, isUsableMatrix, multiply, translate } from './matrix.js';
import { EMPTY_OUTLINE, type Outline, join, outlineOf, transform } from './outline.js';
import { MOST_COMMANDS } from './path-data.js';
import type { PathCommand } from './path.js';
import { type Box, boxDiagonal, boxOfPoints } from './point.js';
import { Refusal } from './refusal.js';
import { SHAPE_NAMES, commandsOfShape, lengthOf } from './svg-shape.js';
import { numbersOf, transformOf } from './svg-transform.js';
import { type SvgElement, readSvg } from './svg-tree.js';

export type PartReading =
  | {
      readonly ok: true;
      /** In the file's user units, those of its viewBox. */
      readonly outline: Outline;
      /** What the file shows; missing when it gives neither a viewBox nor a size. */
      readonly viewBox: Box | undefined;
    }
  | {
      readonly ok: false;
      readonly reason: Reason;
    };

/** Elements whose children are drawn where they stand. */
const GROUPS: ReadonlySet<string> = new Set(['g', 'a', 'switch', 'svg']);
const MOST_VISITS = 50_000;
const DEEPEST_USE = 16;
/** Flattening when none is asked for, part of the shape's own diagonal: still 0.02 % at twice the size. */
const OWN_TOLERANCE = 0.0001;

interface Drawn {
  readonly path: readonly PathCommand[];
  readonly fillRule: FillRule;
}

type FillRule = 'evenodd' | undefined;

interface Search {
  readonly byId: ReadonlyMap<string, SvgElement>;
  readonly viewport: Box | undefined;
  readonly drawn: Drawn[];
  visits: number;
  commands: number;
}

/**
 * The shape with an id in an SVG file, or the whole file without an id: a path, basic shape, `use`, or group with all
 * shapes inside joined. Transforms of the element and of all around it are applied. Strokes, clips, masks, filters and
 * style sheets are not looked at, text and pictures are passed over, and nothing outside of the file is read.
 * `tolerance` is in the file's units. Never throws.
 */
export function partOfSvg(text: string, id: string | undefined, tolerance?: number): PartReading {
  const reading = readSvg(text);
  if (!reading.ok) return reading;
  const target = id === undefined ? reading.root : reading.byId.get(id);
  if (!target)
    return { ok: false, reason: reasonOf(marked('the file has no part with the id "{0}"'), id ?? '') };
  const viewBox = viewBoxOf(reading.root);
  const search: Search = { byId: reading.byId, viewport: viewBox, drawn: [], visits: 0, commands: 0 };
  try {
    const around = ancestorsOf(target);
    const matrix = around.reduce((outer, element) => multiply(outer, placeOf(element)), IDENTITY);
    const fillRule = around.reduce<FillRule>((outer, element) => fillRuleOf(element, outer), undefined);
    walk(target, matrix, fillRule, [], search);
  } catch (error) {
    if (error instanceof Refusal) return { ok: false, reason: error.reason };
    throw error;
  }
  const outline = outlineOfDrawn(search.drawn, tolerance);
  if (outline.rings.length === 0) return { ok: false, reason: nothingIn(target, id) };
  return { ok: true, outline, viewBox };
}

/** The ids that `partOfSvg` may be asked for, in the order of the file; none for a file that cannot be read. */
export function idsOfSvg(text: string): readonly string[] {
  const reading = readSvg(text);
  if (!reading.ok) return [];
  return [...reading.byId].filter(([, element]) => canBePart(element)).map(([id]) => id);
}

function canBePart({ name }: Pick<SvgElement, 'name'>): boolean {
  return (
    name !== 'line' && (SHAPE_NAMES.has(name) || GROUPS.has(name) || name === 'use' || name === 'symbol')
  );
}

function nothingIn({ name }: Pick<SvgElement, 'name'>, id: string | undefined): Reason {
  if (id === undefined) return reasonOf(marked('the file has no shape with an area to fill'));
  if (canBePart({ name })) return reasonOf(marked('"{0}" has no area to fill'), id);
  if (name === 'line') return reasonOf(marked('"{0}" is a line, which has no area'), id);
  return reasonOf(marked('"{0}" is not a shape or a group of shapes'), id);
}

/** From the outermost in. */
function ancestorsOf(element: SvgElement): readonly SvgElement[] {
  const around: SvgElement[] = [];
  for (let outer = element.parent; outer; outer = outer.parent) around.unshift(outer);
  return around;
}

/** Adds all shapes of an element. `using` holds the `use` elements on the way, to refuse one that leads to itself. */
function walk(
  element: SvgElement,
  around: Matrix,
  inherited: FillRule,
  using: readonly SvgElement[],
  search: Search,
): void {
  if (++search.visits > MOST_VISITS) throw new Refusal(reasonOf(marked('it repeats too many shapes')));
  const isTarget = search.visits === 1;
  if (!isTarget && isHidden(element)) return;
  const draws = SHAPE_NAMES.has(element.name) || GROUPS.has(element.name);
  const isSymbol = element.name === 'symbol' && (isTarget || using.length > 0);
  if (!draws && !isSymbol && element.name !== 'use') return;
  const matrix = multiply(around, placeOf(element));
  const fillRule = fillRuleOf(element, inherited);
  if (element.name === 'use') return walkUse(element, matrix, fillRule, using, search);
  if (!SHAPE_NAMES.has(element.name)) {
    for (const child of element.children) walk(child, matrix, fillRule, using, search);
    return;
  }
  if (element.name !== 'line') draw(element, matrix, fillRule, search);
}

function walkUse(
  use: SvgElement,
  matrix: Matrix,
  fillRule: FillRule,
  using: readonly SvgElement[],
  search: Search,
): void {
  const href = (use.attributes.get('href') ?? '').trim();
  if (!href.startsWith('#'))
    throw new Refusal(reasonOf(marked('it uses a shape of another file, which is not read')));
  const used = search.byId.get(href.slice(1));
  if (!used)
    throw new Refusal(reasonOf(marked('it uses "{0}", which is not in the file'), href.slice(1, 40)));
  if (using.includes(use) || ancestorsOf(use).includes(used))
    throw new Refusal(reasonOf(marked('it uses itself')));
  if (using.length >= DEEPEST_USE)
    throw new Refusal(reasonOf(marked('it uses shapes that use shapes more than 16 deep')));
  const shift = (name: string, axis: 'across' | 'down') =>
    lengthOf(use.attributes.get(name) ?? '0', search.viewport, axis) ?? 0;
  const moved = multiply(matrix, translate(shift('x', 'across'), shift('y', 'down')));
  walk(used, moved, fillRule, [...using, use], search);
}

function draw(element: SvgElement, matrix: Matrix, fillRule: FillRule, search: Search): void {
  const reading = commandsOfShape(element, search.viewport);
  if (!reading.ok) throw new Refusal(reading.reason);
  search.commands += reading.path.length;
  if (search.commands > MOST_COMMANDS) {
    throw new Refusal(reasonOf(marked('it has more than {0} points'), thousands(MOST_COMMANDS)));
  }
  search.drawn.push({ path: transform({ ...EMPTY_OUTLINE, path: reading.path }, matrix).path, fillRule });
}

/** The element's own transform; refuses what would put the shape somewhere else without being understood. */
function placeOf(element: SvgElement): Matrix {
  const isInner = element.parent !== undefined && (element.name === 'svg' || element.name === 'symbol');
  if (isInner && ['viewBox', 'x', 'y'].some((name) => element.attributes.has(name))) {
    throw new Refusal(
      reasonOf(
        marked('it lies in a {0} with its own place or viewBox, which is not understood'),
        element.name,
      ),
    );
  }
  if (/(?:^|[;\s])(?:transform|translate|rotate|scale)\s*:/.test(element.attributes.get('style') ?? '')) {
    throw new Refusal(reasonOf(marked('it is moved by a style, which is not understood')));
  }
  const matrix = transformOf(element.attributes.get('transform') ?? '');
  if (!matrix) throw new Refusal(reasonOf(marked('a transform of it cannot be read')));
  if (!isUsableMatrix(matrix))
    throw new Refusal(reasonOf(marked('a transform of it has a number too large to be drawn')));
  return matrix;
}

function fillRuleOf(element: SvgElement, inherited: FillRule): FillRule {
  const styled = /(?:^|[;\s])fill-rule\s*:\s*(\w+)/.exec(element.attributes.get('style') ?? '')?.[1];
  switch (styled ?? element.attributes.get('fill-rule')?.trim()) {
    case 'evenodd':
      return 'evenodd';
    case 'nonzero':
      return undefined;
    default:
      return inherited;
  }
}

function isHidden(element: SvgElement): boolean {
  const styled = /(?:^|[;\s])display\s*:\s*none/.test(element.attributes.get('style') ?? '');
  return styled || element.attributes.get('display')?.trim() === 'none';
}

function outlineOfDrawn(drawn: readonly Drawn[], tolerance: number | undefined): Outline {
  const box = boxOfPoints(
    drawn.flatMap(({ path }) => path.flatMap((command) => (command.kind === 'Z' ? [] : [command]))),
  );
  const fineness = tolerance ?? OWN_TOLERANCE * boxDiagonal(box);
  return join(drawn.map(({ path, fillRule }) => outlineOf(path, fineness, fillRule)));
}

/** The root's viewBox, or its size in user units. */
function viewBoxOf(root: SvgElement): Box | undefined {
  const [left = 0, top = 0, width = 0, height = 0] = numbersOf(root.attributes.get('viewBox') ?? '') ?? [];
  if (width > 0 && height > 0) return { left, top, right: left + width, bottom: top + height };
  const right = lengthOf(root.attributes.get('width') ?? '', undefined, 'across') ?? 0;
  const bottom = lengthOf(root.attributes.get('height') ?? '', undefined, 'down') ?? 0;
  return right > 0 && bottom > 0 ? { left: 0, top: 0, right, bottom } : undefined;
}
