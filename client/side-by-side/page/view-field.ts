import { t } from '../../../grammar/localised.js';
import { type ComparedView, comparedViews } from '../../../server/drawing/scene.js';
import { element } from '../../preview/elements.js';
import { viewLabel } from '../../preview/views.js';

/** The choice of the view in which all pictures of the page are shown. */
export function viewField(shown: ComparedView, choose: (view: ComparedView) => void): HTMLElement {
  const select = element('select', { id: 'view' });
  for (const view of comparedViews) {
    const option = element('option', { value: view }, viewLabel(view));
    option.selected = view === shown;
    select.append(option);
  }
  select.addEventListener('change', () => {
    const view = comparedViews.find((known) => known === select.value);
    if (view !== undefined) choose(view);
  });
  return element('div', { class: 'view' }, element('label', { for: 'view' }, t('View')), select);
}
