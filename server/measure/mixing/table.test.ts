import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { labDifference } from '../../plan/colour/difference.js';
import { type Lab, labChroma, labHueDegrees } from '../../plan/colour/model.js';
import { mix, opaqueSpectrum } from './kubelka-munk.js';
import { blocksOf, everyColour, type MixingPaint, partsAt, type PaintSet } from './mixtures.js';
import { measuredPaint } from './paints.js';
import { MOST_MIXTURES } from './recipes.js';
import { labOfSpectrum } from './spectra/bands.js';
import { MEASURED_PAINTS } from './spectra/measured.js';
import { goodUpTo, MixtureTable } from './table.js';

function paints(...indices: readonly string[]): readonly MixingPaint[] {
  return indices.flatMap((index) => measuredPaint(index) ?? []);
}

function tableOf(set: PaintSet): MixtureTable {
  const building = MixtureTable.build(set);
  for (;;) {
    const piece = building.next();
    if (piece.done) return piece.value;
  }
}

function all(set: PaintSet) {
  const blocks = blocksOf(set);
  const colours: { parts: ReturnType<typeof partsAt>; lab: Lab }[] = [];
  const working = everyColour(set, blocks, (lightness, a, b, mixture) => {
    colours.push({ parts: partsAt(blocks, mixture), lab: [lightness, a, b] });
  });
  while (!working.next().done);
  return colours;
}

const commonDivisor = (one: number, other: number): number =>
  other === 0 ? one : commonDivisor(other, one % other);

const FEW = paints('PW6', 'PY151', 'PR122', 'PB15:4');

const SPLIT = paints('PW6', 'PY151', 'PY83', 'PR170', 'PR122', 'PB15:2', 'PB15:4');

describe('the mixtures of a palette', () => {
  it('are each of one to three coloured paints and perhaps white, in whole parts and lowest terms, and none is there twice', () => {
    const mixtures = all({ paints: FEW, required: [] });
    const names = new Set(
      mixtures.map(({ parts }) => parts.map((each) => `${each.paint}:${each.parts}`).join()),
    );
    expect(names.size).toBe(mixtures.length);
    const counts = mixtures.map(({ parts }) => parts.map((each) => each.parts));
    expect(counts.flat().every((count) => Number.isInteger(count) && count > 0)).toBe(true);
    expect(counts.every((each) => each.reduce(commonDivisor, 0) === 1)).toBe(true);
    expect(mixtures.every(({ parts }) => parts.filter((each) => each.paint !== 0).length <= 3)).toBe(true);
    for (const kind of ['0:1', '1:1', '1:1,0:1', '2:3,0:2', '1:1,2:1,3:1', '1:1,2:36,3:4,0:5']) {
      expect(names).toContain(kind);
    }
  });

  it('have the colours that mixing part by part gives', () => {
    const mixtures = all({ paints: FEW, required: [] });
    for (let at = 0; at < mixtures.length; at += 397) {
      const { parts, lab } = mixtures[at] ?? { parts: [], lab: [0, 0, 0] as const };
      const portions = parts.flatMap((each) => {
        const tube = FEW[each.paint];
        return tube ? [{ paint: tube.absorbing, parts: each.parts }] : [];
      });
      const own = labOfSpectrum(opaqueSpectrum(mix(portions)));
      own.forEach((figure, axis) => expect(lab[axis]).toBeCloseTo(figure, 9));
    }
  });

  it('all hold the mother colour where there is one, which is one of the three', () => {
    const mother = 4;
    const mixtures = all({ paints: SPLIT, required: [mother] });
    expect(mixtures.length).toBeGreaterThan(1000);
    expect(mixtures.every(({ parts }) => parts.some((each) => each.paint === mother))).toBe(true);
    expect(mixtures.every(({ parts }) => parts.filter((each) => each.paint !== 0).length <= 3)).toBe(true);
  });

  it('each hold a white where the mother colour is one, and no two whites', () => {
    const zinc = { ...(measuredPaint('PW6') ?? SPLIT[0]), key: 'zinc' } as MixingPaint;
    const set = { paints: [...paints('PW6', 'PY151', 'PR170'), zinc], required: [3] };
    const whites = all(set).map(({ parts }) =>
      parts.map((each) => each.paint).filter((paint) => [0, 3].includes(paint)),
    );
    expect(new Set(whites.map(String))).toEqual(new Set(['3']));
  });

  it('are bounded in number, however many paints there are', () => {
    const many = (count: number): MixingPaint[] =>
      Array.from({ length: count }, (_, index) => ({
        ...(SPLIT[index % SPLIT.length] as MixingPaint),
        key: String(index),
        isWhite: index % 50 === 0,
      }));
    for (const count of [13, 20, 60, 300]) {
      expect(blocksOf({ paints: many(count), required: [] }).count).toBeLessThanOrEqual(MOST_MIXTURES);
    }
    expect(blocksOf({ paints: many(13), required: [] }).count).toBeGreaterThan(100_000);
  });
});

describe('the nearest mixture', () => {
  const sets: readonly PaintSet[] = [
    { paints: paints('PW6', 'PY42', 'PR101', 'PBk7'), required: [] },
    { paints: FEW, required: [] },
    { paints: paints('PY83', 'PG7'), required: [1] },
  ];
  const lab = fc.tuple(
    fc.double({ min: 0, max: 100, noNaN: true }),
    fc.double({ min: -80, max: 80, noNaN: true }),
    fc.double({ min: -80, max: 80, noNaN: true }),
  ) as fc.Arbitrary<Lab>;

  it.each(sets.map((set) => [set.paints.map(({ key }) => key).join(', '), set] as const))(
    'is that which going through all of %s finds',
    (_, set) => {
      const table = tableOf(set);
      const mixtures = all(set);
      expect(table.count).toBe(mixtures.length);
      fc.assert(
        fc.property(lab, (wanted) => {
          const found = table.nearest(wanted);
          const differences = mixtures.map((each) => labDifference(wanted, each.lab));
          const least = Math.min(...differences);
          const good = mixtures.filter((__, at) => (differences[at] ?? Infinity) <= goodUpTo(least) - 1e-4);
          const fewest = Math.min(...good.map(({ parts }) => parts.length));
          // Colours are kept to seven digits, hence the slack.
          expect(found?.difference).toBeLessThanOrEqual(goodUpTo(least) + 1e-4);
          expect(found?.difference).toBeGreaterThanOrEqual(least - 1e-4);
          expect(found?.parts.length).toBeLessThanOrEqual(fewest);
        }),
        { numRuns: 25 },
      );
    },
  );

  it('of a paint’s own full tone is that paint alone', () => {
    const table = tableOf({ paints: SPLIT, required: [] });
    SPLIT.forEach(({ absorbing }, paint) => {
      const found = table.nearest(labOfSpectrum(opaqueSpectrum(absorbing)));
      expect(found?.parts).toEqual([{ paint, parts: 1 }]);
      expect(found?.difference).toBeLessThan(1e-3);
    });
  });

  // In 3,000 such colours the worst was 1.74 off.
  it('reaches what the paints make in any parts to a difference that is hardly to be seen', () => {
    const table = tableOf({ paints: SPLIT, required: [] });
    const parts = fc.double({ min: 0, max: 3.2, noNaN: true }).map(Math.exp);
    fc.assert(
      fc.property(
        fc.shuffledSubarray([1, 2, 3, 4, 5, 6], { minLength: 1, maxLength: 3 }),
        fc.array(parts, { minLength: 4, maxLength: 4 }),
        (chosen, [white = 1, ...counts]) => {
          const portions = [0, ...chosen].flatMap((paint, at) => {
            const tube = SPLIT[paint];
            return tube ? [{ paint: tube.absorbing, parts: [white, ...counts][at] ?? 1 }] : [];
          });
          const wanted = labOfSpectrum(opaqueSpectrum(mix(portions)));
          expect(table.nearest(wanted)?.difference).toBeLessThan(2.5);
        },
      ),
      { numRuns: 40 },
    );
  });

  it('is nothing where there are no paints', () => {
    expect(tableOf({ paints: [], required: [] }).nearest([50, 0, 0])).toBeUndefined();
  });
});

describe('the reach of a palette', () => {
  it('is the strongest mixture near each hue', () => {
    const set = { paints: FEW, required: [] };
    const { reach } = tableOf(set);
    const strongest = Array.from(reach, () => 0);
    for (const { lab } of all(set)) {
      const at = Math.round(labHueDegrees(lab) / 5) % 72;
      strongest[at] = Math.max(strongest[at] ?? 0, labChroma(lab));
    }
    reach.forEach((chroma, at) => expect(chroma).toBeCloseTo(strongest[at] ?? NaN, 6));
  });

  it('grows with every paint that is added', () => {
    const few = tableOf({ paints: paints('PW6', 'PY42', 'PR101'), required: [] }).reach;
    const more = tableOf({ paints: paints('PW6', 'PY42', 'PR101', 'PB15:4'), required: [] }).reach;
    few.forEach((chroma, at) => expect(more[at]).toBeGreaterThanOrEqual(chroma));
    expect(MEASURED_PAINTS.length).toBeGreaterThan(4);
  });
});
