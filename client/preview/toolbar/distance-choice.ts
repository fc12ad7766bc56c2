import { t } from '../../../grammar/localised.js';
import type { Viewing } from '../../../server/drawing/scene.js';
import { distanceInWords } from '../../../server/drawing/viewing.js';
import { element } from '../elements.js';
import { distanceAt, farthestStep, stepOf } from './distance-steps.js';

/** From how far a squint is taken: a slider beside the views, there only while the view depends on it. */
export class DistanceChoice {
  readonly group: HTMLElement;
  readonly #slider = element('input', {
    type: 'range',
    id: 'distance',
    min: String(-farthestStep),
    max: String(farthestStep),
    step: '1',
  });
  readonly #told = element('output', { for: 'distance' });
  #viewing: Viewing | undefined;
  #millimetres: number | undefined;

  /** @param chosen told of each distance that is chosen, `undefined` for the usual one */
  constructor(millimetres: number | undefined, chosen: (millimetres: number | undefined) => void) {
    this.#millimetres = millimetres;
    this.group = element(
      'div',
      { class: 'distance', hidden: '' },
      element('label', { for: 'distance' }, t('Seen from')),
      this.#slider,
      this.#told,
    );
    this.#slider.addEventListener('input', () => {
      if (this.#viewing === undefined) return;
      this.#millimetres = distanceAt(Number(this.#slider.value), this.#viewing.usualMillimetres);
      this.#tell(this.#viewing);
      chosen(this.#millimetres);
    });
  }

  /** Fits the slider to a drawing; hides it for one that is the same from everywhere. */
  connect(viewing: Viewing | undefined): void {
    this.#viewing = viewing;
    this.group.hidden = viewing === undefined;
    if (viewing === undefined) return;
    const step = String(stepOf(this.#millimetres, viewing.usualMillimetres));
    if (this.#slider.value !== step) this.#slider.value = step;
    this.#tell(viewing);
  }

  #tell({ usualMillimetres, unit }: Viewing): void {
    const words = distanceInWords(this.#millimetres ?? usualMillimetres, unit);
    if (this.#told.textContent === words) return;
    this.#told.textContent = words;
    this.#slider.setAttribute('aria-valuetext', words);
  }
}
