import { t } from '../../../grammar/localised.js';
import type { Scene } from '../../../server/drawing/scene.js';
import type { HandChange } from '../../../server/language/hand/change.js';
import { element } from '../elements.js';
import { FindBox } from './find-box.js';
import { LayersChoice } from './layers-choice.js';
import { withoutHidden } from './layers.js';
import type { PageState } from '../messages.js';
import { SketchUnderlay } from '../sketch/sketch.js';
import { panByDragging } from '../zoom/zoom-pan.js';
import { bringIntoSight } from '../zoom/zoom-sight.js';
import { ZoomChoice } from '../zoom/zoom.js';

const moreId = 'more';

export interface ToolbarParts {
  /** The drawing, which scrolls when it is larger than its place. */
  readonly box: HTMLElement;
  readonly state: PageState;
  /** What stands before the tools, and what after them in a row of its own. */
  readonly views: readonly HTMLElement[];
  readonly hand: HTMLElement;
  /** What is done with the drawing as a whole. */
  readonly takeOut: HTMLElement;
  readonly svg: () => SVGSVGElement | undefined;
  /** What is kept is another now. */
  readonly keep: () => void;
  /** Another part of the scene is to be shown. */
  readonly redraw: () => void;
  readonly point: (keys: readonly string[]) => void;
  readonly focus: (key: string) => void;
  /** The file of the photograph of a sitting is wanted to lie under the drawing, or with `null` that of the sketch. */
  readonly want: (sitting: number | null) => void;
  /** Something done by hand is to be written in the text. */
  readonly write: (change: HandChange) => void;
}

/**
 * What stands above the drawing: the views, and below them the tools to look at it with: zoom, what lies over the
 * picture, finding. Where there is little room some of them wait behind a button.
 */
export class Toolbar {
  readonly bar: HTMLElement;
  readonly sketch: SketchUnderlay;
  readonly #box: HTMLElement;
  readonly #zoom: ZoomChoice;
  readonly #layers: LayersChoice;
  readonly #find: FindBox;
  readonly #button = element(
    'button',
    { type: 'button', class: 'tool more', 'aria-controls': moreId, 'aria-expanded': 'false' },
    t('More'),
  );

  constructor({
    box,
    state,
    views,
    hand,
    takeOut,
    svg,
    keep,
    redraw,
    point,
    focus,
    want,
    write,
  }: ToolbarParts) {
    this.#box = box;
    this.#zoom = new ZoomChoice(box, state.zoom, keep);
    this.#layers = new LayersChoice(state.hidden ?? [], () => {
      keep();
      redraw();
    });
    this.sketch = new SketchUnderlay(
      { strength: state.sketch, under: state.under },
      { svg, changed: keep, want, write },
    );
    this.#find = new FindBox({
      summoned: () => this.#show(true),
      point: (key) => point(key === undefined ? [] : [key]),
      choose: (key) => {
        focus(key);
        this.toSight(true, document.activeElement);
      },
    });
    panByDragging(box);
    const more = element(
      'div',
      { class: 'more-row', id: moreId },
      this.#layers.group,
      this.sketch.group,
      takeOut,
    );
    const tools = element(
      'div',
      { class: 'tool-row' },
      this.#zoom.group,
      this.#find.group,
      this.#button,
      more,
    );
    this.bar = element('header', { class: 'bar' }, ...views, tools, hand);
    this.#button.title = t('What is shown in the drawing, copying and exporting');
    this.#button.addEventListener('click', () => this.#show(!this.bar.classList.contains('with-more')));
  }

  get kept(): Pick<PageState, 'zoom' | 'hidden' | 'sketch' | 'under'> {
    const { zoom } = this.#zoom;
    return {
      ...(zoom === undefined ? {} : { zoom }),
      hidden: [...this.#layers.hidden],
      ...(this.sketch.set === undefined ? {} : { sketch: this.sketch.set }),
      ...(this.sketch.under === undefined ? {} : { under: this.sketch.under }),
    };
  }

  /** What is to be drawn of a scene. */
  shownOf(scene: Scene): Scene {
    return withoutHidden(scene, this.#layers.hidden);
  }

  /** A scene is drawn. */
  drawn(scene: Scene): void {
    this.#layers.connect(scene);
    this.#find.connect(this.shownOf(scene));
    this.#zoom.drawn(scene);
    this.sketch.drawn(scene);
  }

  /** Scrolls to an item of the drawing that is out of sight. */
  toSight(alsoPage: boolean, item: Element | null | undefined): void {
    if (item instanceof SVGElement) bringIntoSight(item, this.#box, this.bar.offsetHeight, alsoPage);
  }

  #show(isShown: boolean): void {
    this.bar.classList.toggle('with-more', isShown);
    this.#button.setAttribute('aria-expanded', String(isShown));
  }
}
