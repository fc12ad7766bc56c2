import * as vscode from 'vscode';
import type { ListedFinding } from './preview/messages.js';

const source = 'mahlstick';

/** What the server has found in a plan, as it stands in the Problems view: that leaves the editor's own hints out. */
export function findingsOf(uri: vscode.Uri): readonly ListedFinding[] {
  return vscode.languages
    .getDiagnostics(uri)
    .filter(
      (diagnostic) => diagnostic.source === source && diagnostic.severity !== vscode.DiagnosticSeverity.Hint,
    )
    .map(({ code, severity, message, range: { start, end } }) => ({
      code: String(typeof code === 'object' ? code.value : (code ?? '')),
      severity: severityOf(severity),
      message,
      location: {
        line: start.line,
        start: start.character,
        end: end.line === start.line ? end.character : start.character,
      },
    }));
}

function severityOf(severity: vscode.DiagnosticSeverity): ListedFinding['severity'] {
  switch (severity) {
    case vscode.DiagnosticSeverity.Error:
      return 'error';
    case vscode.DiagnosticSeverity.Warning:
      return 'warning';
    case vscode.DiagnosticSeverity.Information:
    case vscode.DiagnosticSeverity.Hint:
      return 'hint';
  }
}
