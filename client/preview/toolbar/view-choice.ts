import { t } from '../../../grammar/localised.js';
import { type View, views } from '../../../server/drawing/scene.js';
import { element } from '../elements.js';
import { viewDescription, viewLabel } from '../views.js';

/** The views as a row of radio buttons: Tab comes to the row, arrow keys choose in it. */
export class ViewChoice {
  readonly group: HTMLElement;
  readonly #buttons = new Map<View, HTMLInputElement>();

  constructor(view: View, chosen: (view: View) => void) {
    this.group = element('div', { class: 'views', role: 'radiogroup', 'aria-label': t('View') });
    for (const each of views) {
      const button = element('input', {
        type: 'radio',
        name: 'view',
        value: each,
        'aria-description': viewDescription(each),
      });
      button.addEventListener('change', () => chosen(each));
      this.#buttons.set(each, button);
      this.group.append(
        element('label', { title: viewDescription(each) }, button, element('span', {}, viewLabel(each))),
      );
    }
    this.choose(view);
  }

  choose(view: View): void {
    const button = this.#buttons.get(view);
    if (button !== undefined) button.checked = true;
  }
}
