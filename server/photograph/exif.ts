import { latin, viewOf } from './head/bytes.js';

/** What the camera tells of a photograph, as far as it is needed here. */
export interface CameraFacts {
  /** 1 to 8: how the stored picture is to be turned (CIPA DC-008, section 4.6.5.1). */
  readonly orientation: number;
  /** ISO 8601 date on which it was taken. */
  readonly taken?: string;
  readonly colours?: 'sRGB' | 'Adobe RGB (1998)';
}

const tag = {
  orientation: 0x0112,
  exif: 0x8769,
  taken: 0x9003,
  digitised: 0x9004,
  space: 0xa001,
  interop: 0xa005,
  rule: 1,
};
const typeSize: Readonly<Record<number, number>> = { 1: 1, 2: 1, 3: 2, 4: 4, 7: 1 };
/** A directory of a camera has some dozens. */
const MOST_ENTRIES = 1_000;

/**
 * Four facts out of the TIFF structure that Exif is (CIPA DC-008, TIFF 6.0 section 2). Three directories are looked at,
 * each once, and nothing is read beyond the bytes given; what is broken is as if it were not there. Never throws.
 */
export function cameraFacts(tiff: Uint8Array | undefined): CameraFacts {
  if (tiff === undefined) return { orientation: 1 };
  try {
    return factsIn(tiff);
  } catch (error) {
    if (error instanceof RangeError) return { orientation: 1 };
    throw error;
  }
}

function factsIn(tiff: Uint8Array): CameraFacts {
  const order = latin(tiff, 0, 2);
  const isLittle = order === 'II';
  const view = viewOf(tiff);
  if ((!isLittle && order !== 'MM') || view.getUint16(2, isLittle) !== 42) return { orientation: 1 };
  const first = directoryAt(tiff, view.getUint32(4, isLittle), isLittle);
  const number = first.get(tag.orientation)?.number ?? 1;
  const camera = directoryAt(tiff, first.get(tag.exif)?.number, isLittle);
  const interop = directoryAt(tiff, camera.get(tag.interop)?.number, isLittle);
  const taken = dateIn(camera.get(tag.taken)?.text) ?? dateIn(camera.get(tag.digitised)?.text);
  const colours = coloursIn(camera.get(tag.space)?.number, interop.get(tag.rule)?.text);
  return {
    orientation: number >= 1 && number <= 8 ? number : 1,
    ...(taken ? { taken } : {}),
    ...(colours ? { colours } : {}),
  };
}

interface Entry {
  readonly number: number;
  readonly text: string;
}

/** The entries of a directory by their tags; none where there is no such place. */
function directoryAt(
  tiff: Uint8Array,
  offset: number | undefined,
  isLittle: boolean,
): ReadonlyMap<number, Entry> {
  const entries = new Map<number, Entry>();
  if (offset === undefined || offset < 8 || offset + 2 > tiff.length) return entries;
  const view = viewOf(tiff);
  const count = Math.min(MOST_ENTRIES, view.getUint16(offset, isLittle));
  for (let index = 0; index < count; index++) {
    const at = offset + 2 + 12 * index;
    if (at + 12 > tiff.length) break;
    const type = view.getUint16(at + 2, isLittle);
    const length = (typeSize[type] ?? 0) * view.getUint32(at + 4, isLittle);
    const place = length > 4 ? view.getUint32(at + 8, isLittle) : at + 8;
    entries.set(view.getUint16(at, isLittle), {
      number: type === 3 ? view.getUint16(at + 8, isLittle) : view.getUint32(at + 8, isLittle),
      text: type === 2 || type === 7 ? latin(tiff, place, Math.min(length, 32)) : '',
    });
  }
  return entries;
}

/** `2026:11:30 08:05:09`; a camera whose clock was never set has noughts there. */
function dateIn(text = ''): string | undefined {
  const [, year, month, day] = /^(\d{4}):(\d{2}):(\d{2})/.exec(text) ?? [];
  if (year === undefined || month === undefined || day === undefined) return undefined;
  const date = new Date(Date.UTC(Number(year), Number(month) - 1, Number(day)));
  const written = `${year}-${month}-${day}`;
  return Number(year) > 0 && date.toISOString().startsWith(written) ? written : undefined;
}

/** CIPA DC-008, section 4.6.6.2, and CIPA DC-009 (the rule R03); 2 is what some cameras write for Adobe RGB. */
function coloursIn(space: number | undefined, rule = ''): CameraFacts['colours'] {
  if (space === 2 || (space !== 1 && rule.startsWith('R03'))) return 'Adobe RGB (1998)';
  return space === 1 ? 'sRGB' : undefined;
}
