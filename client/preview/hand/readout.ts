import type { Spot } from '../../../server/drawing/scene.js';
import { element } from '../elements.js';

/** A reader is told once the hand rests. */
const restMs = 500;

/** What is said of what a hand does: beside the pointer, as a notice, and in a live region after a pause. */
export class Readout {
  readonly tag = element('div', { class: 'hand-tag', 'aria-hidden': 'true', hidden: '' });
  readonly notice = element('p', { class: 'hand-notice', hidden: '' });
  readonly live = element('div', { class: 'hand-spoken read-aloud', role: 'status' });
  #timer: number | undefined;

  /** Lines beside a place of the screen, kept inside the page. */
  beside({ x, y }: Spot, lines: readonly string[]): void {
    this.tag.replaceChildren(...lines.map((line) => element('div', {}, line)));
    this.tag.hidden = false;
    const [gap, { clientWidth, clientHeight }] = [14, document.documentElement];
    const left = x + gap + this.tag.offsetWidth > clientWidth ? x - gap - this.tag.offsetWidth : x + gap;
    const top = y + gap + this.tag.offsetHeight > clientHeight ? y - gap - this.tag.offsetHeight : y + gap;
    this.tag.style.left = `${Math.max(0, left)}px`;
    this.tag.style.top = `${Math.max(0, top)}px`;
  }

  away(): void {
    this.tag.hidden = true;
  }

  /** Tells a reader after a pause; what comes before that takes its place. */
  say(words: string): void {
    window.clearTimeout(this.#timer);
    this.#timer = window.setTimeout(() => (this.live.textContent = words), restMs);
  }

  /** Why something was not done: stays until something else is. */
  refuse(reason: string): void {
    this.away();
    this.notice.textContent = reason;
    this.notice.hidden = false;
    this.say(reason);
  }

  settle(): void {
    this.notice.hidden = true;
  }
}
