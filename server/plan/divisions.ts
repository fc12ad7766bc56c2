import { type DivisionSystem, type Node, type NodeOf, t } from '../../grammar/index.js';
import { divide, type OwnLines } from './division.js';
import { type CanvasUnits, divisionPlace } from './lengths.js';
import type { Canvas, Division } from './plan.js';
import { locate, plainNumber, type Problems } from './problems.js';
import { every } from './select.js';

const USUAL_SYSTEM: DivisionSystem = 'golden';

/** The divisions of the canvas in the order of the text; the golden section when none is stated. */
export function resolveDivisions(
  nodes: readonly Node[],
  canvas: CanvasUnits & Pick<Canvas, 'unit'>,
  problems: Problems,
): readonly Division[] {
  const stated = every(nodes, 'divide').flatMap((node) =>
    node.statement.systems.map((choice): Division => {
      const own = choice.choice === 'own' ? ownLines(node, canvas, problems) : undefined;
      const location = locate(node, choice);
      const divided = divide(canvas, choice.choice, own);
      if (choice.choice === 'rabatment' && divided.lines.length === 0) {
        problems.hint('number out of range', t('A square has no rabatment: its sides are alike.'), location);
      }
      return { system: choice.choice, location, ...divided };
    }),
  );
  return stated.length > 0 ? stated : [{ system: USUAL_SYSTEM, ...divide(canvas, USUAL_SYSTEM) }];
}

function ownLines(
  node: NodeOf<'divide'>,
  canvas: CanvasUnits & Pick<Canvas, 'unit'>,
  problems: Problems,
): OwnLines {
  const lines = (kind: 'uprights' | 'levels'): readonly number[] =>
    every(node.children, kind).flatMap((child) =>
      child.statement.at.flatMap((length) => {
        const across = kind === 'uprights';
        const at = divisionPlace(length, canvas, across ? 'across' : 'down');
        const side = across ? canvas.width : canvas.height;
        if (at > 0 && at < side) return at;
        const size = `${plainNumber(side)} ${canvas.unit}`;
        const message = across
          ? t('This line does not cross the canvas, which is {0} wide.', size)
          : t('This line does not cross the canvas, which is {0} high.', size);
        problems.error('number out of range', message, locate(child, length));
        return [];
      }),
    );
  return { uprights: lines('uprights'), levels: lines('levels') };
}
