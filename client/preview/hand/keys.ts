import { marked } from '../../../grammar/localised.js';
import type { Spot } from '../../../server/drawing/scene.js';
import { steps, type Unit } from './lengths.js';

/** Which way an arrow key points, as a step of one. */
export function arrowWay(key: string): Spot | undefined {
  switch (key) {
    case 'ArrowLeft':
      return { x: -1, y: 0 };
    case 'ArrowRight':
      return { x: 1, y: 0 };
    case 'ArrowUp':
      return { x: 0, y: -1 };
    case 'ArrowDown':
      return { x: 0, y: 1 };
    default:
      return undefined;
  }
}

export interface Pressed {
  readonly key: string;
  /** Where the key lies on a keyboard, such as `KeyG`. */
  readonly code: string;
  readonly altKey: boolean;
  readonly shiftKey: boolean;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
}

/** What a key asks of the hand. */
export type Asked =
  | { readonly kind: 'nudge'; readonly by: Spot }
  | { readonly kind: 'resize'; readonly factor: number }
  | { readonly kind: 'next handle'; readonly back: boolean }
  | { readonly kind: 'leave handle' }
  | { readonly kind: 'step'; readonly to: 'undo' | 'redo' };

/** A key makes a thing larger by a twentieth, and back again. */
const growth = 1.05;

/**
 * What a key asks for on a thing of the drawing, or on one of its handles. Arrow keys go from thing to thing there, so
 * they move a thing with Alt only; a handle they move without.
 */
export function askedBy(pressed: Pressed, on: 'thing' | 'handle', unit: Unit): Asked | undefined {
  const { key, altKey, shiftKey, ctrlKey, metaKey } = pressed;
  if (ctrlKey || metaKey) return altKey ? undefined : stepOf(letterOf(pressed), shiftKey);
  const way = arrowWay(key);
  if (way !== undefined) {
    if (!altKey && on === 'thing') return undefined;
    const { small, large } = steps[unit];
    const step = shiftKey ? large : small;
    return { kind: 'nudge', by: { x: way.x * step, y: way.y * step } };
  }
  // Without Alt they make the drawing larger on the page.
  if (altKey) return on === 'thing' ? resizedBy(key) : undefined;
  // Not by the capital, which a locked shift key writes too.
  if (letterOf(pressed) === 'g') return { kind: 'next handle', back: shiftKey };
  return key === 'Escape' && on === 'handle' ? { kind: 'leave handle' } : undefined;
}

/**
 * The letter of a key in small; where it has a letter of another script, the one that has its place on Latin keyboards.
 */
function letterOf({ key, code }: Pressed): string {
  const isOfAnotherScript = /^\p{L}$/u.test(key) && !/^\p{Script=Latin}$/u.test(key);
  return (isOfAnotherScript ? code.replace(/^Key(?=[A-Z]$)/u, '') : key).toLowerCase();
}

/**
 * With Option a Mac writes other signs by these keys: US, British, German and French keyboards those that stand behind.
 */
const growing: ReadonlySet<string> = new Set(['+', '=', '±', '≠']);
const shrinking: ReadonlySet<string> = new Set(['-', '–', '—']);

function resizedBy(key: string): Asked | undefined {
  if (growing.has(key)) return { kind: 'resize', factor: growth };
  return shrinking.has(key) ? { kind: 'resize', factor: 1 / growth } : undefined;
}

function stepOf(letter: string, shiftKey: boolean): Asked | undefined {
  if (letter === 'z') return { kind: 'step', to: shiftKey ? 'redo' : 'undo' };
  return letter === 'y' && !shiftKey ? { kind: 'step', to: 'redo' } : undefined;
}

/** What a painter is told of keys and pointer, in the help of the drawing; kept to be `said`. */
export const help: readonly (readonly [string, string])[] = [
  [
    marked('Drag'),
    marked(
      'moves a thing, or a handle of what is marked: its corners and sides size it. What you let go of is written in the text, as one step to undo.',
    ),
  ],
  [
    marked('Shift'),
    marked(
      'while you drag keeps to one direction, or keeps the proportion of what you size; Ctrl, or Cmd, lets nothing snap. Escape puts it back.',
    ),
  ],
  [marked('Arrow keys'), marked('go from thing to thing in the drawing.')],
  [
    marked('Alt and an arrow key'),
    marked(
      'moves the thing by a millimetre, or a sixteenth of an inch; with Shift by a centimetre, or half an inch.',
    ),
  ],
  [marked('Alt and + or -'), marked('makes an object larger or smaller, about its middle.')],
  [
    marked('G, Shift and G'),
    marked(
      'go to the next and the last handle of the thing. Arrow keys move a handle; Escape goes back to the thing.',
    ),
  ],
  [marked(', and .'), marked('go to the sitting before and after, in the view of the record.')],
  [marked('Ctrl or Cmd and Z'), marked('takes the last change of the text back; with Shift makes it again.')],
  [
    marked('Drawing'),
    marked(
      'arrow keys move the cross, with Shift in large steps; Space sets a point, Enter ends, Backspace takes the last point back, Escape leaves.',
    ),
  ],
];
