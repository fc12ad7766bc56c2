import { pigmentTable } from './pigment-table.js';

/** What a paint is to the painter who looks for a hue in the box. */
const paintFamilies = [
  'white',
  'yellow',
  'orange',
  'red',
  'violet',
  'blue',
  'green',
  'brown',
  'black',
] as const;
export type PaintFamily = (typeof paintFamilies)[number];

const transparencies = ['transparent', 'semi-transparent', 'semi-opaque', 'opaque'] as const;
export type Transparency = (typeof transparencies)[number];

/** Where a drying figure comes from; the published ones are named in full in the reference. */
export type DryingSource = 'maker’s drying guide' | 'Saitzyk 1987' | 'from memory';

/** What in a pigment can hurt someone. */
export const hazardNames = [
  'cadmium',
  'cobalt',
  'lead',
  'chromium',
  'manganese',
  'mercury',
  'arsenic',
  'antimony',
  'nickel',
] as const;
export type Hazard = (typeof hazardNames)[number];

/** How fast a thin film of it in drying oil gets dry to the touch, by one source. */
export interface DryingFigure {
  /** Days. */
  readonly days: number;
  readonly source: DryingSource;
}

/** What is known of a pigment under its Colour Index generic name. */
export interface Pigment {
  /** `PB29`, upper case but for two-letter colours: `PBk9`, `PBr7`. */
  readonly index: string;
  /** What painters call it: `ultramarine blue`. */
  readonly name: string;
  readonly family: PaintFamily;
  /** For a yellow, red or blue: which side it leans to. From memory. */
  readonly side?: 'warm' | 'cool';
  /** From memory: tubes of one pigment differ by maker. */
  readonly transparency: Transparency;
  /** Where sources disagree, each figure; the slower counts. */
  readonly drying: readonly [DryingFigure, ...DryingFigure[]];
  readonly hazards: readonly Hazard[];
  /** Its full tone as measured, where its spectrum is known; see `server/measure/mixing`. */
  readonly masstone?: `#${string}`;
  /**
   * Of one without a measured spectrum, from memory: its full tone, and one part of it in ten of white. What is mixed
   * from these is an estimate.
   */
  readonly remembered?: { readonly full: `#${string}`; readonly tint?: `#${string}` };
}

const drySources: Readonly<Record<string, DryingSource>> = {
  guide: 'maker’s drying guide',
  Saitzyk: 'Saitzyk 1987',
  memory: 'from memory',
};

/** Stands for a row without a figure, of which there is none. */
const UNREAD: DryingFigure = { days: 5, source: 'from memory' };

const pigments: readonly Pigment[] = pigmentTable.map(
  ([index, name, family, transparency, drying, hazards, tones]) => ({
    index,
    name,
    ...familyOf(family),
    transparency: oneOf(transparencies, transparency),
    drying: dryingOf(drying),
    hazards: wordsIn(hazards).map((word) => oneOf(hazardNames, word)),
    ...tonesOf(tones),
  }),
);

const byIndex = new Map<string, Pigment[]>();
for (const pigment of pigments) {
  const key = pigment.index.toUpperCase();
  byIndex.set(key, [...(byIndex.get(key) ?? []), pigment]);
}

/**
 * What is known of a Colour Index name, however its letters are cased; nothing for one that is not in the table. Some
 * names stand for several paints, `PBr7` for siennas and umbers, and then what the painter calls the paint tells which.
 */
export function pigmentOf(index: string, paintName = ''): Pigment | undefined {
  const kinds = byIndex.get(index.toUpperCase()) ?? [];
  const words = new Set(paintName.toLowerCase().split(/[^\p{L}]+/u));
  return kinds.find(({ name }) => wordsIn(name).every((word) => words.has(word))) ?? kinds.at(-1);
}

/** Every pigment that something is known of. */
export function knownPigments(): readonly Pigment[] {
  return pigments;
}

function dryingOf(text: string): Pigment['drying'] {
  const [first = UNREAD, ...more] = text.split(', ').map((figure): DryingFigure => {
    const [source = '', days = ''] = wordsIn(figure);
    return { days: Number(days), source: drySources[source] ?? 'from memory' };
  });
  return [first, ...more];
}

function familyOf(text: string): Pick<Pigment, 'family' | 'side'> {
  const [family = '', side] = wordsIn(text);
  return {
    family: oneOf(paintFamilies, family),
    ...(side === 'warm' || side === 'cool' ? { side } : {}),
  };
}

function tonesOf(text: string): Pick<Pigment, 'masstone' | 'remembered'> {
  const [first, second] = wordsIn(text);
  if (first === undefined) return {};
  if (first === 'measured') return isHex(second) ? { masstone: second } : {};
  return isHex(first) ? { remembered: { full: first, ...(isHex(second) ? { tint: second } : {}) } } : {};
}

function isHex(text: string | undefined): text is `#${string}` {
  return text?.startsWith('#') === true;
}

function wordsIn(text: string): string[] {
  return text.split(' ').filter((word) => word !== '');
}

/** A slip in the table is a fault of ours, found as soon as anything is run. */
function oneOf<T extends string>(all: readonly T[], word: string): T {
  const found = all.find((each) => each === word);
  if (found === undefined) throw new Error(`${word} is none of ${all.join(', ')}`);
  return found;
}
