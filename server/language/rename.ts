import { TextDocument } from 'vscode-languageserver-textdocument';
import type { Position, Range, TextEdit, WorkspaceEdit } from 'vscode-languageserver-types';
import { URI, Utils } from 'vscode-uri';
import { isWord, nameKey, said, t } from '../../grammar/index.js';
import type { OwnLocation } from '../plan/plan.js';
import type { Abilities } from './abilities.js';
import {
  definitionIn,
  definitionsIn,
  kinOf,
  meaningsIn,
  nameUnder,
  occurrencesOf,
  type NamedPlace,
  type Occurrence,
} from './family.js';
import { knownPlan, surroundingsOf, type KnownPlan, type Surroundings } from './library.js';
import { kindWords } from './names.js';
import { knownPart, partRefusal, partUnder, rangeOfPart, usesOfPart, type PartUse } from './parts.js';
import { usualSpelling } from './paths.js';
import { withinQuotes, writtenWithin } from './quotes.js';
import { rangeOf } from './text.js';
import { byText, workspaceEdit, type TextEdits } from './workspace-edits.js';

/** What can be renamed at the caret, or why it can't; nothing where there is no name. */
export type Renamable = { readonly range: Range; readonly placeholder: string } | Refusal;

/** A sentence for the painter. */
export interface Refusal {
  readonly refused: string;
}

/** The name under the caret with what is typed over. */
export function renamableAt(
  plan: KnownPlan,
  { line, character }: Position,
  around: Surroundings,
): Renamable | undefined {
  const part = partUnder(plan, line, character);
  if (part !== undefined) {
    const refused = partRefusal(knownPart(plan, part, around), part.id);
    return refused === undefined ? { range: rangeOf(part.location), placeholder: part.id } : { refused };
  }
  const name = nameUnder(plan, line, character, around);
  if (name === undefined) return undefined;
  const defined = definitionIn(plan, name, around);
  if (defined === undefined) return { refused: undefinedName(textAt(plan, name.location), name) };
  const location = renamedPart(plan, name, name.location);
  const placeholder = name.kind === 'sitting' ? defined.definition.name : textAt(plan, location);
  return { range: rangeOf(location), placeholder };
}

/** The edits that give what the caret is on another name wherever it is spoken of, or why that can't be. */
export function rename(
  plan: KnownPlan,
  position: Position,
  newName: string,
  around: Surroundings,
  abilities: Abilities,
): WorkspaceEdit | Refusal | undefined {
  const { line, character } = position;
  const part = partUnder(plan, line, character);
  if (part !== undefined) return renamePart(plan, part, newName, around, abilities);
  const name = nameUnder(plan, line, character, around);
  if (name === undefined) return undefined;
  if (definitionIn(plan, name, around) === undefined)
    return { refused: undefinedName(textAt(plan, name.location), name) };
  const refused = formRefusal(name, newName) ?? collision(plan, name, newName, around);
  if (refused !== undefined) return { refused };
  const places = occurrencesOf(plan, name, around);
  const edits = byText(
    places,
    (place) => place.plan,
    (place) => editAt(place, name, newName),
  );
  const changed = changedMeaning(places, edits, name, newName, around);
  return changed === undefined ? workspaceEdit(edits, abilities) : { refused: changed };
}

function renamePart(
  plan: KnownPlan,
  use: PartUse,
  newId: string,
  around: Surroundings,
  abilities: Abilities,
): WorkspaceEdit | Refusal {
  const part = knownPart(plan, use, around);
  const refused = partRefusal(part, newId);
  if (refused !== undefined) return { refused };
  const inPlans = byText(
    usesOfPart(plan, use, around),
    (one) => one.plan,
    ({ location }) => ({ range: rangeOf(location), newText: newId }),
  );
  const inFile =
    part?.at === undefined
      ? []
      : [{ ...part.file, edits: [{ range: rangeOfPart(part, part.at), newText: newId }] }];
  return workspaceEdit([...inFile, ...inPlans], abilities);
}

/** A title keeps the quotes that it stands in. */
function renamedPart(
  { lines }: KnownPlan,
  { kind }: Pick<NamedPlace, 'kind'>,
  location: OwnLocation,
): OwnLocation {
  if (kind !== 'sitting') return location;
  return { ...location, ...withinQuotes(lines[location.line] ?? '', location) };
}

function editAt({ plan, location }: Occurrence, name: NamedPlace, newName: string): TextEdit {
  const part = renamedPart(plan, name, location);
  const line = plan.lines[part.line] ?? '';
  return {
    range: rangeOf(part),
    newText: name.kind === 'sitting' ? writtenWithin(line, part.start, newName) : newName,
  };
}

function undefinedName(written: string, { kind }: Pick<NamedPlace, 'kind'>): string {
  return t(
    'Nothing gives the {0} “{1}” its name here, so there is nothing to rename.',
    said(kindWords[kind]),
    written,
  );
}

/** Why a text is no name, whatever it is the name of. */
function formRefusal({ kind }: NamedPlace, newName: string): string | undefined {
  if (kind === 'sitting') {
    if (newName.trim() === '') return t('A sitting needs a title.');
    return /[\n\r]/u.test(newName) ? t('A title stands on one line.') : undefined;
  }
  if (isWord(newName)) return undefined;
  return t(
    'A name is one word that begins with a letter; letters, digits, underscores, and single hyphens or apostrophes inside it may follow. “{0}” is no such word.',
    newName,
  );
}

/** A definition of the same kind that has the new name already. */
function collision(
  plan: KnownPlan,
  name: NamedPlace,
  newName: string,
  around: Surroundings,
): string | undefined {
  const key = nameKey(newName);
  if (key === name.key) return undefined;
  for (const kin of kinOf(plan, name, around)) {
    const other = definitionsIn(kin).find((one) => one.kind === name.kind && one.key === key);
    if (other === undefined) continue;
    return t(
      '{0} has the {1} “{2}” already.',
      lineOf(kin, other.location.line, plan, true),
      said(kindWords[name.kind]),
      other.name,
    );
  }
  return undefined;
}

/**
 * Reads the plans as they would be: each renamed place must be a name of the same thing then, and every other name must
 * mean what it means now.
 */
function changedMeaning(
  places: readonly Occurrence[],
  edits: readonly TextEdits[],
  { kind }: NamedPlace,
  newName: string,
  around: Surroundings,
): string | undefined {
  const [first] = places;
  const after = editedSurroundings(edits, around);
  const renamed = new Set(places.map(({ plan, location }) => placeKey(plan, location)));
  for (const plan of around.plans) {
    const now = after.plans.find(({ uri }) => uri === plan.uri);
    if (now === undefined) continue;
    const before = meaningsIn(plan, around);
    const then = meaningsIn(now, after);
    const index = before.findIndex((meaning, at) => {
      const isRenamed = renamed.has(placeKey(plan, meaning.location));
      const key = isRenamed ? nameKey(newName) : meaning.key;
      const other = then[at];
      return (
        other?.kind !== (isRenamed ? kind : meaning.kind) ||
        other.key !== key ||
        other.location.line !== meaning.location.line
      );
    });
    const other = then[index];
    const odd = before[index]?.location ?? then[before.length]?.location;
    if (odd === undefined) continue;
    const where = lineOf(plan, odd.line, first?.plan ?? plan, false);
    return other?.key === nameKey(newName) &&
      other.kind !== before[index]?.kind &&
      other.location.line === odd.line
      ? t('In {0} “{1}” would mean the {2} of that name.', where, newName, said(kindWords[other.kind]))
      : t('In {0} “{1}” could not be read as a name: it means something else there.', where, newName);
  }
  return undefined;
}

function editedSurroundings(edits: readonly TextEdits[], around: Surroundings): Surroundings {
  const byUri = new Map(edits.map((one) => [usualSpelling(one.uri), one.edits]));
  const plans = around.plans.map((plan): KnownPlan => {
    const own = byUri.get(usualSpelling(plan.uri));
    if (own === undefined) return plan;
    const document = TextDocument.create(plan.uri, 'mahl', 0, plan.text);
    return knownPlan(plan.uri, TextDocument.applyEdits(document, [...own]), plan);
  });
  return surroundingsOf(plans, around.addressOf, () => undefined);
}

function placeKey({ uri }: KnownPlan, { line, start }: OwnLocation): string {
  return `${uri} ${line} ${start}`;
}

/** `line 12`, with the file where it is another than the painter is in. */
function lineOf({ uri }: KnownPlan, line: number, from: KnownPlan, capital: boolean): string {
  if (uri === from.uri) return capital ? t('Line {0}', line + 1) : t('line {0}', line + 1);
  const file = Utils.basename(URI.parse(uri));
  return capital ? t('Line {0} of “{1}”', line + 1, file) : t('line {0} of “{1}”', line + 1, file);
}

function textAt({ lines }: KnownPlan, { line, start, end }: OwnLocation): string {
  return lines[line]?.slice(start, end) ?? '';
}
