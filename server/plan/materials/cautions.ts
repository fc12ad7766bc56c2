import { marked, said, t } from '../../../grammar/index.js';
import { capitalised, inWords } from '../problems.js';
import type { Location, Paint, Plan } from '../plan.js';
import { mediumIn, type MediumWords } from './mediums.js';
import { hazardNames, pigmentOf, type Hazard } from './pigments.js';

/** What of the materials of a plan can hurt someone, and the usual care. */
export interface Caution {
  readonly about: CautionSubject;
  /** In the plan's own words: `lemon (PY35)`, `turpentine and linseed oil`. */
  readonly materials: readonly string[];
  /** Of the first material, then of the others. */
  readonly locations: readonly [Location, ...Location[]];
  /** Whole sentences, without what comes first always: see `CAUTION_FIRST`. */
  readonly text: string;
  /** Where the advice is published; `common practice, no source` otherwise. */
  readonly source: string;
}

/** One hazard is told once in a plan. */
export type CautionSubject = Hazard | 'solvents' | 'oily rags' | 'dust';

/** Goes with every caution. */
export const CAUTION_FIRST = marked(
  'Read the maker’s safety data sheet first, and keep to local rules; a plan is no substitute for professional advice.',
);

const COMMON = 'common practice, no source';

const AT_WORK = marked('No sanding, no spraying, no eating while you paint; wear gloves.');
const POISONOUS = marked('It is poisonous.');

/** The usual care with a pigment, in sentences said after the words "… holds cadmium." */
const careWith: Readonly<
  Record<Hazard, { readonly sentences: readonly string[]; readonly source?: string }>
> = {
  cadmium: { sentences: [AT_WORK] },
  cobalt: { sentences: [AT_WORK] },
  lead: {
    sentences: [AT_WORK, marked('Keep it from children.'), marked('Lead paints are restricted in places.')],
    source: `${COMMON}; lead carbonates and sulphates in paint: REACH Annex XVII, entries 16 and 17`,
  },
  chromium: { sentences: [AT_WORK] },
  manganese: { sentences: [AT_WORK] },
  mercury: { sentences: [POISONOUS, AT_WORK, marked('Never heat it.')] },
  arsenic: { sentences: [POISONOUS, AT_WORK] },
  antimony: { sentences: [AT_WORK] },
  nickel: { sentences: [marked('It can make the skin allergic.'), AT_WORK] },
};

/** What is said of media stands behind their names, so it has no capital in English. */
const SOLVENTS = marked(
  'solvent vapour harms and burns: open a window, keep the jar closed, and keep flame and cigarettes away.',
);

const OILY_RAGS = marked(
  'rags with drying oil heat by themselves and can catch fire. Never in a pile: spread them out flat outdoors to dry, then into a lidded metal can of water and detergent, then away by local rules.',
);

const DUST = marked(
  'do not breathe the dust of dry colour: wear a mask that filters it, wipe up wet, and do not sweep or blow.',
);

/**
 * What the materials of a plan call for, each hazard once, in the order of the list of pigments' hazards, then the
 * mediums'.
 */
export function cautionsOf(plan: Plan): readonly Caution[] {
  const media = mediaOf(plan);
  return [
    ...hazardNames.flatMap((hazard) => pigmentCaution(hazard, plan.palette?.paints ?? [])),
    ...mediumCaution('solvents', media, ({ hasSolvent }) => hasSolvent, SOLVENTS, COMMON),
    ...mediumCaution(
      'oily rags',
      media,
      ({ hasDryingOil }) => hasDryingOil,
      OILY_RAGS,
      'NFPA tip sheet “Safety with Oily Rags”',
    ),
    ...mediumCaution('dust', media, ({ hasDust }) => hasDust, DUST, COMMON),
  ];
}

/** What a paint calls for, in sentences; empty for one of which no hazard is known. */
export function cautionsAboutPaint(paint: Pick<Paint, 'index' | 'name'>): readonly string[] {
  return hazardsOf(paint).map(
    (hazard) =>
      `${hazard === 'lead' ? t('It holds lead.') : t('It holds {0}.', hazardWords(hazard))} ${careInWords(hazard)}`,
  );
}

/** What the words of a medium call for, in sentences. */
export function cautionsAboutMedium(text: string): readonly string[] {
  const { hasSolvent, hasDryingOil, hasDust } = mediumIn(text);
  return [
    ...(hasSolvent ? [capitalised(said(SOLVENTS))] : []),
    ...(hasDryingOil ? [capitalised(said(OILY_RAGS))] : []),
    ...(hasDust ? [capitalised(said(DUST))] : []),
  ];
}

/** What painters call paints that hold them, where no Colour Index name says more; from memory. */
const namesOfHazards: Readonly<Partial<Record<Hazard, RegExp>>> = {
  cadmium: /\bcad(?:mium)?\b/,
  cobalt: /\b(?:cobalt|cerulean|aureolin|smalt)\b/,
  lead: /\b(?:lead|flake white|cremnitz|minium)\b/,
  chromium: /\b(?:chrome|chromium|viridian)\b/,
  manganese: /\b(?:manganese|umber)\b/,
  mercury: /\b(?:vermilion|cinnabar)\b/,
  arsenic: /\b(?:orpiment|realgar)\b/,
  nickel: /\bnickel\b/,
};

/** By the pigment, where it is known; else by the name, of which a `hue` is the imitation without the metal. */
function hazardsOf({ index, name }: Pick<Paint, 'index' | 'name'>): readonly Hazard[] {
  const pigment = index === undefined ? undefined : pigmentOf(index, name);
  if (pigment !== undefined) return pigment.hazards;
  const words = name.toLowerCase().replaceAll(/[-_]/g, ' ');
  if (/\bhue\b/.test(words)) return [];
  return hazardNames.filter((hazard) => namesOfHazards[hazard]?.test(words) === true);
}

function pigmentCaution(hazard: Hazard, paints: readonly Paint[]): readonly Caution[] {
  const [first, ...others] = paints.filter((paint) => hazardsOf(paint).includes(hazard));
  if (first === undefined) return [];
  const materials = [first, ...others].map(({ name, index }) =>
    index === undefined ? `\`${name}\`` : `\`${name}\` (${index})`,
  );
  const { source = COMMON } = careWith[hazard];
  return [
    {
      about: hazard,
      materials,
      locations: [first.location, ...others.map(({ location }) => location)],
      text: `${holdsTold(materials, hazard)} ${careInWords(hazard)}`,
      source,
    },
  ];
}

function careInWords(hazard: Hazard): string {
  return careWith[hazard].sentences.map((sentence) => said(sentence)).join(' ');
}

/** That some paints hold something; lead is a word of another meaning in plans, and so has sentences of its own. */
function holdsTold(materials: readonly string[], hazard: Hazard): string {
  const names = inWords(materials);
  if (hazard === 'lead')
    return materials.length > 1 ? t('{0} hold lead.', names) : t('{0} holds lead.', names);
  return materials.length > 1
    ? t('{0} hold {1}.', names, hazardWords(hazard))
    : t('{0} holds {1}.', names, hazardWords(hazard));
}

function hazardWords(hazard: Exclude<Hazard, 'lead'>): string {
  switch (hazard) {
    case 'cadmium':
      return t('cadmium');
    case 'cobalt':
      return t('cobalt');
    case 'chromium':
      return t('chromium');
    case 'manganese':
      return t('manganese');
    case 'mercury':
      return t('mercury');
    case 'arsenic':
      return t('arsenic');
    case 'antimony':
      return t('antimony');
    case 'nickel':
      return t('nickel');
  }
}

interface Medium {
  readonly words: string;
  readonly location: Location;
}

function mediaOf({ canvas, sittings }: Plan): readonly Medium[] {
  const { medium, mediumLocation } = canvas;
  return [
    ...(medium !== undefined && mediumLocation ? [{ words: medium, location: mediumLocation }] : []),
    ...sittings.flatMap(({ medium: own }) => (own ? [{ words: own.value, location: own.location }] : [])),
  ];
}

function mediumCaution(
  about: 'solvents' | 'oily rags' | 'dust',
  media: readonly Medium[],
  calls: (words: MediumWords) => boolean,
  text: string,
  source: string,
): readonly Caution[] {
  const [first, ...others] = media.filter(({ words }) => calls(mediumIn(words)));
  if (first === undefined) return [];
  const materials = [...new Set([first, ...others].map(({ words }) => `\`${words}\``))];
  return [
    {
      about,
      materials,
      locations: [first.location, ...others.map(({ location }) => location)],
      text: t('{0}: {1}', inWords(materials), said(text)),
      source,
    },
  ];
}
