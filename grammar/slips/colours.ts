import { t } from '../localised.js';
import { meant, restOf, type Slip, startOfTokenBefore, type Stumble } from './slip.js';

const colourStatements: ReadonlySet<string> = new Set([
  'colourDefinition',
  'colour',
  'ground',
  'glaze',
  'paint',
]);

const hue = '(RP|YR|GY|BG|PB|[RYGBP])';
const figure = String.raw`(\d+(?:[.,]\d+)?)`;
const slash = String.raw`\s*[/\\]\s*`;
const hueFirst = new RegExp(String.raw`^${hue}\s*${figure}[\s,]+${figure}${slash}${figure}`, 'i');
const hueLast = new RegExp(String.raw`^${figure}\s*${hue}\s*${figure}${slash}${figure}`, 'i');
const hueAlone = new RegExp(String.raw`^${hue}\s*${figure}${slash}${figure}`, 'i');

/** `R5 4/2`, `7.5 YR 6/4`, `7,5YR 6/4`, `R 4/10` */
export const munsellOrder: Slip = (stumble) => {
  if (!colourStatements.has(stumble.entry.rule)) return undefined;
  for (const start of startsOf(stumble)) {
    const text = stumble.text.slice(start);
    const first = hueFirst.exec(text);
    const last = hueLast.exec(text);
    const alone = hueAlone.exec(text);
    const [whole, parts] = first
      ? [first[0], [first[2], first[1], first[3], first[4]]]
      : last
        ? [last[0], last.slice(1)]
        : [alone?.[0], ['5', ...(alone?.slice(1) ?? [])]];
    if (whole === undefined) continue;
    const [step, letters, value, chroma] = parts.map((part) => part?.replace(',', '.').toUpperCase());
    const notation = `${step}${letters} ${value}/${chroma}`;
    const message = t('A Munsell notation is written hue, value/chroma: `{0}`.', notation);
    return meant(start, start + whole.length, message, notation);
  }
  return undefined;
};

const functions = 'rgba?|hsla?|hwb|oklab|oklch|lab|lch|color';
const roles = 'dominant|complement|discord|neutral|warm|cool|at|tint|full';

/** `rgb(240, 190, 90` without its bracket, `rgb (240 190 90)`, `cmyk(0, 80, 60, 40)` */
export const colourFunction: Slip = (stumble) => {
  if (!colourStatements.has(stumble.entry.rule)) return undefined;
  for (const start of startsOf(stumble)) {
    const text = stumble.text.slice(start).trimEnd();
    const call = new RegExp(String.raw`^(\p{L}+)\s*\(([^()]*?)(\)|,?\s+(?=(?:${roles})\b)|,?$)`, 'iu').exec(
      text,
    );
    if (call === null) continue;
    const [whole, name = '', figures = '', closing = ''] = call;
    const end = start + whole.trimEnd().length;
    if (!new RegExp(`^(?:${functions})$`, 'i').test(name)) {
      const message = t(
        '`{0}` is no colour that can be read. Write `rgb(47 111 115)`, `#2f6f73` or `7.5R 4/10`.',
        name,
      );
      return { start, end, code: 'unexpected text', message };
    }
    const message =
      closing === ')'
        ? t('No blank stands after `{0}`.', name)
        : t('The bracket after `{0}` is not closed.', name);
    return meant(start, end, message, `${name}(${figures.trim()})`);
  }
  return undefined;
};

/** `2f6f73` without its `#`. */
export const noHash: Slip = (stumble) => {
  if (!colourStatements.has(stumble.entry.rule)) return undefined;
  const digits = /^(?:[0-9a-f]{6}|[0-9a-f]{3})(?![\p{L}\d])/iu.exec(restOf(stumble))?.[0];
  if (digits === undefined) return undefined;
  const message = t('A colour in hex digits begins with `#`.');
  return meant(stumble.at, stumble.at + digits.length, message, `#${digits}`);
};

/** `colour teal` at the left margin, meant for the object above. */
export const colourOfObject: Slip = ({ entry, text, tokens, at }) => {
  const name = tokens[1];
  if (entry.rule !== 'colourDefinition' || tokens.length !== 2 || name === undefined || at < text.length)
    return undefined;
  const message = t(
    'After `{0}` a colour, such as `#2f6f73` or `7.5R 4/10`, is needed. The colour of an object is indented under it.',
    name.image,
  );
  return { start: name.startOffset, end: text.length, code: 'incomplete statement', message };
};

function startsOf(stumble: Stumble): readonly number[] {
  return [startOfTokenBefore(stumble), stumble.at];
}
