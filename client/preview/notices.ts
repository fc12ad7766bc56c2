import { element } from './elements.js';
import type { ServerState } from './messages.js';

const example = `canvas 40 x 30 cm

object pear, dominant
  shape   ellipse 9 x 12
  at      (25, 16)
  colour  #a8a13c`;

/** What stands above the drawing when there is none, or none that can be trusted. */
export class Notices {
  readonly section = element('section', { class: 'notices' });
  readonly #restart: () => void;
  #server: ServerState = 'starting';
  #gone = false;
  #broken = false;
  /** `undefined` until the first scene. */
  #empty: boolean | undefined;

  constructor(restart: () => void) {
    this.#restart = restart;
    this.#show();
  }

  server(state: ServerState): void {
    this.#server = state;
    this.#show();
  }

  /** A scene is there, with or without anything drawn on its picture. */
  drawn(empty: boolean): void {
    this.#empty = empty;
    this.#gone = false;
    this.#broken = false;
    this.#show();
  }

  gone(): void {
    this.#gone = true;
    this.#show();
  }

  /** A drawing came that can't be shown. */
  broken(): void {
    this.#broken = true;
    this.#show();
  }

  #show(): void {
    this.section.replaceChildren(...this.#notices());
  }

  #notices(): readonly HTMLElement[] {
    if (this.#gone) {
      return [
        alert(
          'This plan is gone',
          'It was moved, deleted, or closed without being saved. What you see is how it last was.',
        ),
      ];
    }
    if (this.#server === 'stopped') {
      const again = element('button', { type: 'button', class: 'primary' }, 'Start again');
      again.addEventListener('click', () => this.#restart());
      const text =
        this.#empty === undefined
          ? 'Mahlstick draws nothing until it is started again. Your text is not affected.'
          : 'What you see is how the plan last was. Your text is not affected.';
      return [alert('Mahlstick has stopped', text, again)];
    }
    if (this.#broken) {
      return [alert('This change can’t be drawn', 'What you see is how the plan last was.')];
    }
    if (this.#empty === undefined) return [element('p', { class: 'waiting' }, 'Reading the plan …')];
    return this.#empty ? [help()] : [];
  }
}

function alert(title: string, text: string, ...more: readonly HTMLElement[]): HTMLElement {
  return element(
    'div',
    { class: 'notice', role: 'alert' },
    element('h2', {}, title),
    element('p', {}, text),
    ...more,
  );
}

function help(): HTMLElement {
  return element(
    'div',
    { class: 'notice' },
    element('h2', {}, 'Nothing is drawn yet'),
    element(
      'p',
      {},
      'Write ',
      element('code', {}, 'object'),
      ' with a name of your own, and indented under it a ',
      element('code', {}, 'shape'),
      '. For example:',
    ),
    element('pre', {}, example),
  );
}
