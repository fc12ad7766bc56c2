import type { Outline, PathCommand, Ring } from '../../plan/geometry/path.js';
import { clippedRing } from '../../plan/geometry/polygons.js';

/** Finer than this part of an em no one sees. */
const FINEST_EMS = 0.035;

/**
 * The outline of an object as it lies in a small picture, as path data in steps from the picture's upper left corner,
 * so that it is written once for all pictures. The curves where all of it is on the canvas, else what the canvas cuts
 * out of it, as nothing else cuts it there. Steps are no finer than can be seen.
 * @param scale how much smaller than the canvas the picture is
 */
export function outlineSteps(
  outline: Outline,
  canvas: { readonly width: number; readonly height: number },
  scale: number,
  em: number,
): string {
  const { left, top, right, bottom } = outline.box;
  const pen = new Pen(scale, Math.max(0, Math.round(-Math.log10(FINEST_EMS * em))));
  if (left >= 0 && top >= 0 && right <= canvas.width && bottom <= canvas.height) {
    outline.path.forEach((command) => pen.draw(command));
    return pen.d;
  }
  const window = { left: 0, top: 0, right: canvas.width, bottom: canvas.height };
  const finest = (FINEST_EMS * em) / scale;
  for (const ring of outline.rings) pen.ring(thinned(clippedRing(ring, window), finest));
  return pen.d;
}

/** Writes path data in steps from the place before, each rounded so that none adds up. */
class Pen {
  readonly #scale: number;
  /** To a unit. */
  readonly #steps: number;
  /** Where it is, and where the part of the path that it is at began, in whole steps. */
  #x = 0;
  #y = 0;
  #begun: readonly [number, number] = [0, 0];
  #last = '';
  d = '';

  constructor(scale: number, decimals: number) {
    this.#steps = 10 ** decimals;
    this.#scale = scale * this.#steps;
  }

  draw(command: PathCommand): void {
    switch (command.kind) {
      case 'M':
        this.#step('m', [command]);
        this.#begun = [this.#x, this.#y];
        return;
      case 'L':
        this.#step('l', [command]);
        return;
      case 'C':
        this.#step('c', [{ x: command.x1, y: command.y1 }, { x: command.x2, y: command.y2 }, command]);
        return;
      case 'Z':
        this.d += 'Z';
        this.#last = 'Z';
        [this.#x, this.#y] = this.#begun;
    }
  }

  ring(points: readonly number[]): void {
    for (let index = 0; index + 1 < points.length; index += 2) {
      const [x = 0, y = 0] = [points[index], points[index + 1]];
      this.draw({ kind: index === 0 ? 'M' : 'L', x, y });
    }
    if (points.length > 0) this.draw({ kind: 'Z' });
  }

  #step(letter: 'm' | 'l' | 'c', points: readonly { readonly x: number; readonly y: number }[]): void {
    const [fromX, fromY] = [this.#x, this.#y];
    let isOpen = this.#last !== letter || letter === 'm';
    let d = isOpen ? letter : '';
    const write = (steps: number) => {
      // A minus tells two figures apart by itself.
      d += isOpen || steps < 0 ? '' : ' ';
      d += steps / this.#steps;
      isOpen = false;
    };
    for (const { x, y } of points) {
      this.#x = Math.round(x * this.#scale);
      this.#y = Math.round(y * this.#scale);
      write(this.#x - fromX);
      write(this.#y - fromY);
    }
    // A line to where it is already is nothing; a curve may still go out and come back.
    if (letter === 'l' && this.#x === fromX && this.#y === fromY) return;
    this.d += d;
    this.#last = letter;
  }
}

/** Without points that lie nearer to the one before than can be seen. */
function thinned(points: Ring, finest: number): readonly number[] {
  const kept: number[] = [];
  let [lastX, lastY] = [Number.NaN, Number.NaN];
  for (let index = 0; index + 1 < points.length; index += 2) {
    const [x = 0, y = 0] = [points[index], points[index + 1]];
    if (Math.hypot(x - lastX, y - lastY) < finest) continue;
    kept.push(x, y);
    [lastX, lastY] = [x, y];
  }
  return kept.length < 6 ? [] : kept;
}
