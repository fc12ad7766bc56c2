import { t } from '../../grammar/localised.js';
import { type Drawing, render } from '../../server/drawing/render.js';
import type { Scene } from '../../server/drawing/scene.js';
import type { Location } from '../../server/plan/plan.js';
import { svgElement } from './elements.js';
import { Pictures } from './pictures.js';
import { type Item, itemsAtLine, itemsOf } from './items.js';

const idPrefix = 'preview';

interface Shown {
  item: Item;
  readonly group: SVGGElement;
}

/**
 * The drawing on the page, and over it one outline for each item: it is what the keyboard goes to, what shows the
 * cursor's place, and what makes thin lines easy to hit.
 */
export class Stage {
  readonly #container: HTMLElement;
  readonly #reveal: (location: Location, key: string) => void;
  readonly #pictures = new Pictures();
  readonly #shown = new Map<string, Shown>();
  #drawing: Drawing | undefined;
  #outlines: SVGGElement | undefined;
  #items: readonly Item[] = [];
  #line: number | null = null;
  /** The one item that Tab goes to. */
  #stop: string | undefined;

  /** @param reveal told of each thing that is clicked, with the key of its subject */
  constructor(container: HTMLElement, reveal: (location: Location, key: string) => void) {
    this.#container = container;
    this.#reveal = reveal;
    container.addEventListener('click', ({ target }) => this.#revealAt(target));
    container.addEventListener('pointerover', ({ target }) =>
      this.point([subjectAt(target)].filter(isDefined)),
    );
    container.addEventListener('pointerleave', () => this.point([]));
    container.addEventListener('keydown', (event) => this.#press(event));
  }

  /** Draws a scene in place of the last. */
  draw(scene: Scene): void {
    if (this.#drawing === undefined) {
      this.#drawing = render(this.#container, scene, {
        theme: 'editor',
        role: 'group',
        idPrefix,
        addressOf: (picture) => this.#pictures.addressOf(picture),
      });
      this.#outlines = this.#layOver(this.#drawing.svg.node);
    } else {
      this.#drawing.update(scene);
    }
    this.#pictures.keepOnly(scene);
    this.#fit(scene);
    this.#items = itemsOf(scene);
    this.#patchOutlines();
    this.markLine(this.#line);
  }

  /** The picture with its mount fits the page whatever stands below it, and so stays as large in every view. */
  #fit({ sheet, picture }: Scene): void {
    const across = sheet.width / (picture.height - 2 * sheet.y);
    this.#drawing?.svg.node.style.setProperty('--across', across.toFixed(4));
  }

  /** Marks what is written at a line, `null` for nothing. */
  markLine(line: number | null): void {
    this.#line = line;
    const marked = line === null ? new Set<string>() : itemsAtLine(this.#items, line);
    for (const [key, { group }] of this.#shown) {
      setAttribute(group, 'aria-current', marked.has(key) ? 'true' : undefined);
    }
  }

  get svg(): SVGSVGElement | undefined {
    return this.#drawing?.svg.node;
  }

  /** Keys of the items that are marked. */
  get marked(): readonly string[] {
    return [...this.#shown].flatMap(([key, { group }]) => (group.hasAttribute('aria-current') ? [key] : []));
  }

  /** The outline of the first item that is marked. */
  get markedItem(): Element | undefined {
    return [...this.#shown.values()].find(({ group }) => group.hasAttribute('aria-current'))?.group;
  }

  /** Path data of the outline of an item, as it is drawn. */
  outlineOf(key: string): readonly string[] {
    const outline = this.#shown.get(key)?.item.outline ?? [];
    return outline.length > 0 ? outline : [this.#boxOf(key)];
  }

  /** Brings the focus to an item, as arrow keys do. False when there is none of that key. */
  focus(key: string): boolean {
    const shown = this.#shown.get(key);
    if (shown === undefined) return false;
    this.#stop = key;
    this.#patchTabStops();
    shown.group.focus({ preventScroll: true });
    return true;
  }

  /** Points at items for as long as the pointer or the focus is on what belongs to them. */
  point(keys: readonly string[]): void {
    for (const [key, { group }] of this.#shown) group.classList.toggle('pointed', keys.includes(key));
  }

  #layOver(svg: SVGSVGElement): SVGGElement {
    const group = svgElement('g', {
      class: 'outlines',
      role: 'group',
      'aria-label': t(
        'In the drawing. Arrow keys go from one to the next, Enter selects its words, Alt and an arrow key moves it, G goes to its handles.',
      ),
    });
    // Names and findings stay readable over an outline.
    svg.insertBefore(group, svg.querySelector('[data-layer="names"]'));
    for (const layer of svg.querySelectorAll('[data-layer]')) {
      if (layer.getAttribute('data-layer') !== 'captions') layer.setAttribute('aria-hidden', 'true');
    }
    return group;
  }

  #patchOutlines(): void {
    const wanted = new Set(this.#items.map(({ key }) => key));
    for (const [key, { group }] of this.#shown) {
      if (wanted.has(key)) continue;
      group.remove();
      this.#shown.delete(key);
    }
    let next = this.#outlines?.firstChild ?? null;
    for (const item of this.#items) {
      const shown = this.#shown.get(item.key) ?? { item, group: svgElement('g') };
      shown.item = item;
      this.#shown.set(item.key, shown);
      this.#patchOutline(shown);
      if (shown.group === next) next = next.nextSibling;
      else this.#outlines?.insertBefore(shown.group, next);
    }
    if (this.#stop === undefined || !wanted.has(this.#stop)) this.#stop = this.#stops()[0]?.item.key;
    this.#patchTabStops();
  }

  #patchOutline({ item, group }: Shown): void {
    const isFinding = item.kind === 'finding';
    const isDrawn = item.outline.length > 0;
    setAttribute(group, 'data-subject', item.key);
    group.classList.toggle('thin', item.thin);
    // The list below says the same of a finding in full.
    setAttribute(group, 'aria-hidden', isFinding ? 'true' : undefined);
    setAttribute(group, 'role', isFinding ? undefined : 'button');
    setAttribute(group, 'aria-label', isFinding ? undefined : item.label);
    // A shape may reach far over the edge of the picture, which hides the rest of it.
    setAttribute(group, 'clip-path', isDrawn && !isFinding ? `url(#${idPrefix}-picture)` : undefined);
    const paths = isDrawn ? item.outline : [this.#boxOf(item.key)];
    const wanted = ['bed', 'line'].flatMap((kind) => paths.map((d) => ({ kind, d })));
    wanted.forEach(({ kind, d }, index) => {
      const path = group.children[index] ?? group.appendChild(svgElement('path'));
      setAttribute(path, 'class', kind);
      setAttribute(path, 'd', d);
    });
    while (group.children.length > wanted.length) group.lastChild?.remove();
  }

  /** A rectangle round all that is drawn of a subject. */
  #boxOf(key: string): string {
    const boxes = (this.#drawing?.nodesOf(key) ?? [])
      .filter((node) => node instanceof SVGGraphicsElement)
      .map((node) => node.getBBox());
    if (boxes.length === 0) return '';
    const left = Math.min(...boxes.map(({ x }) => x));
    const top = Math.min(...boxes.map(({ y }) => y));
    const right = Math.max(...boxes.map(({ x, width }) => x + width));
    const bottom = Math.max(...boxes.map(({ y, height }) => y + height));
    return `M${left} ${top}H${right}V${bottom}H${left}Z`;
  }

  #stops(): readonly Shown[] {
    return this.#items.flatMap(({ key, kind }) => {
      const shown = this.#shown.get(key);
      return kind === 'finding' || shown === undefined ? [] : [shown];
    });
  }

  #patchTabStops(): void {
    for (const { item, group } of this.#stops()) {
      setAttribute(group, 'tabindex', item.key === this.#stop ? '0' : '-1');
    }
  }

  #press(event: KeyboardEvent): void {
    const stops = this.#stops();
    const at = stops.findIndex(({ group }) => group === document.activeElement);
    const here = stops[at];
    if (here === undefined || event.ctrlKey || event.altKey || event.metaKey) return;
    if (event.key === 'Enter' || event.key === ' ') {
      event.preventDefault();
      this.#reveal(here.item.location, here.item.key);
      return;
    }
    const target = stops[nextIndex(event.key, at, stops.length)];
    if (target === undefined) return;
    event.preventDefault();
    this.#stop = target.item.key;
    this.#patchTabStops();
    target.group.focus();
  }

  #revealAt(target: EventTarget | null): void {
    const key = subjectAt(target);
    const item = this.#items.find((candidate) => candidate.key === key);
    if (item !== undefined) this.#reveal(item.location, item.key);
  }
}

/** Where a key leads in a row of `count`; the ends are joined. Nowhere (-1) for other keys. */
function nextIndex(key: string, at: number, count: number): number {
  switch (key) {
    case 'ArrowRight':
    case 'ArrowDown':
      return (at + 1) % count;
    case 'ArrowLeft':
    case 'ArrowUp':
      return (at + count - 1) % count;
    case 'Home':
      return 0;
    case 'End':
      return count - 1;
    default:
      return -1;
  }
}

/** Leaves alone what is so already, which a browser would take for a change. */
function setAttribute(node: Element, name: string, value: string | undefined): void {
  if (value === undefined) node.removeAttribute(name);
  else if (node.getAttribute(name) !== value) node.setAttribute(name, value);
}

function subjectAt(target: EventTarget | null): string | undefined {
  if (!(target instanceof Element)) return undefined;
  return target.closest('[data-subject]')?.getAttribute('data-subject') ?? undefined;
}

function isDefined<T>(value: T | undefined): value is T {
  return value !== undefined;
}
