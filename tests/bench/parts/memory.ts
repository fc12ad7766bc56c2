import { styleSheetOf } from '../documents/css.js';
import { planOfLines } from '../documents/plan.js';
import { jsonOf, yamlOf } from '../documents/records.js';
import { spreadOf } from '../figures.js';
import type { Options } from '../options.js';
import { written, type Finding } from '../report.js';
import { cssServer, jsonServer, ourServer, yamlServer } from '../servers/kinds.js';
import { OpenDocument } from '../servers/open-document.js';
import { RunningServer, type ServerKind } from '../servers/server.js';

/** What a server takes once it has told of the document that is open. */
export async function measureMemory({ rounds, sizes, quick, alone }: Options): Promise<Finding> {
  const kinds: readonly { readonly kind: ServerKind; readonly document: (lines: number) => string }[] = [
    { kind: ourServer(), document: (lines) => planOfLines(lines).text },
    ...(alone
      ? []
      : [
          { kind: cssServer(), document: styleSheetOf },
          { kind: jsonServer(), document: jsonOf },
          { kind: yamlServer(), document: yamlOf },
        ]),
  ];
  const many = quick ? 1 : Math.max(3, Math.round(rounds / 5));
  const samples = kinds.map(({ kind }) => ({ kind, byLines: new Map<number, number[]>() }));
  for (let round = 0; round < many; round += 1) {
    for (const lines of [0, ...sizes]) {
      for (const [index, { kind, document }] of kinds.entries()) {
        const byLines = samples[index]?.byLines;
        const text = lines === 0 ? undefined : document(lines);
        byLines?.set(lines, [...(byLines.get(lines) ?? []), await memoryOf(kind, text)]);
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

/** Of a server in which a document is open, or none. */
async function memoryOf(kind: ServerKind, text: string | undefined): Promise<number> {
  const server = new RunningServer(kind);
  try {
    await server.initialize();
    if (text !== undefined) await OpenDocument.open(server, 'document', text);
    return server.memory;
  } finally {
    await server.stop();
  }
}
