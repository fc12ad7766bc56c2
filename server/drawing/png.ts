/** What became of painting a drawing as pixels. */
export type PngResult =
  | {
      readonly ok: true;
      readonly png: Uint8Array;
      /** Pixels. */
      readonly width: number;
      readonly height: number;
      /** The drawing has text and the system has no font, so the text is missing. */
      readonly textMissing: boolean;
    }
  /** A sentence for a painter. */
  | { readonly ok: false; readonly reason: string };

/** About what fits into the memory of a small machine: 400 MB at four bytes a pixel. */
const MOST_PIXELS = 100_000_000;

/** Any letter: without a font it leaves nothing behind. */
const LETTER =
  '<svg xmlns="http://www.w3.org/2000/svg" width="20" height="20"><text y="15" font-size="15">M</text></svg>';

/**
 * The text of an SVG file as a PNG image `width` pixels wide, with the fonts of the system. The painting library is
 * native code and is loaded on the first call only. Scripts whose letters join or stack may come out less well set
 * than in a browser.
 */
export async function pngOf(svg: string, width: number): Promise<PngResult> {
  if (!Number.isInteger(width) || width < 1) {
    return { ok: false, reason: `A picture can't be ${width} pixels wide; a whole number from 1 is needed.` };
  }
  const proportion = proportionOf(svg);
  if (proportion === undefined) return { ok: false, reason: 'The drawing has no size.' };
  if (width * width * proportion > MOST_PIXELS) {
    const most = Math.floor(Math.sqrt(MOST_PIXELS / proportion));
    return {
      ok: false,
      reason: `That is too large to paint; this drawing can be ${most} pixels wide at most.`,
    };
  }
  const { Resvg } = await import('@resvg/resvg-js');
  const textMissing = svg.includes('<text') && new Resvg(LETTER).innerBBox() === undefined;
  const image = new Resvg(svg, { fitTo: { mode: 'width', value: width } }).render();
  return { ok: true, png: image.asPng(), width: image.width, height: image.height, textMissing };
}

/** Height by width, from the `viewBox`. */
function proportionOf(svg: string): number | undefined {
  const [, box = ''] = /\bviewBox="([^"]*)"/.exec(svg) ?? [];
  const [, , width = 0, height = 0] = box.split(' ').map(Number);
  return width > 0 && height > 0 ? height / width : undefined;
}
