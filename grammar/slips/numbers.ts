import { marked, said, t } from '../localised.js';
import { meant, number, restOf, type Slip, startOfTokenBefore } from './slip.js';

/** `2,5` for 2.5, alone or in a place: `(2,5, 3,5)`. */
export const decimalComma: Slip = (stumble) => inPlace(stumble) ?? alone(stumble);

const commaMessage = marked('Within a number stands a point, not a comma.');

const alone: Slip = ({ text, at }) => {
  for (const found of text.matchAll(/(?<![\d.,])\d+,\d+(?![\d,.])/g)) {
    const end = found.index + found[0].length;
    if (at < found.index || at > end) continue;
    return meant(found.index, end, said(commaMessage), found[0].replace(',', '.'));
  }
  return undefined;
};

const inPlace: Slip = ({ text, at }) => {
  const start = text.lastIndexOf('(', at);
  const end = text.indexOf(')', start) + 1;
  if (start < 0 || end < at) return undefined;
  const inside = text.slice(start + 1, end - 1);
  const both = /^\s*(-?\d+),(\d+)\s*[,;\s]\s*(-?\d+)(?:,(\d+))?\s*$/.exec(inside);
  const second = /^\s*(-?\d+)(?:\s*[,;]\s+|\s+)(-?\d+),(\d+)\s*$/.exec(inside);
  const x = both ? `${both[1]}.${both[2]}` : second?.[1];
  const y = both ? [both[3], both[4]].filter(Boolean).join('.') : second && `${second[2]}.${second[3]}`;
  if (x === undefined || !y) return undefined;
  return meant(start, end, said(commaMessage), `(${x}, ${y})`);
};

const coordinate = String.raw`${number}\s*(?:(?:mm|cm|m|in)\b|%)?`;
const coordinateRun = new RegExp(String.raw`^(?:${coordinate}\s*[,;]?\s*)+`, 'i');

/** `at 25, 28` for `at (25, 28)`; `outline 0,15 9,14 24,18`. */
export const noBrackets: Slip = (stumble) => {
  const { entry, phrases, text } = stumble;
  const cornersAt = /\brectangle\s+(?=[^(]*\bto\s)/i.exec(text);
  if (entry.rule === 'shape' && cornersAt) {
    const start = cornersAt.index + cornersAt[0].length;
    return bracketed(text.slice(start).trimEnd(), start);
  }
  const outlineGoesOn =
    entry.rule === 'points' || (entry.rule === 'shape' && /\b(?:outline|smooth)\b/i.test(text));
  if (!outlineGoesOn && !phrases.includes('place') && !phrases.includes('coordinates')) return undefined;
  const run = coordinateRun.exec(restOf(stumble))?.[0].trimEnd();
  return run === undefined ? undefined : bracketed(run.replace(/[,;]$/, ''), stumble.at);
};

function bracketed(run: string, start: number): ReturnType<Slip> {
  const numbers = run.match(new RegExp(coordinate, 'gi'))?.map((one) => one.trim()) ?? [];
  const left = run.replace(new RegExp(coordinate, 'gi'), '').replace(/[\s,;]|\bto\b/gi, '');
  if (left !== '' || numbers.length < 2 || numbers.length % 2 === 1) return undefined;
  const places = numbers.flatMap((x, index) => (index % 2 === 0 ? [`(${x}, ${numbers[index + 1]})`] : []));
  const replacement = places.join(/\bto\b/i.test(run) ? ' to ' : ' ');
  const [first] = places;
  return meant(
    start,
    start + run.length,
    t('A place in numbers stands in brackets: `{0}`.', first ?? ''),
    replacement,
  );
}

const widthAtEnd = new RegExp(String.raw`${number}\s*(?:(?:mm|cm|m|in)|%)?\s*$`, 'i');

/** `canvas 40 x`: a size of which the height is not written yet, or was forgotten. */
export const noHeight: Slip = (stumble) => {
  const sign = /^[x×](?=\s*$)/i.exec(restOf(stumble));
  const width = sign && widthAtEnd.exec(stumble.text.slice(0, stumble.at));
  if (!sign || !width) return undefined;
  const end = stumble.at + sign[0].length;
  const written = stumble.text.slice(width.index, end);
  return {
    start: width.index,
    end,
    code: 'incomplete statement',
    message: t('After `{0}` the height is needed.', written),
  };
};

const units: Readonly<Record<string, string>> = {
  inch: 'in',
  inches: 'in',
  ins: 'in',
  zoll: 'in',
  centimetre: 'cm',
  centimetres: 'cm',
  centimeter: 'cm',
  centimeters: 'cm',
  cms: 'cm',
  millimetre: 'mm',
  millimetres: 'mm',
  millimeter: 'mm',
  millimeters: 'mm',
  metre: 'm',
  metres: 'm',
  meter: 'm',
  meters: 'm',
  percent: '%',
  deg: 'degrees',
};

/** `18 inches` */
export const otherUnit: Slip = (stumble) => {
  const [word] = /^\p{L}+/u.exec(restOf(stumble)) ?? [];
  const unit = word === undefined ? undefined : units[word.toLowerCase()];
  if (word === undefined || unit === undefined || !Object.hasOwn(units, word.toLowerCase())) return undefined;
  const end = stumble.at + word.length;
  return meant(stumble.at, end, t('`{0}` is written `{1}`.', word, unit), unit, 'unknown word');
};

/** `value 2-3` for a value between two steps. */
export const stepRange: Slip = ({ entry, text, at }) => {
  if (entry.rule !== 'value') return undefined;
  const range = /(\d+)\s*(?:[-–−]|to\b)\s*(\d+)\s*$/i.exec(text);
  if (range === null || range.index > at) return undefined;
  const between = String((Number(range[1]) + Number(range[2])) / 2);
  const message = t(
    'One value is needed; `{0}` lies between {1} and {2}.',
    between,
    range[1] ?? '',
    range[2] ?? '',
  );
  return meant(range.index, range.index + range[0].trimEnd().length, message, between);
};

/** `turn 15 clockwise`, `turn 15 anticlockwise` */
export const turnSense: Slip = (stumble) => {
  const { text, at } = stumble;
  const sense = /^(?:degrees\s+|°\s*)?(clockwise|right|(?:anti|counter)-?clockwise|left)\b/i.exec(
    restOf(stumble),
  );
  const angle = /\b(?:turn|turning)\s+(-?\s*[\d.]+(?:\s*(?:°|degrees?))?)\s*$/i.exec(text.slice(0, at));
  if (sense === null || angle === null) return undefined;
  const end = at + sense[0].length;
  const start = at - (angle[0].length - angle[0].lastIndexOf(angle[1] ?? ''));
  const shownAngle = (angle[1] ?? '').trim();
  if (/^(?:clockwise|right)$/i.test(sense[1] ?? '')) {
    return meant(start, end, t('Turning is clockwise already.'), shownAngle);
  }
  const other = shownAngle.startsWith('-') ? shownAngle.slice(1).trim() : `-${shownAngle}`;
  return meant(start, end, t('Turning is clockwise; a minus turns the other way.'), other);
};

/** `at head, up 4 cm` for `at head, 4 cm up`. */
export const moveOrder: Slip = (stumble) => {
  const turned = new RegExp(String.raw`^,?\s*(left|right|up|down)\s+(?:by\s+)?(${coordinate})`, 'i').exec(
    restOf(stumble),
  );
  if (turned === null) return undefined;
  const amount = (turned[2] ?? '').trim();
  const move = `${amount} ${turned[1]}`;
  const message = t('The way stands after the length: `{0}`.', move);
  return meant(stumble.at, stumble.at + turned[0].trimEnd().length, message, `, ${move}`);
};

/** `PW 6` for `PW6`. */
export const splitIndex: Slip = (stumble) => {
  if (stumble.entry.rule !== 'paint') return undefined;
  const start = Math.min(stumble.at, startOfTokenBefore(stumble));
  for (const from of [stumble.at, start]) {
    const parts = /^([A-Z]{1,2}[A-Za-z]?)\s+(\d+(?::\d+)?)\b/.exec(stumble.text.slice(from));
    if (parts === null) continue;
    const joined = `${parts[1]}${parts[2]}`;
    return meant(from, from + parts[0].length, t('A colour index is one word: `{0}`.', joined), joined);
  }
  return undefined;
};

/** `rectangle (0, 0)` */
export const oneCorner: Slip = ({ entry, text, at }) => {
  const form = /\brectangle\s+\([^()]*\)$/i.exec(text);
  if (entry.rule !== 'shape' || form === null || at < text.length) return undefined;
  const message = t(
    'A rectangle is given by two opposite corners, such as `(0, 0) to (12, 8)`, or by its size, such as `12 x 8`.',
  );
  return { start: form.index, end: text.length, code: 'incomplete statement', message };
};
