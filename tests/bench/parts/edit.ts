import { linesAround, planOf } from '../documents/plan.js';
import { ratioOf, spreadOf } from '../figures.js';
import type { Options } from '../options.js';
import { written, type Finding } from '../report.js';
import { drawnAndDiagnosed, OpenDocument, typedIn, typedLineOf } from '../servers/editing.js';
import { ourServer } from '../servers/kinds.js';
import type { Taken } from '../taken.js';
import { RunningServer } from '../servers/server.js';

/** Edits that are made before one counts, for each full computation. */
const EDITS_EACH = 4;

/** One edit of a large plan against a full computation of one, over stdio, up to diagnostics and drawing. */
export async function measureEdit({ rounds, quick }: Options): Promise<Finding> {
  const objects = quick ? 60 : 2_000;
  const lines = objects * 5 + linesAround;
  const many = quick ? rounds : Math.max(3, Math.round(rounds / 3));
  const server = new RunningServer(ourServer());
  const full: Taken[] = [];
  const edits: (readonly Taken[])[] = [];
  try {
    await server.initialize();
    for (let round = 0; round <= many; round += 1) {
      const { text } = planOf(lines, objects, round + 1);
      const uri = `file:///bench/large${round}.mahl`;
      const opened = drawnAndDiagnosed(server, uri, 1);
      server.open(uri, text);
      const whole = (await opened).all;
      const document = new OpenDocument(server, uri, typedLineOf(text, typedIn.mahl));
      const times: Taken[] = [];
      for (let edit = 0; edit < EDITS_EACH; edit += 1) times.push((await document.typeAndDraw()).all);
      server.notify('textDocument/didClose', { textDocument: { uri } });
      // The first plan only warms up.
      if (round === 0) continue;
      full.push(whole);
      edits.push(times);
    }
  } finally {
    await server.stop();
  }
  const columns = (['elapsed', 'worked'] as const).map((how) => {
    const fullTimes = full.map((time) => time[how]);
    const editTimes = edits.map((times) => times.map((time) => time[how]));
    const medians = editTimes.map((times) => spreadOf(times).median);
    return {
      opened: written(spreadOf(fullTimes)),
      edited: written(spreadOf(editTimes.flat())),
      ratio: written(ratioOf(medians, fullTimes)),
    };
  });
  return {
    part: 'edit',
    data: { objects, lines, full, edits },
    tables: [
      {
        title: `One edit of a plan of ${objects} objects against a full computation, over stdio`,
        columns: ['what', 'ms', 'worked, ms'],
        rows: [
          ['opened: diagnostics and drawing', ...columns.map(({ opened }) => opened)],
          ['one object moved: the same', ...columns.map(({ edited }) => edited)],
          ['the second against the first', ...columns.map(({ ratio }) => ratio)],
        ],
        notes: [`Another plan of ${lines} lines each round, in one server that has worked before.`],
      },
    ],
  };
}
