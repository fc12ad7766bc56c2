import { t } from '../../../grammar/localised.js';
import { element } from '../elements.js';
import type { FromPage, ToPage } from '../messages.js';

type Rasterise = Extract<ToPage, { readonly type: 'rasterise' }>;

/** A busy editor takes a while to give a page the focus. */
const PATIENCE_MILLISECONDS = 2_000;

/** What the clipboard waits for: the drawing as the extension gives it. */
interface Awaited {
  readonly resolve: (png: Blob) => void;
  readonly reject: (error: unknown) => void;
}

/**
 * The buttons that take the drawing out of the page, and the making of pixels, which only a page can do: for the
 * clipboard, and for files that the extension writes.
 */
export class TakeOut {
  readonly group: HTMLElement;
  readonly #post: (message: FromPage) => void;
  #copying: Awaited | undefined;

  constructor(post: (message: FromPage) => void) {
    this.#post = post;
    const copy = element('button', { type: 'button', class: 'tool' }, t('Copy image'));
    const save = element('button', { type: 'button', class: 'tool' }, t('Export…'));
    copy.title = t('Copy the drawing as an image');
    save.title = t('Save the drawing or the plan sheet as SVG, PNG or PDF');
    copy.addEventListener('click', () => void this.copy());
    save.addEventListener('click', () => post({ type: 'export' }));
    this.group = element(
      'div',
      { class: 'tools', role: 'group', 'aria-label': t('Take the drawing out') },
      copy,
      save,
    );
  }

  /**
   * Puts the drawing on the clipboard. It has to be begun in the very gesture that asks for it, so the clipboard is
   * promised an image that is still to come.
   */
  async copy(): Promise<void> {
    this.#copying?.reject(new Error('It is copied anew.'));
    let awaited: Awaited | undefined;
    const png = new Promise<Blob>((resolve, reject) => (awaited = { resolve, reject }));
    this.#copying = awaited;
    png.catch(() => undefined);
    this.#post({ type: 'copy' });
    try {
      // From the command palette the page is given the focus, which it needs for the clipboard, and may not have it
      // yet.
      if (!document.hasFocus()) await focusOrPatience();
      await navigator.clipboard.write([new ClipboardItem({ 'image/png': png })]);
      this.#post({ type: 'copied', isCopied: true });
    } catch (error) {
      console.warn(error);
      // Of one that was begun anew, what came of the other is told.
      if (this.#copying === awaited) this.#post({ type: 'copied', isCopied: false });
    }
  }

  /** The drawing that was asked for has come. */
  async rasterise({ id, svg, width, goesTo }: Rasterise): Promise<void> {
    const copying = this.#copying;
    try {
      const png = await pngOf(svg, width);
      if (goesTo === 'clipboard') copying?.resolve(png);
      else this.#post({ type: 'raster', id, png: new Uint8Array(await png.arrayBuffer()) });
    } catch (error) {
      if (goesTo === 'clipboard') copying?.reject(error);
      else this.#post({ type: 'raster', id, png: null });
    }
  }
}

/** Settles when the page has the focus, or has waited long enough for it. */
function focusOrPatience(): Promise<void> {
  return new Promise((resolve) => {
    window.addEventListener('focus', () => resolve(), { once: true });
    setTimeout(resolve, PATIENCE_MILLISECONDS);
  });
}

/** Paints the text of an SVG file, `width` pixels wide. */
async function pngOf(svg: string, width: number): Promise<Blob> {
  const address = URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }));
  try {
    const image = new Image();
    image.src = address;
    await image.decode();
    const canvas = document.createElement('canvas');
    canvas.width = width;
    canvas.height = Math.max(1, Math.round((width * image.naturalHeight) / image.naturalWidth));
    const context = canvas.getContext('2d');
    if (context === null) throw new Error('There is no room for a picture of that size.');
    context.drawImage(image, 0, 0, canvas.width, canvas.height);
    return await new Promise<Blob>((resolve, reject) => {
      canvas.toBlob((png) => {
        if (png === null) reject(new Error('There is no room for a picture of that size.'));
        else resolve(png);
      }, 'image/png');
    });
  } finally {
    URL.revokeObjectURL(address);
  }
}
