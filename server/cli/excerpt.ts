import type { Location } from '../plan/plan.js';
import { cells, shown } from './display.js';

const WIDEST = 100;

export interface Excerpt {
  readonly line: string;
  /** Carets under what is meant. */
  readonly mark: string;
}

/**
 * The line of a plan that a message is about, with carets under its place. A long line is cut to 100 columns around it;
 * `undefined` when the line is empty or is not there.
 */
export function excerpt(lines: readonly string[], { line, start, end }: Location): Excerpt | undefined {
  const text = lines[line];
  if (text === undefined || text.trim() === '') return undefined;
  const indent = /^\s*/.exec(text)?.[0].length ?? 0;
  const from = Math.min(Math.max(start, 0), text.length);
  const first = Math.min(indent, from);
  const characters = [...text.slice(first, from)];
  const tooFar = cells(shown(characters.join(''))) > WIDEST / 2;
  const before = shown(tooFar ? `…${characters.slice(-WIDEST / 2).join('')}` : characters.join(''));
  const marked = shown(text.slice(from, Math.max(from, end)));
  const rest = shown(text.slice(Math.max(from, end)));
  const cut = cutTo(before + marked + rest, WIDEST);
  const room = Math.max(1, cells(cut) - cells(before));
  const carets = Math.min(Math.max(1, cells(marked)), room);
  return { line: cut, mark: ' '.repeat(cells(before)) + '^'.repeat(carets) };
}

function cutTo(text: string, width: number): string {
  if (cells(text) <= width) return text.trimEnd();
  let kept = '';
  let taken = 0;
  for (const character of text) {
    taken += cells(character);
    if (taken > width - 1) break;
    kept += character;
  }
  return `${kept}…`;
}
