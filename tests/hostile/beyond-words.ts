import { SaxesParser } from 'saxes';
import { inQuotes } from '../../grammar/index.js';

/** The elements that our own drawings are made of. */
const elements = new Set([
  ...['svg', 'g', 'path', 'text', 'title', 'desc', 'defs', 'clipPath'],
  ...['filter', 'feGaussianBlur', 'feComponentTransfer', 'feFuncA', 'feMerge', 'feMergeNode'],
]);

/** What an SVG text holds that is not of our own making; throws where it is no XML. */
export function foreignIn(drawing: string): readonly string[] {
  const found: string[] = [];
  const parser = new SaxesParser();
  parser.on('error', (error) => {
    throw error;
  });
  parser.on('doctype', (doctype) => void found.push(`doctype ${doctype}`));
  parser.on('processinginstruction', ({ target }) => void found.push(`instruction ${target}`));
  parser.on('opentag', ({ name, attributes }) => {
    if (!elements.has(name)) found.push(`<${name}>`);
    for (const [attribute, value] of Object.entries(attributes)) {
      if (/^on|href$|^style$|^src$/iu.test(attribute)) found.push(`${name} ${attribute}="${value}"`);
      const isOwnWord = attribute.startsWith('data-') || attribute.startsWith('aria-');
      if (!isOwnWord && /url\((?!#)|javascript:/iu.test(value)) found.push(`${attribute}="${value}"`);
    }
  });
  parser.write(drawing).close();
  return found;
}

/**
 * A stretch of Markdown without signs that stand for themselves, which begin no code either, and without what is code
 * in it.
 */
function withoutCode(markdown: string): string {
  return markdown.replace(/\\[^\w\s]|```[\s\S]*?```|`[^`]*`/gu, '');
}

/** What Markdown would make of a text beyond words: pictures, markup, links to anywhere but the reference. */
export function linksIn(markdown: string): readonly string[] {
  const read = withoutCode(markdown);
  return [...read.matchAll(/!\[|<[a-z/!?]|\]\((?!file:\/\/\/mahlstick)[^)]*\)?/giu)].map(([found]) => found);
}

/** A plan that says some words in every place that takes a sentence. */
export function planThatSays(words: string): string {
  const said = inQuotes(words);
  return `plan ${said}
by ${said}
concept ${said}
mood ${words.replace(/[\r\n]/gu, ' ')}
cue ${said}
avoid ${said}
note ${said}
canvas 40 x 30 cm
  support ${words.replace(/[\r\n]/gu, ' ')}
focus upper right
scale 5
  group ${words} 1-2, middle 3, light 4-5
budget value ${words} 30%, middle 45%, light 25%
colour ${words} #3b5b7a dominant
object jar, dominant
  shape from ${said} part ${said}
  colour ${words}
  note ${said}
object ${words}
  shape rectangle (2, 2) to (12, 12)
  value 3
lead ${words} from left edge at 20% to focus
palette
  paint ${words} PB29
sitting ${said} on 2026-12-01
  works jar
  task ${said}
  photo ${said}
allow even count because ${said}
allow ${words} because ${said}
`;
}

/** Places in every word of a text. */
export function placesIn(text: string): readonly { readonly line: number; readonly character: number }[] {
  return text
    .split('\n')
    .flatMap((line, index) =>
      [...line.slice(0, 400).matchAll(/\S+/gu)].map((match) => ({ line: index, character: match.index + 1 })),
    );
}
