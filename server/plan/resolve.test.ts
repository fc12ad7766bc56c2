import { describe, expect, it } from 'vitest';
import { boxOf, messages, objectNamed, planOf } from '../../tests/support/plan.js';
import { parse, usualTree } from '../../grammar/index.js';
import { toHex } from './colour/srgb.js';
import { OutlineCache } from './outline-cache.js';
import { resolvePlan } from './resolve.js';

const CANVAS = 'canvas  80 x 50 cm';

describe('defaults', () => {
  it('takes the studio’s usual ways for what ten lines leave out', () => {
    const plan = planOf(`${CANVAS}\nobject  hill\n  shape   rectangle 40 x 20\n  colour  #6b7a4a`);
    expect(plan.divisions.map(({ system }) => system)).toEqual(['golden']);
    expect(plan.scale).toMatchObject({ steps: 5 });
    expect(plan.scale.groups.map(({ name, from, to }) => [name, from, to])).toEqual([
      ['dark', 1, 2],
      ['middle', 3, 3],
      ['light', 4, 5],
    ]);
    expect(plan.colourBudget).toBeUndefined();
    expect(plan.wheel).toBe('painters');
    const hill = objectNamed(plan, 'hill');
    expect(hill).toMatchObject({ plane: 'middle', edges: 'firm', detail: 'some', stepStated: false });
  });

  it('budgets 70 : 20 : 10 as soon as colours have roles', () => {
    const plan = planOf(
      `${CANVAS}\ncolour  moss #6b7a4a dominant\nobject  hill\n  shape   rectangle 40 x 20\n  colour  moss`,
    );
    expect(plan.colourBudget?.shares.map(({ name, target }) => [name, target])).toEqual([
      ['dominant', 0.7],
      ['complement', 0.2],
      ['discord', 0.1],
    ]);
    expect(plan.colourBudget?.location).toBeUndefined();
  });

  it('says nothing of a missing canvas where a line is to give it that cannot be read', () => {
    expect(resolvePlan(parse('canvas 40 x')).problems).toEqual([]);
    expect(resolvePlan(parse('canvas 40 x')).canvas).toMatchObject({ width: 40, height: 30, unit: 'cm' });
  });

  it('draws a plan without a canvas on 40 x 30 cm and says so', () => {
    const plan = planOf('object  hill\n  shape   rectangle 40 x 20');
    expect(plan.canvas).toMatchObject({ width: 40, height: 30, unit: 'cm' });
    expect(messages(plan)).toEqual([expect.stringContaining('40 x 30 cm')]);
  });
});

describe('units', () => {
  it('counts bare numbers in the unit of the canvas and turns the others into it', () => {
    const plan = planOf(
      `canvas  16 x 20 in\nobject  jug\n  shape   rectangle 50.8 mm x 7 1/2 in at (50%, 25%)`,
    );
    expect(boxOf(plan, 'jug')).toEqual([7, 1.25, 9, 8.75]);
    expect(plan.canvas.millimetresPerUnit).toBe(25.4);
  });

  it('reads a canvas by its stock name', () => {
    expect(planOf('canvas  figure 20 upright').canvas).toMatchObject({ width: 60, height: 73, unit: 'cm' });
    expect(planOf('canvas  A3').canvas).toMatchObject({ width: 420, height: 297, unit: 'mm' });
  });

  it('refuses a canvas of nothing', () => {
    const plan = planOf('canvas  0 x 50 cm');
    expect(plan.problems).toEqual([
      expect.objectContaining({
        code: 'number out of range',
        severity: 'error',
        location: { line: 0, start: 8, end: 17 },
      }),
    ]);
    expect(plan.canvas.width).toBe(40);
  });
});

describe('places', () => {
  const block = (place: string): string =>
    `${CANVAS}\ndivide  thirds, own\n  uprights 10, 20, 30, 40\n  levels  1/2\nfocus   upper right\n` +
    `object  tower\n  shape   rectangle (10, 10) to (20, 40)\n` +
    `object  dot\n  shape   circle 2\n  at      ${place}`;

  it.each([
    ['(12, 7)', [12, 7]],
    ['(25%, 50%)', [20, 25]],
    ['focus', [80 * (2 / 3), 50 / 3]],
    ['lower left', [80 / 3, 100 / 3]],
    ['crossing 3 1 of own', [30, 25]],
    ['upper right corner', [80, 0]],
    ['left edge at 20%', [0, 10]],
    ['bottom edge', [40, 50]],
    ['tower', [15, 25]],
    ['top edge of tower', [15, 10]],
    ['lower right of tower', [20, 40]],
    ['centre', [40, 25]],
    ['tower, 3 cm left, 20 mm up', [12, 23]],
  ])('knows where %s is', (place, [x, y]) => {
    const plan = planOf(block(place));
    const { box } = objectNamed(plan, 'dot').outline;
    expect(messages(plan)).toEqual([]);
    expect((box.left + box.right) / 2).toBeCloseTo(x ?? NaN, 6);
    expect((box.top + box.bottom) / 2).toBeCloseTo(y ?? NaN, 6);
  });

  it('puts another spot of the object there when the plan says by which', () => {
    expect(boxOf(planOf(block('(30, 40) by bottom')), 'dot')).toEqual([29, 38, 31, 40]);
  });

  it('says what crossings there are when one is not', () => {
    const plan = planOf(`${CANVAS}\ndivide  thirds\nfocus   middle left`);
    expect(messages(plan)).toEqual([
      expect.stringMatching(
        /`thirds` has no crossing `middle left`.*there are `upper left`, `upper right`, `lower left`/,
      ),
    ]);
  });

  it('has no crossings but those of a division', () => {
    const plan = planOf(`${CANVAS}\nobject  tower\n  shape   circle 2\nfocus   crossing 1 1 of tower`);
    expect(messages(plan)).toEqual(['Only a division of the canvas has crossings, not `tower`.']);
  });

  it('places objects by others that stand later in the text', () => {
    const plan = planOf(
      `${CANVAS}\nobject  bird\n  shape   circle 2\n  at      top edge of post\nobject  post\n  shape   rectangle (10, 10) to (12, 40)`,
    );
    expect(boxOf(plan, 'bird')).toEqual([10, 9, 12, 11]);
  });
});

describe('circles', () => {
  const at = (name: string, place: string): string =>
    `object  ${name}\n  shape   circle 2\n  at      ${place}`;

  it('tells a circle of references once, with all that stand in it', () => {
    const plan = planOf([CANVAS, at('a', 'b'), at('b', 'c'), at('c', 'a'), at('d', 'a')].join('\n'));
    const circles = plan.problems.filter(({ code }) => code === 'circular reference');
    expect(circles).toHaveLength(1);
    expect(circles[0]?.message).toBe(
      'Round in a circle: `b`, `c` and `a` are each placed by the next. Place one of them by coordinates.',
    );
    expect(circles[0]?.location.line).toBe(9);
    expect(circles[0]?.related.map(({ location }) => location.line)).toEqual([3, 6]);
  });

  it('tells an object placed by itself, and a focus placed by what is placed at it', () => {
    expect(messages(planOf(`${CANVAS}\n${at('a', 'a')}`))).toEqual([
      '`a` is placed by itself. Place it by coordinates, or by something else.',
    ]);
    expect(messages(planOf(`${CANVAS}\nfocus   a\n${at('a', 'focus')}`))).toHaveLength(1);
  });

  it('follows a chain as long as the plan', () => {
    const length = 3000;
    const chain = Array.from({ length }, (_, i) =>
      at(`o${i}`, i + 1 < length ? `o${i + 1}, 1 right` : '(0, 0)'),
    );
    const plan = planOf([CANVAS, ...chain].join('\n'));
    expect(objectNamed(plan, 'o0').outline.box.left).toBeCloseTo(length - 2, 6);
  });
});

describe('what is kept', () => {
  it('rebuilds only the outlines that an edit touches', () => {
    const outlines = new OutlineCache();
    const scene = (x: number): string =>
      [
        CANVAS,
        ...Array.from(
          { length: 20 },
          (_, i) => `object  o${i}\n  shape   circle ${i === 7 ? x : 3} at (${i}, 5)`,
        ),
      ].join('\n');
    const before = resolvePlan(parse(scene(3)), { outlines });
    expect(outlines.built).toBe(20);
    const after = resolvePlan(parse(scene(4)), { outlines });
    expect(outlines.built).toBe(21);
    expect(after.objects[6]?.outline).toBe(before.objects[6]?.outline);
    expect(after.objects[7]?.outline).not.toBe(before.objects[7]?.outline);
    const tried = resolvePlan(parse(scene(5)), { outlines: outlines.aside() });
    expect(tried.objects[6]?.outline).toBe(after.objects[6]?.outline);
    const again = resolvePlan(parse(scene(4)), { outlines });
    expect(again.objects[7]?.outline).toBe(after.objects[7]?.outline);
    expect(outlines.built).toBe(21);
  });

  it('says the same of a plan whether its outlines are kept or not', () => {
    const text = `${CANVAS}
object  hill
  shape   smooth (1, 2) (30, 4) (20, 30)
  shape   outline (1, 2) (1, 2)
  repeat  3 every (4, 0)
object  moon
  shape   ellipse 8 x 5 at top of hill
  shape   path "M 0 0 L"
  colour  nothing
  allow   small area because "It is far off."`;
    const plan = resolvePlan(parse(text));
    expect(plan.problems.length).toBeGreaterThan(1);
    expect(plan.allowances).toMatchObject([{ objects: [1] }]);
    expect(resolvePlan(parse(text), { outlines: new OutlineCache() })).toEqual(plan);
  });

  it('finds nothing wrong with the plan that keeps what reads plans compiled', () => {
    const plan = resolvePlan(usualTree());
    expect([...usualTree().problems, ...plan.problems]).toEqual([]);
    expect(plan.leads).toHaveLength(2);
    expect(plan.allowances).toHaveLength(1);
  });
});

describe('values and colours', () => {
  it('paints a colour at the value that the plan gives it', () => {
    const plan = planOf(
      `${CANVAS}\ncolour  rust 7.5R 4/10 complement\nobject  tile\n  shape   circle 9\n  colour  rust\n  value   5`,
    );
    const tile = objectNamed(plan, 'tile');
    expect(tile).toMatchObject({
      step: 5,
      value: 9,
      stepStated: true,
      colour: { role: 'complement', named: 0 },
    });
    expect(tile.painted && toHex(tile.painted)).not.toBe(toHex(plan.colours[0]!.colour));
  });

  it('takes the value of the colour where none is given', () => {
    const plan = planOf(`${CANVAS}\nobject  tile\n  shape   circle 9\n  colour  N 3.2/`);
    expect(objectNamed(plan, 'tile').step).toBe(2);
    expect(objectNamed(plan, 'tile').value).toBeCloseTo(3.2, 2);
  });

  it('finds colours by name in any case, in the palette, and among CSS names', () => {
    const plan = planOf(
      `${CANVAS}\ncolour  Rust #8a3b22\npalette\n  paint   rose full #7a1030 tint #e8a0b0 at 1 to 9\n` +
        ['rust', 'rose', 'navy']
          .map((name) => `object  by-${name}\n  shape   circle 2\n  colour  ${name}`)
          .join('\n'),
    );
    expect(messages(plan)).toEqual([]);
    expect(plan.objects.map(({ painted }) => painted && toHex(painted))).toEqual([
      '#8a3b22',
      '#7a1030',
      '#000080',
    ]);
  });

  it('offers the nearest name for one that is not known', () => {
    const plan = planOf(`${CANVAS}\ncolour  rust #8a3b22\nobject  tile\n  shape   circle 2\n  colour  rsut`);
    expect(plan.problems[0]).toMatchObject({ code: 'unknown name', fix: { replacement: 'rust' } });
  });

  it('refuses a step that the scale does not have, and groups and shares of unknown names', () => {
    const plan = planOf(
      `${CANVAS}\nscale   5\n  group   dark 1-2, sky 4-6\nbudget  value dark 30%, lihgt 20%\nobject  tile\n  shape   circle 2\n  value   6`,
    );
    expect(messages(plan)).toEqual([
      "The scale has steps 1 to 5, so `sky` can't take 4 to 6.",
      'The scale has steps 1 (darkest) to 5 (lightest), so there is no value 6.',
      expect.stringContaining('There is no value group or step called `lihgt`'),
    ]);
  });
});

describe('order and exceptions', () => {
  it('covers by plane first, then by order of the text', () => {
    const plan = planOf(
      [
        CANVAS,
        ...['foreground', 'background', 'middle', 'background'].map(
          (plane, i) => `object  o${i}\n  plane   ${plane}`,
        ),
      ].join('\n'),
    );
    expect(plan.coveringOrder).toEqual([1, 3, 2, 0]);
  });

  it('binds what is set aside to the objects it names or stands in', () => {
    const plan = planOf(
      `${CANVAS}\nobject  a\n  allow   hidden object because "it is only felt"\nobject  b\nallow   off the canvas for b because "a way in"\nallow   even count because "a pair"`,
    );
    expect(plan.allowances.map(({ rule, objects }) => [rule, objects])).toEqual([
      ['hidden object', [0]],
      ['off the canvas', [1]],
      ['even count', []],
    ]);
  });

  it('leaves out a second object of the same name', () => {
    const plan = planOf(`${CANVAS}\nobject  Tür\nobject  tür`);
    expect(plan.objects).toHaveLength(1);
    expect(plan.problems[0]).toMatchObject({
      code: 'repeated name',
      location: { line: 2 },
      related: [{ location: { line: 1 } }],
    });
  });

  it('leads a line from a place to a place', () => {
    const plan = planOf(
      `${CANVAS}\nlead    kerb from left edge to centre\nlead    wire from top edge to centre`,
    );
    expect(plan.leads.map(({ points }) => points)).toEqual([
      [
        { x: 0, y: 25 },
        { x: 40, y: 25 },
      ],
      [
        { x: 40, y: 0 },
        { x: 40, y: 25 },
      ],
    ]);
  });
});

describe('a plan that can be read in part', () => {
  it('says nothing more of words that could not be read', () => {
    const tree = parse(`${CANVAS}\nfocus   uper left\nobject  dot\n  shape   circle two`);
    expect(tree.problems.map(({ line }) => line)).toEqual([1, 3]);
    const plan = resolvePlan(tree);
    expect(messages(plan)).toEqual([]);
    expect(plan.focusUnplaced).toBe(true);
    expect(objectNamed(plan, 'dot').faulty).toBe(true);
  });

  it('takes the first word of a place for no name where the second could not be read', () => {
    const half = (place: string) => messages(resolvePlan(parse(`${CANVAS}\nfocus   ${place}`)));
    expect(half('upper rihgt')).toEqual([]);
    expect(half('upper')).toEqual(['There is no object called `upper` in this plan.']);
    expect(half('jug rihgt')).toEqual(['There is no object called `jug` in this plan.']);
  });

  it('knows of a centre of interest of whose line nothing could be read', () => {
    expect(resolvePlan(parse(`${CANVAS}\nfocus   (3,`)).focusUnplaced).toBe(true);
    expect(resolvePlan(parse(CANVAS)).focusUnplaced).toBe(false);
  });
});
