import { type Reason, marked, reasonOf } from '../../../grammar/index.js';
import svgpath from 'svgpath';
import { thousands } from '../problems.js';
import { type Outline, type PathCommand, isUsableCommand, outlineOf } from './outline.js';

/** Most drawing commands that one path may hold. */
export const MOST_COMMANDS = 200_000;
/** Longest path data read, in characters. */
const LONGEST_TEXT = 8_000_000;

export type OutlineReading =
  | { readonly ok: true; readonly outline: Outline }
  | {
      readonly ok: false;
      readonly reason: Reason;
      /** Where the fault is, in characters from the start of the text; missing when it has no one place. */
      readonly offset?: number;
    };

export type CommandsReading =
  { readonly ok: true; readonly path: readonly PathCommand[] } | Extract<OutlineReading, { ok: false }>;

/**
 * The outline of SVG path data (SVG 1.1 and 2, chapter "Paths"), flattened to `tolerance`, both in the units of the
 * data. Open pieces are closed by a straight line, as filling does. A path with nothing to fill is refused.
 */
export function outlineOfPathData(text: string, tolerance: number, fillRule?: 'evenodd'): OutlineReading {
  const reading = commandsOfPathData(text);
  if (!reading.ok) return reading;
  const outline = outlineOf(reading.path, tolerance, fillRule);
  if (outline.rings.length === 0) {
    return {
      ok: false,
      reason: reasonOf(
        marked('the path has no area: a shape needs at least three points that are not in a line'),
      ),
    };
  }
  return { ok: true, outline };
}

/** Path data as absolute moves, lines and cubics, each piece closed. Never throws. */
export function commandsOfPathData(text: string): CommandsReading {
  if (text.trim() === '') return { ok: false, reason: reasonOf(marked('the path is empty')) };
  if (text.length > LONGEST_TEXT)
    return { ok: false, reason: reasonOf(marked('the path is too long to be read')) };
  const source = svgpath(text) as ReturnType<typeof svgpath> & { readonly err: string };
  if (source.err !== '') return fault(source.err, text);
  const path: PathCommand[] = [];
  let unknown = '';
  source
    .abs()
    .unshort()
    .unarc()
    .iterate((segment, _index, x, y) => {
      const command = commandOf(segment, x, y);
      if (!command) unknown = segment[0];
      else if (path.length <= 2 * MOST_COMMANDS) closeBefore(path, command);
    });
  if (unknown !== '') return { ok: false, reason: plainReason('bad command', unknown) };
  const last = path.at(-1);
  if (last && last.kind !== 'Z') path.push({ kind: 'Z' });
  if (path.length > MOST_COMMANDS) {
    return {
      ok: false,
      reason: reasonOf(marked('the path has more than {0} points'), thousands(MOST_COMMANDS)),
    };
  }
  if (!path.every(isUsableCommand))
    return { ok: false, reason: reasonOf(marked('a number in the path is too large to be drawn')) };
  return { ok: true, path };
}

function closeBefore(path: PathCommand[], command: PathCommand): void {
  const last = path.at(-1);
  if (command.kind === 'M' && last && last.kind !== 'Z') path.push({ kind: 'Z' });
  path.push(command);
}

type Segment = Parameters<Parameters<ReturnType<typeof svgpath>['iterate']>[0]>[0];

/** None for a command that is not part of SVG, such as the R of an old draft. */
function commandOf(segment: Segment, x: number, y: number): PathCommand | undefined {
  switch (segment[0]) {
    case 'M':
    case 'L':
      return { kind: segment[0], x: segment[1], y: segment[2] };
    case 'H':
      return { kind: 'L', x: segment[1], y };
    case 'V':
      return { kind: 'L', x, y: segment[1] };
    case 'C': {
      const [, x1, y1, x2, y2, toX, toY] = segment;
      return { kind: 'C', x1, y1, x2, y2, x: toX, y: toY };
    }
    case 'Q': {
      const [, handleX, handleY, toX, toY] = segment;
      return {
        kind: 'C',
        x1: x + (2 / 3) * (handleX - x),
        y1: y + (2 / 3) * (handleY - y),
        x2: toX + (2 / 3) * (handleX - toX),
        y2: toY + (2 / 3) * (handleY - toY),
        x: toX,
        y: toY,
      };
    }
    case 'Z':
    case 'z':
      return { kind: 'Z' };
    default:
      return undefined;
  }
}

/** The reader's own message turned into words that a painter can use. */
function fault(message: string, text: string): Extract<OutlineReading, { ok: false }> {
  const place = /\(at pos (\d+)\)/.exec(message)?.[1];
  const offset = place === undefined ? undefined : Number(place);
  const reason = plainReason(message, offset === undefined ? '' : text.slice(offset, offset + 12).trim());
  return { ok: false, reason, ...(offset !== undefined && { offset }) };
}

function plainReason(message: string, found: string): Reason {
  const here = found === '' ? reasonOf(marked('at its end')) : reasonOf(marked('at "{0}"'), found);
  return reasonOf(sentenceFor(message), here);
}

function sentenceFor(message: string): string {
  if (message.includes('string should start'))
    return marked('a path starts with M, the point where drawing begins');
  if (message.includes('bad command'))
    return marked('{0} stands no command; a path is made of M, L, H, V, C, S, Q, T, A and Z');
  if (message.includes('missed param')) return marked('a number is missing {0}');
  if (message.includes('arc flag')) return marked('the fourth and fifth numbers of an arc are 0 or 1 ({0})');
  if (message.includes('illegal')) return marked('a number cannot begin with a needless 0 ({0})');
  if (message.includes('exponent')) return marked('a number has no digits after its e ({0})');
  return marked('a number was expected {0}');
}
