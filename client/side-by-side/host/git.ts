import * as vscode from 'vscode';

/** The part that is needed of what VS Code's own extension for git offers others, its API in version 1. */
interface GitApi {
  getRepository(uri: vscode.Uri): Repository | null;
  toGitUri(uri: vscode.Uri, revision: string): vscode.Uri;
}

interface Repository {
  readonly rootUri: vscode.Uri;
  log(options: { readonly maxEntries: number; readonly path: string }): Promise<readonly Commit[]>;
  show(revision: string, path: string): Promise<string>;
}

interface Commit {
  readonly hash: string;
  readonly message: string;
  readonly authorDate?: Date;
  readonly authorName?: string;
}

/** A version of a plan in git. */
export interface PlanVersion {
  readonly revision: string;
  /** The first line of what its commit says. */
  readonly message: string;
  readonly when?: Date;
  readonly who?: string;
}

const EXTENSION = 'vscode.git';
const MOST_VERSIONS = 200;

/** Whether there is something to ask about git at all: there is not where VS Code runs in a browser alone. */
export function hasGit(): boolean {
  return vscode.extensions.getExtension(EXTENSION) !== undefined;
}

/** What git knows of one plan. */
export class PlanHistory {
  readonly #repository: Repository;
  readonly #api: GitApi;
  readonly #plan: vscode.Uri;
  readonly #log: vscode.LogOutputChannel;

  private constructor(api: GitApi, repository: Repository, plan: vscode.Uri, log: vscode.LogOutputChannel) {
    this.#api = api;
    this.#repository = repository;
    this.#plan = plan;
    this.#log = log;
  }

  /** Or why there is none, as a sentence to the painter. */
  static async of(plan: vscode.Uri, log: vscode.LogOutputChannel): Promise<PlanHistory | string> {
    const extension = vscode.extensions.getExtension<{ getAPI(version: 1): GitApi }>(EXTENSION);
    if (extension === undefined)
      return vscode.l10n.t(
        'There is no git here, as VS Code runs in a browser or without its extension for git. Two plans can be compared all the same: “Compare with Another Plan”.',
      );
    try {
      const api = (await extension.activate()).getAPI(1);
      const repository = api.getRepository(plan);
      return repository === null
        ? vscode.l10n.t(
            'This plan lies in no git repository that VS Code has opened, so there are no earlier versions.',
          )
        : new PlanHistory(api, repository, plan, log);
    } catch (error) {
      log.debug(`No git: ${String(error)}`);
      return vscode.l10n.t(
        'VS Code’s extension for git is turned off or finds no git, so there are no earlier versions.',
      );
    }
  }

  /** The commits that touched the plan, the latest first; none where git knows of none. */
  async versions(): Promise<readonly PlanVersion[]> {
    const commits = await this.#repository
      .log({ maxEntries: MOST_VERSIONS, path: this.#plan.fsPath })
      .catch((error: unknown) => {
        // Above all, a repository in which nothing has been committed.
        this.#log.debug(`No versions: ${String(error)}`);
        return [];
      });
    return commits.map(({ hash, message, authorDate, authorName }) => ({
      revision: hash,
      message: message.split('\n')[0] ?? '',
      ...(authorDate === undefined ? {} : { when: authorDate }),
      ...(authorName === undefined ? {} : { who: authorName }),
    }));
  }

  /** The text of the plan, or of a file beside it, at a revision; nothing where it was not there. */
  async text(revision: string, file: vscode.Uri = this.#plan): Promise<string | undefined> {
    // As they are written out, in which the letter of a Windows disk is small, however git has it.
    const root = this.#repository.rootUri.toString().replace(/\/$/u, '');
    if (!file.toString().startsWith(`${root}/`)) return undefined;
    return this.#repository.show(revision, file.fsPath).catch(() => undefined);
  }

  /** Where the editor shows the plan as it was. */
  uriAt(revision: string): vscode.Uri {
    return this.#api.toGitUri(this.#plan, revision);
  }
}
