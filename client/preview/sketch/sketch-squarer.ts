import { t } from '../../../grammar/localised.js';
import type { SketchPlace } from '../../../server/drawing/scene.js';
import { pictureHeader } from './sketch-header.js';
import { type Size, squareUp, squaringOf } from './sketch-squaring.js';

/** Pixels of the longer side of a sketch as it was taken: a corner is found in it to a pixel or two. */
const LONGEST_TAKEN = 3_000;

export type Squared =
  | { readonly ok: true; readonly picture: Blob }
  /** Shown to the painter: a sentence in plain words. */
  | { readonly ok: false; readonly reason: string };

/**
 * A sketch as it lies on the canvas, from the bytes of its file.
 * @param across how many times as wide as high the canvas is
 */
export async function squaredSketch(
  bytes: Uint8Array<ArrayBuffer>,
  corners: readonly SketchPlace[],
  across: number,
): Promise<Squared> {
  return withBitmap(bytes, async (bitmap) => {
    const squaring = squaringOf(bitmap, corners, across);
    if (!squaring.ok) return squaring;
    const { part, reduced, out, map } = squaring;
    const source = canvasOf(reduced.width, reduced.height);
    source.imageSmoothingQuality = 'high';
    source.drawImage(bitmap, part.x, part.y, part.width, part.height, 0, 0, reduced.width, reduced.height);
    const made = squareUp(source.getImageData(0, 0, reduced.width, reduced.height), map, out);
    const squared = canvasOf(out.width, out.height);
    squared.putImageData(new ImageData(made, out.width, out.height), 0, 0);
    return { ok: true, picture: await blobOf(squared.canvas) };
  });
}

/** A sketch as it was taken, no larger than a page needs, with the size that its corners are counted in. */
export async function takenSketch(
  bytes: Uint8Array<ArrayBuffer>,
): Promise<(Extract<Squared, { ok: true }> & Size) | Extract<Squared, { ok: false }>> {
  return withBitmap(bytes, async (bitmap) => {
    const { width, height } = bitmap;
    const scale = Math.min(1, LONGEST_TAKEN / Math.max(width, height));
    const taken = canvasOf(Math.max(1, Math.round(width * scale)), Math.max(1, Math.round(height * scale)));
    taken.imageSmoothingQuality = 'high';
    taken.drawImage(bitmap, 0, 0, taken.canvas.width, taken.canvas.height);
    return { ok: true, picture: await blobOf(taken.canvas), width, height };
  });
}

async function withBitmap<T>(
  bytes: Uint8Array<ArrayBuffer>,
  work: (bitmap: ImageBitmap) => Promise<T>,
): Promise<T | Extract<Squared, { ok: false }>> {
  // Before anything is decoded: what is small in a file may be huge in memory.
  const header = pictureHeader(bytes);
  if (!header.ok) return header;
  let bitmap: ImageBitmap;
  try {
    bitmap = await createImageBitmap(new Blob([bytes]));
  } catch {
    return { ok: false, reason: t('This {0} is damaged, or of a kind that can’t be shown.', header.format) };
  }
  try {
    return await work(bitmap);
  } catch {
    return { ok: false, reason: t('There is not room enough in memory to show it.') };
  } finally {
    bitmap.close();
  }
}

function canvasOf(width: number, height: number): CanvasRenderingContext2D {
  const canvas = document.createElement('canvas');
  canvas.width = width;
  canvas.height = height;
  const context = canvas.getContext('2d', { willReadFrequently: true });
  if (context === null) throw new Error('No canvas to draw on.');
  return context;
}

function blobOf(canvas: HTMLCanvasElement): Promise<Blob> {
  return new Promise((resolve, reject) => {
    canvas.toBlob((blob) => (blob === null ? reject(new Error('No picture was made.')) : resolve(blob)));
  });
}
