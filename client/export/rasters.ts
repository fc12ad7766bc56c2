import { t } from '../../grammar/localised.js';
import type { FromPage, ToPage } from '../preview/messages.js';

type Raster = Extract<FromPage, { readonly type: 'raster' }>;

/** A page that was hidden is made anew, and a large picture takes a while on a slow machine. */
const PATIENCE_MILLISECONDS = 60_000;

/** Has pictures painted by the page of a preview, and gives each to whom it was asked for. */
export class Rasters {
  readonly #post: (message: ToPage) => void;
  readonly #waiting = new Map<number, (png: Uint8Array | null) => void>();
  #last = 0;

  constructor(post: (message: ToPage) => void) {
    this.#post = post;
  }

  /** @throws when the page can't paint it, does not answer or is closed */
  async paint(svg: string, width: number): Promise<Uint8Array> {
    const id = ++this.#last;
    let timer: ReturnType<typeof setTimeout> | undefined;
    const png = await new Promise<Uint8Array | null>((resolve) => {
      this.#waiting.set(id, resolve);
      timer = setTimeout(() => resolve(null), PATIENCE_MILLISECONDS);
      this.#post({ type: 'rasterise', id, svg, width, goesTo: 'file' });
    });
    clearTimeout(timer);
    this.#waiting.delete(id);
    if (png === null) throw new Error(t('The preview could not paint the picture.'));
    return png;
  }

  answer({ id, png }: Raster): void {
    this.#waiting.get(id)?.(png);
  }

  /** The page is closed and paints no more. */
  dispose(): void {
    for (const give of this.#waiting.values()) give(null);
  }
}
