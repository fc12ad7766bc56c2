import * as vscode from 'vscode';
import type { View } from '../server/drawing/scene.js';
import { summary } from './preview/findings/findings.js';
import type { PreviewPanels } from './preview/host/panels.js';
import { viewInSentence } from './preview/views.js';
import { findingsOf } from './plan-findings.js';
import { languageId, type ServerLink } from './server-link.js';

/** Shows, behind the braces in the status bar, what was found in the plan at hand and whether the server answers. */
export function showStatus(server: ServerLink, previews: PreviewPanels): vscode.Disposable {
  const item = vscode.languages.createLanguageStatusItem('mahlstick.plan', { language: languageId });
  item.name = 'Mahlstick';

  const update = (): void => {
    const document = vscode.window.activeTextEditor?.document;
    item.busy = server.state === 'starting';
    item.detail = '';
    switch (server.state) {
      case 'starting':
        item.text = vscode.l10n.t('Starting');
        item.severity = vscode.LanguageStatusSeverity.Information;
        setCommand(item, undefined);
        return;
      case 'stopped':
        item.text = vscode.l10n.t('Stopped: plans are not checked');
        item.severity = vscode.LanguageStatusSeverity.Error;
        setCommand(item, { command: 'mahlstick.restartServer', title: vscode.l10n.t('Start Again') });
        return;
      case 'running':
    }
    if (document?.languageId !== languageId) return;
    const findings = findingsOf(document.uri);
    const view = previews.viewOf(document.uri);
    item.text = summary(findings);
    item.severity = findings.some(({ severity }) => severity !== 'hint')
      ? vscode.LanguageStatusSeverity.Warning
      : vscode.LanguageStatusSeverity.Information;
    item.detail =
      view === undefined
        ? vscode.l10n.t('in this plan')
        : vscode.l10n.t('preview: {0}', viewInSentence(view));
    setCommand(item, commandFor(findings.length, view));
  };
  update();
  return vscode.Disposable.from(
    item,
    server.onStateChanged(update),
    previews.onChanged(update),
    vscode.languages.onDidChangeDiagnostics(update),
    vscode.window.onDidChangeActiveTextEditor(update),
  );
}

/**
 * Tells the painter when the server is gone for good, where no preview in sight says so already: a message can't be
 * taken back when the server has been started again.
 */
export function tellWhenStopped(server: ServerLink, previews: PreviewPanels): vscode.Disposable {
  return server.onStateChanged(async (state) => {
    if (state !== 'stopped' || previews.inSight) return;
    const again = vscode.l10n.t('Start Again');
    const showLog = vscode.l10n.t('Show Log');
    const chosen = await vscode.window.showErrorMessage(
      vscode.l10n.t('Mahlstick has stopped: plans are neither checked nor drawn. Your text is not affected.'),
      again,
      showLog,
    );
    // The message may have stood there while it was started elsewhere.
    if (chosen === again && server.state === 'stopped') await server.restart();
    if (chosen === showLog) server.showLog();
  });
}

function commandFor(findings: number, view: View | undefined): vscode.Command | undefined {
  if (findings > 0)
    return { command: 'workbench.actions.view.problems', title: vscode.l10n.t('Show Problems') };
  return view === undefined
    ? { command: 'mahlstick.openPreview', title: vscode.l10n.t('Open Preview') }
    : undefined;
}

/** The property may be absent but not `undefined`, as its type has it, yet taking it away needs an assignment. */
function setCommand(item: vscode.LanguageStatusItem, command: vscode.Command | undefined): void {
  Object.assign(item, { command });
}
