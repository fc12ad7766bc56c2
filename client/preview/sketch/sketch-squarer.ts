import type { SketchPlace } from '../../../server/drawing/scene.js';
import { pictureHeader } from './sketch-header.js';
import { squareUp, squaringOf } from './sketch-squaring.js';

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
  // Before anything is decoded: what is small in a file may be huge in memory.
  const header = pictureHeader(bytes);
  if (!header.ok) return header;
  let bitmap: ImageBitmap;
  try {
    bitmap = await createImageBitmap(new Blob([bytes]));
  } catch {
    return { ok: false, reason: `This ${header.format} is damaged, or of a kind that can’t be shown.` };
  }
  try {
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
  } catch {
    return { ok: false, reason: 'There is not room enough in memory to show it.' };
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
