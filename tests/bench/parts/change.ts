import { styleSheetOf } from '../documents/css.js';
import { planOf } from '../documents/plan.js';
import { jsonOf, yamlOf } from '../documents/records.js';
import { ratioOf, spreadOf } from '../figures.js';
import type { Options } from '../options.js';
import { written, type Finding } from '../report.js';
import { inTurn, of, type Sampled } from '../rounds.js';
import { cssServer, jsonServer, ourServer, yamlServer } from '../servers/kinds.js';
import { OpenDocument } from '../servers/open-document.js';
import { RunningServer, type ServerKind } from '../servers/server.js';
import { typedIn, typedInPlans, typedLineOf, type TypedLine, type Typing } from '../servers/typing.js';
import type { Taken } from '../taken.js';

const LINES = 300;
const OBJECTS = 60;
/**
 * What every server has been told before anything counts, as it compiles with the first changes: so many in each of
 * so many documents.
 */
const WARMING = { documents: 10, changes: 15 };
const QUICK_WARMING: typeof WARMING = { documents: 2, changes: 1 };

/** One kind of change, in a server that is asked for no other. */
interface Changing extends Sampled {
  readonly server: RunningServer;
  /** How long it took until the drawing was there, of each sample. */
  readonly drawings: Taken[];
}

/** From a change to what the server says of it, over its standard streams. */
export async function measureChange({ rounds, quick, alone }: Options): Promise<Finding> {
  const plan = planOf(LINES, OBJECTS).text;
  const warming = quick ? QUICK_WARMING : WARMING;
  const peers = alone
    ? []
    : [
        () => changing(cssServer(), styleSheetOf(LINES), typedIn.css, warming),
        () => changing(jsonServer(), jsonOf(LINES), typedIn.json, warming),
        () => changing(yamlServer(), yamlOf(LINES), typedIn.yaml, warming),
      ];
  const ours = Object.entries(typedInPlans).map(
    ([what, typing]) =>
      () =>
        changing({ ...ourServer(), name: `mahlstick, ${what}` }, plan, typing, warming),
  );
  const contestants: Changing[] = [];
  try {
    // One after the other, so that none is compiled less for want of a core.
    for (const begin of [...peers, ...ours]) contestants.push(await begin());
    const all = await inTurn(contestants, quick ? rounds : rounds * 2);
    const samples = new Map(
      contestants.flatMap(({ name, drawings }): (readonly [string, readonly Taken[]])[] => [
        [name, all.get(name) ?? []],
        ...(drawings.length > 0 ? [[`${name}: its drawing`, drawings] as const] : []),
      ]),
    );
    const waits = new Map(contestants.map(({ name, server }) => [name, server.kind.waits]));
    const against = (name: string, how: keyof Taken): string =>
      alone ? '' : written(ratioOf(of(samples, name, how), of(samples, 'css server', how)));
    return {
      part: 'change',
      data: {
        lines: LINES,
        objects: OBJECTS,
        warming,
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
            `Ours is a plan of ${OBJECTS} objects, each kind of change in a server of its own, until both the diagnostics (areas, measures, findings, remedies tried out) and the drawing, asked for as the preview asks for it, are there. In the others a number is typed over; they have no schema. What a server worked is the time that its threads had a core.`,
            `Each server was told ${warming.documents * warming.changes} changes before: ${warming.changes} in each of ${warming.documents} documents, in all of them at once, so that a fixed wait was waited out ${warming.changes} times.`,
          ],
        },
      ],
    };
  } finally {
    await Promise.all(contestants.map(({ server }) => server.stop()));
  }
}

/** A server that has been warmed up, with a document open in it. */
async function changing(
  kind: ServerKind,
  text: string,
  typing: Typing,
  warming: typeof WARMING,
): Promise<Changing> {
  const server = new RunningServer(kind);
  const drawings: Taken[] = [];
  const change = async (document: OpenDocument, typed: TypedLine): Promise<Taken> => {
    if (kind.language !== 'mahl') return document.typeAndWait(typed);
    const { drawing, all } = await document.typeAndDraw(typed);
    drawings.push(drawing);
    return all;
  };
  await server.initialize();
  await warm(server, text, typing, change, warming);
  drawings.length = 0;
  const document = await OpenDocument.open(server, 'document', text);
  const typed = typedLineOf(text, typing);
  return { name: kind.name, server, drawings, sample: () => change(document, typed) };
}

/**
 * Changes many documents at once, again and again, so that what a server only waits is waited out once for all of them.
 */
async function warm(
  server: RunningServer,
  text: string,
  typing: Typing,
  change: (document: OpenDocument, typed: TypedLine) => Promise<unknown>,
  { documents, changes }: typeof WARMING,
): Promise<void> {
  const open = await Promise.all(
    Array.from({ length: documents }, async (_, index) => ({
      document: await OpenDocument.open(server, `warming${index}`, text),
      typed: typedLineOf(text, typing),
    })),
  );
  for (let time = 0; time < changes; time += 1)
    await Promise.all(open.map(({ document, typed }) => change(document, typed)));
  for (const { document } of open) document.close();
}
