import { canvasLine } from './title.js';
import { colourRows, valueRows, type BarRow } from './budgets.js';
import { balanceInWords } from '../picture/balance-sign.js';
import { glazeLine } from './legend-lines.js';
import { type Reading, seenObjects } from '../views/reading.js';
import type { LegendEntry, PictureView } from '../scene.js';
import { distanceInWords } from '../viewing.js';
import { counted } from '../../findings/words/words.js';
import { percent, systemName } from './words.js';
import { capitalised, inWords } from '../../plan/problems.js';

const MOST_NAMED = 12;
/** Lines of a legend that are told already, or explain a sign. */
const NOT_DESCRIBED: ReadonlySet<string> = new Set(['focus', 'hatch']);

/** The drawing in sentences, for those who do not see it: objects by weight, the focal point, shares, findings. */
export function describe(reading: Reading, view: PictureView, legend: readonly LegendEntry[]): string {
  return inSentences(reading, [
    canvasLine(reading.plan),
    ...objectSentences(reading),
    ...subjectSentences(reading, view, legend),
  ]);
}

/** A board in sentences, for those who do not see it. */
export function describeBoard(reading: Reading, described: readonly string[]): string {
  return inSentences(reading, [canvasLine(reading.plan), ...described]);
}

function inSentences(reading: Reading, sentences: readonly string[]): string {
  const count = reading.findings.length;
  const found =
    count === 0
      ? []
      : [count === 1 ? 'One thing to look at' : `${capitalised(counted(count))} things to look at`];
  return [...sentences, ...found].map((sentence) => `${sentence.replace(/\.$/, '')}.`).join(' ');
}

function objectSentences(reading: Reading): readonly string[] {
  const { focus } = reading.plan;
  const seen = seenObjects(reading);
  const named = seen.slice(0, MOST_NAMED).map(({ object, share }) => `${object.name} ${percent(share)}`);
  const more = seen.length > MOST_NAMED ? [`${counted(seen.length - MOST_NAMED)} smaller ones`] : [];
  const dominant = seen.filter(({ object }) => object.role === 'dominant').map(({ object }) => object.name);
  return [
    ...(named.length === 0 ? ['No objects yet'] : [`Objects: ${inWords([...named, ...more])}`]),
    ...(dominant.length === 0 ? [] : [`Dominant: ${inWords(dominant)}`]),
    ...(focus?.crossing === undefined
      ? []
      : [`Focal point on the ${focus.crossing.name} crossing of the ${systemName(focus.crossing.system)}`]),
  ];
}

/** What the view is about: shares, or what its legend tells. */
function subjectSentences(
  reading: Reading,
  view: PictureView,
  legend: readonly LegendEntry[],
): readonly string[] {
  const values = `Values: ${inWords(valueRows(reading).map(figures))}`;
  const rows = colourRows(reading);
  const colours = rows.length === 0 ? [] : [`Colours: ${inWords(rows.map(figures))}`];
  const balance = [balanceInWords(reading) ?? []].flat().map(capitalised);
  const glazes = glazeLine(reading).map(({ text }) => capitalised(text));
  switch (view) {
    case 'drawing':
      return [values, ...colours, ...balance, ...glazes];
    case 'notan':
      return [values];
    case 'values':
      return [values, ...balance];
    case 'colour':
      return [...colours, ...glazes];
    case 'mirror':
      return colours;
    case 'squint':
      return [
        `Seen with half-shut eyes from ${distanceInWords(reading.viewing.distanceMillimetres, reading.viewing.unit)}`,
        values,
      ];
    case 'path':
    case 'emphasis':
    case 'transfer':
      return legend.filter(({ key }) => !NOT_DESCRIBED.has(key)).map(({ text }) => capitalised(text));
  }
}

function figures({ name, share, wanted }: BarRow): string {
  const measured = `${name.toLowerCase()} ${percent(share)}`;
  return wanted === undefined ? measured : `${measured} (wanted ${percent(wanted.target)})`;
}
