import { t } from '../../../grammar/localised.js';
import type { Box, Scene } from '../../../server/drawing/scene.js';
import { element } from '../elements.js';
import { type Zoom, inPerCent, scrollShares, stepFrom, turned, within } from './zoom-steps.js';

interface At {
  readonly clientX: number;
  readonly clientY: number;
}

/**
 * How large the drawing is on the page. It stays a drawing of lines at any size: its SVG grows in a box that scrolls.
 */
export class ZoomChoice {
  readonly group: HTMLElement;
  readonly #box: HTMLElement;
  readonly #changed: () => void;
  readonly #told = element('output', { class: 'zoomed-to', 'aria-label': t('Zoom') });
  #factor = 1;
  /** What is to stand in the middle once there is a drawing. */
  #awaited: Zoom | undefined;
  #sizes: { readonly sheet: Box; readonly picture: Box } | undefined;
  /** Turns of the wheel since the last frame: one layout does for all of them. */
  #turning: { factor: number; at: At } | undefined;
  #settling: number | undefined;

  /** @param changed told when the zoom, or what of the drawing is in sight, is another */
  constructor(box: HTMLElement, kept: Zoom | undefined, changed: () => void) {
    this.#box = box;
    this.#changed = changed;
    this.#awaited = kept;
    const out = button('−', t('Zoom out'), '-', () => this.step('out'));
    const further = button('+', t('Zoom in'), '+', () => this.step('in'));
    const fit = button(t('Fit'), t('Fit the sheet into the page'), '0', () => this.fit());
    const picture = button(t('Picture'), t('Fit the picture alone into the page'), 'p', () =>
      this.fitPicture(),
    );
    const attributes = { class: 'tools zoom', role: 'group', 'aria-label': t('Zoom') };
    this.group = element('div', attributes, out, this.#told, further, fit, picture);
    this.#tell();
    box.addEventListener('wheel', (event) => this.#turn(event), { passive: false });
    box.addEventListener('scroll', () => this.#settle());
    window.addEventListener('keydown', (event) => this.#press(event));
  }

  /** As it is to be kept; `undefined` for what a page has from the first. */
  get zoom(): Zoom | undefined {
    if (this.#awaited !== undefined) return this.#awaited;
    if (this.#factor === 1) return undefined;
    const { x, y } = this.#inTheMiddle();
    return { factor: this.#factor, x, y };
  }

  /** A drawing is there: what was kept of the last page is done now. */
  drawn({ sheet, picture }: Scene): void {
    this.#sizes = { sheet, picture };
    const awaited = this.#awaited;
    if (awaited === undefined || this.#box.hidden) return;
    this.#awaited = undefined;
    this.#size(within(awaited.factor));
    this.#centre(awaited.x, awaited.y);
  }

  step(direction: 'in' | 'out'): void {
    this.#zoomTo(stepFrom(this.#factor, direction), this.#middle());
  }

  fit(): void {
    this.#size(1);
    this.#changed();
  }

  fitPicture(): void {
    const sheetNow = this.#svg()?.getBoundingClientRect();
    if (sheetNow === undefined || this.#sizes === undefined || sheetNow.width === 0) return;
    const { sheet, picture } = this.#sizes;
    // The box has its full height only when it scrolls.
    this.#box.classList.add('zoomed');
    const { clientWidth, clientHeight } = this.#box;
    const pixels = sheetNow.width / sheet.width;
    const most = Math.min(clientWidth / picture.width, clientHeight / picture.height) / pixels;
    this.#size(within(this.#factor * most));
    this.#centre(
      (picture.x + picture.width / 2 - sheet.x) / sheet.width,
      (picture.y + picture.height / 2 - sheet.y) / sheet.height,
    );
    this.#changed();
  }

  #svg(): SVGSVGElement | null {
    return this.#box.querySelector('svg');
  }

  /** What lies at a place of the page stays there. */
  #zoomTo(factor: number, at: At): void {
    const before = this.#svg()?.getBoundingClientRect();
    if (before === undefined || factor === this.#factor) return;
    const across = (at.clientX - before.left) / before.width;
    const down = (at.clientY - before.top) / before.height;
    this.#size(factor);
    const after = this.#svg()?.getBoundingClientRect() ?? before;
    const x = after.left + across * after.width - at.clientX;
    this.#scroll(x, after.top + down * after.height - at.clientY);
    this.#changed();
  }

  #size(factor: number): void {
    this.#factor = factor;
    this.#box.classList.toggle('zoomed', factor > 1);
    this.#box.style.setProperty('--zoom', factor.toFixed(4));
    // A box that scrolls can be scrolled by keys; there is nothing to go to in one that does not.
    const scrolls = {
      tabindex: '0',
      role: 'region',
      'aria-label': t('Drawing, which arrow keys move about'),
    };
    for (const [name, value] of Object.entries(scrolls)) {
      if (factor > 1) this.#box.setAttribute(name, value);
      else this.#box.removeAttribute(name);
    }
    this.#tell();
  }

  #tell(): void {
    this.#told.textContent = inPerCent(this.#factor);
  }

  #scroll(x: number, y: number): void {
    const { scrollTop, scrollHeight, clientHeight } = this.#box;
    const down = scrollShares(y, scrollTop, scrollHeight - clientHeight);
    this.#box.scrollBy(x, down.box);
    window.scrollBy(0, down.page);
  }

  #middle(): At {
    const { left, right, top, bottom } = this.#box.getBoundingClientRect();
    const [first, last] = [Math.max(0, top), Math.min(window.innerHeight, bottom)];
    return { clientX: (left + right) / 2, clientY: (first + last) / 2 };
  }

  #inTheMiddle(): { readonly x: number; readonly y: number } {
    const sheet = this.#svg()?.getBoundingClientRect();
    if (sheet === undefined || sheet.width === 0) return { x: 0.5, y: 0.5 };
    const { left, top, width, height } = this.#box.getBoundingClientRect();
    const part = (place: number) => Math.min(1, Math.max(0, Number(place.toFixed(4))));
    return {
      x: part((left + width / 2 - sheet.left) / sheet.width),
      y: part((top + height / 2 - sheet.top) / sheet.height),
    };
  }

  #centre(x: number, y: number): void {
    const there = this.#inTheMiddle();
    const sheet = this.#svg()?.getBoundingClientRect();
    if (sheet !== undefined) this.#box.scrollBy((x - there.x) * sheet.width, (y - there.y) * sheet.height);
  }

  #turn(event: WheelEvent): void {
    // Two fingers that are spread come as a wheel with the key held.
    if (!event.ctrlKey) return;
    event.preventDefault();
    const waits = this.#turning !== undefined;
    const from = this.#turning?.factor ?? this.#factor;
    const { clientX, clientY, deltaY, deltaMode } = event;
    this.#turning = { factor: turned(from, deltaY, deltaMode), at: { clientX, clientY } };
    if (!waits) requestAnimationFrame(() => this.#turnNow());
  }

  #turnNow(): void {
    const turning = this.#turning;
    this.#turning = undefined;
    if (turning !== undefined) this.#zoomTo(turning.factor, turning.at);
  }

  #settle(): void {
    if (this.#factor <= 1) return;
    window.clearTimeout(this.#settling);
    this.#settling = window.setTimeout(this.#changed, 200);
  }

  #press({ key, target, ctrlKey, altKey, metaKey, defaultPrevented }: KeyboardEvent): void {
    // On a thing in the drawing the same keys may have been taken for that.
    if (defaultPrevented || ctrlKey || altKey || metaKey || takesLetters(target)) return;
    if (key === '+' || key === '=') this.step('in');
    else if (key === '-') this.step('out');
    else if (key === '0') this.fit();
    else if (key === 'p') this.fitPicture();
  }
}

/** Whether keys are written there, rather than meant for the page. */
export function takesLetters(target: EventTarget | null): boolean {
  if (target instanceof HTMLInputElement)
    return !['radio', 'checkbox', 'range', 'button'].includes(target.type);
  return target instanceof HTMLTextAreaElement || target instanceof HTMLSelectElement;
}

function button(text: string, does: string, key: string, press: () => void): HTMLButtonElement {
  const attributes = { type: 'button', class: 'tool', title: `${does} (${key})`, 'aria-keyshortcuts': key };
  const made = element('button', attributes, text);
  // Signs are read as their names in some voices, and not at all in others.
  if (!/\p{L}/u.test(text)) made.setAttribute('aria-label', does);
  made.addEventListener('click', press);
  return made;
}
