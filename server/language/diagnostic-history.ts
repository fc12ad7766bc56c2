import {
  DocumentDiagnosticReportKind,
  type Diagnostic,
  type DocumentDiagnosticReport,
} from 'vscode-languageserver-protocol';

/** The last diagnostics that were given for each document, so that the same are not sent again. */
export class DiagnosticHistory {
  readonly #last = new Map<string, { readonly resultId: string; readonly written: string }>();
  #count = 0;

  /** @param previousResultId the answer that the client has */
  report(
    uri: string,
    previousResultId: string | undefined,
    diagnostics: readonly Diagnostic[],
  ): DocumentDiagnosticReport {
    const written = JSON.stringify(diagnostics);
    const last = this.#last.get(uri);
    if (last !== undefined && last.resultId === previousResultId && last.written === written)
      return { kind: DocumentDiagnosticReportKind.Unchanged, resultId: last.resultId };
    const resultId = String(++this.#count);
    this.#last.set(uri, { resultId, written });
    return { kind: DocumentDiagnosticReportKind.Full, resultId, items: [...diagnostics] };
  }

  forget(uri: string): void {
    this.#last.delete(uri);
  }
}
