import type { TextDocument } from 'vscode-languageserver-textdocument';
import { inventorySchema, jsonOf } from '../documents/records.js';
import { peer } from '../peers.js';
import type { Contestant } from './contestant.js';
import { documentOf } from './document-of.js';

interface Json {
  readonly getLanguageService: (params: object) => {
    readonly parseJSONDocument: (document: TextDocument) => unknown;
    readonly doValidation: (
      document: TextDocument,
      parsed: unknown,
      settings: object,
      schema: unknown,
    ) => PromiseLike<readonly unknown[]>;
  };
}

/** The service behind the JSON features of VS Code, with a schema. */
export function json(): Contestant {
  const service = peer<Json>('vscode-json-languageservice').getLanguageService({});
  return {
    name: 'vscode-json-languageservice',
    does: 'parse, validate',
    document: jsonOf,
    read: async (text) => {
      const document = documentOf('json', text);
      const parsed = service.parseJSONDocument(document);
      return (await service.doValidation(document, parsed, {}, inventorySchema)).length;
    },
  };
}
