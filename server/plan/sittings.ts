import type { Node, NodeOf } from '../../grammar/index.js';
import type { Point } from './geometry/point.js';
import { type CanvasUnits, canvasUnits } from './lengths.js';
import type { ObjectIndex } from './objects.js';
import { resolveFilm } from './palette.js';
import type { Picture, Plan, Sitting } from './plan.js';
import { locate, type Problems } from './problems.js';
import { every, sentenceOf, single, statementLocation } from './select.js';

type Record = Pick<Plan, 'sittings' | 'due' | 'away' | 'sketch' | 'transferGrid'>;

/** The sittings, the dates around them, the sketch under the plan and the grid that carries it over. */
export function resolveRecord(
  nodes: readonly Node[],
  objects: ObjectIndex,
  canvas: CanvasUnits,
  problems: Problems,
): Record {
  const due = single(nodes, 'due', problems);
  const sketch = single(nodes, 'sketch', problems);
  const grid = single(nodes, 'grid', problems);
  return {
    sittings: every(nodes, 'sitting').map((node) => sitting(node, objects, problems)),
    ...(due ? { due: { value: due.statement.on.text, location: statementLocation(due) } } : {}),
    away: every(nodes, 'away').map((node) => {
      const { from, to } = node.statement;
      return { value: { from: from.text, to: (to ?? from).text }, location: statementLocation(node) };
    }),
    ...(sketch ? { sketch: picture(sketch, problems) } : {}),
    ...(grid ? transferGrid(grid, canvas) : {}),
  };
}

function sitting(node: Node & NodeOf<'sitting'>, objects: ObjectIndex, problems: Problems): Sitting {
  const { children, statement } = node;
  const layer = single(children, 'layer', problems);
  const fat = single(children, 'fat', problems);
  const photo = single(children, 'photo', problems);
  const medium = sentenceOf(single(children, 'medium', problems));
  const filmThickness = resolveFilm(children, problems);
  return {
    title: statement.title.value,
    ...(statement.on ? { date: statement.on.text } : {}),
    works: every(children, 'works').flatMap((child) => objects.findAll(child.statement.names, child)),
    ...(layer ? { layer: { value: layer.statement.layer.choice, location: statementLocation(layer) } } : {}),
    ...(layer?.statement.body ? { body: layer.statement.body.choice } : {}),
    ...(fat
      ? { fatShare: { value: fat.statement.share.percent / 100, location: statementLocation(fat) } }
      : {}),
    ...(filmThickness ? { filmThickness } : {}),
    ...(medium ? { medium } : {}),
    tasks: every(children, 'task').flatMap((child) => sentenceOf(child) ?? []),
    ...(photo ? { photo: { ...picture(photo, problems), ...greyPatch(photo, problems) } } : {}),
    notes: every(children, 'note').flatMap((child) => sentenceOf(child) ?? []),
    location: locate(node, statement.title),
    lines: { first: node.line, last: node.lastLine },
  };
}

function picture(node: Node & (NodeOf<'photo'> | NodeOf<'sketch'>), problems: Problems): Picture {
  const corners = single(node.children, 'corners', problems);
  const opacity = single(node.children, 'opacity', problems);
  return {
    file: node.statement.file.value,
    corners: corners?.statement.points.map(asWritten) ?? [],
    ...(opacity ? { opacity: opacity.statement.share.percent / 100 } : {}),
    location: locate(node, node.statement.file),
  };
}

function greyPatch(node: Node, problems: Problems): { readonly grey?: Point } {
  const grey = single(node.children, 'grey', problems);
  return grey ? { grey: asWritten(grey.statement.at) } : {};
}

/** Places in a photograph have no canvas units: the numbers count its pixels. */
function asWritten({
  x,
  y,
}: {
  readonly x: { readonly value: number };
  readonly y: { readonly value: number };
}): Point {
  return { x: x.value, y: y.value };
}

function transferGrid(node: NodeOf<'grid'> & Node, canvas: CanvasUnits): Pick<Plan, 'transferGrid'> {
  const { count, every: spacing } = node.statement;
  const location = statementLocation(node);
  if (count) {
    return { transferGrid: { value: { columns: count.columns.value, rows: count.rows.value }, location } };
  }
  return spacing
    ? { transferGrid: { value: { every: canvasUnits(spacing, canvas, 'across') }, location } }
    : {};
}
