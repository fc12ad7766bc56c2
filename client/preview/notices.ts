import { t } from '../../grammar/localised.js';
import { element } from './elements.js';
import { messagePieces } from './findings/findings.js';
import type { ServerState } from './messages.js';

type Notice = 'never there' | 'gone' | 'never started' | 'stopped' | 'broken' | 'reading' | 'help' | 'none';

export interface NoticesHost {
  readonly restart: () => void;
  /** Writes the example that is shown at the end of the plan. */
  readonly insertExample: () => void;
}

/** What stands above the drawing when there is none, or none that can be trusted. */
export class Notices {
  readonly section = element('section', { class: 'notices' });
  readonly #host: NoticesHost;
  #server: ServerState = 'starting';
  #gone = false;
  #broken = false;
  /** `undefined` until the first scene. */
  #empty: boolean | undefined;
  #shown: Notice | undefined;
  #example = '';
  #isReadOnly = false;

  constructor(host: NoticesHost) {
    this.#host = host;
    this.#show();
  }

  server(state: ServerState): void {
    this.#server = state;
    this.#show();
  }

  /** A scene is there, with or without anything drawn on its picture; `example` is what it could begin with. */
  drawn(empty: boolean, example: string): void {
    if (example !== this.#example && this.#shown === 'help') this.#shown = undefined;
    this.#example = example;
    this.#empty = empty;
    this.#gone = false;
    this.#broken = false;
    this.#show();
  }

  /** The plan can't be written. */
  readOnly(): void {
    if (this.#shown === 'help') this.#shown = undefined;
    this.#isReadOnly = true;
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

  /** Only what is another than before: an alert that is put there again is read aloud again. */
  #show(): void {
    const notice = this.#notice();
    if (notice === this.#shown) return;
    this.#shown = notice;
    this.section.replaceChildren(...this.#elements(notice));
  }

  #notice(): Notice {
    if (this.#gone) return this.#empty === undefined ? 'never there' : 'gone';
    if (this.#server === 'stopped') return this.#empty === undefined ? 'never started' : 'stopped';
    if (this.#broken) return 'broken';
    if (this.#empty === undefined) return 'reading';
    return this.#empty ? 'help' : 'none';
  }

  #elements(notice: Notice): readonly HTMLElement[] {
    switch (notice) {
      case 'never there':
        return [alert(t('This plan is gone'), t('It was moved, deleted, or closed without being saved.'))];
      case 'gone':
        return [
          alert(
            t('This plan is gone'),
            t('It was moved, deleted, or closed without being saved. What you see is how it last was.'),
          ),
        ];
      case 'never started':
        return [
          this.#stopped(t('Mahlstick draws nothing until it is started again. Your text is not affected.')),
        ];
      case 'stopped':
        return [this.#stopped(t('What you see is how the plan last was. Your text is not affected.'))];
      case 'broken':
        return [alert(t('This change can’t be drawn'), t('What you see is how the plan last was.'))];
      case 'reading':
        return [element('p', { class: 'waiting' }, t('Reading the plan …'))];
      case 'help':
        return [this.#help()];
      case 'none':
        return [];
    }
  }

  #help(): HTMLElement {
    const insert = element('button', { type: 'button', class: 'primary' }, t('Insert this example'));
    insert.addEventListener('click', () => this.#host.insertExample());
    return element(
      'div',
      { class: 'notice' },
      element('h2', {}, t('Nothing is drawn yet')),
      element(
        'p',
        {},
        ...messagePieces(
          t('Write `object` with a name of your own, and indented under it a `shape`. For example:'),
        ).map(({ text, quoted }) => (quoted ? element('code', {}, text) : text)),
      ),
      element('pre', {}, this.#example.trimEnd()),
      ...(this.#isReadOnly ? [] : [insert]),
    );
  }

  #stopped(meaning: string): HTMLElement {
    const again = element('button', { type: 'button', class: 'primary' }, t('Start again'));
    again.addEventListener('click', () => this.#host.restart());
    return alert(t('Mahlstick has stopped'), meaning, again);
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
