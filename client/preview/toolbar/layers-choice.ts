import { said, t } from '../../../grammar/localised.js';
import type { Scene } from '../../../server/drawing/scene.js';
import { element } from '../elements.js';
import { type Overlay, isThere, overlayWords, overlays } from './layers.js';

/** What lies over the picture, each shown or hidden by a button of its own. */
export class LayersChoice {
  readonly group = element('div', {
    class: 'tools layers',
    role: 'group',
    'aria-label': t('Shown in the drawing'),
  });
  readonly #hidden: Set<Overlay>;
  readonly #buttons = new Map<Overlay, HTMLButtonElement>();

  constructor(hidden: readonly Overlay[], changed: () => void) {
    this.#hidden = new Set(hidden);
    for (const overlay of overlays) {
      const button = element('button', { type: 'button', class: 'tool' }, said(overlayWords[overlay].label));
      button.addEventListener('click', () => {
        if (!this.#hidden.delete(overlay)) this.#hidden.add(overlay);
        this.#tell(overlay, button);
        changed();
      });
      this.#buttons.set(overlay, button);
      this.#tell(overlay, button);
      this.group.append(button);
    }
  }

  get hidden(): ReadonlySet<Overlay> {
    return this.#hidden;
  }

  /** A button for what a view does not have can still be pressed, as it holds in all views; it is only told. */
  connect(scene: Scene): void {
    for (const [overlay, button] of this.#buttons) {
      button.classList.toggle('idle', !isThere(scene, overlay));
      this.#tell(overlay, button);
    }
  }

  #tell(overlay: Overlay, button: HTMLButtonElement): void {
    const isHidden = this.#hidden.has(overlay);
    const holds = said(overlayWords[overlay].holds);
    const what = isHidden ? t('Show {0}', holds) : t('Hide {0}', holds);
    button.setAttribute('aria-pressed', String(!isHidden));
    button.title = button.classList.contains('idle') ? t('{0} (this view has none)', what) : what;
  }
}
