import type { Connection } from 'vscode-languageserver';
import type { Session } from './guard.js';
import { type Progress, showWork } from './progress.js';
import { planChangedNotification, planDiagnosedNotification } from './protocol.js';
import type { Snapshot } from './snapshot.js';
import { forAWhile, nextTurn } from './turns.js';

/** What it takes to tell a client of a plan. */
export interface Teller {
  readonly connection: Connection;
  readonly session: Session;
  /** Does work of which a fault is logged. */
  readonly guarded: (what: string, work: () => void) => void;
}

/**
 * Tells that a plan is another, then what is found in it, which its mixtures follow; none of it once the plan is
 * another again.
 */
export function tellOfPlan(teller: Teller, uri: string): void {
  const { connection, session } = teller;
  const snapshot = session.service.snapshot(uri);
  if (snapshot === undefined) return;
  const { version } = snapshot;
  ignoreEnd(connection.sendNotification(planChangedNotification, { uri, version }));
  if (session.abilities.pulledDiagnostics === true) mix(teller, uri, snapshot);
  else diagnose(teller, uri, snapshot);
}

/** Finds what is to be told of a plan and tells it, a while a turn, so that a drawing or a keystroke comes between. */
function diagnose(teller: Teller, uri: string, snapshot: Snapshot): void {
  const { connection, session, guarded } = teller;
  const { version } = snapshot;
  const progress = show(teller, 'Trying out what would mend the findings');
  const further = (): void => {
    const { service } = session;
    if (service.snapshot(uri) !== snapshot) {
      progress.end();
      return;
    }
    if (forAWhile(() => service.prepareDiagnostics(uri))) {
      goOn();
      return;
    }
    progress.end();
    const diagnostics = [...service.diagnostics(uri)];
    ignoreEnd(connection.sendDiagnostics({ uri, version, diagnostics }));
    ignoreEnd(connection.sendNotification(planDiagnosedNotification, { uri, version }));
    mix(teller, uri, snapshot);
  };
  const furtherOrEnd = (): void => {
    try {
      further();
    } catch (error) {
      progress.end();
      throw error;
    }
  };
  const goOn = (): void => nextTurn(() => guarded('diagnostics', furtherOrEnd));
  goOn();
}

/** Finds the mixtures of a plan, a piece a turn. */
function mix(teller: Teller, uri: string, snapshot: Snapshot): void {
  const { session, guarded } = teller;
  const progress = show(teller, 'Working out the mixtures of the palette');
  const goOn = (): void => nextTurn(() => guarded('mixtures', further));
  const further = (): void => {
    const { service } = session;
    if (service.snapshot(uri) === snapshot && service.mixFurther(uri)) goOn();
    else progress.end();
  };
  goOn();
}

function show({ connection, session }: Teller, title: string): Progress {
  return showWork(connection, session.abilities.progress === true, title);
}

/** The other end may be gone while something is being sent; then nobody is left to tell. */
export function ignoreEnd(sent: Promise<void>): void {
  sent.catch(() => undefined);
}
