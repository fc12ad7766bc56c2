import * as v from 'valibot';
import type { Connection, WorkDoneProgressReporter } from 'vscode-languageserver';

/** Below this, telling that something is being done would only flicker. */
const PATIENCE_MILLISECONDS = 1_000;

/** Tells the client of work that takes longer than a second; `end` may be called at any time, and more than once. */
export interface Progress {
  readonly end: () => void;
}

const withToken = v.object({ workDoneToken: v.union([v.string(), v.number()]) });

/**
 * Work that the client has asked for.
 *
 * @param params of the request; nothing is told to a client that gives no token to be told by
 */
export function followWork(connection: Connection, params: unknown, title: string): Progress {
  const given = v.safeParse(withToken, params);
  if (!given.success) return { end: () => undefined };
  const { workDoneToken } = given.output;
  return afterPatience(() => Promise.resolve(connection.window.attachWorkDoneProgress(workDoneToken)), title);
}

/** Work that the server does of itself, for a client that can show it. */
export function showWork(connection: Connection, canShow: boolean, title: string): Progress {
  if (!canShow) return { end: () => undefined };
  return afterPatience(() => connection.window.createWorkDoneProgress(), title);
}

function afterPatience(reporter: () => Promise<WorkDoneProgressReporter>, title: string): Progress {
  let isOver = false;
  let shown: WorkDoneProgressReporter | undefined;
  const timer = setTimeout(() => {
    reporter().then(
      (found) => {
        if (isOver) return;
        shown = found;
        found.begin(title);
      },
      () => undefined,
    );
  }, PATIENCE_MILLISECONDS);
  return {
    end: () => {
      isOver = true;
      clearTimeout(timer);
      shown?.done();
      shown = undefined;
    },
  };
}
