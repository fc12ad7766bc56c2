import { describe, expect, it } from 'vitest';
import { planOf } from '../../../tests/support/plan.js';
import type { Lab } from '../../plan/colour/colour.js';
import { labDifference } from '../../plan/colour/difference.js';
import { lightnessOfValue } from '../../plan/colour/value.js';
import { OutlineCache } from '../../plan/outline-cache.js';
import { measure } from '../measure.js';
import { Memory } from '../memory.js';
import { noPhotographs } from './photographs.js';
import type { RecordFigures, SittingRecord } from './record.js';
import { type Deviation, photographOf, photographsAt, pictureOf } from './test-support.js';

const YARD = `
canvas  60 x 40 cm
  ground  #a08a6c
scale   5
divide  thirds
focus   upper right
budget  value dark 50%, middle 25%, light 25% within 5%
budget  colour dominant 75%, complement 25% within 5%
colour  slate 5PB 3/4 dominant
colour  straw 5Y 7/6 complement
object  wall
  shape   rectangle (0, 0) to (60, 40)
  colour  slate
  value   2
object  field
  shape   rectangle (0, 25) to (40, 40)
  colour  straw
  value   4
object  gate, dominant
  shape   rectangle 10 x 10
  at      focus
  colour  straw
  value   5
`;

function yard(...sittings: readonly string[]): string {
  return `${YARD}${sittings.join('\n')}\n`;
}

const PAINT = 'sitting "Paint" on 2027-01-04\n  works wall, field, gate\n  photo "one.jpg"';
const AGAIN = 'sitting "Again" on 2027-01-20\n  works wall\n  photo "two.jpg"';
const PREPARE =
  'sitting "Prepare" on 2027-01-01\n  works wall, field\n  layer underpainting\n  photo "grey.jpg"';

/**
 * The record of a plan whose photographs, in the order of its sittings, show what deviates and else what is planned.
 */
function recordOf(text: string, ...deviations: readonly (readonly Deviation[])[]): readonly SittingRecord[] {
  const plan = planOf(text);
  const names = plan.sittings.flatMap(({ photo }) => photo?.file ?? []);
  const pictures = Object.fromEntries(
    names.map((name, index) => [
      name,
      photographOf(plan, index, { deviations: deviations[index] ?? [], noise: 1.5, id: name }),
    ]),
  );
  return measure(plan, undefined, undefined, photographsAt(pictures)).record?.sittings ?? [];
}

function figuresOf(record: SittingRecord | undefined): RecordFigures {
  if (record?.is !== 'measured') throw new Error(`no figures: ${record?.is ?? 'no record'}`);
  return record.figures;
}

describe('a photograph of what was painted as planned', () => {
  const figures = figuresOf(recordOf(yard(PAINT))[0]);
  const measures = measure(planOf(yard(PAINT)));

  it('has the shares of the plan, by step and group, within 1 %', () => {
    measures.values.steps.forEach(({ share }, index) => {
      expect(figures.steps[index]?.share).toBeCloseTo(share, 2);
    });
    expect(figures.groups.map(({ key }) => key)).toEqual(['dark', 'middle', 'light']);
    measures.values.groups.forEach(({ share }, index) => {
      expect(figures.groups[index]?.share).toBeCloseTo(share, 2);
    });
    expect(figures.steps.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 9);
  });

  it('has the shares of the colour roles within 1 %', () => {
    expect(figures.roles.map(({ role }) => role)).toEqual(['dominant', 'complement']);
    for (const { role, share } of figures.roles) {
      expect(share).toBeCloseTo(measures.colours.roles.find((one) => one.role === role)?.share ?? 0, 2);
    }
    expect(figures.noRoleShare).toBeCloseTo(0, 9);
    expect(figures.colourBudget.map(({ within }) => within)).toEqual([true, true]);
  });

  it('has the value and colour of each object', () => {
    expect(figures.objects.map(({ object }) => object)).toEqual([0, 1, 2]);
    for (const { against, worked } of figures.objects) {
      expect(worked).toBe(true);
      expect(against?.stepsOff).toBeCloseTo(0, 1);
      expect(against?.difference).toBeLessThan(0.3);
    }
  });

  it('has the key of the plan, and what the ends of its values reach', () => {
    expect(figures.key).toBeCloseTo(measures.values.mean ?? 0, 1);
    expect(figures.range.darkest).toBeGreaterThan(2.7);
    expect(figures.range.lightest).toBeLessThan(9.3);
    expect(figures.range.lightest - figures.range.darkest).toBeCloseTo(6, 0);
  });

  it('draws the eye to the focal point, as the plan does by the same method', () => {
    expect(figures.emphasis?.fromFocus).toBeLessThan(0.1);
    expect(figures.emphasis?.atFocus).toBe(1);
    expect(figures.emphasis?.planned?.atFocus).toBe(1);
  });

  it('has nothing to be doubted, and nothing before it', () => {
    expect(figures.doubts).toEqual([]);
    expect(figures.change).toBeUndefined();
    expect(figures.objects.every(({ since }) => since === undefined)).toBe(true);
  });

  it('has maps of what differs, which is noise', () => {
    const mean = (numbers: Float32Array) =>
      numbers.reduce((sum, one) => sum + Math.abs(one), 0) / numbers.length;
    expect(mean(figures.valueDifference)).toBeLessThan(0.1);
    expect(mean(figures.colourDifference)).toBeLessThan(2);
    expect(figures.planned.objects.at(0)).toBe(0);
    expect(figures.planned.objects.at(-480 + 5)).toBe(1);
  });
});

describe('a photograph of what was painted otherwise', () => {
  it('tells by how much an object is darker, in steps', () => {
    const { objects, groups, valueBudget, steps } = figuresOf(
      recordOf(yard(PAINT), [{ object: 'field', steps: -1.5 }])[0],
    );
    expect(objects[1]?.against?.stepsOff).toBeCloseTo(-1.5, 1);
    expect(objects[0]?.against?.stepsOff).toBeCloseTo(0, 1);
    // From step 4 to 2.5, on the border of 2 and 3: by the noise half of it is on either.
    expect(groups.map(({ share }) => Math.round(100 * share))).toEqual([83, 13, 4]);
    expect(valueBudget.map(({ share }) => Math.round(100 * share))).toEqual([83, 13, 4]);
    expect(objects[1]?.steps.map((share) => Math.round(100 * share))).toEqual([0, 12, 13, 0, 0]);
    expect(steps.at(-2)?.share).toBeCloseTo(0, 2);
  });

  it('tells hue and chroma apart from value', () => {
    const shown = [lightnessOfValue(7), 30, 20] as const;
    const [, field] = figuresOf(recordOf(yard(PAINT), [{ object: 'field', colour: shown }])[0]).objects;
    const against = field?.against;
    expect(against?.stepsOff).toBeCloseTo(0, 1);
    expect(against?.difference).toBeCloseTo(labDifference(against?.colour ?? [0, 0, 0], shown), 1);
    expect(against?.hueAndChroma).toBeCloseTo(against?.difference ?? 0, 1);
  });

  it('finds the place that draws the eye most where the contrast was painted', () => {
    const { emphasis } = figuresOf(
      recordOf(yard(PAINT), [
        { object: 'field', colour: [95, 10, 90] },
        { object: 'gate', steps: -2.6 },
      ])[0],
    );
    expect(emphasis?.atFocus).toBeLessThan(0.6);
    expect(emphasis?.at.y).toBeGreaterThan(20);
    expect(emphasis?.planned?.atFocus).toBe(1);
  });

  it('finds the strongest place of the plan, whatever beside it has neither value nor colour', () => {
    const withLatch = yard(PAINT.replace('gate', 'gate, latch')).replace(
      'sitting',
      'object  latch\n  shape   rectangle (46, 22) to (48, 24)\nsitting',
    );
    const [without, beside] = [yard(PAINT), withLatch].map((text) => figuresOf(recordOf(text)[0]));
    expect(beside?.isWhole.values).toBe(true);
    expect(beside?.emphasis?.planned).toEqual(without?.emphasis?.planned);
  });
});

describe('what a photograph is held to', () => {
  it('is a value only after an underpainting, and nothing where nothing is painted yet', () => {
    const [grey] = recordOf(yard(PREPARE, PAINT));
    const { objects, isWhole, planned } = figuresOf(grey);
    expect(objects.map(({ worked }) => worked)).toEqual([true, true, false]);
    expect(objects[0]?.against).toEqual({ step: expect.closeTo(2, 6), stepsOff: expect.closeTo(0, 1) });
    expect(objects[2]?.against).toBeUndefined();
    // The gate, 4 % of the picture, is bare ground.
    expect(isWhole).toEqual({ values: false, colours: false });
    const gate = planned.objects.indexOf(2);
    expect(planned.lab[3 * gate]).toBeCloseTo(planOf(YARD).canvas.ground.colour.lab[0], 3);
  });

  it('is the whole plan where no sitting says what it works on', () => {
    const { objects, isWhole } = figuresOf(recordOf(yard('sitting "All"\n  photo "all.jpg"'))[0]);
    expect(objects.every(({ worked }) => worked)).toBe(true);
    expect(isWhole).toEqual({ values: true, colours: true });
  });

  it('is no glaze before its sitting, and nothing while it is not known what is seen through one', () => {
    const text = yard(
      PAINT,
      'sitting "Glaze" on 2027-03-01\n  works field\n  layer glaze\n  photo "glaze.jpg"',
    ).replace('colour  straw\n  value   4', 'colour  straw\n  value   4\n  glaze   #a8401c');
    const [paint, glaze] = recordOf(text);
    expect(figuresOf(paint).objects[1]?.against?.difference).toBeLessThan(0.5);
    expect(figuresOf(glaze).objects[1]?.against).toBeUndefined();
    const withPalette = `${text}palette\n  paint white PW6\n  paint burnt-sienna PBr7\n  paint blue PB29\n`;
    const known = figuresOf(recordOf(withPalette)[1]).objects[1]?.against;
    expect(known?.difference).toBeLessThan(0.5);
    expect(known?.step).toBeLessThan(3.8);
  });
});

describe('one photograph after another', () => {
  const records = recordOf(
    yard(PAINT, AGAIN),
    [
      { object: 'wall', steps: 1 },
      { object: 'gate', steps: -0.1 },
    ],
    [
      { object: 'wall', steps: 0.1 },
      { object: 'field', steps: -0.8 },
    ],
  );
  const { objects, change } = figuresOf(records[1]);

  it('tells what came nearer and what went away from plan', () => {
    expect(objects.map(({ since }) => since?.went)).toEqual(['nearer', 'away', 'neither']);
    expect(objects[0]?.since?.stepsOff).toBeCloseTo(1, 1);
  });

  it('tells what changed, and how much', () => {
    expect(change?.since).toBe(0);
    expect(change?.objects[0]?.object).toBe(0);
    const [first, second] = records.map((record) => figuresOf(record).objects[0]?.colour);
    expect(change?.objects[0]?.difference).toBeCloseTo(
      labDifference(first ?? [0, 0, 0], second ?? [0, 0, 0]),
      0,
    );
    expect(change?.objects.at(-1)?.object).toBe(2);
    expect(change?.bare).toBeUndefined();
  });

  it('compares those that follow each other in time, whatever the order of the text', () => {
    const [again, paint] = recordOf(yard(AGAIN, PAINT));
    expect(figuresOf(again).change?.since).toBe(1);
    expect(figuresOf(paint).change).toBeUndefined();
  });

  it('lets one be of another size', () => {
    const plan = planOf(yard(PAINT, AGAIN));
    const small = pictureOf({ width: 60, height: 40 }, () => [40, 0, 0]);
    const large = pictureOf({ width: 480, height: 320 }, () => [60, 0, 0]);
    const { record } = measure(
      plan,
      undefined,
      undefined,
      photographsAt({ 'one.jpg': small, 'two.jpg': large }),
    );
    expect(figuresOf(record?.sittings[1]).change?.mean).toBeCloseTo(labDifference([40, 0, 0], [60, 0, 0]), 3);
  });
});

describe('the record', () => {
  it('is missing where no sitting names a photograph', () => {
    expect(measure(planOf(yard('sitting "All"'))).record).toBeUndefined();
  });

  it('waits for what is on its way, and says why something can’t be read', () => {
    const plan = planOf(yard(PAINT));
    expect(measure(plan, undefined, undefined, noPhotographs).record?.sittings).toEqual([
      { sitting: 0, is: 'on its way' },
    ]);
    expect(measure(plan, undefined, undefined, photographsAt({})).record?.sittings).toEqual([
      { sitting: 0, is: 'unreadable', reason: 'There is no such file.' },
    ]);
  });

  it('is kept where an edit changes no outline and no colour, and picture by picture', () => {
    const memory = new Memory();
    const outlines = new OutlineCache();
    const pictures = photographsAt({
      'one.jpg': photographOf(planOf(yard(PAINT, AGAIN)), 0, { noise: 2, id: 'one' }),
      'two.jpg': photographOf(planOf(yard(PAINT, AGAIN)), 1, { noise: 2, id: 'two' }),
    });
    const subjects = [
      'pixels',
      'mask',
      'mean of an object',
      'roles of pixels',
      'strong places of pixels',
      'change since',
    ];
    const worked = (text: string): readonly number[] => {
      const before = subjects.map((subject) => memory.worked(subject));
      const { record } = measure(planOf(text, { outlines }), memory, undefined, pictures);
      expect(figuresOf(record?.sittings[1]).change).toBeDefined();
      return subjects.map((subject, index) => memory.worked(subject) - (before[index] ?? 0));
    };
    const text = yard(PAINT, AGAIN);
    // Pictures and emphasis once each, and three objects in each picture.
    expect(worked(text)).toEqual([2, 3, 6, 2, 2, 1]);
    expect(worked(text.replace('gate, dominant', 'gate, dominant\n  note "oak"'))).toEqual([
      0, 0, 0, 0, 0, 0,
    ]);
    expect(worked(text.replace('value   5', 'value   4'))).toEqual([0, 0, 0, 2, 0, 0]);
  });

  it('has maps in which only what changed is compared anew, and that are as without a memory', () => {
    let text = yard(PREPARE, PAINT).replace('(0, 0) to (60, 40)', '(0, 0) to (50, 30)');
    const pictures = photographsAt({
      'grey.jpg': photographOf(planOf(text), 0, { noise: 2, id: 'grey' }),
      'one.jpg': photographOf(planOf(text), 1, { noise: 2, id: 'one' }),
    });
    const memory = new Memory();
    const outlines = new OutlineCache();
    const isSame = (one: Float32Array, other: Float32Array | undefined) =>
      one.length === other?.length && one.every((number, index) => Object.is(number, other[index]));
    /** How many areas are compared anew after an edit. */
    const comparedAfter = (old: string, written: string): number => {
      text = text.replace(old, written);
      const before = memory.worked('colour differences');
      const [known, fresh] = [memory, undefined].map((kept) =>
        measure(planOf(text, { outlines }), kept, undefined, pictures).record?.sittings.map(figuresOf),
      );
      known?.forEach(({ planned, valueDifference, colourDifference }, index) => {
        expect(isSame(planned.lab, fresh?.[index]?.planned.lab)).toBe(true);
        expect(isSame(valueDifference, fresh?.[index]?.valueDifference)).toBe(true);
        expect(isSame(colourDifference, fresh?.[index]?.colourDifference)).toBe(true);
      });
      return memory.worked('colour differences') - before;
    };
    // Three objects and bare ground in each photograph.
    expect(comparedAfter('', '')).toBe(8);
    expect(comparedAfter('gate, dominant', 'gate, dominant\n  note "oak"')).toBe(0);
    // In the first the gate is not painted yet, and of the field its value alone counts.
    expect(comparedAfter('value   5', 'value   4.5')).toBe(1);
    expect(comparedAfter('straw\n  value   4\n', '#c83030\n  value   4\n')).toBe(1);
    // The bare ground of both, and the gate of the first.
    expect(comparedAfter('ground  #a08a6c', 'ground  #6c8aa0')).toBe(3);
    // The gate, the wall behind it, and the bare ground, which is what all of them leave.
    expect(comparedAfter('10 x 10', '8 x 10')).toBe(6);
  });

  it('compares greys where the value alone counts, and the bare ground with what stands there', () => {
    const text = yard(PREPARE).replace('(0, 0) to (60, 40)', '(0, 0) to (50, 30)');
    const { colourDifference, planned } = figuresOf(recordOf(text)[0]);
    const photograph = photographOf(planOf(text), 0, { noise: 1.5, id: 'grey.jpg' });
    const at = (lab: Float32Array, pixel: number, isGrey: boolean): Lab => {
      const [l = 0, a = 0, b = 0] = lab.subarray(3 * pixel, 3 * pixel + 3);
      return isGrey ? [l, 0, 0] : [l, a, b];
    };
    const met = new Set<number>();
    for (let pixel = 0; pixel < colourDifference.length; pixel += 97) {
      const object = planned.objects[pixel] ?? 0;
      const isGrey = object === 0 || object === 1;
      const [is, wanted] = [photograph, planned].map(({ lab }) => at(lab, pixel, isGrey)) as [Lab, Lab];
      expect(colourDifference[pixel]).toBeCloseTo(labDifference(wanted, is), 4);
      met.add(object);
    }
    expect([...met].sort()).toEqual([-1, 0, 1, 2]);
  });
});
