import { type Reason, marked, reasonOf } from '../../../grammar/index.js';
import { SaxesParser } from 'saxes';
import { thousands } from '../problems.js';
import { Refusal } from './refusal.js';

/** An element of an SVG file, with the attributes that bear no namespace and `href`. */
export interface SvgElement {
  /** Local name; `''` for an element that is not SVG. */
  readonly name: string;
  readonly attributes: ReadonlyMap<string, string>;
  readonly parent: SvgElement | undefined;
  readonly children: readonly SvgElement[];
}

export type SvgReading =
  | { readonly ok: true; readonly root: SvgElement; readonly byId: ReadonlyMap<string, SvgElement> }
  | { readonly ok: false; readonly reason: Reason };

const LONGEST_TEXT = 20_000_000;
const DEEPEST = 256;
const MOST_ELEMENTS = 200_000;
const SVG = 'http://www.w3.org/2000/svg';
const XLINK = 'http://www.w3.org/1999/xlink';

/**
 * The elements of an SVG file. Nothing outside of the text is looked up; entities beyond the five of XML, nesting
 * beyond 256 and more than 200,000 elements are refused. Never throws.
 */
export function readSvg(text: string): SvgReading {
  if (text.trim() === '') return { ok: false, reason: reasonOf(marked('the file is empty')) };
  if (text.length > LONGEST_TEXT)
    return { ok: false, reason: reasonOf(marked('the file is larger than 20 million characters')) };
  try {
    return parse(text);
  } catch (error) {
    if (error instanceof Refusal) return { ok: false, reason: error.reason };
    return { ok: false, reason: reasonOf(marked('the file is not a readable SVG file')) };
  }
}

function parse(text: string): SvgReading {
  const parser = new SaxesParser({
    xmlns: true,
    resolvePrefix: (prefix: string) => (prefix === '' ? undefined : `unknown:${prefix}`),
  });
  const byId = new Map<string, SvgElement>();
  const open: OpenElement[] = [];
  let root: SvgElement | undefined;
  let count = 0;

  parser.on('error', (error) => {
    throw new Refusal(plainReason(error.message));
  });
  parser.on('opentag', (tag) => {
    if (++count > MOST_ELEMENTS)
      throw new Refusal(reasonOf(marked('the file has more than {0} elements'), thousands(MOST_ELEMENTS)));
    if (open.length >= DEEPEST)
      throw new Refusal(reasonOf(marked('the file nests its groups more than 256 deep')));
    const attributes = new Map<string, string>();
    for (const { local, uri, value } of Object.values(tag.attributes)) {
      if (uri === '' || (uri === XLINK && local === 'href' && !attributes.has('href')))
        attributes.set(local, value);
    }
    const parent = open.at(-1);
    const isSvg = tag.uri === SVG || tag.uri === '';
    const element: OpenElement = { name: isSvg ? tag.local : '', attributes, parent, children: [] };
    parent?.children.push(element);
    root ??= element;
    const id = attributes.get('id');
    if (id !== undefined && !byId.has(id)) byId.set(id, element);
    open.push(element);
  });
  parser.on('closetag', () => {
    open.pop();
  });
  parser.write(text).close();

  if (root?.name !== 'svg') return { ok: false, reason: reasonOf(marked('the file is not an SVG file')) };
  return { ok: true, root, byId };
}

interface OpenElement extends SvgElement {
  readonly children: SvgElement[];
}

function plainReason(message: string): Reason {
  const line = /^(?:.*?:)?(\d+):\d+/.exec(message)?.[1];
  if (message.includes('entity')) {
    return line === undefined
      ? reasonOf(marked('the file uses entities of its own; saving it as plain SVG removes them'))
      : reasonOf(
          marked('the file uses entities of its own (line {0}); saving it as plain SVG removes them'),
          line,
        );
  }
  return line === undefined
    ? reasonOf(marked('the file is not well-formed SVG'))
    : reasonOf(marked('the file is not well-formed SVG (line {0})'), line);
}
