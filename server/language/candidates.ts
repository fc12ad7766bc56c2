import { CompletionItemKind, type CompletionItem } from 'vscode-languageserver-types';
import { choiceLists, inQuotes, said, type StatementKind, t } from '../../grammar/index.js';
import { ruleById, rules } from '../findings/rules.js';
import { limitForm, limitInWords } from '../findings/words/words.js';
import { toMunsell } from '../plan/colour/munsell.js';
import { toHex } from '../plan/colour/srgb.js';
import { knownPigments } from '../plan/materials/pigments.js';
import type { FileReference } from '../plan/plan.js';
import { sidesInWords, stockNames, stockSize } from '../plan/stock.js';
import { transparencyWords } from './figures/paint.js';
import { termMeaning } from './figures/terms.js';
import { ruleMeaning } from './hover.js';
import { type Definition, kindWords, type NameKind, writtenIn } from './names.js';
import type { Slot } from './slots.js';
import { crossingDrawing, divisionDrawing, objectDrawing } from './small-drawings.js';
import type { Snapshot } from './snapshot.js';
import { placedIds } from './svg-ids.js';
import { contentOf, type Style } from './style.js';

/** A word or name that can stand in a slot. */
export interface Candidate {
  readonly label: string;
  readonly kind: CompletionItemKind;
  readonly detail?: string;
  readonly documentation?: CompletionItem['documentation'];
  /** What it is found by when something is typed, where that is not its label. */
  readonly filterText?: string;
}

/** All that can stand in a slot, the likeliest first; empty where the plan has none. */
export function candidatesFor(
  slot: Slot,
  snapshot: Snapshot,
  style: Style,
  statement: StatementKind,
): readonly Candidate[] {
  switch (slot.kind) {
    case 'words':
      return slot.words.map((label) => ({
        label,
        kind: CompletionItemKind.EnumMember,
        ...told(style, [termMeaning(label, statement)]),
      }));
    case 'systems':
      return systemsOf(snapshot, style);
    case 'places':
      // A focal point is not placed by itself.
      return placesOf(snapshot, style).filter(({ label }) => statement !== 'focus' || label !== 'focus');
    case 'steps':
      return stepsOf(snapshot);
    case 'colours':
      return coloursOf(snapshot);
    case 'names':
      return namesOf(snapshot, slot.of, style);
    case 'cues':
      return cuesOf(snapshot, slot.quoted);
    case 'rules':
      return rules.map((rule) => ({
        label: rule.id,
        kind: CompletionItemKind.Event,
        detail: rule.limit === undefined ? rule.severity : `${rule.severity}, limit ${limitForm(rule.limit)}`,
        documentation: contentOf(style, ruleMeaning(rule, style)),
      }));
    case 'limit':
      return limitOf(slot.rule, style);
    case 'pigments':
      return pigments();
    case 'stock sizes':
      return stockNames().map((label) => ({ label, kind: CompletionItemKind.Value, detail: sizeOf(label) }));
    case 'files':
      return filesOf(snapshot, slot.of);
    case 'parts':
      return partsOf(snapshot, slot.path);
  }
}

/** The Colour Index names, found by what painters call them too, with a swatch of the full tone. */
function pigments(): readonly Candidate[] {
  return [...new Map(knownPigments().map((pigment) => [pigment.index, pigment])).values()].map(
    ({ index, name, transparency, masstone, remembered }) => {
      const tone = masstone ?? remembered?.full;
      return {
        label: index,
        kind: tone === undefined ? CompletionItemKind.Value : CompletionItemKind.Color,
        detail: `${name}, ${said(transparencyWords[transparency])}`,
        ...(tone === undefined ? {} : { documentation: tone }),
        filterText: `${index} ${name}`,
      };
    },
  );
}

/**
 * The usual one, to be changed. Typing a number must not bring it up: Enter would take it in the place of the number.
 */
function limitOf(name: string, style: Style): readonly Candidate[] {
  const rule = ruleById(name);
  const limit = rule?.limit;
  if (rule === undefined || limit === undefined) return [];
  return [
    {
      label: limitForm(limit),
      kind: CompletionItemKind.Value,
      detail: t('usually {0}', limitInWords(limit)),
      documentation: contentOf(style, ruleMeaning(rule, style)),
      filterText: 'usual',
    },
  ];
}

function enumerated(words: readonly string[]): readonly Candidate[] {
  return words.map((label) => ({ label, kind: CompletionItemKind.EnumMember }));
}

/** What there is to say of a candidate, in paragraphs, if anything. */
function told(
  style: Style,
  paragraphs: readonly (string | undefined)[],
  picture?: { readonly svg: string | undefined; readonly meaning: string },
): Pick<Candidate, 'documentation'> {
  const drawn = picture?.svg === undefined ? undefined : style.drawing?.(picture.svg, picture.meaning);
  const all = [...paragraphs.map((text) => text && style.text(text)), drawn].filter(
    (text) => text !== undefined,
  );
  return all.length === 0 ? {} : { documentation: contentOf(style, all) };
}

/** The systems by which a canvas is divided, each as it lies on this one. */
function systemsOf({ plan: { canvas } }: Snapshot, style: Style): readonly Candidate[] {
  const systems = [
    ...choiceLists.OneWordSystem,
    ...(['two to three', 'root 2', 'root 3', 'root 4', 'root 5'] as const),
  ];
  return systems.map((label) => ({
    label,
    kind: CompletionItemKind.EnumMember,
    ...told(style, [termMeaning(label.split(' ')[0] ?? label, 'divide')], {
      svg: divisionDrawing(canvas, label),
      meaning: t('The canvas divided: {0}', label),
    }),
  }));
}

/** The crossings, those of the first division by bare words, and the other places that have a name. */
function placesOf({ plan }: Snapshot, style: Style): readonly Candidate[] {
  const crossings = plan.divisions.flatMap((division, index) =>
    division.crossings.map(({ name, at }) => ({
      label: index === 0 ? name : `${name} of ${division.system}`,
      kind: CompletionItemKind.Reference,
      detail: t('crossing of {0}', division.system),
      ...told(style, [], {
        svg: crossingDrawing(plan.canvas, division, at),
        meaning: t('The crossing {0}', name),
      }),
    })),
  );
  return [
    { label: 'focus', kind: CompletionItemKind.Reference, detail: t('the focal point') },
    ...crossings,
    ...enumerated(['centre', ...spots]),
    ...enumerated(choiceLists.Side.map((side) => `${side} edge`)),
    ...enumerated(spots.filter((spot) => !spot.includes('centre')).map((spot) => `${spot} corner`)),
    { label: 'crossing', kind: CompletionItemKind.Reference, detail: 'crossing COLUMN ROW' },
  ];
}

const spots = ['upper left', 'upper right', 'lower left', 'lower right', 'upper centre', 'lower centre'];

function stepsOf({ plan: { scale } }: Snapshot): readonly Candidate[] {
  return Array.from({ length: scale.steps }, (_, index) => {
    const step = index + 1;
    const group = scale.groups.find(({ from, to }) => from <= step && step <= to);
    return {
      label: String(step),
      kind: CompletionItemKind.Value,
      ...(group === undefined ? {} : { detail: group.name }),
    };
  });
}

/** Editors show a swatch for a colour whose documentation is plain text and begins with its hex code. */
function coloursOf(snapshot: Snapshot): readonly Candidate[] {
  const { colours, palette } = snapshot.plan;
  return [
    ...colours.map(({ name, colour, role }) => ({
      label: name,
      kind: CompletionItemKind.Color,
      ...(role === undefined ? {} : { detail: role }),
      documentation: `${toHex(colour)} ${toMunsell(colour).text}`,
    })),
    ...(palette?.paints ?? []).flatMap(({ name, full }) =>
      full === undefined
        ? []
        : [{ label: name, kind: CompletionItemKind.Color, detail: t('paint'), documentation: toHex(full) }],
    ),
  ];
}

const nameKinds: Readonly<Record<NameKind, CompletionItemKind>> = {
  object: CompletionItemKind.Variable,
  colour: CompletionItemKind.Color,
  paint: CompletionItemKind.Color,
  lead: CompletionItemKind.Variable,
  group: CompletionItemKind.EnumMember,
  sitting: CompletionItemKind.Event,
};

function namesOf(snapshot: Snapshot, kind: NameKind, style: Style): readonly Candidate[] {
  const { names, plan } = snapshot;
  const shown = kind === 'colour' || kind === 'paint' ? coloursOf(snapshot) : [];
  const written = [...names.definitions, ...ofBases(snapshot)]
    .filter((definition) => definition.kind === kind)
    .map(({ name, key }) => ({
      ...shown.find(({ label }) => label === name),
      ...(kind === 'object' ? lyingThere(snapshot, key, style) : {}),
      label: name,
      kind: nameKinds[kind],
      detail: said(kindWords[kind]),
    }));
  // A scale has groups even when the plan names none.
  if (kind !== 'group' || written.length > 0) return written;
  return plan.scale.groups.map(({ name }) => ({
    label: name,
    kind: nameKinds.group,
    detail: said(kindWords[kind]),
  }));
}

/** What the plans that this one builds on define and it does not itself. */
function ofBases({ names: { definitions }, plan: { basedOn, statements } }: Snapshot): readonly Definition[] {
  if (!basedOn) return [];
  const own = new Set(definitions.map(({ kind, key }) => `${kind} ${key}`));
  return writtenIn(
    statements.filter(({ file, changes }) => file !== undefined || changes),
  ).definitions.filter(({ kind, key }) => !own.has(`${kind} ${key}`));
}

/** An object as it lies in the picture, in a plan that has not so many that the list would be slow. */
function lyingThere({ plan }: Snapshot, key: string, style: Style): Pick<Candidate, 'documentation'> {
  const { canvas, objects } = plan;
  const object = objects.length > MOST_DRAWN ? undefined : objects.find((one) => one.key === key);
  if (object === undefined) return {};
  return told(style, [], { svg: objectDrawing(canvas, object), meaning: t('Where {0} lies', object.name) });
}

const MOST_DRAWN = 60;

function cuesOf({ plan }: Snapshot, quoted: boolean): readonly Candidate[] {
  return plan.cues.map(({ value }) => {
    const written = inQuotes(value);
    return {
      label: quoted ? written : written.slice(1, -1),
      kind: CompletionItemKind.Text,
      detail: t('cue'),
    };
  });
}

/** The sides of a stock size; those in inches are named by them. */
function sizeOf(stock: string): string {
  const size = stockSize(stock);
  return size === undefined || size.unit === 'in' ? t('stock size') : sidesInWords(size);
}

/** Files of that kind that the plan names already. */
function filesOf({ plan }: Snapshot, kind: FileReference['kind']): readonly Candidate[] {
  const paths = plan.files.filter((file) => file.kind === kind && file.path !== '').map(({ path }) => path);
  return [...new Set(paths)].map((label) => ({ label, kind: CompletionItemKind.File }));
}

/** Ids in an SVG file, as far as it has been read. */
function partsOf({ readFile }: Snapshot, path: string): readonly Candidate[] {
  const answer = readFile(path);
  if (answer?.ok !== true) return [];
  const ids = placedIds(answer.text)
    .map(({ id }) => id)
    .filter((id) => id !== '');
  return [...new Set(ids)].map((label) => ({ label, kind: CompletionItemKind.Reference }));
}
