import { marked, said, t } from '../../../grammar/localised.js';
import type { Spot } from '../../../server/drawing/scene.js';
import { svgElement } from '../elements.js';
import { dots, handleElement, placeDots } from './dots.js';
import type { Grip } from './grips.js';

/** What a hand sees of what it does, over the drawing. All places are those of the drawing, in canvas units. */
export class Overlay {
  readonly #root = svgElement('g', { class: 'hand' });
  /** The outline of what moves, where it will be. */
  readonly #ghost = svgElement('g', { class: 'ghost', 'aria-hidden': 'true' });
  readonly #trace = svgElement('path', { class: 'trace', 'aria-hidden': 'true' });
  readonly #draft = svgElement('g', { class: 'draft', 'aria-hidden': 'true' });
  /** The frame round a thing that is sized by it. */
  readonly #frame = svgElement('g', { class: 'frame', 'aria-hidden': 'true' });
  readonly #grips = svgElement('g', { class: 'grips', role: 'group' });
  readonly #snap = svgElement('g', { class: 'snap', 'aria-hidden': 'true' });
  readonly #cross = svgElement('g', { class: 'cross', tabindex: '0', role: 'application' });
  readonly #shown = new Map<string, SVGGElement>();

  constructor() {
    this.#root.append(this.#trace, this.#ghost, this.#draft, this.#frame, this.#grips, this.#snap);
    for (const kind of ['bed', 'line']) {
      this.#cross.append(svgElement('path', { class: kind }));
      this.#frame.append(svgElement('path', { class: kind }));
    }
  }

  /** Lies over a drawing from now on. */
  attach(svg: SVGSVGElement): void {
    if (this.#root.parentNode !== svg) svg.append(this.#root);
  }

  /** Small handles, of which Tab comes to the first; the same handle stays the same element. */
  showGrips(grips: readonly Grip[], of: string): void {
    this.#grips.setAttribute(
      'aria-label',
      t('Handles of {0}. Arrow keys move a handle, G goes to the next, Escape leaves.', of),
    );
    const wanted = new Set(grips.map(({ key }) => key));
    for (const [key, group] of this.#shown) {
      if (wanted.has(key)) continue;
      group.remove();
      this.#shown.delete(key);
    }
    grips.forEach((grip, index) => {
      const group = this.#shown.get(grip.key) ?? handle(grip);
      this.#shown.set(grip.key, group);
      group.setAttribute('aria-label', grip.fixed === undefined ? grip.name : t('{0}, fixed', grip.name));
      group.setAttribute('tabindex', index === 0 ? '0' : '-1');
      if (grip.kind === 'size') group.setAttribute('data-pull', grip.pull);
      placeDots(group, grip.at);
      if (this.#grips.children.item(index) !== group)
        this.#grips.insertBefore(group, this.#grips.children.item(index));
    });
    this.#grips.toggleAttribute('hidden', grips.length === 0);
  }

  focusGrip(key: string): void {
    this.#shown.get(key)?.focus();
  }

  /** The key of the handle that has the focus. */
  get focusedGrip(): string | undefined {
    return [...this.#shown].find(([, group]) => group === document.activeElement)?.[0];
  }

  /** Moves one handle, or with no key all of them, away from where they are drawn. */
  shift(by: Spot, key?: string): void {
    for (const [each, group] of this.#shown) {
      if (key === undefined || key === each) move(group, by);
    }
    if (key === undefined) move(this.#frame, by);
  }

  /** Puts a handle where it will be. */
  placeGrip(key: string, at: Spot): void {
    const group = this.#shown.get(key);
    if (group !== undefined) placeDots(group, at);
  }

  /** The frame by its path data; empty for none. */
  showFrame(d: string): void {
    for (const path of this.#frame.children) path.setAttribute('d', d);
  }

  /** Begins to show outlines that move. */
  beginGhost(outline: readonly string[]): void {
    this.#ghost.replaceChildren(
      ...['bed', 'line'].flatMap((kind) => outline.map((d) => svgElement('path', { class: kind, d }))),
    );
  }

  moveGhost(by: Spot): void {
    move(this.#ghost, by);
  }

  /** A thin line from where something was to where it is. */
  showTrace(from: Spot, to: Spot): void {
    this.#trace.setAttribute('d', `M${from.x} ${from.y}L${to.x} ${to.y}`);
  }

  clear(): void {
    this.#ghost.replaceChildren();
    this.#ghost.removeAttribute('transform');
    this.#trace.removeAttribute('d');
    this.showSnap(undefined);
    for (const group of [this.#frame, ...this.#shown.values()]) group.removeAttribute('transform');
  }

  /** Where something snaps. */
  showSnap(at: Spot | undefined): void {
    if (at === undefined) {
      this.#snap.replaceChildren();
      return;
    }
    if (this.#snap.childElementCount === 0) this.#snap.append(...dots(['bed', 'line', 'hole']));
    placeDots(this.#snap, at);
  }

  /** A new shape as far as it is drawn, with its points. */
  showDraft(d: string, points: readonly Spot[]): void {
    this.#draft.replaceChildren(
      ...['bed', 'line'].map((kind) => svgElement('path', { class: kind, d })),
      ...points.flatMap((at) => {
        const group = svgElement('g', { class: 'point' });
        group.append(...dots(['bed', 'line']));
        placeDots(group, at);
        return group;
      }),
    );
  }

  /** The cross that arrow keys move while something is drawn; none when there is no place. */
  showCross(at: Spot | undefined, arm: number, label: string): void {
    if (at === undefined) {
      this.#cross.remove();
      return;
    }
    this.#cross.setAttribute('aria-label', label);
    const d = `M${at.x - arm} ${at.y}h${2 * arm}M${at.x} ${at.y - arm}v${2 * arm}`;
    for (const path of this.#cross.children) path.setAttribute('d', d);
    if (this.#cross.parentNode !== this.#root) this.#root.append(this.#cross);
  }

  focusCross(): void {
    this.#cross.focus();
  }

  get crossHasFocus(): boolean {
    return this.#cross === document.activeElement;
  }
}

const sizing = marked(
  'Drag it to size the thing; Shift keeps the proportion. Arrow keys move it as well, and Alt and + or - size the thing about its middle.',
);

function handle({ key, kind }: Grip): SVGGElement {
  return handleElement({ 'data-grip': key, 'data-kind': kind }, kind === 'size' ? said(sizing) : undefined);
}

function move(group: SVGGElement, { x, y }: Spot): void {
  if (x === 0 && y === 0) group.removeAttribute('transform');
  else group.setAttribute('transform', `translate(${x} ${y})`);
}
