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
 * What a key asks for on a thing of the drawing, or on one of its handles. Arrow keys go from thing to thing there, so they
 * move a thing with Alt only; a handle they move without.
 */
export function askedBy(
  { key, altKey, shiftKey, ctrlKey, metaKey }: Pressed,
  on: 'thing' | 'handle',
  unit: Unit,
): Asked | undefined {
  if (ctrlKey || metaKey) return altKey ? undefined : stepOf(key.toLowerCase(), shiftKey);
  const way = arrowWay(key);
  if (way !== undefined) {
    if (!altKey && on === 'thing') return undefined;
    const { small, large } = steps[unit];
    const step = shiftKey ? large : small;
    return { kind: 'nudge', by: { x: way.x * step, y: way.y * step } };
  }
  // Without Alt they make the drawing larger on the page.
  if (altKey) return on === 'thing' ? resizedBy(key) : undefined;
  switch (key) {
    case 'g':
      return { kind: 'next handle', back: false };
    case 'G':
      return { kind: 'next handle', back: true };
    case 'Escape':
      return on === 'handle' ? { kind: 'leave handle' } : undefined;
    default:
      return undefined;
  }
}

function resizedBy(key: string): Asked | undefined {
  if (key === '+' || key === '=') return { kind: 'resize', factor: growth };
  return key === '-' ? { kind: 'resize', factor: 1 / growth } : undefined;
}

function stepOf(key: string, shiftKey: boolean): Asked | undefined {
  if (key === 'z') return { kind: 'step', to: shiftKey ? 'redo' : 'undo' };
  return key === 'y' && !shiftKey ? { kind: 'step', to: 'redo' } : undefined;
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
