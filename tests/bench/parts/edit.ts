import { linesAround, planOf } from '../documents/plan.js';
import { ratioOf, spreadOf } from '../figures.js';
import type { Options } from '../options.js';
import { written, type Finding } from '../report.js';
import { ourServer } from '../servers/kinds.js';
import { OpenDocument } from '../servers/open-document.js';
import { RunningServer } from '../servers/server.js';
import { typedInPlans, typedLineOf } from '../servers/typing.js';
import type { Taken } from '../taken.js';

/** Edits of each kind for each full computation. */
const EDITS_EACH = 4;
const kinds = ['an object moved', 'a value'] as const;

/** What one plan came to: all of it computed, then edited. */
interface Edited {
  readonly full: Taken;
  readonly edits: Readonly<Record<(typeof kinds)[number], readonly Taken[]>>;
}

/** One edit of a large plan against a full computation of one, over stdio, up to diagnostics and drawing. */
export async function measureEdit({ rounds, quick }: Options): Promise<Finding> {
  const objects = quick ? 60 : 2_000;
  const lines = objects * 5 + linesAround;
  const many = quick ? rounds : Math.max(3, Math.round(rounds / 3));
  const server = new RunningServer(ourServer());
  const plans: Edited[] = [];
  try {
    await server.initialize();
    for (let round = 0; round <= many; round += 1) {
      const edited = await editedIn(server, `large${round}`, planOf(lines, objects, round + 1).text);
      // The first plan only warms up.
      if (round > 0) plans.push(edited);
    }
  } finally {
    await server.stop();
  }
  /** By the clock, and how long it worked. */
  const cells = (cell: (how: keyof Taken) => string): readonly string[] => [cell('elapsed'), cell('worked')];
  const full = (how: keyof Taken): readonly number[] => plans.map((plan) => plan.full[how]);
  const edits = (kind: (typeof kinds)[number], how: keyof Taken): readonly (readonly number[])[] =>
    plans.map((plan) => plan.edits[kind].map((taken) => taken[how]));
  return {
    part: 'edit',
    data: { objects, lines, plans },
    tables: [
      {
        title: `One edit of a plan of ${objects} objects against a full computation, over stdio`,
        columns: ['what', 'ms', 'worked, ms'],
        rows: [
          ['opened: diagnostics and drawing', ...cells((how) => written(spreadOf(full(how))))],
          ...kinds.flatMap((kind) => [
            [`${kind}: the same`, ...cells((how) => written(spreadOf(edits(kind, how).flat())))],
            [
              `${kind}, against opening it`,
              ...cells((how) =>
                written(
                  ratioOf(
                    edits(kind, how).map((ofPlan) => spreadOf(ofPlan).median),
                    full(how),
                  ),
                ),
              ),
            ],
          ]),
        ],
        notes: [
          `Another plan of ${lines} lines each round, ${EDITS_EACH} edits of each kind in it, in one server that has worked on such a plan before.`,
        ],
      },
    ],
  };
}

/** Opens a plan, edits it in each way and closes it. */
async function editedIn(server: RunningServer, name: string, text: string): Promise<Edited> {
  const { document, opened } = await OpenDocument.openAndDraw(server, name, text);
  const edited = async (kind: (typeof kinds)[number]): Promise<readonly Taken[]> => {
    const typed = typedLineOf(text, typedInPlans[kind]);
    const times: Taken[] = [];
    for (let edit = 0; edit < EDITS_EACH; edit += 1) times.push((await document.typeAndDraw(typed)).all);
    return times;
  };
  const edits = {
    'an object moved': await edited('an object moved'),
    'a value': await edited('a value'),
  };
  document.close();
  return { full: opened.all, edits };
}
