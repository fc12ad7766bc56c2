import { t, walk, type Sentence } from '../../grammar/index.js';
import type { OwnLocation } from '../plan/plan.js';
import type { KnownPlan, KnownText, Surroundings } from './library.js';
import { withinQuotes } from './quotes.js';
import { isSpokenOf, isSvgId, placedIds, rangeBetween, type PlacedId } from './svg-ids.js';
import { touches } from './text.js';

/** A part of an SVG file, as a plan names it after `part`. */
export interface PartUse {
  readonly file: Sentence;
  readonly id: string;
  /** Of the id, without its quotes. */
  readonly location: OwnLocation;
}

/** A part that a plan names, with the file that holds it. */
export interface KnownPart {
  readonly use: PartUse;
  readonly file: KnownText;
  /** Where its id stands there; missing when the file has no such part. */
  readonly at: PlacedId | undefined;
}

type PlanText = Pick<KnownPlan, 'tree' | 'lines'>;

/** Every part that a plan names, in the order of the text. */
function partsOf({ tree, lines }: PlanText): readonly PartUse[] {
  const uses: PartUse[] = [];
  walk([...tree.nodes, ...tree.detached], ({ line, statement }) => {
    if (statement.kind !== 'shape' || statement.shape.form !== 'file') return;
    const { file, part } = statement.shape;
    if (part === undefined) return;
    uses.push({ file, id: part.value, location: { line, ...withinQuotes(lines[line] ?? '', part) } });
  });
  return uses;
}

/** The part under the caret; nothing between quotes that hold no name yet. */
export function partUnder(plan: PlanText, line: number, column: number): PartUse | undefined {
  return partsOf(plan).find(
    ({ id, location }) => id !== '' && location.line === line && touches(location, column),
  );
}

/** The file that holds a part, when it is known. */
export function knownPart(plan: KnownPlan, use: PartUse, around: Surroundings): KnownPart | undefined {
  const file = around.fileOf(plan, use.file.value);
  return file && { use, file, at: placedIds(file.text).find(({ id }) => id === use.id) };
}

/** Every place in the known plans that takes the same part of the same file. */
export function usesOfPart(
  plan: KnownPlan,
  { file, id }: PartUse,
  around: Surroundings,
): readonly { readonly plan: KnownPlan; readonly location: OwnLocation }[] {
  const address = (of: KnownPlan, path: string): string =>
    around.addressOf(of.uri, path) ?? `${of.uri} ${path}`;
  const wanted = address(plan, file.value);
  return around.plans.flatMap((other) =>
    partsOf(other)
      .filter((use) => use.id === id && address(other, use.file.value) === wanted)
      .map(({ location }) => ({ plan: other, location })),
  );
}

/** Why a part can't be called that, as a sentence; nothing when it can. */
export function partRefusal(part: KnownPart | undefined, newId: string): string | undefined {
  if (part === undefined)
    return t('The file that this part comes from could not be read, so its name there can’t be changed.');
  const { use, file, at } = part;
  if (at === undefined) return t('The file “{0}” has no part with the id “{1}”.', use.file.value, use.id);
  if (!isSvgId(newId))
    return t(
      'An id in an SVG file begins with a letter and goes on in letters, digits, dots, hyphens and underscores; “{0}” does not.',
      newId,
    );
  const ids = placedIds(file.text);
  if (newId !== use.id && ids.some(({ id }) => id === newId))
    return t('The file “{0}” has another part with the id “{1}”.', use.file.value, newId);
  if (ids.filter(({ id }) => id === use.id).length > 1)
    return t(
      'The file “{0}” has the id “{1}” more than once, so it can’t be told which one is meant.',
      use.file.value,
      use.id,
    );
  if (isSpokenOf(file.text, use.id))
    return t(
      'The file “{0}” speaks of “{1}” elsewhere, in a link, a style or a script; change it in the program that made the file.',
      use.file.value,
      use.id,
    );
  return undefined;
}

/** Where a part's id stands in its file. */
export function rangeOfPart({ file }: KnownPart, { start, end }: PlacedId): ReturnType<typeof rangeBetween> {
  return rangeBetween(file.text, start, end);
}
