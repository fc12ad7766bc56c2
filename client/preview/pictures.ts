import { bytesOfPicture } from '../../server/drawing/picture-data.js';
import type { PictureData, Scene } from '../../server/drawing/scene.js';

/**
 * Pictures of a drawing as addresses that the page may show: it shows what it has made itself only. One that is no
 * longer in the drawing is given back at once.
 */
export class Pictures {
  readonly #addresses = new Map<PictureData, string>();

  addressOf(picture: PictureData): string {
    const known = this.#addresses.get(picture);
    if (known !== undefined) return known;
    const type = picture.startsWith('data:image/png') ? 'image/png' : 'image/jpeg';
    const address = URL.createObjectURL(new Blob([Uint8Array.from(bytesOfPicture(picture))], { type }));
    this.#addresses.set(picture, address);
    return address;
  }

  /** Gives back all that a scene does not show. */
  keepOnly({ layers }: Pick<Scene, 'layers'>): void {
    if (this.#addresses.size === 0) return;
    const shown = new Set(
      layers.flatMap(({ marks }) => marks.flatMap((mark) => (mark.kind === 'image' ? [mark.href] : []))),
    );
    for (const [picture, address] of this.#addresses) {
      if (shown.has(picture)) continue;
      URL.revokeObjectURL(address);
      this.#addresses.delete(picture);
    }
  }
}
