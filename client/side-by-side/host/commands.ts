import * as vscode from 'vscode';
import { MOST_ON_WALL } from '../../../server/drawing/wall/most.js';
import { resolvePath } from '../../../server/language/paths.js';
import { type Choice, choose } from '../../questions.js';
import { openFolders } from '../../reach.js';
import type { ServerLink } from '../../server-link.js';
import { ComparisonPanel, type Side } from './comparison-panel.js';
import { hasGit, PlanHistory, type PlanVersion } from './git.js';
import { nameOf, textOf } from './texts.js';
import { WallPanel } from './wall-panel.js';

export interface SideBySideParts {
  readonly extensionUri: vscode.Uri;
  readonly server: ServerLink;
  readonly log: vscode.LogOutputChannel;
  /** The plan that commands are about when none is named. */
  readonly planInFront: () => vscode.Uri | undefined;
}

const TITLE = vscode.l10n.t('Compare');

/** The commands that show plans side by side. */
export function sideBySideCommands(parts: SideBySideParts): vscode.Disposable {
  const open = new Set<vscode.Disposable>();
  const keep = (make: (closed: () => void) => vscode.Disposable): void => {
    const panel: vscode.Disposable = make(() => void open.delete(panel));
    open.add(panel);
  };
  const register = (command: string, run: (resource: vscode.Uri | undefined) => unknown) =>
    vscode.commands.registerCommand(`mahlstick.${command}`, (resource: unknown) =>
      run(resource instanceof vscode.Uri ? resource : undefined),
    );
  const compare = (earlier: Side, later: Side): void =>
    keep(
      (closed) => new ComparisonPanel({ ...parts, column: vscode.ViewColumn.Beside, earlier, later, closed }),
    );
  const tellOfGit = (): void =>
    void vscode.commands.executeCommand('setContext', 'mahlstick.hasGit', hasGit());
  tellOfGit();
  return vscode.Disposable.from(
    // It is not there in a folder that is not trusted, and comes once the folder is.
    vscode.extensions.onDidChange(tellOfGit),
    {
      dispose: () => {
        for (const panel of open) panel.dispose();
      },
    },
    register('compareWithVersion', async (resource) => {
      const plan = resource ?? parts.planInFront();
      const earlier = plan && (await askVersion(plan, parts.log));
      if (plan !== undefined && earlier !== undefined) compare(earlier, asItIs(plan));
    }),
    register('compareWithPlan', async (resource) => {
      const plan = resource ?? parts.planInFront();
      const other = plan && (await askPlan(plan));
      if (plan === undefined || other === undefined) return;
      // A variant comes after the plan that it builds on.
      if (await buildsOn(other, plan)) compare(asItIs(plan), asItIs(other));
      else compare(asItIs(other), asItIs(plan));
    }),
    register('wallOfPlans', async (resource) => {
      const found = await plansOnWall(resource, parts.planInFront());
      if (found === undefined) {
        void vscode.window.showInformationMessage(
          vscode.l10n.t('There is no plan to hang on a wall in this folder.'),
        );
        return;
      }
      keep((closed) => new WallPanel({ ...parts, column: vscode.ViewColumn.Active, ...found, closed }));
    }),
  );
}

function asItIs(plan: vscode.Uri): Side {
  return { name: nameOf(plan), uri: plan, base: plan, text: () => textOf(plan) };
}

/**
 * Asks for a version of a plan in git; nothing when there is none, which is told, or the painter thinks better of it.
 */
async function askVersion(plan: vscode.Uri, log: vscode.LogOutputChannel): Promise<Side | undefined> {
  const history = await PlanHistory.of(plan, log);
  if (typeof history === 'string') {
    void vscode.window.showInformationMessage(history);
    return undefined;
  }
  const versions = await history.versions();
  if (versions.length === 0) {
    void vscode.window.showInformationMessage(
      vscode.l10n.t('{0} is in no commit yet, so there are no earlier versions.', nameOf(plan)),
    );
    return undefined;
  }
  const items: readonly Choice<PlanVersion>[] = versions.map((version, index) => ({
    label: version.message === '' ? version.revision.slice(0, 8) : version.message,
    description: index === 0 ? vscode.l10n.t('last committed') : '',
    detail: [version.when?.toLocaleString(), version.who, version.revision.slice(0, 8)]
      .filter((told) => told !== undefined)
      .join(', '),
    value: version,
  }));
  const version = await choose(items, {
    title: TITLE,
    placeHolder: vscode.l10n.t('With which version of {0}?', nameOf(plan)),
    matchOnDetail: true,
  });
  if (version === undefined) return undefined;
  const short = version.revision.slice(0, 8);
  return {
    name: [vscode.l10n.t('{0} at {1}', nameOf(plan), short), version.message]
      .filter((told) => told !== '')
      .join(', '),
    uri: history.uriAt(version.revision),
    base: plan,
    text: async () => {
      const text = await history.text(version.revision);
      return text === undefined
        ? {
            ok: false,
            reason: vscode.l10n.t(
              '{0} can’t be read at {1}; it may have had another name then.',
              nameOf(plan),
              short,
            ),
          }
        : { ok: true, text };
    },
    file: async (path) => {
      const target = resolvePath(plan.toString(), path, openFolders());
      if (!target.ok) return target;
      const text = await history.text(version.revision, vscode.Uri.parse(target.uri));
      return text === undefined
        ? { ok: false, reason: vscode.l10n.t('There is no such file at {0}.', short) }
        : { ok: true, text };
    },
  };
}

const MOST_OFFERED = 300;

async function askPlan(plan: vscode.Uri): Promise<vscode.Uri | undefined> {
  const found = await vscode.workspace.findFiles('**/*.mahl', undefined, MOST_OFFERED);
  const others = inOrder(found.filter((uri) => uri.toString() !== plan.toString()));
  const chosen = await choose<vscode.Uri | 'other'>(
    [
      ...others.map((uri) => ({
        label: nameOf(uri),
        description: vscode.workspace.asRelativePath(vscode.Uri.joinPath(uri, '..')),
        value: uri,
      })),
      { label: vscode.l10n.t('Another file…'), value: 'other' as const },
    ],
    {
      title: TITLE,
      placeHolder: vscode.l10n.t('With which plan is {0} compared?', nameOf(plan)),
      matchOnDescription: true,
    },
  );
  if (chosen !== 'other') return chosen;
  const [file] = (await vscode.window.showOpenDialog({
    title: vscode.l10n.t('Plan to compare with'),
    filters: { [vscode.l10n.t('Mahlstick plans')]: ['mahl'] },
  })) ?? [undefined];
  return file;
}

/** The plans of a folder: the one that is named, else that of the plan in front, else all of the workspace. */
async function plansOnWall(
  folder: vscode.Uri | undefined,
  plan: vscode.Uri | undefined,
): Promise<
  { readonly title: string; readonly plans: readonly vscode.Uri[]; readonly left: number } | undefined
> {
  const beside =
    plan === undefined || plan.scheme === 'untitled' ? undefined : vscode.Uri.joinPath(plan, '..');
  const place = folder ?? beside;
  const pattern = place === undefined ? '**/*.mahl' : new vscode.RelativePattern(place, '*.mahl');
  const found = inOrder(await vscode.workspace.findFiles(pattern, undefined, MOST_OFFERED));
  if (found.length === 0) return undefined;
  const name = place === undefined ? '' : nameOf(place);
  const title = name === '' ? vscode.l10n.t('Wall of plans') : vscode.l10n.t('Wall of plans: {0}', name);
  return { title, plans: found.slice(0, MOST_ON_WALL), left: Math.max(0, found.length - MOST_ON_WALL) };
}

/** Whether a plan says that it builds on another. */
async function buildsOn(plan: vscode.Uri, base: vscode.Uri): Promise<boolean> {
  const read = await textOf(plan);
  const [, path] = (read.ok ? /^\s*based on\s+"([^"]+)"/mu.exec(read.text) : null) ?? [];
  const target = path === undefined ? undefined : resolvePath(plan.toString(), path, openFolders());
  return target?.ok === true && target.uri === base.toString();
}

function inOrder(plans: readonly vscode.Uri[]): readonly vscode.Uri[] {
  return [...plans].sort((one, other) => (one.path < other.path ? -1 : 1));
}
