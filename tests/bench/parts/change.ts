import { styleSheetOf } from '../documents/css.js';
import { planOf } from '../documents/plan.js';
import { jsonOf, yamlOf } from '../documents/records.js';
import { ratioOf, spreadOf } from '../figures.js';
import type { Options } from '../options.js';
import { written, type Finding } from '../report.js';
import { inTurn, of, type Sampled, type Samples } from '../rounds.js';
import { OpenDocument, typedIn, typedLineOf } from '../servers/editing.js';
import { cssServer, jsonServer, ourServer, yamlServer } from '../servers/kinds.js';
import type { Taken } from '../taken.js';
import { RunningServer, type ServerKind } from '../servers/server.js';

const LINES = 300;
const OBJECTS = 60;
const DRAWING = 'mahlstick, drawing alone';
/** Changes before anything counts: the first ones are compiled. */
const WARMING = 30;

/** From a change to what the server says of it, over its standard streams. */
export async function measureChange({ rounds, quick }: Options): Promise<Finding> {
  const peers = await Promise.all([
    begun(cssServer(), styleSheetOf(LINES), typedIn.css),
    begun(jsonServer(), jsonOf(LINES), typedIn.json),
    begun(yamlServer(), yamlOf(LINES), typedIn.yaml),
  ]);
  const ours = await begun(ourServer(), planOf(LINES, OBJECTS).text, typedIn.mahl);
  const drawn: Taken[] = [];
  const contestants: readonly Sampled[] = [
    ...peers.map((document) => ({
      name: document.server.kind.name,
      sample: () => document.typeAndWait(),
    })),
    {
      name: ours.server.kind.name,
      sample: async () => {
        const { drawing, all } = await ours.typeAndDraw();
        drawn.push(drawing);
        return all;
      },
    },
  ];
  try {
    await warmed(contestants, quick ? 1 : WARMING);
    drawn.length = 0;
    const whole = await inTurn(contestants, quick ? rounds : rounds * 2);
    const samples: Samples = new Map([...whole, [DRAWING, drawn]]);
    const waits = new Map(peers.map(({ server }) => [server.kind.name, server.kind.waits]));
    const against = (name: string, how: keyof Taken): string =>
      written(ratioOf(of(samples, name, how), of(samples, 'css server', how)));
    return {
      part: 'change',
      data: {
        lines: LINES,
        objects: OBJECTS,
        waits: Object.fromEntries(waits),
        samples: Object.fromEntries(samples),
      },
      tables: [
        {
          title: `From a change to its diagnostics, ${LINES} lines, over stdio`,
          columns: ['server', 'fixed wait, ms', 'without it, ms', 'against css', 'worked, ms', 'against css'],
          rows: [...samples.keys()].map((name) => [
            name,
            String(waits.get(name) ?? 0),
            written(spreadOf(of(samples, name, 'elapsed'))),
            against(name, 'elapsed'),
            written(spreadOf(of(samples, name, 'worked'))),
            against(name, 'worked'),
          ]),
          notes: [
            `Ours is a plan of ${OBJECTS} objects of which one is moved, until both the diagnostics (areas, measures, findings, remedies tried out) and the drawing, asked for as the preview asks for it, are there. The others have no schema. What a server worked is the time that its threads had a core.`,
          ],
        },
      ],
    };
  } finally {
    await Promise.all([...peers, ours].map(({ server }) => server.stop()));
  }
}

/** What is read first is compiled while it is. */
async function warmed(contestants: readonly Sampled[], changes: number): Promise<void> {
  for (let change = 0; change < changes; change += 1)
    await Promise.all(contestants.map(async ({ sample }) => sample(change)));
}

/** A server with a document open in it, of which it has said what it finds. */
async function begun(kind: ServerKind, text: string, pattern: RegExp): Promise<OpenDocument> {
  const server = new RunningServer(kind);
  await server.initialize();
  const uri = `file:///bench/document.${kind.language}`;
  const told = server.next<{ readonly uri: string }>(
    'textDocument/publishDiagnostics',
    (params) => params.uri === uri,
  );
  server.open(uri, text);
  await told;
  return new OpenDocument(server, uri, typedLineOf(text, pattern));
}
