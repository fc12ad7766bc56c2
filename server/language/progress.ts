import * as v from 'valibot';
import type {
  Connection,
  WorkDoneProgressReporter,
  WorkDoneProgressServerReporter,
} from 'vscode-languageserver';

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

/** Work of many parts that the painter can stop. */
export interface StoppableProgress extends Progress {
  /** What is being done now, and the part of all that is done, 0 to 1. */
  readonly at: (what: string, part: number) => void;
}

/** Work that the server does of itself and that can be stopped, for a client that can show it. */
export function showStoppableWork(
  connection: Connection,
  canShow: boolean,
  title: string,
  stop: () => void,
): StoppableProgress {
  if (!canShow) return { at: () => undefined, end: () => undefined };
  let shown: WorkDoneProgressServerReporter | undefined;
  let last: readonly [what: string, part: number] = ['', 0];
  const report = (): void => shown?.report(Math.round(100 * last[1]), last[0]);
  const progress = afterPatience(async () => {
    const reporter = await connection.window.createWorkDoneProgress();
    return {
      begin: (told: string) => {
        reporter.begin(told, Math.round(100 * last[1]), last[0], true);
        reporter.token.onCancellationRequested(stop);
        shown = reporter;
      },
      done: () => {
        shown = undefined;
        reporter.done();
      },
    };
  }, title);
  return {
    at: (what, part) => {
      last = [what, part];
      report();
    },
    end: progress.end,
  };
}

function afterPatience(
  reporter: () => Promise<
    Pick<WorkDoneProgressReporter, 'done'> & { readonly begin: (title: string) => void }
  >,
  title: string,
): Progress {
  let isOver = false;
  let shown: Pick<WorkDoneProgressReporter, 'done'> | undefined;
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
