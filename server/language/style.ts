import { MarkupKind, type MarkupContent } from 'vscode-languageserver-types';
import type { Abilities } from './abilities.js';

/**
 * How a text for the painter is set: in Markdown or plain, as the client can take it. All that comes out of a plan
 * goes through here, so that a stranger's plan can't bring pictures or links into the editor.
 */
export interface Style {
  readonly kind: MarkupKind;
  strong(text: string): string;
  /** A name or a piece of the language. */
  name(text: string): string;
  text(text: string): string;
  /** Address of the folder that holds the reference, if there is one. */
  readonly reference?: string;
  link(text: string, address: string): string;
  /** A line of the language by itself. */
  example(line: string): string;
  list(items: readonly string[]): string;
  /** A drawing of our own, as SVG; missing where it would not be seen. */
  readonly drawing?: (svg: string, meaning: string) => string;
}

const markdown: Style = {
  kind: MarkupKind.Markdown,
  strong: (text) => `**${escaped(text)}**`,
  name: (text) => `\`${text.replaceAll('`', "'")}\``,
  text: escaped,
  link: (text, address) => `[${escaped(text)}](${address})`,
  example: (line) => `\`\`\`mahl\n${line}\n\`\`\``,
  list: (items) => items.map((item) => `- ${item}`).join('\n'),
};

const plain: Style = {
  kind: MarkupKind.PlainText,
  strong: (text) => text,
  name: (text) => text,
  text: (text) => text,
  link: (text, address) => `${text}: ${address}`,
  example: (line) => `    ${line}`,
  list: (items) => items.map((item) => `- ${item}`).join('\n'),
};

/** Writes Markdown or plain text, as the client can take it. */
export function styleFor(
  takesMarkdown: boolean,
  { reference }: Pick<Abilities, 'reference'> = {},
  showsDrawings = false,
): Style {
  const style = takesMarkdown ? markdown : plain;
  return {
    ...style,
    ...(reference === undefined ? {} : { reference }),
    ...(takesMarkdown && showsDrawings ? { drawing: asPicture } : {}),
  };
}

function asPicture(svg: string, meaning: string): string {
  return `![${escaped(meaning)}](data:image/svg+xml;base64,${btoa(svg)})`;
}

/** Paragraphs as one content, an empty line between them. */
export function contentOf(style: Style, paragraphs: readonly string[]): MarkupContent {
  return { kind: style.kind, value: paragraphs.join('\n\n') };
}

/** Text whose every sign stands for itself; a line end in it counts as a space. */
function escaped(text: string): string {
  return text.replace(/[\\`*_{}[\]()#+!|<>&~$-]/gu, '\\$&').replace(/\s+/gu, ' ');
}
