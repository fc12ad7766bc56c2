import type { PDFDocument, PDFFont } from '@cantoo/pdf-lib';
import * as fontkit from 'fontkit';
import type { Face } from '../scene.js';

/** Files of fonts, TrueType or OpenType, as they are or as WOFF. */
export interface FontFiles {
  readonly text: Uint8Array;
  readonly strong: Uint8Array;
  readonly note: Uint8Array;
  /** For letters that the three lack, tried in their order. */
  readonly more: readonly Uint8Array[];
}

/** A font of a document. Only the letters that are set with it come into the file. */
export interface EmbeddedFont {
  readonly font: fontkit.Font;
  readonly embedded: PDFFont;
}

/** The fonts in which each face is set: its own, then those for letters that it lacks. */
export type EmbeddedFonts = Readonly<Record<Face, readonly EmbeddedFont[]>>;

/** The fonts ready to be set with. Bytes that are no font are found out by `readFont` before. */
export async function embedFonts(document: PDFDocument, files: FontFiles): Promise<EmbeddedFonts> {
  document.registerFontkit(fontkit);
  const embed = async (bytes: Uint8Array): Promise<EmbeddedFont> => {
    const font = readFont(bytes);
    if (font === undefined) throw new Error('A font that is to be embedded can not be read.');
    return { font, embedded: await document.embedFont(bytes, { subset: true }) };
  };
  const [text, strong, note] = await Promise.all([files.text, files.strong, files.note].map(embed));
  const more = await Promise.all(files.more.map(embed));
  const all = (first: EmbeddedFont | undefined) => [...(first === undefined ? [] : [first]), ...more];
  // The title is told by its size.
  return { text: all(text), title: all(text), strong: all(strong), note: all(note) };
}

export type FontReading =
  /** A sentence for the painter, without a full stop, to follow the name of the file. */
  { readonly ok: true } | { readonly ok: false; readonly reason: string };

/** Whether a file can be used in `more`. */
export function checkFont(bytes: Uint8Array): FontReading {
  const font = readFont(bytes);
  if (font === undefined) return { ok: false, reason: 'is no TrueType or OpenType font that can be read' };
  if (font['OS/2'].fsType.noEmbedding) {
    return { ok: false, reason: 'is a font that its makers do not allow to be put into documents' };
  }
  return { ok: true };
}

function readFont(bytes: Uint8Array): fontkit.Font | undefined {
  try {
    const read = fontkit.create(bytes as Buffer);
    // Of a collection the document would take the first as well.
    const font = 'fonts' in read ? read.fonts[0] : read;
    // Read up to here, a broken file may still lack what every letter needs.
    return font !== undefined && font.unitsPerEm > 0 && font.numGlyphs > 0 ? font : undefined;
  } catch {
    return undefined;
  }
}
