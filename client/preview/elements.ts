type Child = Node | string;

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
