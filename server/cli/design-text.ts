import { shown, table } from './display.js';
import { figure, percent } from './measure-figures.js';
import type { MeasureDocument } from './schema/measure.js';

/** The strong places of the picture and the means by which the focal point wins the eye. */
export function emphasisText({ emphasis }: MeasureDocument): string {
  const { focal, places } = emphasis;
  const most = focal && focal.strength > 0 ? focal.strength : emphasis.strongest;
  if (most <= 0) return '';
  const than = focal && focal.strength > 0 ? 'the focal point' : 'the strongest place';
  const rows = places
    .slice(0, MOST_PLACES)
    .map(({ areas, strength, at }, index) => [
      `${index + 1}`,
      percent(strength / most),
      meeting(areas),
      `(${figure(at.x)}, ${figure(at.y)})`,
    ]);
  const more = places.length > MOST_PLACES ? `  and ${places.length - MOST_PLACES} weaker places\n` : '';
  const rank = focal ? `  the focal point ranks ${ordinal(focal.rank)}; shares are of ${than}\n` : '';
  const means = (focal?.means ?? [])
    .filter(({ stated }) => stated)
    .map((each) => [each.means, each.holds ? 'holds' : 'does not hold', shown(each.inWords)]);
  return (
    rank +
    table(rows, ['right', 'right', 'left', 'left'], '  ') +
    more +
    table(means, ['left', 'left', 'left'], '  ')
  );
}

const MOST_PLACES = 8;

function ordinal(rank: number): string {
  return ['first', 'second', 'third'][rank - 1] ?? `number ${rank}`;
}

function meeting(areas: readonly string[]): string {
  return areas.map(areaText).join(' against ');
}

function areaText(area: string): string {
  return area === '' ? 'bare ground' : shown(area);
}

/** Where the centre of weight lies, and what weighs most. */
export function balanceText({ balance, canvas }: MeasureDocument): string {
  const { offset, centre, weights } = balance;
  if (offset === undefined || centre === undefined) return '';
  const side = offset > 0 ? 'right' : 'left';
  const where =
    Math.abs(offset) < 0.0005
      ? 'at the middle'
      : `${percent(Math.abs(offset))} of the width to the ${side} of the middle`;
  const total = weights.reduce((sum, { weight }) => sum + weight, balance.ground);
  const rows = weights
    .slice(0, MOST_PLACES)
    .filter(({ weight }) => weight > 0)
    .map(({ object, weight, arm }) => [
      shown(object),
      percent(weight / total),
      `${percent(Math.abs(arm))} ${arm < 0 ? 'left' : 'right'}`,
    ]);
  return (
    `  centre of weight ${figure(centre)} ${canvas.unit} from the left, ${where}\n` +
    table([['', 'weight', 'from the middle'], ...rows], ['left', 'right', 'right'], '  ')
  );
}

/**
 * Where leads come from and how near they pass, at what angle they meet, where the eye can leave, and the stops of the
 * path.
 */
export function eyePathText({ eyePath, canvas, emphasis }: MeasureDocument): string {
  const leads = eyePath.leads.map((lead) => [
    shown(lead.name),
    `from ${origin(lead)}`,
    passing(lead, canvas.unit),
  ]);
  const angles = eyePath.angles.map(({ one, other, degrees }) => [
    `${shown(one)}, ${shown(other)}`,
    `arrive ${figure(degrees, 0)}° apart`,
    '',
  ]);
  const exits = eyePath.exits.map(({ areas, side, corner }) => [
    'way out',
    meeting(areas),
    `at the ${corner === undefined ? side : `${corner} corner`}`,
  ]);
  const most = emphasis.focal?.strength ?? emphasis.strongest;
  const stops = eyePath.stops.map(({ object, strength }, index) => [
    `stop ${index + 1}`,
    shown(object),
    most > 0 ? percent(strength / most) : '',
  ]);
  return table([...leads, ...angles, ...exits, ...stops], ['left', 'left', 'left'], '  ');
}

type LeadEntry = MeasureDocument['eyePath']['leads'][number];

function passing({ miss, missShare }: LeadEntry, unit: string): string {
  if (miss === undefined || missShare === undefined) return '';
  if (missShare < 0.0005) return 'runs into the focal point';
  return `passes the focal point by ${figure(miss)} ${unit} (${percent(missShare)} of the diagonal)`;
}

function origin({ from, side, corner, object }: LeadEntry): string {
  switch (from) {
    case 'edge':
      return `the ${side ?? 'edge'}`;
    case 'corner':
      return `the ${corner ?? ''} corner`;
    case 'object':
      return shown(object ?? '');
    case 'inside':
      return 'inside';
  }
}

/** The pieces of each tone, and value and chroma of the planes. */
export function notanText({ notan, planes }: MeasureDocument): string {
  const tones = notan
    .filter(({ pieces }) => pieces.length > 0)
    .map(({ name, share, pieces, largestOfTone }) => [
      shown(name),
      percent(share),
      pieces.length === 1 ? 'one piece' : `${pieces.length} pieces`,
      pieces.length === 1 ? '' : `the largest ${percent(largestOfTone)} of it`,
    ]);
  const depths = planes.map(({ plane, share, munsellValue, munsellChroma }) => [
    plane,
    percent(share),
    munsellValue === undefined ? '' : `mean value ${figure(munsellValue, 1)}`,
    munsellChroma === undefined ? '' : `mean chroma ${figure(munsellChroma, 1)}`,
  ]);
  return table([...tones, ...depths], ['left', 'right', 'left', 'left'], '  ');
}

/** Hues of the roles, warm and cool, the strongest chroma. */
export function huesText({ hues }: MeasureDocument): string {
  if (hues.roles.length === 0 && hues.warm + hues.cool <= 0) return '';
  const dominant = hues.colours.find(({ fromDominant }) => fromDominant !== undefined);
  const rows = hues.roles.map(({ role, hue, munsellValue, munsellChroma }) => [
    role,
    hue,
    `mean value ${figure(munsellValue, 1)}, chroma ${figure(munsellChroma, 1)}`,
  ]);
  const angles =
    dominant === undefined
      ? []
      : hues.colours.flatMap(({ name, fromDominant }) =>
          fromDominant === undefined ? [] : [`${shown(name)} ${figure(fromDominant, 0)}°`],
        );
  const strongest = hues.strongestChroma;
  const notes = [
    `warm ${percent(hues.warm)}, cool ${percent(hues.cool)}, neutral ${percent(hues.neutral)}`,
    ...(strongest === undefined
      ? []
      : [`strongest chroma ${figure(strongest.munsellChroma, 1)}, ${areaText(strongest.area)}`]),
  ];
  return (
    table(rows, ['left', 'left', 'left'], '  ') +
    (angles.length === 0 ? '' : `  from the dominant hue: ${angles.join(', ')}\n`) +
    `  ${notes.join('; ')}\n`
  );
}
