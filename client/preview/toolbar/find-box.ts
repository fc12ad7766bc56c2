import { marked, said, t } from '../../../grammar/localised.js';
import type { Scene } from '../../../server/drawing/scene.js';
import { element } from '../elements.js';
import { type Findable, findables, matching } from './find.js';
import { takesLetters } from '../zoom/zoom.js';

const listId = 'found';
const kindWords: Readonly<Record<Findable['kind'], string>> = {
  object: marked('object'),
  lead: marked('lead'),
  paint: marked('paint'),
  sitting: marked('sitting'),
};

export interface FindBoxHost {
  /** The field is to be written in: it may be out of sight. */
  readonly summoned: () => void;
  /** Goes to what was chosen, with the focus. */
  readonly choose: (key: string) => void;
  /** Points at what Enter would choose, or at nothing. */
  readonly point: (key: string | undefined) => void;
}

/** A field for the name of an object or lead, with a list of those that it fits. */
export class FindBox {
  readonly group: HTMLElement;
  readonly #host: FindBoxHost;
  readonly #input = element('input', {
    type: 'text',
    role: 'combobox',
    'aria-label': t('Find an object or lead'),
    'aria-autocomplete': 'list',
    'aria-expanded': 'false',
    'aria-controls': listId,
    'aria-keyshortcuts': '/ Control+F',
    title: t('Find an object or lead by a part of its name (/ or Ctrl+F)'),
    placeholder: t('Find …'),
    autocomplete: 'off',
    spellcheck: 'false',
    dir: 'auto',
  });
  readonly #list = element('ul', { id: listId, role: 'listbox', 'aria-label': t('Found') });
  readonly #none = element('p', { role: 'status' });
  readonly #popup = element('div', { class: 'found', hidden: '' }, this.#list, this.#none);
  #all: readonly Findable[] = [];
  #found: readonly Findable[] = [];
  #at = -1;

  constructor(host: FindBoxHost) {
    this.#host = host;
    this.group = element('div', { class: 'tools find', role: 'search' }, this.#input, this.#popup);
    this.#input.addEventListener('input', () => this.#open());
    this.#input.addEventListener('click', () => this.#open());
    this.#input.addEventListener('blur', () => this.#close());
    this.#input.addEventListener('keydown', (event) => this.#press(event));
    // The field keeps the focus while an entry is pressed.
    this.#popup.addEventListener('pointerdown', (event) => event.preventDefault());
    this.#list.addEventListener('click', ({ target }) => {
      if (target instanceof Element)
        this.#choose([...this.#list.children].indexOf(target.closest('li') ?? target));
    });
    window.addEventListener('keydown', (event) => {
      const isSlash = event.key === '/' && !event.ctrlKey && !event.metaKey && !takesLetters(event.target);
      const isFind = event.key.toLowerCase() === 'f' && (event.ctrlKey || event.metaKey) && !event.shiftKey;
      if (!isSlash && !isFind) return;
      event.preventDefault();
      this.focus();
    });
  }

  connect(scene: Scene): void {
    this.#all = findables(scene);
    if (!this.#popup.hidden) this.#open();
  }

  focus(): void {
    this.#host.summoned();
    this.#input.focus();
    this.#input.select();
    this.#open();
  }

  #open(): void {
    this.#found = matching(this.#all, this.#input.value);
    this.#at = -1;
    this.#list.replaceChildren(
      ...this.#found.map(({ name, kind }, index) =>
        element(
          'li',
          { role: 'option', id: `${listId}-${index}`, 'aria-selected': 'false' },
          element('bdi', {}, name),
          element('span', { class: 'kind' }, said(kindWords[kind])),
        ),
      ),
    );
    this.#list.hidden = this.#found.length === 0;
    this.#none.textContent =
      this.#found.length > 0
        ? ''
        : this.#all.length === 0
          ? t('Nothing is drawn yet.')
          : t('Nothing is called that.');
    this.#show(true);
    if (this.#input.value.trim() !== '' && this.#found.length > 0) this.#mark(0);
    else this.#mark(-1);
  }

  #close(): void {
    this.#show(false);
    this.#mark(-1);
  }

  #show(isOpen: boolean): void {
    this.#popup.hidden = !isOpen;
    this.#input.setAttribute('aria-expanded', String(isOpen && this.#found.length > 0));
  }

  #mark(index: number): void {
    this.#at = index;
    [...this.#list.children].forEach((entry, each) => {
      entry.setAttribute('aria-selected', String(each === index));
      if (each === index) entry.scrollIntoView({ block: 'nearest' });
    });
    if (index < 0) this.#input.removeAttribute('aria-activedescendant');
    else this.#input.setAttribute('aria-activedescendant', `${listId}-${index}`);
    this.#host.point(this.#found[index]?.key);
  }

  #choose(index: number): void {
    const chosen = this.#found[index];
    if (chosen === undefined) return;
    this.#close();
    this.#host.choose(chosen.key);
  }

  #press(event: KeyboardEvent): void {
    const count = this.#found.length;
    switch (event.key) {
      case 'ArrowDown':
      case 'ArrowUp':
        event.preventDefault();
        if (this.#popup.hidden) this.#open();
        else if (count > 0) {
          const step = event.key === 'ArrowDown' ? 1 : -1;
          this.#mark(this.#at < 0 && step < 0 ? count - 1 : (this.#at + step + count) % count);
        }
        return;
      case 'Enter':
        event.preventDefault();
        this.#choose(this.#at);
        return;
      case 'Escape':
        if (this.#popup.hidden) this.#input.value = '';
        this.#close();
        return;
    }
  }
}
