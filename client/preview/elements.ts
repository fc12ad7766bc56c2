type Child = Node | string;

const svgNamespace = 'http://www.w3.org/2000/svg';

/**
 * Makes an element of the page; strings among the children become text.
 * @param attributes `class`, `role` and so on; never event handlers or styles
 */
export function element<K extends keyof HTMLElementTagNameMap>(
  name: K,
  attributes: Readonly<Record<string, string>> = {},
  ...children: readonly Child[]
): HTMLElementTagNameMap[K] {
  const made = document.createElement(name);
  for (const [attribute, value] of Object.entries(attributes)) made.setAttribute(attribute, value);
  made.append(...children);
  return made;
}

/** Makes an element of a drawing. */
export function svgElement<K extends keyof SVGElementTagNameMap>(
  name: K,
  attributes: Readonly<Record<string, string>> = {},
): SVGElementTagNameMap[K] {
  const made = document.createElementNS(svgNamespace, name);
  for (const [attribute, value] of Object.entries(attributes)) made.setAttribute(attribute, value);
  return made;
}
