import { styleSheetOf } from '../documents/css.js';
import { planOfLines } from '../documents/plan.js';
import { jsonOf, yamlOf } from '../documents/records.js';
import { spreadOf } from '../figures.js';
import type { Options } from '../options.js';
import { written, type Finding } from '../report.js';
import { cssServer, jsonServer, ourServer, yamlServer } from '../servers/kinds.js';
import { RunningServer, type ServerKind } from '../servers/server.js';

/** What a server takes once it has told of the documents that are open. */
export async function measureMemory({ rounds, sizes, quick }: Options): Promise<Finding> {
  const kinds: readonly { readonly kind: ServerKind; readonly document: (lines: number) => string }[] = [
    { kind: ourServer(), document: (lines) => planOfLines(lines).text },
    { kind: cssServer(), document: styleSheetOf },
    { kind: jsonServer(), document: jsonOf },
    { kind: yamlServer(), document: yamlOf },
  ];
  const many = quick ? 1 : Math.max(3, Math.round(rounds / 5));
  const samples = kinds.map(({ kind }) => ({ kind, byLines: new Map<number, number[]>() }));
  for (let round = 0; round < many; round += 1) {
    for (const lines of [0, ...sizes]) {
      for (const [index, { kind, document }] of kinds.entries()) {
        const byLines = samples[index]?.byLines;
        const texts = lines === 0 ? [] : [document(lines)];
        byLines?.set(lines, [...(byLines.get(lines) ?? []), await memoryOf(kind, texts)]);
      }
    }
  }
  return {
    part: 'memory',
    data: Object.fromEntries(samples.map(({ kind, byLines }) => [kind.name, Object.fromEntries(byLines)])),
    tables: [
      {
        title: 'Resident memory after opening a document, MB',
        columns: ['server', 'none', ...sizes.map((lines) => `${lines} lines`)],
        rows: samples.map(({ kind, byLines }) => [
          kind.name,
          ...[...byLines.values()].map((megabytes) => written(spreadOf(megabytes), 0)),
        ]),
        notes: [],
      },
    ],
  };
}

async function memoryOf(kind: ServerKind, texts: readonly string[]): Promise<number> {
  const server = new RunningServer(kind);
  try {
    await server.initialize();
    for (const [index, text] of texts.entries()) {
      const uri = `file:///bench/document${index}.${kind.language}`;
      const told = server.next<{ readonly uri: string }>(
        'textDocument/publishDiagnostics',
        (params) => params.uri === uri,
      );
      server.open(uri, text);
      await told;
    }
    return server.memory;
  } finally {
    await server.stop();
  }
}
