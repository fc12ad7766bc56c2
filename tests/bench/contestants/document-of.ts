import { TextDocument } from 'vscode-languageserver-textdocument';

let version = 0;

/** Each text is a version of its own, so that no service answers from what it kept. */
export function documentOf(language: string, text: string): TextDocument {
  return TextDocument.create(`file:///bench/document.${language}`, language, (version += 1), text);
}
