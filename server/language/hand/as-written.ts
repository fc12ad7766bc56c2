import type { LengthUnit, Node } from '../../../grammar/index.js';
import type { FixEdit } from '../../findings/finding.js';

/** A ruler in inches is read to the sixteenth. */
const SIXTEENTHS = 16;

/**
 * A number at the start of words: its whole part and its fraction, either of which may be missing, and what comes
 * after.
 */
const NUMBER =
  /^([-–−]?\s*)(?:(\d+(?:\.\d+)?|\.\d+)(?![\d/]))?(\s*(?:\d+\/\d+|[½⅓⅔¼¾⅕⅛⅜⅝⅞]))?(?=\D|$)(.*)$/su;

/** A way from a place that leads nowhere. */
const NO_WAY = /^0 ?(?:%|mm|cm|m|in)? (?:left|right|up|down)$/u;

/**
 * An edit that keeps to how the text is written where it changes: its spacing, and fractions where there were some.
 *
 * @param linesOf the lines of the plan, or of one that it builds on
 */
export function asWritten(
  edit: FixEdit,
  linesOf: (file: string | undefined) => readonly string[],
  canvasUnit: LengthUnit,
): FixEdit {
  switch (edit.kind) {
    case 'replace': {
      const { line, start, end, file } = edit.location;
      const words = linesOf(file)[line] ?? '';
      const text = numberAsWritten(edit.text, words.slice(start, end), canvasUnit);
      if (!NO_WAY.test(text)) return { ...edit, text };
      const [separator = ''] = /(?:\s*,)?(?:\s+and)?\s*$/u.exec(words.slice(0, start)) ?? [];
      return { ...edit, location: { ...edit.location, start: start - separator.length }, text: '' };
    }
    case 'add line':
      return { ...edit, text: spacedAs(edit.text, siblingsIn(edit.under), linesOf(edit.under.file)) };
    case 'add statement':
    case 'take out line':
      return edit;
  }
}

function numberAsWritten(text: string, old: string, canvasUnit: LengthUnit): string {
  const [, , whole, fraction, rest = ''] = NUMBER.exec(old) ?? [];
  if (whole === undefined && fraction === undefined) return text;
  const [, minus = '', number, , newRest = ''] = NUMBER.exec(text) ?? [];
  if (number === undefined) return text;
  const sameRest = newRest.trim().toLowerCase() === rest.trim().toLowerCase();
  const words =
    fraction !== undefined && isRuled(newRest, canvasUnit) ? inSixteenths(Number(number)) : number;
  const sign = words === '0' ? '' : minus;
  // Where there was no unit, it is that of the other side, as in `12 x 9 cm`.
  return `${sign}${words}${sameRest || rest.trim() === '' ? rest : newRest}`;
}

/** Whether sixteenths of it are fine enough: not of a metre, nor of per cent. */
function isRuled(rest: string, canvasUnit: LengthUnit): boolean {
  const [, unit = canvasUnit] = /^\s*(%|mm|cm|m|in)(?![a-z])/u.exec(rest) ?? [];
  return unit !== '%' && unit !== 'm';
}

/** `7 1/2`, `3/16`, `8` */
function inSixteenths(value: number): string {
  const count = Math.round(value * SIXTEENTHS);
  const whole = Math.floor(count / SIXTEENTHS);
  let above = count % SIXTEENTHS;
  let below = SIXTEENTHS;
  while (above > 0 && above % 2 === 0) {
    above /= 2;
    below /= 2;
  }
  if (above === 0) return String(whole);
  return whole === 0 ? `${above}/${below}` : `${whole} ${above}/${below}`;
}

/** The lines beside which a new one under a statement comes to stand; the statement itself where there are none. */
export function siblingsIn(under: Node): readonly Node[] {
  const own = under.children.filter(({ file }) => file === under.file);
  return own.length > 0 ? own : [under];
}

/** The words of a new line set as far from their keyword as those of the statements beside it. */
export function spacedAs(text: string, nodes: readonly Node[], lines: readonly string[]): string {
  const [, keyword, words = ''] = /^(\S+) +(.*)$/su.exec(text) ?? [];
  if (keyword === undefined) return text;
  const column = commonColumn(nodes, lines);
  return `${column > keyword.length ? keyword.padEnd(column) : `${keyword} `}${words}`;
}

/** How far after the start of their keywords all the statements go on; nothing where they are not set in a column. */
function commonColumn(nodes: readonly Node[], lines: readonly string[]): number {
  const keywords = nodes.filter(({ statement }) => statement.keyword.text !== '');
  const gaps = keywords.map(({ line, statement }) => {
    const { start, end } = statement.keyword;
    const gap = /^\s*/u.exec((lines[line] ?? '').slice(end))?.[0].length ?? 0;
    return { gap, column: end + gap - start };
  });
  const [first] = gaps;
  const isColumn = gaps.every(({ column }) => column === first?.column) && gaps.some(({ gap }) => gap > 1);
  return isColumn && first ? first.column : 0;
}
