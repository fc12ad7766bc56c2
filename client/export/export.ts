import * as vscode from 'vscode';
import { capitalised } from '../../server/plan/problems.js';
import type { PreviewPanel } from '../preview/host/panel.js';
import type { PreviewPanels } from '../preview/host/panels.js';
import { type ServerLink, languageId } from '../server-link.js';
import { type Beforehand, readBeforehand } from './beforehand.js';
import { carryOut } from './carry-out.js';
import { type Wanted, askWhat } from './choices.js';
import { askWhere } from './write.js';
import { writeWhole } from './write-whole.js';

/** The commands that take a drawing out of the editor. */
export function exportCommands(server: ServerLink, previews: PreviewPanels): vscode.Disposable {
  return vscode.Disposable.from(
    vscode.commands.registerCommand('mahlstick.exportDrawing', (beforehand?: unknown) =>
      exportDrawing(server, previews, readBeforehand(beforehand)),
    ),
    vscode.commands.registerCommand('mahlstick.copyDrawing', () => copyDrawing(previews)),
  );
}

async function exportDrawing(
  server: ServerLink,
  previews: PreviewPanels,
  beforehand: Beforehand | undefined,
): Promise<void> {
  const plan = beforehand?.plan ?? planInFront(previews);
  if (plan === undefined) return;
  const wanted = beforehand ?? (await askWhat(previews.viewOf(plan) ?? 'drawing'));
  if (wanted === undefined) return;
  const file = beforehand?.file ?? (await askWhere(plan, wanted));
  if (file === undefined) return;
  const name = file.path.slice(file.path.lastIndexOf('/') + 1);
  try {
    const made = await vscode.window.withProgress(
      {
        location: vscode.ProgressLocation.Notification,
        title: vscode.l10n.t('Exporting {0}', name),
        cancellable: true,
      },
      (_progress, token) =>
        carryOut(
          token,
          () => make(server, previews, plan, wanted, token),
          ({ bytes }) => writeWhole(vscode.workspace.fs, file, bytes),
        ),
    );
    if (made !== undefined) void tell(file, name, made.remarks);
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    void vscode.window.showErrorMessage(vscode.l10n.t('{0} was not written. {1}', name, capitalised(reason)));
  }
}

interface Made {
  readonly bytes: Uint8Array;
  readonly remarks: readonly string[];
}

async function make(
  server: ServerLink,
  previews: PreviewPanels,
  plan: vscode.Uri,
  wanted: Wanted,
  token: vscode.CancellationToken,
): Promise<Made> {
  // The server knows open documents only.
  await vscode.workspace.openTextDocument(plan);
  const { distanceMillimetres, sitting } = previews.lookOf(plan) ?? {};
  const result = await server.export(
    plan,
    {
      what: wanted.what,
      format: wanted.format === 'png' ? 'svg' : wanted.format,
      ...(wanted.format === 'pdf' && wanted.paper !== undefined ? { paper: wanted.paper } : {}),
      ...(distanceMillimetres === undefined ? {} : { distanceMillimetres }),
      ...(sitting === undefined ? {} : { sitting }),
    },
    token,
  );
  if (result === null) throw new Error(vscode.l10n.t('The plan is not open.'));
  const { remarks } = result;
  if ('ics' in result) return { bytes: new TextEncoder().encode(result.ics), remarks };
  if ('pdf' in result) return { bytes: bytesOf(result.pdf), remarks };
  if (wanted.format !== 'png') return { bytes: new TextEncoder().encode(result.svg), remarks };
  const preview = await previews.readyFor(plan);
  return { bytes: await preview.paint(result.svg, wanted.width), remarks };
}

async function tell(file: vscode.Uri, name: string, remarks: readonly string[]): Promise<void> {
  const chosen = await vscode.window.showInformationMessage(
    [vscode.l10n.t('{0} is written.', name), ...remarks].join(' '),
    vscode.l10n.t('Open'),
  );
  if (chosen === undefined) return;
  // The editor has no viewer for PDF, and shows a calendar as mere text.
  if (file.scheme === 'file' && /\.(?:pdf|ics)$/u.test(name)) await vscode.env.openExternal(file);
  else await vscode.commands.executeCommand('vscode.open', file);
}

/** A page may use the clipboard only while it has the focus. */
async function copyDrawing(previews: PreviewPanels): Promise<void> {
  const plan = planInFront(previews);
  if (plan === undefined) return;
  const preview: PreviewPanel = await previews.readyFor(plan);
  preview.copy();
}

function planInFront(previews: PreviewPanels): vscode.Uri | undefined {
  const document = vscode.window.activeTextEditor?.document;
  const inText = document?.languageId === languageId ? document.uri : undefined;
  return previews.current?.active === true ? previews.current.uri : (inText ?? previews.current?.uri);
}

function bytesOf(base64: string): Uint8Array {
  return Uint8Array.from(atob(base64), (character) => character.charCodeAt(0));
}
