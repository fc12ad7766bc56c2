import { marked, said, t } from '../../../grammar/index.js';
import { amountInWords, differenceInWords, partsInWords } from '../../findings/words/paints.js';
import type { GlazeMeasure, MixingMeasure, Swatch } from '../../measure/mixing/mixing.js';
import { CAUTION_FIRST, cautionsAboutMedium, cautionsAboutPaint } from '../../plan/materials/cautions.js';
import {
  type DryingSource,
  pigmentOf,
  type Pigment,
  type Transparency,
} from '../../plan/materials/pigments.js';
import type { Paint, Plan } from '../../plan/plan.js';
import { capitalised, inWords } from '../../plan/problems.js';
import type { Snapshot } from '../snapshot.js';
import type { Style } from '../style.js';
import { notations, type Paragraphs, woven } from './paragraphs.js';

/** What is known of a paint of the palette, what the picture takes of it, and the usual care. */
export function paintFigures({ plan, measures }: Snapshot, paint: Paint, style: Style): Paragraphs {
  const at = plan.palette?.paints.indexOf(paint) ?? -1;
  const measure = measures.palette?.paints[at];
  const amount = measures.palette?.mixing?.amounts[at];
  const pigment = measure?.pigment ?? (paint.index ? pigmentOf(paint.index, paint.name) : undefined);
  const tones = [
    ...(measure?.full ? [woven(marked('Full tone {0}'), style, notations(measure.full, style))] : []),
    ...(measure?.tint
      ? [woven(marked('One part in ten of white {0}'), style, notations(measure.tint, style))]
      : []),
  ];
  return [
    `${style.strong(paint.name)}${style.text(pigment === undefined ? '' : `: ${pigment.name}, ${pigment.index}`)}`,
    ...leaning(measure?.side, measure?.sideFrom).map((words) => style.text(words)),
    ...(pigment === undefined ? [] : pigmentFigures(pigment).map((words) => style.text(words))),
    ...tones,
    ...(measure === undefined ? [] : [style.text(said(basisWords[measure.basis]))]),
    ...(amount === undefined || amount.millilitres === 0
      ? []
      : [style.text(t('The picture takes about {0} of it.', amountInWords(amount)))]),
    ...careful(cautionsAboutPaint(paint), style),
  ];
}

/** What is known of a pigment by its Colour Index name. */
export function pigmentFigures({ transparency, drying }: Pigment): readonly string[] {
  const slowest = Math.max(...drying.map(({ days }) => days));
  const sources = inWords([
    ...new Set(drying.map(({ days, source }) => `${days}, ${said(sourceWords[source])}`)),
  ]);
  return [
    t(
      '{0}, as far as is remembered; tubes differ by maker.',
      capitalised(said(transparencyWords[transparency])),
    ),
    t('In oil a thin film is dry to the touch in about {0} days ({1}).', slowest, sources),
  ];
}

/** How well light goes through a paint, in a word. */
export const transparencyWords = {
  transparent: marked('transparent'),
  'semi-transparent': marked('semi-transparent'),
  'semi-opaque': marked('semi-opaque'),
  opaque: marked('opaque'),
} as const satisfies Readonly<Record<Transparency, string>>;

const sourceWords = {
  'maker’s drying guide': marked('maker’s drying guide'),
  'Saitzyk 1987': marked('Saitzyk 1987'),
  'from memory': marked('from memory'),
} as const satisfies Readonly<Record<DryingSource, string>>;

const basisWords = {
  measured: marked('Its mixtures are predicted from a measured spectrum.'),
  estimated: marked('Its mixtures are estimates: they rest on a full tone and a tint, not on a spectrum.'),
  unknown: marked(
    'Nothing is known that mixtures could be worked out from: give its full tone and a tint that you have painted out.',
  ),
} as const;

const sideWords = {
  plan: { warm: marked('Leans warm, as the plan says.'), cool: marked('Leans cool, as the plan says.') },
  pigment: {
    warm: marked('Leans warm, as its pigment usually does.'),
    cool: marked('Leans cool, as its pigment usually does.'),
  },
  hue: {
    warm: marked('Leans warm, by the hue of its tint.'),
    cool: marked('Leans cool, by the hue of its tint.'),
  },
} as const;

function leaning(
  side: 'warm' | 'cool' | undefined,
  from: keyof typeof sideWords | undefined,
): readonly string[] {
  return side === undefined || from === undefined ? [] : [said(sideWords[from][side])];
}

/** Tubes, sides that lack, and how far the palette reaches. */
export function paletteFigures({ plan, measures: { palette } }: Snapshot, style: Style): Paragraphs {
  if (palette === undefined) return [];
  const { tubes: count, primaries, mixing } = palette;
  const lacking = primaries.flatMap(({ primary, lacks }) =>
    lacks.length === 2 ? [said(lackWords[primary].any)] : lacks.map((side) => said(lackWords[primary][side])),
  );
  return [
    style.text(count === 1 ? t('1 paint on the palette.') : t('{0} paints on the palette.', count)),
    style.text(
      lacking.length === 0
        ? t('A warm and a cool one of each primary.')
        : t('Of the primaries there is {0}.', inWords(lacking)),
    ),
    style.text(mixing === undefined ? t('Its mixtures are being worked out.') : reachInWords(mixing)),
    ...(plan.palette?.mother
      ? [woven(marked('{0} goes into every mixture.'), style, style.name(plan.palette.mother.value))]
      : []),
  ];
}

const lackWords = {
  yellow: {
    any: marked('no yellow at all'),
    warm: marked('no warm yellow'),
    cool: marked('no cool yellow'),
  },
  red: { any: marked('no red at all'), warm: marked('no warm red'), cool: marked('no cool red') },
  blue: { any: marked('no blue at all'), warm: marked('no warm blue'), cool: marked('no cool blue') },
} as const;

function reachInWords({ swatches, beyond }: MixingMeasure): string {
  if (swatches.length === 0) return t('The picture has no colours yet that could be mixed from it.');
  if (swatches.every(({ mixture }) => mixture === undefined))
    return t('No paint of it is known that mixtures could be worked out from.');
  if (beyond.length > 0)
    return t('{0} of {1} colours of the picture are beyond it.', beyond.length, swatches.length);
  return t('Every colour of the picture can be mixed from it, as far as can be predicted.');
}

/** How the colour of an object is mixed, and what its glaze makes of it; nothing without a palette. */
export function mixtureFigures({ plan, measures }: Snapshot, object: number, style: Style): Paragraphs {
  const mixing = measures.palette?.mixing;
  if (mixing === undefined) return [];
  const swatch = mixing.swatches[mixing.ofObjects[object] ?? -1];
  const glaze = mixing.glazes[object];
  return [
    ...(swatch === undefined ? [] : swatchFigures(swatch, plan, style)),
    ...(glaze === undefined ? [] : [glazeFigures(glaze, plan, style)]),
  ];
}

function swatchFigures({ mixture, difference }: Swatch, plan: Plan, style: Style): Paragraphs {
  if (mixture === undefined || difference === undefined) return [];
  const told = [partsInWords(mixture.parts, plan), differenceInWords(difference)] as const;
  return [
    style.text(
      mixture.isEstimate
        ? t('Mixed of {0}: {1}, an estimate.', ...told)
        : t('Mixed of {0}: {1}, a prediction.', ...told),
    ),
  ];
}

function glazeFigures({ mixture, seen, isEstimate }: GlazeMeasure, plan: Plan, style: Style): string {
  const as = notations(seen, style);
  if (mixture === undefined)
    return isEstimate
      ? woven(marked('Under its glaze it is seen as {0}, an estimate'), style, as)
      : woven(marked('Under its glaze it is seen as {0}, a prediction'), style, as);
  const told = [style.text(partsInWords(mixture.parts, plan)), String(mixture.medium), as];
  return isEstimate
    ? woven(marked('Glazed with {0} : {1} medium it is seen as {2}, an estimate'), style, ...told)
    : woven(marked('Glazed with {0} : {1} medium it is seen as {2}, a prediction'), style, ...told);
}

/** The usual care with what a medium names. */
export function mediumFigures(words: string, style: Style): Paragraphs {
  return careful(cautionsAboutMedium(words), style);
}

function careful(cautions: readonly string[], style: Style): Paragraphs {
  if (cautions.length === 0) return [];
  return [...cautions, said(CAUTION_FIRST)].map((words) => style.text(words));
}
