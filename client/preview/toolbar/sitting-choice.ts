import { t } from '../../../grammar/localised.js';
import type { ShownRecord } from '../../../server/drawing/scene.js';
import { element } from '../elements.js';
import { takesLetters } from '../zoom/zoom.js';

/**
 * After which sitting the record is shown: a slider beside the views, there only while there is something to choose.
 */
export class SittingChoice {
  readonly group: HTMLElement;
  readonly #slider = element('input', { type: 'range', id: 'sitting', min: '0', step: '1' });
  readonly #told = element('output', { for: 'sitting' });
  readonly #chosen: (sitting: number) => void;
  #record: ShownRecord | undefined;

  /** @param chosen told of each sitting that is chosen, by its index in the plan */
  constructor(chosen: (sitting: number) => void) {
    this.#chosen = chosen;
    this.group = element(
      'div',
      { class: 'distance sitting', hidden: '' },
      element('label', { for: 'sitting' }, t('After')),
      this.#slider,
      this.#told,
    );
    this.#slider.title = t('The sitting whose photograph is shown (, and .)');
    this.#slider.setAttribute('aria-keyshortcuts', ', .');
    this.#slider.addEventListener('input', () => this.#choose(Number(this.#slider.value)));
    window.addEventListener('keydown', (event) => this.#press(event));
  }

  /** Fits the slider to a drawing; hides it for one of another view, and where there is no photograph. */
  connect(record: ShownRecord | undefined): void {
    this.#record = record;
    this.group.hidden = record === undefined;
    if (record === undefined) return;
    this.#slider.max = String(Math.max(0, record.sittings.length - 1));
    this.#slider.disabled = record.sittings.length < 2;
    this.#slider.value = String(record.sittings.findIndex(({ sitting }) => sitting === record.chosen));
    this.#tell();
  }

  /** Something of the drawing was clicked: a small picture chooses its sitting. */
  chooseSubject(key: string): void {
    const at = this.#record?.sittings.findIndex(({ subject }) => subject === key) ?? -1;
    if (at >= 0) this.#choose(at);
  }

  #choose(at: number): void {
    const record = this.#record;
    const next = record?.sittings[at];
    if (record === undefined || next === undefined || next.sitting === record.chosen) return;
    this.#record = { ...record, chosen: next.sitting };
    this.#slider.value = String(at);
    this.#tell();
    this.#chosen(next.sitting);
  }

  #press({ key, target, ctrlKey, altKey, metaKey, defaultPrevented }: KeyboardEvent): void {
    if (defaultPrevented || ctrlKey || altKey || metaKey || takesLetters(target)) return;
    const step = stepOf(key);
    if (step !== 0 && !this.group.hidden) this.#choose(Number(this.#slider.value) + step);
  }

  #tell(): void {
    const { sittings = [], chosen } = this.#record ?? {};
    const shown = sittings.find(({ sitting }) => sitting === chosen);
    const words = shown === undefined ? '' : `${shown.sitting + 1} ${shown.name}`;
    if (this.#told.textContent === words) return;
    this.#told.textContent = words;
    this.#slider.setAttribute('aria-valuetext', words);
  }
}

/** Which way a key goes among the sittings; not at all (0) for other keys. */
function stepOf(key: string): -1 | 0 | 1 {
  if (key === ',') return -1;
  return key === '.' ? 1 : 0;
}
