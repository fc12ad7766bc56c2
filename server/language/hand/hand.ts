import type { Range, TextEdit } from 'vscode-languageserver-types';
import { speaking } from '../../../grammar/index.js';
import { compose } from '../../drawing/compose.js';
import type { TextChange, TextPlace } from '../../findings/text-changes.js';
import type { Refused, SceneResult, TryChangeParams, WriteChangeParams, WrittenChange } from '../protocol.js';
import type { Snapshot } from '../snapshot.js';
import { gravestFirst } from '../telling-order.js';
import type { NameInText } from './attempt.js';
import { tried } from './trial.js';

/** The plan as it would be drawn after the change. */
export function tryChange(
  snapshot: Snapshot,
  {
    version,
    change,
    view,
    distanceMillimetres,
    sitting,
    isNarrow,
    handling = true,
  }: TryChangeParams & HandlingWanted,
): SceneResult | Refused {
  const trial = speaking(snapshot.language, () => tried(snapshot, version, change));
  if (trial.kind === 'refused') return { version, refused: trial.why };
  const { plan, measures, findings } = trial.after;
  const options = { distanceMillimetres, sitting, isNarrow, handling, language: snapshot.language };
  return { version, scene: compose(plan, measures, gravestFirst(findings), view, options) };
}

interface HandlingWanted {
  /** Left out, the drawing says what can be taken hold of. */
  readonly handling?: boolean;
}

/** The edits that the change comes to. */
export function writeChange(
  snapshot: Snapshot,
  { version, change }: WriteChangeParams,
): WrittenChange | Refused {
  const trial = speaking(snapshot.language, () => tried(snapshot, version, change));
  if (trial.kind === 'refused') return { version, refused: trial.why };
  const { changes, name } = trial;
  const [first] = changes;
  return {
    version,
    edits: changes.map(editOf),
    ...(name && first ? { select: selectionOf(name, first) } : {}),
  };
}

function editOf({ from, to, text }: TextChange): TextEdit {
  return { range: { start: positionOf(from), end: positionOf(to) }, newText: text };
}

/** Where the name of something new stands once it is written. */
function selectionOf({ line, start, end }: NameInText, { from }: TextChange): Range {
  const shift = line === 0 ? from.column : 0;
  return {
    start: { line: from.line + line, character: shift + start },
    end: { line: from.line + line, character: shift + end },
  };
}

function positionOf({ line, column }: TextPlace): Range['start'] {
  return { line, character: column };
}
