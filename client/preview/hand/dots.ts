import { t } from '../../../grammar/localised.js';
import type { Spot } from '../../../server/drawing/scene.js';
import { svgElement } from '../elements.js';

/** A dot is a stroke of no length, so that it is as large on the screen however large the drawing is. */
export function dots(kinds: readonly string[]): readonly SVGPathElement[] {
  return kinds.map((kind) => svgElement('path', { class: kind }));
}

export function placeDots(group: SVGGElement, { x, y }: Spot): void {
  const d = `M${x} ${y}h.0001`;
  for (const path of group.querySelectorAll('path'))
    if (path.getAttribute('d') !== d) path.setAttribute('d', d);
}

/** A handle that can be taken hold of, with the strokes of its dot. */
export function handleElement(attributes: Readonly<Record<string, string>>, tip?: string): SVGGElement {
  const group = svgElement('g', {
    class: 'grip',
    role: 'button',
    'aria-roledescription': t('handle'),
    ...attributes,
  });
  group.append(...dots(['reach', 'bed', 'line', 'hole']));
  if (tip !== undefined) {
    const title = svgElement('title');
    title.textContent = tip;
    group.append(title);
  }
  return group;
}
