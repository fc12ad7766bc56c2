import type { WorkspaceEdit } from 'vscode-languageserver-types';
import { URI, Utils } from 'vscode-uri';
import type { Abilities } from './abilities.js';
import { filesNamedIn, type NamedFile } from './file-names.js';
import type { KnownPlan, Surroundings } from './library.js';
import { usualSpelling } from './paths.js';
import { writtenWithin } from './quotes.js';
import { rangeOf } from './text.js';
import { byText, workspaceEdit } from './workspace-edits.js';

/** A file or folder that is about to have another name or place. */
export interface Move {
  readonly oldUri: string;
  readonly newUri: string;
}

/**
 * The edits after which the plans still name the same files, both when a file moves and when a plan does; made before
 * the move.
 */
export function editsForMoves(
  moves: readonly Move[],
  around: Surroundings,
  abilities: Abilities,
): WorkspaceEdit | undefined {
  const edits = around.plans.flatMap((plan) =>
    filesNamedIn(plan).flatMap((file) => {
      const path = newPath(plan, file, moves, around);
      return path === undefined ? [] : [{ plan, file, path }];
    }),
  );
  if (edits.length === 0) return undefined;
  const texts = byText(
    edits,
    ({ plan }) => plan,
    ({ plan: { lines }, file: { location }, path }) => ({
      range: rangeOf(location),
      newText: writtenWithin(lines[location.line] ?? '', location.start, path),
    }),
  );
  return workspaceEdit(texts, abilities);
}

/** How the plan is to name the file from then on; nothing when the path it has still leads there. */
function newPath(
  plan: KnownPlan,
  { path }: NamedFile,
  moves: readonly Move[],
  around: Surroundings,
): string | undefined {
  const target = path === '' ? undefined : around.addressOf(plan.uri, path);
  if (target === undefined) return undefined;
  const planThen = afterMoves(usualSpelling(plan.uri), moves);
  const targetThen = afterMoves(target, moves);
  if (planThen === usualSpelling(plan.uri) && targetThen === target) return undefined;
  const then = pathBetween(planThen, targetThen);
  if (then === undefined || then === plainPath(path)) return undefined;
  // What plans may not read from there is not written: it would be refused.
  if (around.addressOf(planThen, then) !== targetThen) return undefined;
  return /^\.[\\/]/u.test(path) && !then.startsWith('.') ? `./${then}` : then;
}

function afterMoves(uri: string, moves: readonly Move[]): string {
  for (const { oldUri, newUri } of moves) {
    const old = usualSpelling(oldUri);
    if (uri === old) return usualSpelling(newUri);
    if (uri.startsWith(`${old}/`)) return usualSpelling(newUri) + uri.slice(old.length);
  }
  return uri;
}

/** As written between one file and another: `../parts/door.svg`. */
function pathBetween(fromFile: string, toFile: string): string | undefined {
  const from = Utils.dirname(URI.parse(fromFile));
  const to = URI.parse(toFile);
  if (from.scheme !== to.scheme || from.authority !== to.authority) return undefined;
  const start = from.path.split('/').filter(Boolean);
  const end = to.path.split('/').filter(Boolean);
  let shared = 0;
  while (shared < start.length && shared < end.length - 1 && start[shared] === end[shared]) shared++;
  return [...start.slice(shared).map(() => '..'), ...end.slice(shared)].join('/');
}

function plainPath(path: string): string {
  return path.replaceAll('\\', '/').replace(/^(?:\.\/)+/u, '');
}
