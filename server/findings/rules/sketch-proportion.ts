import { t } from '../../../grammar/index.js';
import type { SketchMeasure } from '../../measure/transfer/sketch.js';
import type { Canvas, Picture } from '../../plan/plan.js';
import { plainNumber } from '../../plan/problems.js';
import type { Rule, RuleFinding } from '../finding.js';
import { exceeds } from '../limits.js';
import { percent } from '../words/words.js';

type Measured = Extract<SketchMeasure, { is: 'measured' }>;

export const sketchProportion: Rule = {
  id: 'sketch proportion',
  severity: 'hint',
  chapter: 'transfer',
  limit: { value: 0.02, unit: 'part', of: 'one side against the other' },
  perObject: false,
  summary: 'The sketch is not in the proportion of the canvas.',
  explanation:
    'Carried over square by square, a sketch is stretched to the canvas: circles become eggs and everyone puts on weight or loses it. So a sketch is made in the canvas’s own proportion, cropped to it, or the canvas is cut to the sketch. Where its corners are stated they say which part of the sketch is the picture, and nothing is compared; only corners that no sheet can have are told.',
  formula:
    'max(r, 1 / r) - 1 > limit, with r = (width / height of the sketch in pixels) / (width / height of the canvas)',
  source: 'common practice, no source',
  check: ({ sketch, canvas }, measures, limit) => {
    const measure = measures.sketch;
    if (sketch === undefined || measure === undefined) return [];
    if (measure.is === 'folded') return [folded(sketch)];
    if (measure.is !== 'measured' || !exceeds(measure.stretch, limit)) return [];
    const [ofSketch, ofCanvas] = bothInWords(measure, canvas);
    return [
      {
        message: measure.isTooWide
          ? t(
              'The sketch is {0}, the canvas {1}: carried over square by square, everything would become {2} taller than it is drawn.',
              ofSketch,
              ofCanvas,
              percent(measure.stretch),
            )
          : t(
              'The sketch is {0}, the canvas {1}: carried over square by square, everything would become {2} wider than it is drawn.',
              ofSketch,
              ofCanvas,
              percent(measure.stretch),
            ),
        advice: adviceOn(measure, canvas, limit),
        location: sketch.location,
      } satisfies RuleFinding,
    ];
  },
};

function folded({ location }: Picture): RuleFinding {
  return {
    message: t(
      'The corners of the sketch are those of no sheet: joined in their order they cross, bend inwards, or lie on one line.',
    ),
    advice: t(
      'Give them as upper left, upper right, lower right and lower left, or drag them into place in the preview.',
    ),
    location,
  };
}

function adviceOn({ width, height, stretch, isTooWide }: Measured, canvas: Canvas, limit: number): string {
  const times = width / height / (canvas.height / canvas.width);
  if (!exceeds(Math.max(times, 1 / times) - 1, limit))
    return t(
      'One of the two lies on its side: write `canvas {0}`, or turn the sketch.',
      size(canvas.height, canvas.width, canvas),
    );
  const off = 1 - 1 / (1 + stretch);
  const fitting = isTooWide
    ? size(canvas.width, (canvas.width * height) / width, canvas)
    : size((canvas.height * width) / height, canvas.height, canvas);
  return isTooWide
    ? t(
        'Leave off {0} of its width, half of it at either side, with `corners {1}` under it, or work on {2}, which is in its proportion.',
        percent(off),
        cornersOf(off / 2, 0),
        fitting,
      )
    : t(
        'Leave off {0} of its height, half of it at the top and half below, with `corners {1}` under it, or work on {2}, which is in its proportion.',
        percent(off),
        cornersOf(0, off / 2),
        fitting,
      );
}

function cornersOf(across: number, down: number): string {
  const part = (share: number) => `${plainNumber(100 * share, 1)}%`;
  const [left, right, top, bottom] = [part(across), part(1 - across), part(down), part(1 - down)];
  return `(${left}, ${top}) (${right}, ${top}) (${right}, ${bottom}) (${left}, ${bottom})`;
}

function size(width: number, height: number, { unit }: Canvas): string {
  const decimals = { mm: 0, cm: 1, m: 3, in: 2 }[unit];
  return `${plainNumber(width, decimals)} x ${plainNumber(height, decimals)} ${unit}`;
}

/** Sides of the ratios that painters say: 3 : 4, 5 : 8. */
const LARGEST_OF_A_RATIO = 12;
/** Nearer than this a ratio is said by its small numbers. */
const NEAR_A_RATIO = 2e-3;

/** Both proportions, width first: `4 : 3` and `5 : 4`; in figures where small numbers do not tell them apart. */
function bothInWords(sketch: Measured, canvas: Canvas): readonly [string, string] {
  const ratios = [sketch.width / sketch.height, canvas.width / canvas.height] as const;
  const [one, other] = [inSmallNumbers(ratios[0]), inSmallNumbers(ratios[1])];
  if (one !== undefined && other !== undefined && one !== other) return [one, other];
  for (let decimals = 2; decimals < 6; decimals++) {
    const [first, second] = [inFigures(ratios[0], decimals), inFigures(ratios[1], decimals)];
    if (first !== second) return [first, second];
  }
  return [inFigures(ratios[0], 6), inFigures(ratios[1], 6)];
}

function inSmallNumbers(ratio: number): string | undefined {
  for (let height = 1; height <= LARGEST_OF_A_RATIO; height++) {
    const width = Math.round(ratio * height);
    if (width < 1 || width > LARGEST_OF_A_RATIO) continue;
    if (Math.abs(width / height / ratio - 1) <= NEAR_A_RATIO) return `${width} : ${height}`;
  }
  return undefined;
}

function inFigures(ratio: number, decimals: number): string {
  return ratio >= 1 ? `${plainNumber(ratio, decimals)} : 1` : `1 : ${plainNumber(1 / ratio, decimals)}`;
}
