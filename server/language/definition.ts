import {
  DocumentHighlightKind,
  type DocumentHighlight,
  type LocationLink,
  type Position,
} from 'vscode-languageserver-types';
import { definitionIn, type NamedPlace, nameUnder, occurrencesHere } from './family.js';
import { filesNamedIn, type NamedFile } from './file-names.js';
import type { KnownPlan, Surroundings } from './library.js';
import { knownPart, partUnder, rangeOfPart, usesOfPart } from './parts.js';
import type { Snapshot } from './snapshot.js';
import { emptyRangeAt, rangeOf, touches } from './text.js';

/**
 * Where the name under the caret is defined, here or in a plan that this one is based on: on its own definition, that
 * of the plan whose thing it changes. For a part of an SVG file its element there, and for a file that a plan takes
 * something from, its beginning. One place, or none.
 */
export function definition(
  plan: KnownPlan,
  { line, character }: Position,
  around: Surroundings,
): LocationLink | undefined {
  const name = nameUnder(plan, line, character, around);
  if (name === undefined) return fileDefinition(plan, { line, character }, around);
  const found = definitionOf(plan, name, around);
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

/** Of a name that is given again where another plan has it already, the definition there. */
function definitionOf(
  plan: KnownPlan,
  name: NamedPlace,
  around: Surroundings,
): ReturnType<typeof definitionIn> {
  const here = definitionIn(plan, name, around);
  const isItself =
    here?.plan === plan &&
    here.definition.location.line === name.location.line &&
    here.definition.location.start === name.location.start;
  return (isItself ? definitionIn(plan, { ...name, ofBase: true }, around) : undefined) ?? here;
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
  const named = part === undefined ? fileUnder(plan, line, character) : undefined;
  const file = named && around.fileOf(plan, named.path);
  return file && linkTo(file.uri, named.location, emptyRangeAt(0, 0));
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

/** The text file whose name the caret is on: a base plan, or a drawing. */
function fileUnder(plan: KnownPlan, line: number, column: number): NamedFile | undefined {
  return filesNamedIn(plan).find(
    ({ kind, location }) =>
      (kind === 'plan' || kind === 'drawing') && location.line === line && touches(location, column),
  );
}

/**
 * The definition (as a written place) and all uses (as read ones) of the name under the caret, or all uses of the part
 * of a file.
 */
export function highlights(
  snapshot: Snapshot,
  { line, character }: Position,
  around: Surroundings,
): readonly DocumentHighlight[] {
  const part = partUnder(snapshot, line, character);
  if (part !== undefined) {
    return usesOfPart(snapshot, part, around)
      .filter(({ plan }) => plan.uri === snapshot.uri)
      .map(({ location }) => ({ range: rangeOf(location), kind: DocumentHighlightKind.Read }));
  }
  const name = nameUnder(snapshot, line, character, around);
  if (name === undefined) return [];
  return occurrencesHere(snapshot, name, around).map(({ location, defines }) => ({
    range: rangeOf(location),
    kind: defines ? DocumentHighlightKind.Write : DocumentHighlightKind.Read,
  }));
}
