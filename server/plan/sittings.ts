import { type Coordinates, type Length, type Node, type NodeOf, t } from '../../grammar/index.js';
import { type CanvasUnits, sideLength } from './lengths.js';
import type { ObjectIndex } from './objects.js';
import { resolveFilm } from './palette.js';
import type { Picture, PictureLength, PicturePlace, Plan, Sitting } from './plan.js';
import { locate, type Problems } from './problems.js';
import {
  every,
  type FaultyLines,
  hasFaultyLine,
  ownLines,
  said,
  sentenceOf,
  sentencesOf,
  single,
  statementLocation,
} from './select.js';
import { partOfWhole } from './shares.js';

/** As many squares as can still be told apart. */
const MOST_SQUARES = 200;

type Record = Pick<Plan, 'sittings' | 'due' | 'away' | 'sketch' | 'transferGrid'>;

/** The sittings, the dates around them, the sketch under the plan and the grid that carries it over. */
export function resolveRecord(
  nodes: readonly Node[],
  objects: ObjectIndex,
  canvas: CanvasUnits,
  faultyLines: FaultyLines,
  problems: Problems,
): Record {
  const due = single(nodes, 'due', problems);
  const sketch = single(nodes, 'sketch', problems);
  const grid = single(nodes, 'grid', problems);
  return {
    sittings: every(nodes, 'sitting').map((node) => sitting(node, objects, faultyLines, problems)),
    ...(due ? { due: { value: due.statement.on.text, location: statementLocation(due) } } : {}),
    away: every(nodes, 'away').flatMap((node) => {
      const { from, to = from } = node.statement;
      const location = statementLocation(node);
      if (from.text <= to.text) return [{ value: { from: from.text, to: to.text }, location }];
      problems.error('number out of range', t('These days end before they begin.'), location);
      return [];
    }),
    ...(sketch ? { sketch: picture(sketch, problems) } : {}),
    ...(grid ? transferGrid(grid, canvas, problems) : {}),
  };
}

function sitting(
  node: Node & NodeOf<'sitting'>,
  objects: ObjectIndex,
  faultyLines: FaultyLines,
  problems: Problems,
): Sitting {
  const { children, statement } = node;
  const told = problems.list.length;
  const on = said(node, (own) => own.on);
  const layer = single(children, 'layer', problems);
  const fat = single(children, 'fat', problems);
  const fatShare = fat && partOfWhole(fat.statement.share, fat, problems);
  const photo = single(children, 'photo', problems);
  const medium = sentenceOf(single(children, 'medium', problems));
  const filmThickness = resolveFilm(children, problems);
  const works = every(children, 'works').flatMap((child) => objects.findAll(child.statement.names, child));
  const isUnresolved = problems.list.slice(told).some(({ severity }) => severity === 'error');
  return {
    title: statement.title.value,
    ...(on ? { date: on.value.text, dateLocation: locate(on.node, on.value) } : {}),
    works,
    ...(layer ? { layer: { value: layer.statement.layer.choice, location: statementLocation(layer) } } : {}),
    ...(layer?.statement.body ? { body: layer.statement.body.choice } : {}),
    ...(fat && fatShare !== undefined
      ? { fatShare: { value: fatShare, location: statementLocation(fat) } }
      : {}),
    ...(filmThickness ? { filmThickness } : {}),
    ...(medium ? { medium } : {}),
    tasks: sentencesOf(every(children, 'task')),
    faulty: isUnresolved || hasFaultyLine(node, 0, faultyLines),
    ...(photo ? { photo: { ...picture(photo, problems), ...greyPatch(photo, problems) } } : {}),
    notes: sentencesOf(every(children, 'note')),
    location: locate(node, statement.title),
    ...ownLines(node),
    node,
  };
}

function picture(node: Node & (NodeOf<'photo'> | NodeOf<'sketch'>), problems: Problems): Picture {
  const corners = single(node.children, 'corners', problems);
  const opacityNode = single(node.children, 'opacity', problems);
  const opacity = opacityNode && partOfWhole(opacityNode.statement.share, opacityNode, problems);
  return {
    file: node.statement.file.value,
    corners: (corners && everyPlaceIn(corners.statement.points, corners, problems)) ?? [],
    ...(opacity === undefined ? {} : { opacity }),
    location: locate(node, node.statement.file),
  };
}

function greyPatch(node: Node, problems: Problems): { readonly grey?: PicturePlace } {
  const patch = single(node.children, 'grey', problems);
  const [grey] = (patch && everyPlaceIn([patch.statement.at], patch, problems)) ?? [];
  return grey ? { grey } : {};
}

/** Places in a picture; all or none, because four corners mean something only together. */
function everyPlaceIn(
  all: readonly Coordinates[],
  node: Pick<Node, 'line'>,
  problems: Problems,
): readonly PicturePlace[] | undefined {
  const places = all.flatMap(({ x, y }) => {
    const across = lengthIn(x, node, problems);
    const down = lengthIn(y, node, problems);
    return across && down ? [{ across, down }] : [];
  });
  return places.length === all.length ? places : undefined;
}

/** A picture has no canvas units: its places count pixels, or parts of its sides. */
function lengthIn(length: Length, node: Pick<Node, 'line'>, problems: Problems): PictureLength | undefined {
  const { unit, value } = length;
  if (unit === undefined) return { value, in: 'pixels' };
  if (unit === '%') return { value: value / 100, in: 'parts' };
  const message = t('A place in a picture is given in pixels or in %, not in {0}.', unit);
  problems.error('number out of range', message, locate(node, length));
  return undefined;
}

function transferGrid(
  node: NodeOf<'grid'> & Node,
  canvas: CanvasUnits,
  problems: Problems,
): Pick<Plan, 'transferGrid'> {
  const { count, every: spacing } = node.statement;
  const location = statementLocation(node);
  if (count) {
    const columns = count.columns.value;
    const rows = count.rows.value;
    if ([columns, rows].every(isSquareCount)) return { transferGrid: { value: { columns, rows }, location } };
    const message = t('A grid has 1 to {0} whole squares each way.', MOST_SQUARES);
    problems.error('number out of range', message, location);
  }
  const side = spacing && sideLength(spacing, canvas, 'across', node, problems);
  if (side === undefined) return {};
  if (Math.max(canvas.width, canvas.height) <= side * MOST_SQUARES)
    return { transferGrid: { value: { every: side }, location } };
  const message = t('Squares so small are more than {0} one way; a grid has {0} at most.', MOST_SQUARES);
  problems.error('number out of range', message, location);
  return {};
}

function isSquareCount(count: number): boolean {
  return Number.isInteger(count) && count >= 1 && count <= MOST_SQUARES;
}
