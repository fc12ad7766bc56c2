import {
  DocumentDiagnosticReportKind,
  DocumentDiagnosticRequest,
  LSPErrorCodes,
  ResponseError,
  type CancellationToken,
  type Connection,
  type DocumentDiagnosticParams,
  type DocumentDiagnosticReport,
} from 'vscode-languageserver';
import { DiagnosticHistory } from './diagnostic-history.js';
import { pulled } from './forms.js';
import { usualSpelling } from './paths.js';
import { planDiagnosedNotification } from './protocol.js';
import { speaking, t } from '../../grammar/index.js';
import { followWork } from './progress.js';
import { admitted, cancelled, type Guard } from './guard.js';
import { aTurn, forAWhile } from './turns.js';

/**
 * Answers clients that ask for diagnostics in their own time. The remedies are worked out a while a turn, so that a
 * keystroke or the withdrawal of the question comes between; then no more is done for it.
 */
export function answerPulls(connection: Connection, guard: Guard): DiagnosticHistory {
  const history = new DiagnosticHistory();
  connection.onRequest(
    DocumentDiagnosticRequest.method,
    async (
      params: DocumentDiagnosticParams,
      token: CancellationToken,
    ): Promise<DocumentDiagnosticReport | ResponseError<unknown>> => {
      const session = admitted(guard, DocumentDiagnosticRequest.method, pulled, params);
      if (session instanceof ResponseError) return session;
      const { uri } = params.textDocument;
      const none: DocumentDiagnosticReport = { kind: DocumentDiagnosticReportKind.Full, items: [] };
      const progress = followWork(
        connection,
        params,
        speaking(session.abilities.language, () => t('Trying out what would mend the findings')),
      );
      try {
        const { service } = session;
        const snapshot = service.snapshot(uri);
        if (snapshot === undefined) return none;
        do {
          await aTurn();
          if (token.isCancellationRequested) return cancelled();
          if (service.snapshot(uri) !== snapshot)
            return new ResponseError(LSPErrorCodes.ServerCancelled, 'the plan has changed', {
              retriggerRequest: true,
            });
        } while (forAWhile(() => service.prepareDiagnostics(uri)));
        const report = history.report(usualSpelling(uri), params.previousResultId, service.diagnostics(uri));
        const { version } = snapshot;
        connection.sendNotification(planDiagnosedNotification, { uri, version }).catch(() => undefined);
        return report;
      } catch (error) {
        guard.failed(DocumentDiagnosticRequest.method, error);
        return none;
      } finally {
        progress.end();
      }
    },
  );
  return history;
}
