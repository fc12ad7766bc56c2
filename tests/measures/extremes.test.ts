import { describe, expect, it } from 'vitest';
import { parse } from '../../grammar/index.js';
import { measureDocument } from '../../server/cli/measure-document.js';
import { measureText } from '../../server/cli/measure-text.js';
import { compose } from '../../server/drawing/compose.js';
import { renderToText } from '../../server/drawing/headless.js';
import { isBoardView, views } from '../../server/drawing/scene.js';
import { check } from '../../server/findings/check.js';
import { measure } from '../../server/measure/measure.js';
import { resolvePlan } from '../../server/plan/resolve.js';
import { marketPlan } from '../support/market.js';

/** Everything that a plan can ask to be measured, on any canvas: places are parts of it. */
function mill(canvas: string, objects = MILL): string {
  return `plan "The mill door"
canvas ${canvas}
  ground #8a6a4f
horizon at 40%
divide golden, thirds, quarters, rabatment, diagonals, armature, root 2
focus lower right of golden
  win by value, colour, edges, detail, scale, isolation
scale 5
  group dark 1-2, middle 3, light 4-5
  planes lighten with distance
budget value dark 60%, middle 30%, light 10% within 5%
budget colour dominant 70%, complement 20%, discord 10% within 4%
colour slate #2b2a2e dominant
colour brick 2.5YR 4/6 complement
colour flour #f0e2a2 discord
${objects}lead lane from left edge at 80% through (40%, 75%) to focus
lead fence from lower left corner to focus
`;
}

const MILL = `object sky
  plane background
  shape rectangle (0%, 0%) to (100%, 55%)
  colour slate
  value 1
object mill, secondary
  plane middle
  shape outline (20%, 30%) (55%, 20%) (70%, 100%) (18%, 80%)
  colour brick
  value 2
object sack, secondary
  plane foreground
  shape ellipse 12% x 12% at (15%, 85%)
  colour flour
  value 4
object door, dominant
  plane foreground
  shape rectangle 15% x 10%
  at focus
  colour flour
  value 5
  edges hard
  detail fine
path sack, mill, door
`;

const GREYS: Readonly<Record<string, string>> = {
  '#8a6a4f': 'N 5/',
  '#2b2a2e': 'N 2/',
  '2.5YR 4/6': 'N 4/',
  '#f0e2a2': 'N 8/',
};

function inGreys(text: string): string {
  return Object.entries(GREYS).reduce((grey, [colour, neutral]) => grey.replace(colour, neutral), text);
}

/** A dominant object and others, each of one shape and one value step further. */
function shapes(...each: readonly string[]): string {
  const objects = each.map(
    (shape, index) => `object thing-${index}, ${index === 0 ? 'dominant' : 'secondary'}
  shape ${shape}
  colour #2f6f73
  value ${(index % 5) + 1}
`,
  );
  return `canvas 60 x 40 cm
divide golden
focus lower right
${objects.join('')}lead way from left edge to thing-0
path ${each.map((_, index) => `thing-${index}`).join(', ')}
`;
}

const OFF_EACH_SIDE = [
  'circle 10 at (-100, 20)',
  'circle 10 at (70, 20)',
  'circle 10 at (30, -6)',
  'circle 10 at (30, 50)',
  'circle 10 at (5000, 5000)',
  // Along an edge and in a corner, with nothing on the canvas.
  'rectangle (60, 0) to (80, 40)',
  'rectangle (-20, -20) to (0, 0)',
];

const PLANS: readonly (readonly [string, string])[] = [
  ['a canvas of 1 mm', mill('1 x 1 mm')],
  ['a canvas of 1 mm, given in metres', mill('0.001 x 0.001 m')],
  ['a canvas of 100 m', mill('100 x 100 m')],
  ['a canvas of 100 m, given in inches', mill('3937 x 3937 in')],
  ['a canvas 1 mm wide and 100 m high', mill('0.001 x 100 m')],
  ['a canvas 100 m wide and 1 mm high', mill('100000 x 1 mm')],
  ['no colour but greys', inGreys(mill('60 x 40 cm'))],
  ['no colour but greys, on Munsell’s wheel', `wheel munsell\n${inGreys(mill('60 x 40 cm'))}`],
  ['one object', shapes('circle 10 at (20, 20)')],
  ['one object as large as the canvas', shapes('rectangle (0, 0) to (60, 40)')],
  ['one object far larger than the canvas', shapes('circle 4000 at (30, 20)')],
  ['one object that can hardly be seen', shapes('circle 0.001 at (30, 20)')],
  ['one object that is no more than a line', shapes('rectangle (10, 20) to (50, 20.0001)')],
  ['objects that are all off the canvas', shapes(...OFF_EACH_SIDE)],
  [
    'objects that all have one outline',
    shapes(...Array<string>(6).fill('outline (10, 10) (40, 12) (35, 33)')),
  ],
  ['no object but all else', mill('60 x 40 cm', '')],
  ['nothing but a canvas', 'canvas 60 x 40 cm\n'],
  ['nothing at all', ''],
  ['200 objects', marketPlan(200)],
];

const UNFIT = /NaN|undefined|Infinity|\[object/;

/** The keys that lead to each number in `value` that is not finite. */
function unfinished(value: unknown, keys = ''): readonly string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [keys];
  if (value instanceof Float64Array) return value.every(Number.isFinite) ? [] : [keys];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, part]) => unfinished(part, `${keys}.${key}`));
}

/** Holds what every stage makes of a plan against what a painter can use. */
function expectToHold(text: string): void {
  const plan = resolvePlan(parse(text));
  expect(plan.problems.filter(({ severity }) => severity === 'error')).toEqual([]);

  const measures = measure(plan);
  expect(unfinished(measures)).toEqual([]);
  const seen = measures.objects.filter(({ share }) => share > 0).length;
  const whole = measures.objects.reduce((sum, { share }) => sum + share, measures.areas.bareShare);
  expect(whole).toBeCloseTo(1, 6);
  expect(measureText(measureDocument('plan.mahl', plan, measures, 0), false)).not.toMatch(UNFIT);

  const findings = check(plan, measures);
  expect(unfinished(findings)).toEqual([]);
  for (const { message, advice = '', fix, related } of findings) {
    expect(message).toMatch(/^\S[^]*[.?]$/);
    expect([message, advice, fix?.title, ...related.map((other) => other.message)].join('\n')).not.toMatch(
      UNFIT,
    );
  }

  for (const view of views) {
    const scene = compose(plan, measures, findings, view);
    expect(unfinished(scene), view).toEqual([]);
    // The ground, and all that is seen on it.
    const picture = scene.layers.find(({ name }) => name === 'picture')?.marks ?? [];
    expect(picture.length, view).toBeGreaterThan(isBoardView(view) ? 0 : seen);
    expect(scene.sheet.width / scene.picture.width, view).toBeGreaterThan(1);
    const svg = renderToText(scene, { theme: 'light' });
    expect(UNFIT.exec(svg)?.[0], view).toBeUndefined();
    // The size under the title.
    expect(svg, view).not.toMatch(/>0 × | × 0 /);
  }
}

describe('measured, judged and drawn in every view in figures that are figures', () => {
  it.each(PLANS)('%s', (_, text) => {
    expectToHold(text);
  });

  it('2,000 objects', { timeout: 180_000 }, () => {
    expectToHold(marketPlan(2_000));
  });
});
