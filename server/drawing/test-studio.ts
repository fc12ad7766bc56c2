import type { PaletteMeasure, PaintMeasure, Swatch } from '../measure/mixing/mixing.js';
import type { Colour } from '../plan/colour/colour.js';
import { parseColour } from '../plan/colour/colour.js';
import { check } from '../findings/check.js';
import { compose, type ComposeOptions } from './compose.js';
import type { Scene, View } from './scene.js';
import type { Measures } from '../measure/measures.js';
import { type Worked, worked } from './test-plans.js';

/** A wall, a jug before it and a fruit, whose figures can be counted by hand. */
export const blueJug = `colour delft #4a5f8c dominant
colour lemon #d9c04a complement
object wall
  plane background
  shape rectangle (0, 0) to (40, 30)
  colour delft
  value 4
object jug, dominant
  shape rectangle (10, 8) to (22, 26)
  colour delft
  value 2
object fruit, secondary
  shape circle 4 at (30, 22)
  colour lemon
  value 4`;

/** A small plan with a palette, a glaze and sittings, in which every figure of the views can be counted by hand. */
export const kitchenPlan = `plan "Blue jug"
canvas 40 x 30 cm
  ground #b79a63
  medium oil
scale 5
${blueJug}
  glaze #a8401c
object shelf
  shape rectangle (-5, 26) to (45, 34)
  value 3
palette
  paint white PW6
  paint ultra PB29, warm
  paint lemon-yellow PY35, cool
  paint mystery #30302c
  mother ultra
  tube 37 ml
sitting "Lay in" on 2027-01-11
  works wall, jug
  layer underpainting, lean
  fat 0%
sitting "Colour" on 2027-01-13
  works jug, fruit
  layer body colour
sitting "Warm the fruit" on 2027-02-08
  works fruit
  layer glaze, fat
away 2027-01-20 to 2027-01-22
due 2027-03-01
`;

export function colour(text: string): Colour {
  const reading = parseColour(text);
  if (!reading.ok) throw new Error(`${text} is no colour.`);
  return reading.colour;
}

const STATED = { isStated: true };

/**
 * Mixtures that nobody has worked out, one part each, so that a view is tried by figures that are easy to tell apart.
 */
export function madeUpPalette({ plan }: Worked): PaletteMeasure {
  const fulls = ['#f4f4f0', '#1b1c5a', '#f2d22e', '#30302c'];
  const paints = (plan.palette?.paints ?? []).map((_, index): PaintMeasure => ({
    basis: index === 3 ? 'estimated' : 'measured',
    full: colour(fulls[index % fulls.length] ?? '#808080'),
    tint: colour('#c8c8d8'),
    ...(index === 1 ? { side: 'warm', sideFrom: 'plan' } : {}),
  }));
  const swatches = plan.objects.flatMap(({ painted, index }): Swatch[] =>
    painted === undefined
      ? []
      : [
          {
            wanted: painted,
            objects: [index],
            isGround: false,
            ...STATED,
            share: 0.1 * (index + 1),
            millilitres: 2 * (index + 1),
            mixture: {
              parts: [
                { paint: 0, parts: 3 },
                { paint: 1, parts: index + 1 },
              ],
              colour: colour('#888898'),
              isEstimate: false,
            },
            difference: index === 2 ? 7.3 : 0.5 + index,
          },
        ],
  );
  return {
    paints,
    tubes: paints.length,
    primaries: [{ primary: 'blue', warm: [1], cool: [], undecided: [], lacks: ['cool'] }],
    mixing: {
      swatches,
      ofObjects: plan.objects.map(({ index }) => {
        const at = swatches.findIndex(({ objects }) => objects.includes(index));
        return at < 0 ? undefined : at;
      }),
      glazes: plan.objects.map(({ glaze, index }) =>
        glaze === undefined
          ? undefined
          : {
              object: index,
              wanted: glaze.colour,
              mixture: {
                parts: [{ paint: 3, parts: 1 }],
                medium: 9,
                colour: glaze.colour,
                isEstimate: true,
              },
              seen: colour('#a0661f'),
              isEstimate: true,
            },
      ),
      strings: [
        {
          name: 'delft',
          steps: [2, 3, 4].map((step) => ({
            step,
            wanted: colour('#4a5f8c'),
            mixture: {
              parts: [{ paint: 1, parts: step }],
              colour: colour('#4a5f80'),
              isEstimate: false,
            },
            difference: 1.1,
          })),
        },
      ],
      amounts: paints.map((_, index) => ({ millilitres: 3.7 * index, tubes: 0.1 * index })),
      beyond: swatches.flatMap(({ difference = 0 }, index) => (difference > 5 ? [index] : [])),
      reach: Array.from({ length: 72 }, () => 40),
    },
  };
}

/** The plan's text as a view shows it, with mixtures that nobody has worked out. */
export function studioScene(
  text: string,
  view: View,
  change: (palette: PaletteMeasure) => PaletteMeasure | undefined = (palette) => palette,
  options: ComposeOptions = {},
): Scene {
  const read = worked(text);
  const palette = change(madeUpPalette(read));
  const measures: Measures = { ...read.measures, ...(palette === undefined ? {} : { palette }) };
  return compose(read.plan, measures, check(read.plan, measures), view, options);
}
