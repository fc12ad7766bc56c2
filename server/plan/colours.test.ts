import { describe, expect, it } from 'vitest';
import { parse } from '../../grammar/index.js';
import { objectNamed, planOf } from '../../tests/support/plan.js';
import { toHex } from './colour/srgb.js';
import type { Plan } from './plan.js';
import { resolvePlan } from './resolve.js';
import { toldBy } from './test-support.js';

const CANVAS = 'canvas  80 x 50 cm';

function hexes(plan: Plan): Readonly<Record<string, string>> {
  return Object.fromEntries(plan.colours.map(({ name, colour }) => [name, toHex(colour)]));
}

describe('a colour given by the name of another', () => {
  it('is that colour, in its role unless it has one of its own, whichever line comes first', () => {
    const plan = planOf(
      `${CANVAS}\ncolour  dusk night\ncolour  night soot\ncolour  soot #2b2a2e dominant\ncolour  gap dusk discord`,
    );
    expect(toldBy(plan)).toEqual([]);
    expect(new Set(Object.values(hexes(plan)))).toEqual(new Set(['#2b2a2e']));
    expect(plan.colours.map(({ role }) => role)).toEqual(['dominant', 'dominant', 'dominant', 'discord']);
  });

  it('follows a chain as long as the plan', () => {
    const links = Array.from({ length: 10_000 }, (_, i) => `colour  c${i} c${i + 1}`);
    const plan = planOf([CANVAS, ...links, 'colour  c10000 #123456'].join('\n'));
    expect(toldBy(plan)).toEqual([]);
    expect(plan.colours[0] && toHex(plan.colours[0].colour)).toBe('#123456');
  });

  it('may take the name of a CSS colour for its own, but not itself or what is given by it', () => {
    expect(hexes(planOf(`${CANVAS}\ncolour  navy navy`))).toEqual({ navy: '#000080' });
    const circle = planOf(`${CANVAS}\ncolour  one two\ncolour  two one`);
    expect(circle.colours).toEqual([]);
    expect(circle.problems.map(({ code, location }) => [code, location.line])).toEqual([
      ['circular reference', 1],
    ]);
  });
});

describe('a colour that can’t be had', () => {
  it('is told where it is given, and not again where it is used', () => {
    const plan = planOf(
      `${CANVAS}\ncolour  rust rgb(1 2)\nobject  tile\n  shape   circle 2\n  colour  rust\nobject  pot\n  colour  rust`,
    );
    expect(plan.problems.map(({ code, location }) => [code, location.line])).toEqual([
      ['unreadable colour', 1],
    ]);
  });

  it('keeps the first of two under one name', () => {
    const plan = planOf(`${CANVAS}\ncolour  Tür #111111\ncolour  tu\u0308r #222222`);
    expect(hexes(plan)).toEqual({ Tür: '#111111' });
    expect(plan.problems[0]).toMatchObject({ code: 'repeated name', related: [{ location: { line: 1 } }] });
  });
});

describe('paints', () => {
  it('lend their masstone to objects, and take the colours of the plan for it', () => {
    const plan = planOf(
      `${CANVAS}\npalette\n  paint   rose full petal\ncolour  petal #7a1030\nobject  tile\n  colour  rose`,
    );
    expect(toldBy(plan)).toEqual([]);
    expect(objectNamed(plan, 'tile').painted).toEqual(plan.palette?.paints[0]?.full);
  });

  it('say so when they have none', () => {
    const plan = planOf(`${CANVAS}\npalette\n  paint   rose PR999\nobject  tile\n  colour  rose`);
    expect(toldBy(plan)).toEqual([expect.stringMatching(/^The paint `rose` has no colour of its own yet/)]);
  });

  it('need no masstone where the full tone of their pigment is known', () => {
    const plan = planOf(
      `${CANVAS}\npalette\n  paint   white PW6\n  paint   earth PBr7\n  paint   burnt-umber PBr7\ncolour  warm burnt-umber\nobject  dot\n  colour  warm\n  glaze   white`,
    );
    expect(toldBy(plan)).toEqual([]);
    expect(plan.objects[0]?.colour).toMatchObject({ named: 0, paint: 2 });
    expect(plan.objects[0]?.glaze?.paint).toBe(0);
    expect(plan.objects[0]?.glaze && toHex(plan.objects[0].glaze.colour)).toBe('#f6f7f4');
  });
});

const USES = 'object  door\n  shape   circle 3\n  colour  lamp';

it.each(['colour  lamp 5 Q', 'colour  lamp rgb(240, 190, 90', 'colour  lamp R5 4/2', 'colour  lamp'])(
  'a colour whose line can’t be read is not said to be missing where it is used: %s',
  (definition) => {
    const tree = parse(`canvas 40 x 30 cm\n${definition}\n${USES}`);
    const { problems, objects } = resolvePlan(tree);
    expect(tree.problems.map(({ line }) => line)).toEqual([1]);
    expect(problems).toEqual([]);
    expect(objects[0]?.colourLost).toBe(true);
  },
);

it('a colour that no line gives is missing', () => {
  const { problems } = resolvePlan(parse(`canvas 40 x 30 cm\n${USES}`));
  expect(problems.map(({ message }) => message)).toEqual(['There is no colour called `lamp` in this plan.']);
});
