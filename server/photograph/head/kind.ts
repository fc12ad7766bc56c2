import { marked } from '../../../grammar/marked.js';
import { latin } from './bytes.js';

export type PictureType = 'JPEG' | 'PNG' | 'WebP';

export type KindAnswer =
  { readonly ok: true; readonly type: PictureType } | { readonly ok: false; readonly reason: string };

/** What a file is by its first bytes, whatever it is called; what can't be read here is refused with what to do. */
export function kindOf(bytes: Uint8Array): KindAnswer {
  const type = readable.find(([, begins]) => begins(bytes))?.[0];
  return type === undefined ? { ok: false, reason: refusalFor(bytes) } : { ok: true, type };
}

const readable: readonly (readonly [PictureType, (bytes: Uint8Array) => boolean])[] = [
  ['JPEG', (bytes) => latin(bytes, 0, 3) === '\xff\xd8\xff'],
  ['PNG', (bytes) => latin(bytes, 0, 8) === '\x89PNG\r\n\x1a\n'],
  ['WebP', (bytes) => latin(bytes, 0, 4) === 'RIFF' && latin(bytes, 8, 4) === 'WEBP'],
];

function refusalFor(bytes: Uint8Array): string {
  if (bytes.length === 0) return marked('This file is empty. It may not have been copied to its end.');
  const brand = latin(bytes, 4, 4) === 'ftyp' ? latin(bytes, 8, 4) : undefined;
  if (brand !== undefined) return refusalForBrand(brand);
  const found = foreign.find(([begins]) => begins.test(latin(bytes, 0, 64)));
  return found?.[1] ?? marked('This is no picture that is known here: JPEG, PNG and WebP can be read.');
}

/** Files made of boxes say what they are by four letters (ISO/IEC 14496-12, section 4.3). */
function refusalForBrand(brand: string): string {
  if (/^(?:heic|heix|heim|heis|hevc|hevx|mif1|msf1)$/.test(brand))
    return marked(
      'This is a HEIC photograph, as many phones take them. Save a copy as JPEG and name that one; a phone takes JPEG at once when it is set to the most compatible format.',
    );
  if (/^avi[fs]$/.test(brand))
    return marked('This is an AVIF. Open it in a program for photographs and save it as a JPEG.');
  if (brand === 'crx ') return RAW;
  return marked(
    'This is a film, or a photograph in a format that is not known here: JPEG, PNG and WebP can be read.',
  );
}

const RAW = marked(
  'This is a raw photograph, as the sensor of a camera gives it. Develop it in a program for photographs and save it as a JPEG.',
);

/** By their first bytes. */
const foreign: readonly (readonly [RegExp, string])[] = [
  // Raw photographs of several makers are TIFF files with marks of their own, so these come first.
  [/^(?:II\*\0[^]{4}CR|FUJIFILMCCD-RAW|IIR[OS]|MMOR|IIU\0)/, RAW],
  [
    /^(?:II\*\0|MM\0\*)/,
    marked(
      'This is a TIFF or a raw photograph. Open it in a program for photographs and save it as a JPEG, or as a PNG.',
    ),
  ],
  [
    /^GIF8/,
    marked(
      'This is a GIF, which has 256 colours at most. Use the photograph that it was made from, as a JPEG.',
    ),
  ],
  [/^BM/, marked('This is a BMP. Open it in a program for photographs and save it as a JPEG, or as a PNG.')],
  [
    /^8BPS/,
    marked(
      'This is a file of a painting program with its layers. Save a copy without layers as a JPEG or a PNG.',
    ),
  ],
  [
    /^(?:\xff\x0a|\0\0\0\x0cJXL )/,
    marked('This is a JPEG XL. Open it in a program for photographs and save it as a JPEG.'),
  ],
  [
    /^(?:\0\0\0\x0cjP {2}|\xff\x4f\xff\x51)/,
    marked('This is a JPEG 2000. Open it in a program for photographs and save it as a JPEG.'),
  ],
  [/^%PDF/, marked('This is a PDF. Save the photograph in it as a JPEG.')],
  [
    /^(?:\xef\xbb\xbf)?\s*<(?:\?xml|svg|!)/i,
    marked('This is a drawing or a page written as text, not a photograph.'),
  ],
];
