import type { Point } from '../../plan/geometry/point.js';
import { distance } from '../../plan/geometry/point.js';
import type { Canvas } from '../../plan/plan.js';
import type { BorderStretch } from '../borders/borders.js';
import { GROUND } from '../borders/borders.js';
import { contrastOf } from '../borders/contrast.js';
import { byPull, partOfField, wholeField } from '../emphasis/field.js';
import { fieldGrid } from '../emphasis/grid.js';
import { peaks, strongestNear } from '../emphasis/places.js';
import type { Memory } from '../memory.js';
import { type LabPicture, quickValue } from './pixels.js';
import type { RecordEmphasis } from './record.js';

/** Pixels are put together in squares of so many a side, so that weave, brush marks and noise count less. */
const BLOCK = 3;
/**
 * Contrast from square to square that is let pass: a third of a Munsell value. Passages that change slowly and what is
 * left of brush marks draw no eye; and of the contrast over a soft edge so much is lost in each square that it is wide.
 */
const LET_PASS = 0.02;

interface Strengths {
  readonly stretches: readonly BorderStretch[];
  readonly field: Float64Array;
  readonly strongest?: { readonly at: Point; readonly strength: number };
}

/**
 * The place that draws the eye most, as `measureEmphasis` finds it in a plan: contrast x length, gathered within 8 % of
 * the diagonal. What differs is where contrasts come from: a photograph has no outlines, so they are those from each
 * square of pixels to the squares beside it, 0.6 dV / 10 + 0.4 dab / 100, less what is let pass, each over the side of
 * a square. How sharp an edge is is not told by the plan but follows from that: a soft one loses more. Heuristic.
 */
export function strongPlaces(
  picture: LabPicture,
  canvas: Canvas,
  focus: Point | undefined,
  memory: Memory,
  key: string,
): Omit<RecordEmphasis, 'planned'> | undefined {
  const { width, height, diagonal } = canvas;
  const found = memory.recall('strong places of pixels', key, [picture, width, height], () =>
    strengthsOf(picture, canvas),
  );
  const { strongest } = found;
  if (!strongest) return undefined;
  const { at } = strongest;
  if (!focus) return { at };
  const atFocus = memory.recall('pixels at the focal point', key, [found, focus.x, focus.y], () => {
    const near = strongestNear(found.field, fieldGrid(canvas), [found], byPull, focus, diagonal);
    return Math.min(1, near.strength / strongest.strength);
  });
  return { at, fromFocus: distance(at, focus) / diagonal, atFocus };
}

function strengthsOf(picture: LabPicture, canvas: Canvas): Strengths {
  const grid = fieldGrid(canvas);
  const stretches = contrastsOf(picture, canvas);
  const field = wholeField([partOfField(stretches, byPull, grid, canvas.diagonal)], grid);
  const [strongest] = peaks(field, grid, [{ stretches }], byPull, canvas.diagonal);
  return { stretches, field, ...(strongest ? { strongest } : {}) };
}

/** Contrasts at the corners where four squares meet, as stretches of border, so that they are gathered as those are. */
function contrastsOf(picture: LabPicture, { width, height }: Canvas): readonly BorderStretch[] {
  const squares = squaresOf(picture);
  const { columns, rows, value, a, b } = squares;
  const length = Math.sqrt((width / columns) * (height / rows));
  const stretches: BorderStretch[] = [];
  for (let row = 1; row < rows; row++) {
    for (let column = 1; column < columns; column++) {
      const at = row * columns + column;
      const across = (of: Float64Array): number => slope(of, at, at - columns, at - 1, at - columns - 1);
      const down = (of: Float64Array): number => slope(of, at, at - 1, at - columns, at - columns - 1);
      const contrast = (way: typeof across): number =>
        contrastOf({ value: 0, lab: [0, 0, 0] }, { value: way(value), lab: [0, way(a), way(b)] }, 'hard')
          .pull;
      const pull = Math.hypot(contrast(across), contrast(down)) - LET_PASS;
      // It is no number beside what has neither value nor colour.
      if (!(pull > 0)) continue;
      stretches.push({
        at: { x: (column / columns) * width, y: (row / rows) * height },
        length,
        direction: 0,
        front: GROUND,
        behind: GROUND,
        valueContrast: 0,
        colourContrast: 0,
        sharpness: 1,
        pull,
      });
    }
  }
  return stretches;
}

/** From the mean of the last two to the mean of the first two. */
function slope(of: Float64Array, one: number, beside: number, other: number, besideOther: number): number {
  return (
    ((of[one] as number) + (of[beside] as number) - (of[other] as number) - (of[besideOther] as number)) / 2
  );
}

interface Squares {
  readonly columns: number;
  readonly rows: number;
  readonly value: Float64Array;
  readonly a: Float64Array;
  readonly b: Float64Array;
}

function squaresOf({ width, height, lab }: LabPicture): Squares {
  const columns = Math.max(1, Math.round(width / BLOCK));
  const rows = Math.max(1, Math.round(height / BLOCK));
  const [value, a, b] = [0, 1, 2].map(() => new Float64Array(columns * rows)) as [
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  for (let row = 0; row < rows; row++) {
    const [top, bottom] = [Math.round((row * height) / rows), Math.round(((row + 1) * height) / rows)];
    for (let column = 0; column < columns; column++) {
      const left = Math.round((column * width) / columns);
      const right = Math.round(((column + 1) * width) / columns);
      let [sumValue, sumA, sumB] = [0, 0, 0];
      for (let y = top; y < bottom; y++) {
        for (let x = left; x < right; x++) {
          const pixel = 3 * (y * width + x);
          sumValue += quickValue(lab[pixel] as number);
          sumA += lab[pixel + 1] as number;
          sumB += lab[pixel + 2] as number;
        }
      }
      const count = Math.max(1, (bottom - top) * (right - left));
      const at = row * columns + column;
      value[at] = sumValue / count;
      a[at] = sumA / count;
      b[at] = sumB / count;
    }
  }
  return { columns, rows, value, a, b };
}
