import { type View, views } from '../../../server/drawing/scene.js';
import { element } from '../elements.js';
import { viewDescriptions, viewLabels } from '../views.js';

/** The views as a row of radio buttons: Tab comes to the row, arrow keys choose in it. */
export class ViewChoice {
  readonly group: HTMLElement;
  readonly #buttons = new Map<View, HTMLInputElement>();

  constructor(view: View, chosen: (view: View) => void) {
    this.group = element('div', { class: 'views', role: 'radiogroup', 'aria-label': 'View' });
    for (const each of views) {
      const button = element('input', {
        type: 'radio',
        name: 'view',
        value: each,
        'aria-description': viewDescriptions[each],
      });
      button.addEventListener('change', () => chosen(each));
      this.#buttons.set(each, button);
      this.group.append(
        element('label', { title: viewDescriptions[each] }, button, element('span', {}, viewLabels[each])),
      );
    }
    this.choose(view);
  }

  choose(view: View): void {
    const button = this.#buttons.get(view);
    if (button !== undefined) button.checked = true;
  }
}
