import type { ColorInformation, ColorPresentation, Range } from 'vscode-languageserver-types';
import { walk, type ColourSpec, type Statement } from '../../grammar/index.js';
import { parseColour } from '../plan/colour/colour.js';
import { presentations } from '../plan/colour/format.js';
import { fromRgb, toRgb } from '../plan/colour/srgb.js';
import type { Snapshot } from './snapshot.js';
import { rangeOf } from './text.js';

/** Every colour that is written out in the plan. Names are not among them: picking there would lose the name. */
export function documentColours({ tree }: Snapshot): readonly ColorInformation[] {
  const found: ColorInformation[] = [];
  walk(tree.nodes, ({ line, statement }) => {
    for (const spec of coloursIn(statement)) {
      const read = spec.kind === 'name' ? undefined : parseColour(spec.text);
      if (read?.ok !== true) continue;
      const [red, green, blue] = toRgb(read.colour);
      found.push({
        range: rangeOf({ line, start: spec.start, end: spec.end }),
        color: { red, green, blue, alpha: 1 },
      });
    }
  });
  return found;
}

/** Ways to write a picked colour, in the notation that stands there first. A plan's colours are opaque. */
export function colourPresentations(
  { lines }: Snapshot,
  range: Range,
  { red, green, blue }: ColorInformation['color'],
): readonly ColorPresentation[] {
  const written = lines[range.start.line]?.slice(range.start.character, range.end.character) ?? '';
  const current = parseColour(written);
  const notation = current.ok ? current.colour.notation : undefined;
  return presentations(fromRgb([red, green, blue]), notation).map((label) => ({
    label,
    textEdit: { range, newText: label },
  }));
}

function coloursIn(statement: Statement): readonly ColourSpec[] {
  switch (statement.kind) {
    case 'ground':
    case 'colour definition':
    case 'colour':
    case 'glaze':
      return [statement.colour];
    case 'paint':
      return [statement.full, statement.tint?.colour].filter((spec) => spec !== undefined);
    default:
      return [];
  }
}
