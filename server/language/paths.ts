import { marked } from '../../grammar/marked.js';
import { URI, Utils } from 'vscode-uri';

export type PathAnswer =
  | { readonly ok: true; readonly uri: string }
  /** Shown to the painter: a sentence in plain words. */
  | { readonly ok: false; readonly reason: string };

/**
 * Finds the file that a plan means by a path. Paths run from the plan's own folder; they may climb out of it,
 * but not out of the workspace. A plan may come from a stranger, so nothing else is ever asked for.
 *
 * @param planUri the plan that names the file
 * @param path as written in the plan; `\` counts as `/`
 * @param folders URIs of the open workspace folders; a plan outside all of them may name files in and below its own
 *   folder
 */
export function resolvePath(planUri: string, path: string, folders: readonly string[]): PathAnswer {
  const written = path.replaceAll('\\', '/');
  const refusal = refusalOfPath(written);
  if (refusal !== undefined) return { ok: false, reason: refusal };

  const plan = URI.parse(planUri);
  if (!plan.path.startsWith('/')) {
    return { ok: false, reason: marked('Save the plan first: files are looked for beside it.') };
  }
  const folder = Utils.dirname(plan);
  if (climbsTooHigh(folder.path, written)) return { ok: false, reason: outside };
  const target = Utils.joinPath(folder, written);
  return rootsOf(planUri, folders).some((root) => contains(root, target.toString()))
    ? { ok: true, uri: target.toString() }
    : { ok: false, reason: outside };
}

/** The address of a file that has been read, by its path from a plan. */
export function uriBeside(planUri: string, path: string): string {
  return Utils.joinPath(Utils.dirname(URI.parse(planUri)), path).toString();
}

/** The folders below which a plan may name files: those of the workspace, and its own when it is in none of them. */
export function rootsOf(planUri: string, folders: readonly string[]): readonly string[] {
  if (folders.some((folder) => contains(folder, planUri))) return folders;
  return [...folders, Utils.dirname(URI.parse(planUri)).toString()];
}

/**
 * One spelling for all that mean the same: editors differ in which characters of a URI they escape, and how. What is
 * no URI stays as it is.
 */
export function usualSpelling(uri: string): string {
  try {
    return URI.parse(uri).toString();
  } catch {
    return uri;
  }
}

/** True when `uri` lies in or below the folder. */
export function contains(folderUri: string, uri: string): boolean {
  const folder = URI.parse(folderUri);
  const inner = URI.parse(uri);
  const base = folder.path.endsWith('/') ? folder.path : `${folder.path}/`;
  return (
    folder.scheme === inner.scheme && folder.authority === inner.authority && inner.path.startsWith(base)
  );
}

const outside = marked('This file lies outside the folder that is open.');

/** Why a path is refused whatever lies there, as a sentence for the painter. Steps are parted by `/`. */
export function refusalOfPath(path: string): string | undefined {
  if (path.trim() === '') return marked('No file is named.');
  // Half of a surrogate pair can't be written in an address.
  if (path.includes('\0') || /\p{Surrogate}/u.test(path))
    return marked('This holds a character that no file name can hold.');
  // A drive letter is refused here too: it has the form of a scheme.
  if (/^[a-z][a-z0-9+.-]*:/iu.test(path))
    return marked('Files are named by their path from the plan, not by an address.');
  if (path.startsWith('/'))
    return marked('Files are named by their path from the plan, not from the top of the disk.');
  return undefined;
}

/** True when the path climbs above the top of the disk on its way: joining would stop there without a word. */
function climbsTooHigh(folder: string, path: string): boolean {
  let depth = folder.split('/').filter(Boolean).length;
  return path
    .split('/')
    .filter((step) => step !== '' && step !== '.')
    .some((step) => {
      depth += step === '..' ? -1 : 1;
      return depth < 0;
    });
}
