import { amountInWords, differenceInWords, partsInWords } from '../../findings/words/paints.js';
import type { GlazeMeasure, MixingMeasure, Swatch } from '../../measure/mixing/mixing.js';
import { CAUTION_FIRST, cautionsAboutMedium, cautionsAboutPaint } from '../../plan/materials/cautions.js';
import { pigmentOf, type Pigment } from '../../plan/materials/pigments.js';
import type { Paint, Plan } from '../../plan/plan.js';
import { capitalised, inWords } from '../../plan/problems.js';
import type { Snapshot } from '../snapshot.js';
import type { Style } from '../style.js';
import { notations, type Paragraphs } from './paragraphs.js';

/** What is known of a paint of the palette, what the picture takes of it, and the usual care. */
export function paintFigures({ plan, measures }: Snapshot, paint: Paint, style: Style): Paragraphs {
  const at = plan.palette?.paints.indexOf(paint) ?? -1;
  const measure = measures.palette?.paints[at];
  const amount = measures.palette?.mixing?.amounts[at];
  const pigment = measure?.pigment ?? (paint.index ? pigmentOf(paint.index, paint.name) : undefined);
  const tones = [
    ...(measure?.full ? [`${style.text('Full tone')} ${notations(measure.full, style)}`] : []),
    ...(measure?.tint ? [`${style.text('One part in ten of white')} ${notations(measure.tint, style)}`] : []),
  ];
  return [
    `${style.strong(paint.name)}${style.text(pigment === undefined ? '' : `: ${pigment.name}, ${pigment.index}`)}`,
    ...leaning(measure?.side, measure?.sideFrom).map((words) => style.text(words)),
    ...(pigment === undefined ? [] : pigmentFigures(pigment).map((words) => style.text(words))),
    ...tones,
    ...(measure === undefined ? [] : [style.text(basisWords[measure.basis])]),
    ...(amount === undefined || amount.millilitres === 0
      ? []
      : [style.text(`The picture takes about ${amountInWords(amount)} of it.`)]),
    ...careful(cautionsAboutPaint(paint), style),
  ];
}

/** What is known of a pigment by its Colour Index name. */
export function pigmentFigures({ transparency, drying }: Pigment): readonly string[] {
  const slowest = Math.max(...drying.map(({ days }) => days));
  const sources = inWords([...new Set(drying.map(({ days, source }) => `${days}, ${source}`))]);
  return [
    `${capitalised(transparency)}, as far as is remembered; tubes differ by maker.`,
    `In oil a thin film is dry to the touch in about ${slowest} days (${sources}).`,
  ];
}

const basisWords = {
  measured: 'Its mixtures are predicted from a measured spectrum.',
  estimated: 'Its mixtures are estimates: they rest on a full tone and a tint, not on a spectrum.',
  unknown:
    'Nothing is known that mixtures could be worked out from: give its full tone and a tint that you have painted out.',
} as const;

const sideWords = {
  plan: 'as the plan says',
  pigment: 'as its pigment usually does',
  hue: 'by the hue of its tint',
} as const;

function leaning(
  side: 'warm' | 'cool' | undefined,
  from: keyof typeof sideWords | undefined,
): readonly string[] {
  return side === undefined || from === undefined ? [] : [`Leans ${side}, ${sideWords[from]}.`];
}

/** Tubes, sides that lack, and how far the palette reaches. */
export function paletteFigures({ plan, measures: { palette } }: Snapshot, style: Style): Paragraphs {
  if (palette === undefined) return [];
  const { tubes: count, primaries, mixing } = palette;
  const lacking = primaries.flatMap(({ primary, lacks }) =>
    lacks.length === 2 ? [`no ${primary} at all`] : lacks.map((side) => `no ${side} ${primary}`),
  );
  return [
    style.text(`${count} ${count === 1 ? 'paint' : 'paints'} on the palette.`),
    style.text(
      lacking.length === 0
        ? 'A warm and a cool one of each primary.'
        : `Of the primaries there is ${inWords(lacking)}.`,
    ),
    style.text(mixing === undefined ? 'Its mixtures are being worked out.' : reachInWords(mixing)),
    ...(plan.palette?.mother
      ? [`${style.name(plan.palette.mother.value)} ${style.text('goes into every mixture.')}`]
      : []),
  ];
}

function reachInWords({ swatches, beyond }: MixingMeasure): string {
  if (swatches.length === 0) return 'The picture has no colours yet that could be mixed from it.';
  if (swatches.every(({ mixture }) => mixture === undefined))
    return 'No paint of it is known that mixtures could be worked out from.';
  if (beyond.length > 0)
    return `${beyond.length} of ${swatches.length} colours of the picture are beyond it.`;
  return 'Every colour of the picture can be mixed from it, as far as can be predicted.';
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
  const kind = mixture.isEstimate ? 'an estimate' : 'a prediction';
  return [
    style.text(`Mixed of ${partsInWords(mixture.parts, plan)}: ${differenceInWords(difference)}, ${kind}.`),
  ];
}

function glazeFigures({ mixture, seen, isEstimate }: GlazeMeasure, plan: Plan, style: Style): string {
  const laid =
    mixture === undefined
      ? 'Under its glaze it is seen as'
      : `Glazed with ${partsInWords(mixture.parts, plan)} : ${mixture.medium} medium it is seen as`;
  return `${style.text(laid)} ${notations(seen, style)}${style.text(isEstimate ? ', an estimate' : ', a prediction')}`;
}

/** The usual care with what a medium names. */
export function mediumFigures(words: string, style: Style): Paragraphs {
  return careful(cautionsAboutMedium(words), style);
}

function careful(cautions: readonly string[], style: Style): Paragraphs {
  if (cautions.length === 0) return [];
  return [...cautions, CAUTION_FIRST].map((words) => style.text(words));
}
