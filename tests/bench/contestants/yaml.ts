import type { TextDocument } from 'vscode-languageserver-textdocument';
import { inventorySchema, yamlOf } from '../documents/records.js';
import { peer } from '../peers.js';
import type { Contestant } from './contestant.js';
import { documentOf } from './document-of.js';

interface Yaml {
  readonly getLanguageService: (params: object) => {
    readonly configure: (settings: object) => void;
    readonly doValidation: (document: TextDocument, isKubernetes: boolean) => Promise<readonly unknown[]>;
  };
}

/** The service of yaml-language-server, with a schema. */
export function yaml(): Contestant {
  const service = peer<Yaml>(
    'yaml-language-server/out/server/src/languageservice/yamlLanguageService.js',
  ).getLanguageService({
    schemaRequestService: () => Promise.reject(new Error('nothing is fetched')),
    workspaceContext: { resolveRelativePath: (path: string) => path },
  });
  const uri = 'file:///bench/inventory.schema.json';
  service.configure({ validate: true, schemas: [{ uri, fileMatch: ['*.yaml'], schema: inventorySchema }] });
  return {
    name: 'yaml-language-server',
    does: 'parse, validate',
    document: yamlOf,
    read: async (text) => (await service.doValidation(documentOf('yaml', text), false)).length,
  };
}
