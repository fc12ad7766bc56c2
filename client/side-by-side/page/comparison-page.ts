import { marked, said, t } from '../../../grammar/localised.js';
import { type Drawing, render } from '../../../server/drawing/render.js';
import { type Topic, topics } from '../../../server/findings/comparison/change.js';
import { element } from '../../preview/elements.js';
import type { ComparisonMessage, FromPage } from '../messages.js';
import { viewField } from './view-field.js';
import { withCode } from './with-code.js';

const sides = ['earlier', 'later'] as const;

const topicWords: Readonly<Record<Topic, string>> = {
  canvas: marked('canvas'),
  division: marked('division'),
  'centre of interest': marked('centre of interest'),
  objects: marked('objects'),
  'eye path': marked('eye path'),
  values: marked('values'),
  colours: marked('colours'),
  palette: marked('palette'),
  sittings: marked('sittings'),
  findings: marked('findings'),
  rules: marked('rules'),
  words: marked('words'),
};

function changesInWords(count: number): string {
  if (count === 0) return '';
  return count === 1 ? t('{0} change', count) : t('{0} changes', count);
}

/** Two plans side by side, the earlier at the left, and below them what differs: each change leads to its words. */
export class ComparisonPage {
  readonly #post: (message: FromPage) => void;
  readonly #bar = element('header', { class: 'bar' });
  readonly #status = element('p', { role: 'status' });
  readonly #pictures = element('div', { class: 'pair' });
  readonly #remarks = element('div', { class: 'remarks' });
  readonly #changes = element('div', { class: 'changes' });
  readonly #drawings = new Map<(typeof sides)[number], Drawing>();
  readonly #names = new Map<(typeof sides)[number], HTMLElement>();

  constructor(main: HTMLElement, post: (message: FromPage) => void) {
    this.#post = post;
    for (const side of sides) {
      const name = element('figcaption');
      this.#names.set(side, name);
      this.#pictures.append(element('figure', { class: side }, name, element('div', { class: 'picture' })));
    }
    main.replaceChildren(this.#bar, this.#pictures, this.#remarks, this.#changes);
    this.#changes.addEventListener('keydown', (event) => this.#press(event));
  }

  show(message: ComparisonMessage): void {
    const focused = this.#focusedIndex();
    this.#bar.replaceChildren(
      element('h1', { class: 'read-aloud' }, t('Two plans compared')),
      viewField(message.view, (view) => this.#post({ type: 'view', view })),
      this.#status,
    );
    for (const side of sides) {
      const { name, scene } = message[side];
      const caption = this.#names.get(side);
      if (caption !== undefined) caption.textContent = name;
      const drawing = this.#drawings.get(side);
      const box = this.#pictures.querySelector<HTMLElement>(`.${side} .picture`);
      if (drawing !== undefined) drawing.update(scene);
      else if (box !== null)
        this.#drawings.set(side, render(box, scene, { theme: 'editor', part: 'picture', idPrefix: side }));
    }
    this.#fit(message);
    const { changes, remarks } = message;
    this.#status.textContent = changesInWords(changes.length);
    this.#remarks.replaceChildren(...remarks.map((remark) => element('p', {}, remark)));
    this.#changes.replaceChildren(
      ...topics.flatMap((topic) => {
        const told = changes.flatMap((change, index) => (change.topic === topic ? [{ change, index }] : []));
        if (told.length === 0) return [];
        const items = told.map(({ change: { message: sentence, isPlaced }, index }) =>
          element(
            'li',
            {},
            isPlaced
              ? this.#button(sentence, index)
              : element('span', { class: 'change' }, ...withCode(sentence)),
          ),
        );
        return [
          element('section', {}, element('h2', {}, said(topicWords[topic])), element('ul', {}, ...items)),
        ];
      }),
    );
    if (focused !== undefined) this.#changes.querySelector<HTMLElement>(`[data-index="${focused}"]`)?.focus();
  }

  /** Both are shown to one scale, so the wider canvas takes the whole of its half. */
  #fit(message: ComparisonMessage): void {
    const widest = Math.max(...sides.map((side) => message[side].widthMillimetres));
    for (const side of sides) {
      const part = message[side].widthMillimetres / widest;
      this.#drawings.get(side)?.svg.node.style.setProperty('width', `${(100 * part).toFixed(2)}%`);
    }
  }

  #button(sentence: string, index: number): HTMLElement {
    const button = element(
      'button',
      { class: 'change', type: 'button', 'data-index': String(index), title: t('Show it in the text') },
      ...withCode(sentence),
    );
    button.addEventListener('click', () => this.#post({ type: 'open', index }));
    return button;
  }

  #focusedIndex(): string | undefined {
    const { activeElement } = document;
    return activeElement instanceof HTMLElement && this.#changes.contains(activeElement)
      ? activeElement.dataset['index']
      : undefined;
  }

  /** Up and down go from one change to the next, as Tab does. */
  #press(event: KeyboardEvent): void {
    const step = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0;
    if (step === 0) return;
    const all = [...this.#changes.querySelectorAll<HTMLElement>('button')];
    const next = all[all.findIndex((button) => button === document.activeElement) + step];
    if (next === undefined) return;
    event.preventDefault();
    next.focus();
  }
}
