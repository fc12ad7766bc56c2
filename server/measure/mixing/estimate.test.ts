import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { labDifference } from '../../plan/colour/difference.js';
import { parseColour } from '../../plan/colour/colour.js';
import type { Lab } from '../../plan/colour/model.js';
import { estimateAbsorbing, estimateWhite, middlingScattering } from './estimate.js';
import { type Absorbing, mix, opaqueSpectrum } from './kubelka-munk.js';
import { TITANIUM_WHITE } from './paints.js';
import { labOfSpectrum } from './spectra/bands.js';
import { MEASURED_PAINTS } from './spectra/measured.js';
import { smoothSpectrum } from './spectra/smooth.js';

function colour(text: string): Lab {
  const reading = parseColour(text);
  if (!reading.ok) throw new Error(reading.reason);
  return reading.colour.lab;
}

/** So many parts of a paint in so many of titanium white. */
function tinted(paint: Absorbing, own: number, white: number): Lab {
  const portions = [
    { paint, parts: own },
    { paint: TITANIUM_WHITE, parts: white },
  ];
  return labOfSpectrum(opaqueSpectrum(mix(portions)));
}

const channel = fc.integer({ min: 16, max: 235 });
const shown = fc.tuple(channel, channel, channel).map(([r, g, b]) => colour(`rgb(${r} ${g} ${b})`));

describe('the smoothest spectrum of a colour', () => {
  it('has that colour, and reflects more than nothing and less than all of every band', () => {
    fc.assert(
      fc.property(shown, (lab) => {
        const spectrum = smoothSpectrum(lab);
        expect(Math.min(...spectrum)).toBeGreaterThan(0);
        expect(Math.max(...spectrum)).toBeLessThan(1);
        expect(labDifference(labOfSpectrum(spectrum), lab)).toBeLessThan(0.01);
      }),
      { numRuns: 60 },
    );
  });

  it('is even for a grey', () => {
    const spectrum = smoothSpectrum([60, 0, 0]);
    expect(Math.max(...spectrum) - Math.min(...spectrum)).toBeLessThan(1e-9);
  });

  it.each([
    ['black', [0, 0, 0]],
    ['white', [100, 0, 0]],
    ['a colour that no surface has', [50, 200, -200]],
    ['the light of a red laser', [20, 120, 100]],
  ] as const)('is found for %s, as near as a surface comes to it', (_, lab) => {
    const spectrum = smoothSpectrum([...lab]);
    expect([...spectrum].every((part) => part > 0 && part < 1)).toBe(true);
    expect(Math.abs(labOfSpectrum(spectrum)[0] - lab[0])).toBeLessThan(2);
  });
});

describe('a paint that is known by a full tone and a tint', () => {
  it('has that full tone, and its tint is as light as it was painted out', () => {
    fc.assert(
      fc.property(shown, fc.integer({ min: 3, max: 20 }), (full, white) => {
        const paint = estimateAbsorbing(full, undefined, TITANIUM_WHITE);
        const tint = tinted(paint, 1, white);
        const again = estimateAbsorbing(full, { lab: tint, paint: 1, white }, TITANIUM_WHITE);
        expect(Math.min(...again.s)).toBeGreaterThan(0);
        expect(labDifference(labOfSpectrum(opaqueSpectrum(again)), full)).toBeLessThan(0.01);
        expect(tinted(again, 1, white)[0]).toBeCloseTo(tint[0], 3);
      }),
      { numRuns: 25 },
    );
  });

  // How good the guess is, told by paints whose spectra are known: full tone and a tint of 1 to 10 go in, and other
  // tints are compared with those of the spectra. CIEDE2000; the worst are phthalo paints, whose spectra have steep
  // flanks.
  it.each(
    MEASURED_PAINTS.filter(({ index }) => index !== 'PW6').map(({ index, k, s }) => [index, k, s] as const),
  )('mixes with white nearly as the spectrum of %s does', (_, k, s) => {
    const real = { k: Float64Array.from(k), s: Float64Array.from(s) };
    const tint = { lab: tinted(real, 1, 10), paint: 1, white: 10 };
    const guess = estimateAbsorbing(tinted(real, 1, 0), tint, TITANIUM_WHITE);
    for (const white of [1, 3, 30]) {
      expect(labDifference(tinted(guess, 1, white), tinted(real, 1, white))).toBeLessThan(6);
    }
  });

  it('may have a tint that makes no sense, darker than the paint, and is still a paint', () => {
    const paint = estimateAbsorbing([60, 20, 20], { lab: [30, 10, 10], paint: 1, white: 9 }, TITANIUM_WHITE);
    expect([...paint.k, ...paint.s].every((figure) => Number.isFinite(figure) && figure > 0)).toBe(true);
  });
});

describe('a paint that is known by its full tone only', () => {
  it('is taken to scatter as a middling pigment', () => {
    const all = MEASURED_PAINTS.filter(({ index }) => index !== 'PW6').flatMap(({ s }) => s);
    const lower = all.filter((figure) => figure < middlingScattering()).length;
    expect(lower).toBe(all.length / 2);
    expect(estimateAbsorbing([40, 50, 30], undefined, TITANIUM_WHITE).s[5]).toBe(middlingScattering());
  });

  it('if a white, scatters as titanium white does', () => {
    const zinc = estimateWhite([96, 0, 2]);
    expect(new Set(zinc.s)).toEqual(new Set([1]));
    expect(labDifference(labOfSpectrum(opaqueSpectrum(zinc)), [96, 0, 2])).toBeLessThan(0.01);
  });
});
