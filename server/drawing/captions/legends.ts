import { hexOf } from '../picture/ink.js';
import { blurAt, distanceInWords } from '../viewing.js';
import { largestFirst } from '../../measure/objects/objects.js';
import { counted, length } from '../../findings/words/words.js';
import { emphasisLines } from './emphasis-lines.js';
import { type LegendLine, swatchSign } from './legend.js';
import {
  balanceLine,
  divisionLines,
  focusLine,
  glazeLine,
  groundGrey,
  groundLine,
  hatchLine,
  horizonLine,
  leadLine,
  leftOutLine,
  washLine,
} from './legend-lines.js';
import { pathLines } from './path-lines.js';
import { tonesOf } from './tones.js';
import { statedGridLine, transferLines } from './transfer-lines.js';
import { toneOf } from '../views/notan.js';
import type { Reading } from '../views/reading.js';
import type { PictureView } from '../scene.js';
import { percent } from './words.js';
import { capitalised } from '../../plan/problems.js';

/** More than this can't be told apart in a swatch. */
const MOST_TONES = 3;

/** What the signs of a view mean. Only what is there is explained. */
export function legendOf(reading: Reading, view: PictureView, leftOut: number): readonly LegendLine[] {
  switch (view) {
    case 'drawing':
      return [
        ...focusLine(reading),
        ...leadLine(reading),
        ...divisionLines(reading),
        ...statedGridLine(reading),
        ...horizonLine(reading),
        ...balanceLine(reading),
        ...groundLine(reading),
        ...hatchLine(reading),
        ...washLine(reading),
        ...leftOutLine(leftOut, 'name'),
        ...glazeLine(reading),
      ];
    case 'values':
      return [
        ...focusLine(reading),
        ...balanceLine(reading),
        ...groundLine(reading, groundGrey(reading)),
        ...hatchLine(reading),
        ...leftOutLine(leftOut, 'number'),
      ];
    case 'notan':
      return [...toneLines(reading), ...hatchLine(reading)];
    case 'squint':
      return [...squintLines(reading), ...focusLine(reading), ...hatchLine(reading)];
    case 'mirror':
      return [{ key: 'mirror', text: 'left and right changed over, as in a mirror' }, ...hatchLine(reading)];
    case 'path':
      return [...focusLine(reading), ...pathLines(reading), ...hatchLine(reading)];
    case 'emphasis':
      return [...focusLine(reading), ...emphasisLines(reading), ...hatchLine(reading)];
    case 'transfer':
      return transferLines(reading, leftOut);
    case 'colour':
      return [
        ...colourLines(reading),
        ...groundLine(reading),
        ...focusLine(reading),
        ...hatchLine(reading),
        ...leftOutLine(leftOut, 'name'),
        ...glazeLine(reading),
      ];
  }
}

/** From where it is seen, and how much is blurred there. */
function squintLines({ plan, viewing }: Reading): readonly LegendLine[] {
  const distance = distanceInWords(viewing.distanceMillimetres, viewing.unit);
  const blur = length(blurAt(viewing, plan.canvas), plan.canvas);
  return [
    { key: 'squint', text: `seen with half-shut eyes from ${distance}` },
    { key: 'squint:blur', text: `edges blurred by ${blur} on the canvas, a quarter of a degree of the view` },
  ];
}

function toneLines({ plan, measures }: Reading): readonly LegendLine[] {
  const pieces = new Map(measures.notan.tones.map((tone) => [tone.key, tone.pieces.length]));
  return measures.values.groups.map(({ key, name, from, to, share }) => ({
    key: `tone:${key}`,
    text: `${name}, ${from === to ? `step ${from}` : `steps ${from} to ${to}`}: ${percent(share)}${inPieces(pieces.get(key) ?? 0)}`,
    sign: swatchSign(`tone:${key}`, hexOf(toneOf(from, plan))),
  }));
}

/** ` in three pieces` */
function inPieces(count: number): string {
  if (count === 0) return '';
  return count === 1 ? ' in one piece' : ` in ${counted(count)} pieces`;
}

/** Each colour in the tones in which it is seen in the picture, which other values make of it, most first. */
function colourLines({ plan, measures }: Reading): readonly LegendLine[] {
  const shares = measures.objects.map(({ share }) => share);
  return plan.colours.flatMap(({ key, name, role }, index): LegendLine[] => {
    const share = measures.colours.colours[index]?.share ?? 0;
    if (share <= 0) return [];
    const text = `${name}${role === undefined ? '' : `, ${role}`}: ${percent(share)}`;
    const objects = largestFirst(shares, (object) => plan.objects[object]?.colour?.named === index);
    const tones = tonesOf(objects, plan).slice(0, MOST_TONES);
    const sign = swatchSign(`colour:${key}`, ...tones.map(({ hex }) => hex));
    return [{ key: `colour:${key}`, text: capitalised(text), sign }];
  });
}
