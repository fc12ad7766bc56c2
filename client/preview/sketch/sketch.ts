import { t } from '../../../grammar/localised.js';
import type { Scene } from '../../../server/drawing/scene.js';
import { element, svgElement } from '../elements.js';
import type { HandChange } from '../../../server/language/hand/change.js';
import type { SketchRead } from '../messages.js';
import { type Beneath, beneath, choicesBeneath, type Chosen } from './beneath.js';
import { type SketchBytes, SketchCorners } from './sketch-corners.js';
import { squaredSketch } from './sketch-squarer.js';

export interface SketchHost {
  readonly svg: () => SVGSVGElement | undefined;
  /** How strongly it shows, or what lies there, is another now. */
  readonly changed: () => void;
  /** The file of the photograph of that sitting is wanted, or with `null` that of the sketch. */
  readonly want: (sitting: number | null) => void;
  /** A corner was put down elsewhere in it. */
  readonly write: (change: HandChange) => void;
}

/** What was chosen in an earlier window. */
export interface KeptSketch {
  readonly strength: number | undefined;
  /** The sitting whose photograph lies under the drawing. */
  readonly under: number | undefined;
}

/** The sketch or the photograph that lies under the drawing, squared up, and how strongly it shows through. */
export class SketchUnderlay {
  readonly group: HTMLElement;
  /** Why it is not shown; read aloud once, without haste. */
  readonly told = element('p', { class: 'sketch-told', role: 'status' });
  readonly corners: SketchCorners;
  readonly #host: SketchHost;
  readonly #label = element('label', { for: 'sketch' }, t('Sketch'));
  readonly #choice = element('select', { 'aria-label': t('Under the drawing'), hidden: '' });
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
  #chosen: Chosen;
  #scene: Scene | undefined;
  #file: { readonly name: string; readonly read: SketchRead } | undefined;
  /** What the extension was asked for last. */
  #wantedSitting: number | null = null;
  /** What the picture was made from; another one needs no new picture while this is the same. */
  #made: string | undefined;
  #url: string | undefined;
  /** Of what the picture is that is there, and why there is none. */
  #shown: string | undefined;
  #fault: { readonly of: string; readonly reason: string } | undefined;
  /** Counts the files that came, to tell one from another of the same name. */
  #count = 0;
  #working = false;

  constructor({ strength, under }: KeptSketch, host: SketchHost) {
    this.#host = host;
    this.#set = strength;
    this.#chosen = under ?? 'sketch';
    this.corners = new SketchCorners(host.write, () => this.#renew());
    this.group = element(
      'div',
      { class: 'tools sketch', role: 'group', 'aria-label': t('Sketch'), hidden: '' },
      this.#label,
      this.#choice,
      this.#slider,
      this.#strength,
      this.corners.button,
    );
    this.#slider.title = t('How strongly it shows through the drawing');
    this.#slider.addEventListener('input', () => {
      this.#set = Number(this.#slider.value) / 100;
      this.#patch();
      this.#host.changed();
    });
    this.#choice.addEventListener('change', () => {
      this.#chosen = this.#choice.value === 'sketch' ? 'sketch' : Number(this.#choice.value);
      this.#host.changed();
      this.#renew();
    });
  }

  /** How strongly it was set to show, a part of one; `undefined` where it is as the plan says. */
  get set(): number | undefined {
    return this.#set;
  }

  /** The sitting whose photograph was chosen to lie under the drawing. */
  get under(): number | undefined {
    return this.#chosen === 'sketch' ? undefined : this.#chosen;
  }

  /** A file came, or why it can't be had. */
  received(name: string, read: SketchRead): void {
    this.#file = { name, read };
    this.#count += 1;
    this.#patch();
    void this.#work();
  }

  drawn(scene: Scene): void {
    const planned = scene.handling?.sketch?.opacity;
    // What is written in the plan now goes before what was set earlier.
    if (this.#planned !== undefined && planned !== undefined && planned !== this.#planned)
      this.#set = undefined;
    this.#planned = planned ?? this.#planned;
    this.#scene = scene;
    this.#renew();
  }

  #renew(): void {
    const now = this.#now;
    // A photograph that is not laid under the drawing is read for its corners only.
    const isWanted = now?.isUnder === true || this.corners.isOpen;
    const sitting = isWanted && typeof now?.chosen === 'number' ? now.chosen : null;
    if (sitting !== this.#wantedSitting) {
      this.#wantedSitting = sitting;
      this.#host.want(sitting);
    }
    this.#patch();
    void this.#work();
  }

  get #now(): Beneath | undefined {
    return this.#scene === undefined ? undefined : beneath(this.#scene, this.#chosen);
  }

  /** What the picture is to be made from, or nothing while there is no sketch or its file has not come. */
  #wanted() {
    const now = this.#now;
    if (now === undefined || this.#scene === undefined || this.#file?.name !== now.file) return undefined;
    if (!now.isUnder) return undefined;
    const { corners } = now;
    const across = this.#scene.picture.width / this.#scene.picture.height;
    const key = JSON.stringify([this.#count, corners, across]);
    return { key, corners, across, of: nameOf(now), file: this.#file };
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
      const { read } = wanted.file;
      const answer = read.ok ? await squaredSketch(read.bytes, wanted.corners, wanted.across) : read;
      this.#take(answer.ok ? URL.createObjectURL(answer.picture) : undefined, wanted.of);
      this.#fault = answer.ok ? undefined : { of: wanted.of, reason: answer.reason };
    }
    this.#working = false;
    this.#patch();
  }

  #bytes(): SketchBytes | undefined {
    const read = this.#file?.read;
    return read?.ok === true ? { bytes: read.bytes, count: this.#count } : undefined;
  }

  #take(url: string | undefined, of: string): void {
    if (this.#url !== undefined) URL.revokeObjectURL(this.#url);
    this.#url = url;
    this.#shown = of;
    if (url === undefined) this.#image.removeAttribute('href');
    else this.#image.setAttribute('href', url);
  }

  /** Why what is to be seen is not. */
  #tell(now: Beneath | undefined): void {
    const read = this.#file?.name === now?.file ? this.#file?.read : undefined;
    const isLookedAt = now !== undefined && (now.isUnder || this.corners.isOpen);
    const fault = now?.isUnder === true && this.#fault?.of === nameOf(now) ? this.#fault.reason : undefined;
    const reason = read?.ok === false ? read.reason : fault;
    const text = isLookedAt && reason !== undefined ? notShown(now, reason) : '';
    if (this.told.textContent !== text) this.told.textContent = text;
  }

  #patch(): void {
    const svg = this.#host.svg();
    const scene = this.#scene;
    if (svg === undefined || scene === undefined) return;
    const now = this.#now;
    const isHere = now !== undefined && this.#file?.name === now.file;
    this.#tell(now);
    const isReadable = isHere && this.#file?.read.ok === true;
    // While another is being made of the same file, the one that is there stays.
    const isShown = isReadable && now.isUnder && this.#url !== undefined && this.#shown === nameOf(now);
    this.#patchChoice(scene);
    // Corners that do not go round a sheet can be mended there, although the sketch is not shown.
    this.group.hidden = !(isReadable || (now !== undefined && !now.isUnder) || !this.#choice.hidden);
    const isSliding = isReadable && now.isUnder;
    for (const part of [this.#slider, this.#strength]) part.hidden = !isSliding;
    this.#label.hidden = !this.#choice.hidden;
    this.#label.textContent = now?.kind === 'photograph' ? t('Photograph') : t('Sketch');
    this.corners.button.hidden = now === undefined || (now.isUnder && !isReadable);
    this.corners.show(
      isReadable ? this.#bytes() : undefined,
      now && {
        corners: now.corners,
        grey: now.grey,
        sitting: now.chosen === 'sketch' ? undefined : now.chosen,
      },
    );
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

    const strength = this.#set ?? now.opacity;
    svg.style.setProperty('--drawn', (1 - strength).toFixed(3));
    const words = `${Math.round(100 * strength)} %`;
    this.#slider.value = String(Math.round(100 * strength));
    this.#slider.setAttribute('aria-valuetext', words);
    this.#strength.textContent = words;
  }

  #patchChoice(scene: Scene): void {
    const options = choicesBeneath(scene);
    this.#choice.hidden = options.length === 0;
    const shown = [...this.#choice.options].map(({ value, text }) => `${value} ${text}`).join('\n');
    if (shown !== options.map(({ value, words }) => `${value} ${words}`).join('\n'))
      this.#choice.replaceChildren(...options.map(({ value, words }) => element('option', { value }, words)));
    const chosen = String(this.#chosen);
    this.#choice.value = options.some(({ value }) => value === chosen) ? chosen : 'sketch';
  }
}

function notShown({ kind, file }: Beneath, reason: string): string {
  return kind === 'sketch'
    ? t('The sketch {0} is not shown. {1}', file, reason)
    : t('The photograph {0} is not shown. {1}', file, reason);
}

/** Tells what lies under the drawing from what else might. */
function nameOf({ chosen, file }: Beneath): string {
  return `${chosen} ${file}`;
}
