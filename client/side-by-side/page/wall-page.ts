import { t } from '../../../grammar/localised.js';
import { render } from '../../../server/drawing/render.js';
import type { StripPart } from '../../../server/drawing/wall/figures.js';
import { element, svgElement } from '../../preview/elements.js';
import type { CardMessage, FromPage, WallMessage } from '../messages.js';
import { viewField } from './view-field.js';
import { unbroken } from './with-code.js';

/** Plans as small pictures to choose from. Arrow keys go from one to the next, Enter opens it. */
export class WallPage {
  readonly #root = element('div', { class: 'wall' });
  readonly #status = element('p', { role: 'status' });
  readonly #list = element('ul', { class: 'cards' });
  readonly #buttons: readonly HTMLButtonElement[];
  #hung = 0;

  constructor(
    main: HTMLElement,
    { title, view, names, left }: WallMessage,
    post: (message: FromPage) => void,
  ) {
    this.#buttons = names.map((name, index) => {
      const button = element(
        'button',
        { type: 'button', class: 'card', tabindex: index === 0 ? '0' : '-1' },
        element('span', { class: 'picture' }),
        element('span', { class: 'name' }, name),
      );
      button.addEventListener('click', () => post({ type: 'open', index }));
      return button;
    });
    this.#list.append(...this.#buttons.map((button) => element('li', {}, button)));
    this.#list.addEventListener('keydown', (event) => this.#press(event));
    this.#list.addEventListener('focusin', ({ target }) => this.#stopAt(target));
    const more =
      left === 0 ? [] : [element('p', { class: 'left' }, t('and {0} more, which are not shown', left))];
    this.#root.append(
      element(
        'header',
        { class: 'bar' },
        element('h1', {}, title),
        viewField(view, (chosen) => post({ type: 'view', view: chosen })),
        this.#status,
      ),
      this.#list,
      ...more,
    );
    main.append(this.#root);
    this.#tell();
  }

  /** Shows a plan in its place. */
  hang({ index, card, differs }: CardMessage): void {
    const button = this.#buttons[index];
    const name = button?.querySelector('.name')?.textContent ?? '';
    if (button === undefined) return;
    const picture = element('span', { class: 'picture' });
    button.replaceChildren(
      picture,
      element('span', { class: 'title' }, card.title),
      element(
        'span',
        { class: 'quiet' },
        element('span', { class: 'name' }, name),
        unbroken(`, ${card.canvas}`),
      ),
      ...card.strips.flatMap((strip) => [
        stripBar(strip.parts),
        element('span', { class: 'figures' }, unbroken(strip.words)),
      ]),
      element('span', { class: 'quiet' }, card.found),
      ...(differs === undefined ? [] : [element('span', { class: 'figures' }, differs)]),
    );
    render(picture, card.scene, { theme: 'editor', part: 'picture', idPrefix: `card-${index}` });
    // The button says what the picture is of.
    picture.firstElementChild?.setAttribute('aria-hidden', 'true');
    this.#hung += 1;
    this.#tell();
  }

  /** Says of a plan why it can't be shown. */
  leaveEmpty(index: number, reason: string): void {
    this.#buttons[index]?.append(element('span', { class: 'figures' }, reason));
    this.#hung += 1;
    this.#tell();
  }

  remove(): void {
    this.#root.remove();
  }

  #tell(): void {
    const all = this.#buttons.length;
    this.#status.textContent =
      this.#hung < all
        ? t('{0} of {1} plans', this.#hung, all)
        : all === 1
          ? t('{0} plan', all)
          : t('{0} plans', all);
  }

  /** Tab goes to the one that had the focus last. */
  #stopAt(target: EventTarget | null): void {
    for (const button of this.#buttons) button.tabIndex = button === target ? 0 : -1;
  }

  #press(event: KeyboardEvent): void {
    const at = this.#buttons.findIndex((button) => button === document.activeElement);
    const to = at < 0 ? undefined : this.#target(event.key, at);
    const next = to === undefined ? undefined : this.#buttons[to];
    if (next === undefined) return;
    event.preventDefault();
    next.focus();
  }

  #target(key: string, at: number): number | undefined {
    switch (key) {
      case 'ArrowRight':
        return at + 1;
      case 'ArrowLeft':
        return at - 1;
      case 'ArrowDown':
        return Math.min(at + this.#columns(), this.#buttons.length - 1);
      case 'ArrowUp':
        return at - this.#columns();
      case 'Home':
        return 0;
      case 'End':
        return this.#buttons.length - 1;
      default:
        return undefined;
    }
  }

  /** How many stand in a row, which goes by the room there is. */
  #columns(): number {
    const [first] = this.#buttons;
    const next = this.#buttons.findIndex((button) => button.offsetTop > (first?.offsetTop ?? 0));
    return next < 1 ? this.#buttons.length : next;
  }
}

/** Shares beside each other in their tones. */
function stripBar(parts: readonly StripPart[]): SVGSVGElement {
  const svg = svgElement('svg', {
    class: 'strip',
    viewBox: '0 0 100 5',
    preserveAspectRatio: 'none',
    'aria-hidden': 'true',
  });
  let from = 0;
  for (const { share, hex } of parts) {
    const width = Math.max(0, Math.min(100 - from, 100 * share));
    svg.append(svgElement('rect', { x: String(from), y: '0', width: String(width), height: '5', fill: hex }));
    from += width;
  }
  return svg;
}
