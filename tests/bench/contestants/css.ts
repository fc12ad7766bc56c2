import type { TextDocument } from 'vscode-languageserver-textdocument';
import { styleSheetOf } from '../documents/css.js';
import { peer } from '../peers.js';
import type { Contestant } from './contestant.js';
import { documentOf } from './document-of.js';

interface Css {
  readonly getCSSLanguageService: () => {
    readonly parseStylesheet: (document: TextDocument) => unknown;
    readonly doValidation: (document: TextDocument, stylesheet: unknown) => readonly unknown[];
  };
}

/** The service behind the CSS features of VS Code. */
export function css(): Contestant {
  const service = peer<Css>('vscode-css-languageservice').getCSSLanguageService();
  return {
    name: 'vscode-css-languageservice',
    does: 'parse, validate',
    document: styleSheetOf,
    read: (text) => {
      const document = documentOf('css', text);
      return service.doValidation(document, service.parseStylesheet(document)).length;
    },
  };
}
