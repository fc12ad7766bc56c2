import type { Scene, View } from '../../../server/drawing/scene.js';
import { element, svgElement } from '../elements.js';
import type { HandChange } from '../../../server/language/hand/change.js';
import type { SketchRead } from '../messages.js';
import { type SketchBytes, SketchCorners } from './sketch-corners.js';
import { squaredSketch } from './sketch-squarer.js';

/** Views in which lines count. In those of tones or colours a sketch would be mixed into what is to be read. */
const shownIn: ReadonlySet<View> = new Set(['drawing', 'mirror', 'path']);

export interface SketchHost {
  readonly svg: () => SVGSVGElement | undefined;
  /** How strongly it shows is another now. */
  readonly changed: () => void;
  /** A corner was put down elsewhere in it. */
  readonly write: (change: HandChange) => void;
}

/** The sketch that lies under the drawing, squared up, and how strongly it shows through. */
export class SketchUnderlay {
  readonly group: HTMLElement;
  /** Why it is not shown; read aloud once, without haste. */
  readonly told = element('p', { class: 'sketch-told', role: 'status' });
  readonly corners: SketchCorners;
  readonly #host: SketchHost;
  readonly #slider = element('input', { type: 'range', id: 'sketch', min: '0', max: '100', step: '5' });
  readonly #strength = element('output', { for: 'sketch' });
  readonly #image = svgElement('image', {
    class: 'underlay',
    preserveAspectRatio: 'none',
    'aria-hidden': 'true',
  });
  /** As it was set in the page, in place of what the plan says. */
  #set: number | undefined;
  #planned: number | undefined;
  #scene: Scene | undefined;
  #file: { readonly name: string; readonly read: SketchRead } | undefined;
  /** What the picture was made from; another one needs no new picture while this is the same. */
  #made: string | undefined;
  #url: string | undefined;
  /** Counts the files that came, to tell one from another of the same name. */
  #count = 0;
  #working = false;

  constructor(kept: number | undefined, host: SketchHost) {
    this.#host = host;
    this.#set = kept;
    this.corners = new SketchCorners(host.write);
    this.group = element(
      'div',
      { class: 'tools sketch', role: 'group', 'aria-label': 'Sketch', hidden: '' },
      element('label', { for: 'sketch' }, 'Sketch'),
      this.#slider,
      this.#strength,
      this.corners.button,
    );
    this.#slider.title = 'How strongly the sketch shows through the drawing';
    this.#slider.addEventListener('input', () => {
      this.#set = Number(this.#slider.value) / 100;
      this.#patch();
      this.#host.changed();
    });
  }

  /** How strongly it was set to show, a part of one; `undefined` where it is as the plan says. */
  get set(): number | undefined {
    return this.#set;
  }

  /** A file came, or why it can't be had. */
  received(name: string, read: SketchRead): void {
    this.#file = { name, read };
    this.#count += 1;
    void this.#work();
  }

  drawn(scene: Scene): void {
    const planned = scene.handling?.sketch?.opacity;
    // What is written in the plan now goes before what was set earlier.
    if (this.#planned !== undefined && planned !== undefined && planned !== this.#planned)
      this.#set = undefined;
    this.#planned = planned ?? this.#planned;
    this.#scene = scene;
    this.#patch();
    void this.#work();
  }

  /** What the picture is to be made from, or nothing while there is no sketch or its file has not come. */
  #wanted() {
    const sketch = this.#scene?.handling?.sketch;
    if (sketch === undefined || this.#scene === undefined || this.#file?.name !== sketch.file)
      return undefined;
    const { corners } = sketch;
    const across = this.#scene.picture.width / this.#scene.picture.height;
    const key = JSON.stringify([this.#count, corners, across]);
    return { key, corners, across, file: this.#file };
  }

  async #work(): Promise<void> {
    if (this.#working) return;
    this.#working = true;
    for (
      let wanted = this.#wanted();
      wanted !== undefined && wanted.key !== this.#made;
      wanted = this.#wanted()
    ) {
      this.#made = wanted.key;
      const { read, name } = wanted.file;
      const answer = read.ok ? await squaredSketch(read.bytes, wanted.corners, wanted.across) : read;
      this.#take(answer.ok ? URL.createObjectURL(answer.picture) : undefined);
      this.#tell(answer.ok ? '' : `The sketch ${name} is not shown. ${answer.reason}`);
    }
    this.#working = false;
    this.#patch();
  }

  #bytes(): SketchBytes | undefined {
    const read = this.#file?.read;
    return read?.ok === true ? { bytes: read.bytes, count: this.#count } : undefined;
  }

  #take(url: string | undefined): void {
    if (this.#url !== undefined) URL.revokeObjectURL(this.#url);
    this.#url = url;
    if (url === undefined) this.#image.removeAttribute('href');
    else this.#image.setAttribute('href', url);
  }

  #tell(text: string): void {
    if (this.told.textContent !== text) this.told.textContent = text;
  }

  #patch(): void {
    const svg = this.#host.svg();
    const scene = this.#scene;
    if (svg === undefined || scene === undefined) return;
    const isNamed = scene.handling?.sketch !== undefined;
    if (!isNamed) this.#tell('');
    const isReadable = isNamed && this.#file?.read.ok === true && shownIn.has(scene.view);
    const isShown = isReadable && this.#url !== undefined;
    // Corners that do not go round a sheet can be mended there, although the sketch is not shown.
    this.group.hidden = !isReadable;
    this.corners.show(isReadable ? this.#bytes() : undefined, scene.handling?.sketch?.corners ?? []);
    svg.classList.toggle('with-sketch', isShown);
    if (!isShown) {
      this.#image.remove();
      return;
    }
    const { x, y, width, height } = scene.picture;
    for (const [name, value] of Object.entries({ x, y, width, height })) {
      this.#image.setAttribute(name, String(value));
    }
    if (scene.view === 'mirror')
      this.#image.setAttribute('transform', `translate(${2 * x + width} 0) scale(-1 1)`);
    else this.#image.removeAttribute('transform');
    const picture = svg.querySelector('[data-layer="picture"]');
    if (this.#image.nextSibling !== picture) svg.insertBefore(this.#image, picture);

    const strength = this.#set ?? this.#planned ?? 0;
    svg.style.setProperty('--drawn', (1 - strength).toFixed(3));
    const words = `${Math.round(100 * strength)} %`;
    this.#slider.value = String(Math.round(100 * strength));
    this.#slider.setAttribute('aria-valuetext', words);
    this.#strength.textContent = words;
  }
}
