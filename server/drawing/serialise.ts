const ELEMENT = 1;
const TEXT = 3;

/** Elements whose white space would show. */
const TEXT_ELEMENTS: ReadonlySet<string> = new Set(['text', 'title', 'desc']);

/**
 * An SVG element and all that is in it as XML, one element a line, so that two drawings can be compared line by
 * line. Attributes stand in one order, however they were set: `data-` first, then by name.
 */
export function serialise(svg: Element): string {
  const [first = '', ...rest] = lines(svg, '');
  return [first.replace('<svg', '<svg xmlns="http://www.w3.org/2000/svg"'), ...rest].join('\n');
}

function lines(element: Element, indent: string): string[] {
  const open = `${indent}<${element.nodeName}${attributes(element)}`;
  const children = [...element.childNodes];
  if (children.length === 0) return [`${open}/>`];
  if (TEXT_ELEMENTS.has(element.nodeName)) return [`${open}>${inline(children)}</${element.nodeName}>`];
  const inner = children.flatMap((child) =>
    child.nodeType === ELEMENT ? lines(child as Element, `${indent}  `) : [],
  );
  return [`${open}>`, ...inner, `${indent}</${element.nodeName}>`];
}

function inline(nodes: readonly ChildNode[]): string {
  return nodes
    .map((node) => {
      if (node.nodeType === TEXT) return escapeXml(node.nodeValue ?? '');
      return node.nodeType === ELEMENT ? lines(node as Element, '').join('') : '';
    })
    .join('');
}

function attributes(element: Element): string {
  return [...element.attributes]
    .filter(({ name }) => name !== 'xmlns')
    .sort((a, b) => Number(isData(b.name)) - Number(isData(a.name)) || (a.name < b.name ? -1 : 1))
    .map(({ name, value }) => ` ${name}="${escapeXml(value)}"`)
    .join('');
}

function isData(name: string): boolean {
  return name.startsWith('data-');
}

const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  // A parser would turn these into spaces or line feeds.
  '\t': '&#9;',
  '\n': '&#10;',
  '\r': '&#13;',
};

function escapeXml(value: string): string {
  return value.replace(/[&<>"\t\n\r]/g, (character) => ENTITIES[character] ?? character);
}
