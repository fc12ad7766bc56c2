import {
  DocumentHighlightKind,
  type DocumentHighlight,
  type LocationLink,
  type Position,
} from 'vscode-languageserver-types';
import { walk, type Sentence } from '../../grammar/index.js';
import { definitionIn, nameUnder } from './family.js';
import type { KnownPlan, Surroundings } from './library.js';
import { nameAt, usesOf } from './names.js';
import { knownPart, partUnder, rangeOfPart, usesOfPart, withoutQuotes } from './parts.js';
import type { Snapshot } from './snapshot.js';
import { emptyRangeAt, rangeOf, touches } from './text.js';

/**
 * Where the name under the caret is defined, here or in a plan that this one is based on; for a part of an SVG file its
 * element there, and for a file that a plan takes something from, its beginning. One place, or none.
 */
export function definition(
  plan: KnownPlan,
  { line, character }: Position,
  around: Surroundings,
): LocationLink | undefined {
  const name = nameUnder(plan, line, character, around);
  if (name === undefined) return fileDefinition(plan, { line, character }, around);
  const found = definitionIn(plan, name, around);
  if (found === undefined) return undefined;
  const { node, location } = found.definition;
  return {
    originSelectionRange: rangeOf(name.location),
    targetUri: found.plan.uri,
    targetRange: {
      start: { line: node.line, character: node.statement.start },
      end: rangeOf({ ...location, end: node.statement.end }).end,
    },
    targetSelectionRange: rangeOf(location),
  };
}

function fileDefinition(
  plan: KnownPlan,
  { line, character }: Position,
  around: Surroundings,
): LocationLink | undefined {
  const part = partUnder(plan, line, character);
  const known = part && knownPart(plan, part, around);
  if (part !== undefined && known?.at !== undefined) {
    const range = rangeOfPart(known, known.at);
    return linkTo(known.file.uri, part.location, range);
  }
  const sentence = part === undefined ? fileUnder(plan, line, character) : undefined;
  const file = sentence && around.fileOf(plan, sentence.value);
  if (sentence === undefined || file === undefined) return undefined;
  return linkTo(file.uri, withoutQuotes(line, sentence), emptyRangeAt(0, 0));
}

function linkTo(
  uri: string,
  from: Parameters<typeof rangeOf>[0],
  range: LocationLink['targetRange'],
): LocationLink {
  return {
    originSelectionRange: rangeOf(from),
    targetUri: uri,
    targetRange: range,
    targetSelectionRange: range,
  };
}

/** The name of a text file under the caret: of a base plan, or of a drawing. */
function fileUnder({ tree }: KnownPlan, line: number, column: number): Sentence | undefined {
  let found: Sentence | undefined;
  walk(tree.nodes, (node) => {
    if (node.line !== line) return;
    const { statement } = node;
    const file =
      statement.kind === 'based on'
        ? statement.file
        : statement.kind === 'shape' && statement.shape.form === 'file'
          ? statement.shape.file
          : undefined;
    if (file !== undefined && touches(file, column)) found = file;
  });
  return found;
}

/** The definition (as a written place) and all uses (as read ones) of the name under the caret, or all uses of the part of a file. */
export function highlights(
  snapshot: Snapshot,
  { line, character }: Position,
  around: Surroundings,
): readonly DocumentHighlight[] {
  const { names } = snapshot;
  const part = partUnder(snapshot, line, character);
  if (part !== undefined) {
    return usesOfPart(snapshot, part, around)
      .filter(({ plan }) => plan.uri === snapshot.uri)
      .map(({ location }) => ({ range: rangeOf(location), kind: DocumentHighlightKind.Read }));
  }
  const name = nameAt(names, line, character);
  if (name === undefined) return [];
  const written = names.definitions.filter(({ kind, key }) => kind === name.kind && key === name.key);
  return [
    ...written.map(({ location }) => ({ range: rangeOf(location), kind: DocumentHighlightKind.Write })),
    ...usesOf(names, name.kind, name.key).map(({ location }) => ({
      range: rangeOf(location),
      kind: DocumentHighlightKind.Read,
    })),
  ].sort(
    (a, b) => a.range.start.line - b.range.start.line || a.range.start.character - b.range.start.character,
  );
}
