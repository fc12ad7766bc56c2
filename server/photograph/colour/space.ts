import { marked } from '../../../grammar/marked.js';
import type { NoPhotograph } from '../../measure/photograph/photographs.js';
import { linearChannel } from '../../plan/colour/srgb-curve.js';
import type { CameraFacts } from '../exif.js';
import type { HeldProfile, PictureHead, SpokenColours } from '../head/picture-head.js';
import { type Curve, filmCurve, gammaCurve } from './curve.js';
import { type ColourSpace, readProfile } from './icc.js';
import { type Chromaticity, adaptation, d65, fromPrimaries, times, whiteOf } from './matrix.js';

export type StatedSpace =
  { readonly ok: true; readonly space: ColourSpace; readonly isStated: boolean } | NoPhotograph;

type Primaries = readonly [Chromaticity, Chromaticity, Chromaticity];

/** IEC 61966-2-1; ITU-R BT.2020-2; SMPTE RP 431-2; Adobe RGB (1998) Color Image Encoding, section 4.3.1.1. */
const primaries = {
  srgb: [
    [0.64, 0.33],
    [0.3, 0.6],
    [0.15, 0.06],
  ],
  p3: [
    [0.68, 0.32],
    [0.265, 0.69],
    [0.15, 0.06],
  ],
  wide: [
    [0.708, 0.292],
    [0.17, 0.797],
    [0.131, 0.046],
  ],
  adobe: [
    [0.64, 0.33],
    [0.21, 0.71],
    [0.15, 0.06],
  ],
} as const satisfies Readonly<Record<string, Primaries>>;

/** Unpacked profiles larger than this are not looked at. */
const MOST_PROFILE_BYTES = 4 * 1024 * 1024;

export const srgb = spaceOf('sRGB', primaries.srgb, linearChannel);

/**
 * How the colours of a photograph are to be read. A profile goes before what a PNG or the camera says otherwise; in a
 * PNG, `cICP` goes before a profile (PNG, third edition, section 4.3). Where nothing is said, sRGB is taken.
 */
export async function spaceFor(head: PictureHead, facts: CameraFacts): Promise<StatedSpace> {
  const { profile, spoken } = head;
  if (spoken?.cicp) return spaceByNumbers(spoken.cicp);
  if (profile) return spaceByProfile(profile, head.isGrey);
  const named = (spoken && spaceByChunks(spoken)) ?? spaceByCamera(facts);
  return named ? { ok: true, space: named, isStated: true } : { ok: true, space: srgb, isStated: false };
}

async function spaceByProfile(held: HeldProfile, isGrey: boolean): Promise<StatedSpace> {
  const bytes = held.isDeflated ? await inflated(held.bytes) : held.bytes;
  const answer = bytes ? readProfile(bytes) : undefined;
  if (answer === undefined)
    return {
      ok: false,
      reason: marked('The colour profile in this photograph can’t be unpacked. Save it anew in sRGB.'),
    };
  if (!answer.ok) return answer;
  if (answer.space.isGrey && !isGrey)
    return {
      ok: false,
      reason: marked(
        'This photograph is in colour, and its colour profile is for grey. Save it anew in sRGB.',
      ),
    };
  return { ok: true, space: answer.space, isStated: true };
}

/** ITU-T H.273, tables 2 and 3. */
function spaceByNumbers({
  primaries: place,
  transfer,
  isRgb,
}: NonNullable<SpokenColours['cicp']>): StatedSpace {
  const [name, triangle] = new Map<number, readonly [string, Primaries]>([
    [1, ['sRGB', primaries.srgb]],
    [9, ['Rec. 2020', primaries.wide]],
    [12, ['Display P3', primaries.p3]],
  ]).get(place) ?? [undefined, undefined];
  const curve = new Map<number, Curve>([
    [1, filmCurve],
    [4, gammaCurve(2.2)],
    [6, filmCurve],
    [8, gammaCurve(1)],
    [13, linearChannel],
    [14, filmCurve],
    [15, filmCurve],
  ]).get(transfer);
  if (name === undefined || curve === undefined || !isRgb) {
    const reason =
      transfer === 16 || transfer === 18
        ? marked('This PNG is for screens of high dynamic range. Save it for usual screens, in sRGB.')
        : marked('The colours of this PNG are told in a way that is not known here. Save it anew in sRGB.');
    return { ok: false, reason };
  }
  return { ok: true, space: spaceOf(name, triangle, curve), isStated: true };
}

function spaceByChunks({ isSrgb, gamma, chromaticities }: SpokenColours): ColourSpace | undefined {
  if (isSrgb) return srgb;
  if (gamma === undefined || !(gamma > 0.05 && gamma < 20)) return undefined;
  const curve = gammaCurve(1 / gamma);
  const [white, red, green, blue] = chromaticities ?? [];
  const named = `gamma ${(1 / gamma).toFixed(2)}`;
  if (!white || !red || !green || !blue) return spaceOf(`sRGB primaries, ${named}`, primaries.srgb, curve);
  if (!(white[1] > 1e-6)) return undefined;
  const toOwn = fromPrimaries([red, green, blue], whiteOf(white));
  if (toOwn === undefined) return undefined;
  return {
    name: `its own primaries, ${named}`,
    curves: [curve, curve, curve],
    toXyz: times(adaptation(whiteOf(white), d65), toOwn),
    isGrey: false,
  };
}

function spaceByCamera({ colours }: CameraFacts): ColourSpace | undefined {
  if (colours === 'sRGB') return srgb;
  // Section 4.3.4.2 of its encoding: the gamma is 2 and 51 256ths.
  return colours && spaceOf(colours, primaries.adobe, gammaCurve(2 + 51 / 256));
}

/** Of primaries with the white D65. */
function spaceOf(name: string, triangle: Primaries, curve: Curve): ColourSpace {
  const toXyz = fromPrimaries(triangle, d65);
  if (toXyz === undefined) throw new Error(`The primaries of ${name} lie in a line.`);
  return { name, curves: [curve, curve, curve], toXyz, isGrey: false };
}

/** Unpacks what zlib has packed; nothing where it is broken or holds too much. */
async function inflated(bytes: Uint8Array): Promise<Uint8Array | undefined> {
  const parts: Uint8Array[] = [];
  let length = 0;
  try {
    const reader = new Blob([Uint8Array.from(bytes)])
      .stream()
      .pipeThrough(new DecompressionStream('deflate'))
      .getReader();
    for (;;) {
      const { done, value } = await reader.read();
      if (done) break;
      length += value.length;
      if (length > MOST_PROFILE_BYTES) {
        await reader.cancel();
        return undefined;
      }
      parts.push(value);
    }
  } catch {
    return undefined;
  }
  const whole = new Uint8Array(length);
  parts.reduce((at, part) => (whole.set(part, at), at + part.length), 0);
  return whole;
}
