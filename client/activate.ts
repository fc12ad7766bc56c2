import * as vscode from 'vscode';
import { speak } from '../grammar/localised.js';
import { views } from '../server/drawing/scene.js';
import { exportCommands } from './export/export.js';
import { newPlan } from './new-plan/new-plan.js';
import { PreviewPanels } from './preview/host/panels.js';
import { viewDescription, viewLabel } from './preview/views.js';
import { choose } from './questions.js';
import { followCodes, openReference, openReferenceCommand } from './reference-links.js';
import { type OpenConversation, ServerLink, languageId } from './server-link.js';
import { sideBySideCommands } from './side-by-side/host/commands.js';
import { showStatus, tellWhenStopped } from './status.js';

let running: ServerLink | undefined;

/**
 * Everything that both kinds of host share. Settles when there is all that a painter can call; the server starts
 * meanwhile, and what needs it waits for it.
 */
export async function activateWith(
  context: vscode.ExtensionContext,
  openConversation: OpenConversation,
): Promise<void> {
  speak(vscode.l10n.bundle);
  const log = vscode.window.createOutputChannel('Mahlstick', { log: true });
  const server = new ServerLink(openConversation, context.extensionUri, log);
  running = server;
  const previews = new PreviewPanels(context.extensionUri, server, log);
  const register = (command: string, run: (...args: readonly unknown[]) => unknown) =>
    vscode.commands.registerCommand(`mahlstick.${command}`, run);

  context.subscriptions.push(
    log,
    server,
    previews,
    followCodes(context.extensionUri),
    showStatus(server, previews),
    tellWhenStopped(server, previews),
    register('openPreview', (resource) => {
      const uri = resource instanceof vscode.Uri ? resource : activePlan();
      if (uri !== undefined) return previews.open(uri);
    }),
    register('newPlan', async () => {
      const plan = await newPlan();
      if (plan !== undefined) await previews.open(plan.uri);
    }),
    register('openAnotherPreview', () => {
      const uri = activePlan() ?? previews.current?.uri;
      if (uri !== undefined) return previews.openAnother(uri);
    }),
    register('choosePreviewView', () => chooseView(previews)),
    exportCommands(server, previews),
    sideBySideCommands({
      extensionUri: context.extensionUri,
      server,
      log,
      planInFront: () => activePlan() ?? previews.current?.uri,
    }),
    register('showPlan', () => previews.current?.showPlan()),
    register('restartServer', () => server.restart()),
    vscode.commands.registerCommand(openReferenceCommand, (page: unknown, anchor: unknown) =>
      openReference(context.extensionUri, page, anchor),
    ),
  );
  void server.start();
  await vscode.commands.executeCommand('setContext', 'mahlstick.active', true);
}

export async function deactivateAll(): Promise<void> {
  await running?.stop();
  running = undefined;
}

function activePlan(): vscode.Uri | undefined {
  const document = vscode.window.activeTextEditor?.document;
  return document?.languageId === languageId ? document.uri : undefined;
}

async function chooseView(previews: PreviewPanels): Promise<void> {
  const preview = previews.current;
  if (preview === undefined) return;
  const items = views.map((view) => ({
    label: viewLabel(view),
    description: view === preview.view ? vscode.l10n.t('shown') : '',
    detail: viewDescription(view),
    value: view,
  }));
  const view = await choose(items, {
    title: vscode.l10n.t('View of the preview'),
    placeHolder: vscode.l10n.t('How do you want to see the plan?'),
  });
  if (view !== undefined) preview.show(view);
}
