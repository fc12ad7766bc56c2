import * as lcms from 'lcms-wasm';
import { beforeAll, describe, expect, it } from 'vitest';
import { reasonInWords } from '../../../grammar/index.js';
import {
  adobeColumns,
  type CurveTag,
  makeProfile,
  type MadeProfile,
  srgbParameters,
} from '../../../tests/photographs/profiles.js';
import { readReferenceBytes } from '../../../tests/references/read.js';
import { type Lab } from '../../plan/colour/model.js';
import { labDifference } from '../../plan/colour/difference.js';
import { toLab } from '../convert.js';
import { readProfile } from './icc.js';
import { adaptation, apply, d50, d65, type Row } from './matrix.js';

let cms: lcms.LittleCms;
beforeAll(async () => {
  cms = await lcms.instantiate();
});

/** Six levels a channel, the ends included. */
const grid: readonly Row[] = [0, 0.1, 0.25, 0.5, 0.8, 1].flatMap((red, _, levels) =>
  levels.flatMap((green) => levels.map((blue): Row => [red, green, blue])),
);

/** CIELAB under D50 as Little CMS has it, in numbers with fractions and without a table of its own. */
function oracle(profile: Uint8Array, colours: readonly (readonly number[])[]): readonly Lab[] {
  const isGrey = colours[0]?.length === 1;
  // Its names are for numbers of eight bytes; what carries them here takes those of four.
  const inFourBytes = lcms.BYTES_SH(4);
  const transform = cms.cmsCreateTransform(
    cms.cmsOpenProfileFromMem(profile, profile.length),
    (isGrey ? lcms.TYPE_GRAY_DBL : lcms.TYPE_RGB_DBL) | inFourBytes,
    cms.cmsCreateLab4Profile(),
    lcms.TYPE_Lab_DBL | inFourBytes,
    lcms.INTENT_RELATIVE_COLORIMETRIC,
    lcms.cmsFLAGS_NOOPTIMIZE | lcms.cmsFLAGS_NOCACHE,
  );
  const out = cms.cmsDoTransform(transform, Float32Array.from(colours.flat()), colours.length);
  return colours.map((_, index): Lab => [
    out[3 * index] ?? 0,
    out[3 * index + 1] ?? 0,
    out[3 * index + 2] ?? 0,
  ]);
}

/** What is measured here, brought back under D50 as Little CMS has it. */
function measured(profile: Uint8Array, colours: readonly Row[]): readonly Lab[] {
  const answer = readProfile(profile);
  if (!answer.ok) throw new Error(reasonInWords(answer.reason));
  const { curves, toXyz } = answer.space;
  const back = adaptation(d65, d50);
  return colours.map(([red, green, blue]) => {
    const linear: Row = [curves[0](red), curves[1](green), curves[2](blue)];
    const [x, y, z] = apply(back, apply(toXyz, linear));
    // The formula is the same under any white once each is taken as a part of it.
    const rgb = Float32Array.from([(x / d50[0]) * d65[0], y, (z / d50[2]) * d65[2]]);
    const [l = 0, a = 0, b = 0] = toLab({ width: 1, height: 1, rgb }, [
      [1, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
    ]);
    return [l, a, b];
  });
}

function farthest(
  profile: Uint8Array,
  colours: readonly Row[] = grid,
  told = oracle(profile, colours),
): number {
  const own = measured(profile, colours);
  return Math.max(...own.map((lab, index) => labDifference(lab, told[index] ?? [0, 0, 0])));
}

const three = (curve: CurveTag): MadeProfile['curves'] => [curve, curve, curve];

describe('a colour profile of curves and a matrix', () => {
  it.each<readonly [string, MadeProfile]>([
    ['a straight line', { curves: three({ levels: [] }) }],
    ['a gamma in 256ths', { curves: three({ gamma: 2 + 51 / 256 }), columns: adobeColumns }],
    ['a gamma in version 2', { curves: three({ gamma: 1.8 }), version: 2 }],
    ['a table', { curves: three({ levels: Array.from({ length: 1024 }, (_, at) => (at / 1023) ** 2.2) }) }],
    ['a short table', { curves: three({ levels: [0, 0.1, 0.35, 1] }) }],
    ['a curve for each channel', { curves: [{ gamma: 2.2 }, { gamma: 1.8 }, { kind: 0, numbers: [2.4] }] }],
    ['parameters of kind 0', { curves: three({ kind: 0, numbers: [2.2] }) }],
    ['parameters of kind 1', { curves: three({ kind: 1, numbers: [2.2, 1.1, -0.1] }) }],
    ['parameters of kind 2', { curves: three({ kind: 2, numbers: [2.2, 0.9, -0.05, 0.1] }) }],
    ['parameters of kind 3, as in sRGB', { curves: three({ kind: 3, numbers: [...srgbParameters] }) }],
    [
      'parameters of kind 4',
      { curves: three({ kind: 4, numbers: [2.4, 0.9, 0.05, 0.08, 0.05, 0.01, 0.002] }) },
    ],
  ])('with %s gives what Little CMS gives, to 0.02 of CIEDE2000', (_, made) => {
    expect(farthest(makeProfile(made))).toBeLessThan(0.02);
  });

  it('of Display P3, from elsewhere, too', () => {
    const profile = readReferenceBytes('DisplayP3.icm');
    expect(farthest(profile)).toBeLessThan(0.02);
    const answer = readProfile(profile);
    expect(answer.ok && answer.space.name).toBe('DisplayP3 color profile');
  });

  it.each(['XYZ ', 'Lab '])('for grey is read by its one curve (%s)', (connection) => {
    const profile = makeProfile({ space: 'GRAY', connection, curves: [{ gamma: 2.2 }] });
    const levels = [0, 0.1, 0.3, 0.6, 1];
    const told = oracle(
      profile,
      levels.map((level) => [level]),
    );
    expect(
      farthest(
        profile,
        levels.map((level): Row => [level, level, level]),
        told,
      ),
    ).toBeLessThan(0.02);
  });
});

describe('a profile that can’t be read', () => {
  const good = makeProfile({ curves: three({ gamma: 2.2 }) });
  const reasonFor = (bytes: Uint8Array) => {
    const answer = readProfile(bytes);
    return answer.ok ? 'it was read' : reasonInWords(answer.reason);
  };

  it.each<readonly [string, Uint8Array, string]>([
    ['nothing', new Uint8Array(), 'is broken'],
    ['noise', Uint8Array.from({ length: 500 }, (_, at) => (at * 7919) % 256), 'is broken'],
    ['a head alone', good.subarray(0, 140), 'is broken'],
    ['inks', makeProfile({ space: 'CMYK', curves: [] }), 'is for inks of a press (CMYK)'],
    [
      'tables',
      makeProfile({ curves: [], columns: [], tags: [['A2B0', new Uint8Array(40)]] }),
      'is made of tables',
    ],
    ['no curves', makeProfile({ curves: [] }), 'is broken'],
    [
      'black primaries',
      makeProfile({
        curves: three({ gamma: 2 }),
        columns: [
          [0, 0, 0],
          [0, 0, 0],
          [0, 0, 0],
        ],
      }),
      'is broken',
    ],
    ['an unknown curve', makeProfile({ curves: three({ kind: 7 as 4, numbers: [1] }) }), 'is broken'],
  ])('%s is refused in words', (_, bytes, words) => {
    expect(reasonFor(bytes)).toContain(words);
    expect(reasonFor(bytes)).toMatch(/Save the photograph anew in sRGB or Display P3\.$/);
  });

  it('does not throw wherever it is cut off or spoilt', () => {
    for (let length = 0; length < good.length; length++)
      expect(() => readProfile(good.subarray(0, length))).not.toThrow();
    for (let at = 0; at < good.length; at++) {
      const spoilt = Uint8Array.from(good);
      spoilt[at] = 0xff;
      expect(() => readProfile(spoilt)).not.toThrow();
    }
  });

  it('keeps what can’t be said in a sentence out of its name', () => {
    const profile = makeProfile({
      curves: three({ gamma: 2.2 }),
      name: `<b>\u0007\u202eP3\n${'x'.repeat(200)}`,
    });
    const answer = readProfile(profile);
    expect(answer.ok && answer.space.name).toBe(`<b>P3${'x'.repeat(200)}`.slice(0, 57));
  });
});
