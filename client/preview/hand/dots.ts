import type { Spot } from '../../../server/drawing/scene.js';

const svgNamespace = 'http://www.w3.org/2000/svg';

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
    'aria-roledescription': 'handle',
    ...attributes,
  });
  group.append(...dots(['reach', 'bed', 'line', 'hole']));
  if (tip !== undefined) {
    const title = svgElement('title', {});
    title.textContent = tip;
    group.append(title);
  }
  return group;
}

export function svgElement<K extends keyof SVGElementTagNameMap>(
  name: K,
  attributes: Readonly<Record<string, string>>,
): SVGElementTagNameMap[K] {
  const made = document.createElementNS(svgNamespace, name);
  for (const [attribute, value] of Object.entries(attributes)) made.setAttribute(attribute, value);
  return made;
}
