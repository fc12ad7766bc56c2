import { parse } from '../../grammar/index.js';
import { check } from '../findings/check.js';
import type { Finding } from '../findings/finding.js';
import { measure } from '../measure/measure.js';
import type { Measures } from '../measure/measures.js';
import type { Plan, ReadFile } from '../plan/plan.js';
import { resolvePlan } from '../plan/resolve.js';
import { compose } from './compose.js';
import type { LayerName, Mark, Scene, View } from './scene.js';

export interface Worked {
  readonly plan: Plan;
  readonly measures: Measures;
  readonly findings: readonly Finding[];
}

/** A plan's text, read, measured and checked. */
export function worked(text: string, readFile?: ReadFile): Worked {
  const plan = resolvePlan(parse(text), readFile === undefined ? {} : { readFile });
  const measures = measure(plan);
  return { plan, measures, findings: check(plan, measures) };
}

export function sceneOf(text: string, view: View, readFile?: ReadFile): Scene {
  const { plan, measures, findings } = worked(text, readFile);
  return compose(plan, measures, findings, view);
}

export function marksOf(scene: Scene, layer: LayerName): readonly Mark[] {
  return scene.layers.find(({ name }) => name === layer)?.marks ?? [];
}

export function markOf(scene: Scene, key: string): Mark | undefined {
  return scene.layers.flatMap(({ marks }) => marks).find((mark) => mark.key === key);
}

/** A small plan with one of everything that the views draw. */
export const doorwayPlan = `plan "The last tram"
concept "One lit doorway holds back a whole street."
canvas 80 x 50 cm
  ground #b9a48a
divide golden
focus upper right
horizon 22
scale 5
  group dark 1-2, middle 3, light 4-5
budget value dark 30%, middle 40%, light 30% within 5%
budget colour dominant 60%, complement 20%, discord 20% within 5%
colour teal #2f6f73 dominant
colour rust 7.5R 4/10 complement
colour ochre #d9a441 discord
object sky
  plane background
  shape rectangle (0, 0) to (80, 22)
  colour teal
  value 4
object tram, dominant
  shape outline (41, 12) (58, 10) (60, 31) (40, 32)
  colour rust
  value 3
object doorway, secondary
  shape rectangle (47.5, 16) to (52, 31)
  colour ochre
  value 5
object figure, secondary
  plane foreground
  shape smooth (20, 30) (22, 28) (24, 30) (25, 38) (24, 46) (20, 46) (19, 38)
  colour rust
  value 1
object puddle
  plane foreground
  shape ellipse 14 x 4
  at (36, 44)
  edges lost
object driver
  shape circle 2
  at (50, 20)
  value 2
object cover
  plane foreground
  shape rectangle (48.8, 18.8) to (51.2, 21.2)
  colour ochre
  value 5
lead wires from left edge at 20% through (20, 14) to focus
`;
