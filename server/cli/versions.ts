import { existsSync } from 'node:fs';
import path from 'node:path';
import { nearestWord } from '../../grammar/index.js';
import { refusalOfPath } from '../language/paths.js';
import type { FileAnswer, ReadFile } from '../plan/plan.js';
import { fileSizeLimitBytes, tooLarge } from '../language/file-size.js';
import { asText, remembering } from './files-beside.js';
import {
  blobAtOnce,
  git,
  isIndex,
  isRevision,
  nameThen,
  plansAt,
  repositoryAt,
  type Repository,
} from './git.js';
import { readOneSource, type Source, standardInput } from './source.js';
import { CommandFailure, type Terminal } from './terminal.js';
import { decodeUtf8 } from './utf8.js';

/** A plan as it was at a revision: `''` is the index, `:2` and the like the sides of a merge. */
export interface Version {
  readonly revision: string;
  /** As it was given: from the top of the repository, or from the current folder when it begins with `./` or `../`. */
  readonly path: string;
}

/**
 * What `REVISION:PATH`, `:PATH` or `:2:PATH` names; nothing for a text without a colon. A colon in braces, as in
 * `HEAD@{10:00}:barn.mahl`, belongs to the revision.
 */
export function versionOf(name: string): Version | undefined {
  // A drive is no revision.
  if (/^[a-z]:[\\/]/iu.test(name)) return undefined;
  const side = /^(:[0-3]):(.+)$/su.exec(name);
  if (side) return { revision: side[1] ?? '', path: side[2] ?? '' };
  let depth = 0;
  for (let at = 0; at < name.length; at++) {
    if (name[at] === '{') depth += 1;
    else if (name[at] === '}') depth -= 1;
    else if (name[at] === ':' && depth === 0)
      return { revision: name.slice(0, at), path: name.slice(at + 1) };
  }
  return undefined;
}

/** Reads what a name says: a file that has it goes first, then a version of one in the git repository. */
export async function readVersion(name: string, terminal: Terminal): Promise<Source> {
  const version = versionOf(name);
  const isFile = name === standardInput || existsSync(path.resolve(terminal.folder, name));
  return isFile || version === undefined
    ? readOneSource(name, terminal)
    : readAt(version, name, terminal.folder);
}

/** The version of a plan that was last committed, under the name that it had there. */
export async function readCommitted(name: string, { folder }: Terminal): Promise<Source> {
  if (name === standardInput) throw new CommandFailure('The standard input is in no commit; name two plans.');
  const file = path.resolve(folder, name);
  if (!existsSync(file) && versionOf(name) !== undefined)
    throw new CommandFailure(`${name} is one version; name the plan to compare it with as well.`);
  const beside = path.dirname(file);
  const repository = await repositoryAt(beside);
  if (!(await isRevision('HEAD', beside)))
    throw new CommandFailure('Nothing has been committed yet, so there is nothing to compare with.');
  const now = `${repository.prefix}${path.basename(file)}`;
  const plans = await plansAt('HEAD', beside);
  const then = plans.includes(now) ? now : await nameThen('HEAD', now, beside);
  if (then === undefined)
    throw new CommandFailure(`${name} is in no commit yet, so there is nothing to compare it with.`);
  return readAt({ revision: 'HEAD', path: then }, `HEAD:${then}`, beside);
}

/** @throws CommandFailure with the reason in plain words */
export async function readAt(version: Version, name: string, folder: string): Promise<Source> {
  const { revision, path: given } = version;
  if (revision.startsWith('-')) throw new CommandFailure(`${name}: a revision does not begin with a hyphen.`);
  if (given === '') throw new CommandFailure(`${name} names no file: write REVISION:PATH.`);
  const repository = await repositoryAt(folder);
  if (!(await isRevision(revision, folder)))
    throw new CommandFailure(`There is no revision ${revision} in this repository.`);
  const inside = fromTop(given, repository);
  if (inside === undefined) throw new CommandFailure(`${name} lies outside the repository.`);
  const answer = await git(['cat-file', 'blob', `${revision}:${inside}`], folder);
  if (!answer.ok) {
    if (answer.isTooLarge) throw new CommandFailure(`${name} is larger than 5 MB.`);
    throw new CommandFailure(await notThere(version, inside, folder));
  }
  const decoded = decodeUtf8(answer.bytes);
  if (!decoded.ok) throw new CommandFailure(`${name} ${decoded.reason}.`);
  return {
    name,
    text: decoded.text,
    marked: decoded.marked,
    folder,
    readFile: filesAt(revision, inside, repository),
  };
}

/** A path from the top of the repository, with `/`; nothing for one that leaves it. */
function fromTop(given: string, { prefix }: Repository): string | undefined {
  const written = path.sep === '\\' ? given.replaceAll('\\', '/') : given;
  const isRelative = /^\.\.?\//u.test(written);
  const inside = path.posix.normalize(isRelative ? `${prefix}${written}` : written);
  return inside.startsWith('../') || inside.startsWith('/') || inside === '..' ? undefined : inside;
}

/** Why a path is not at a revision, with the one that was probably meant. */
async function notThere({ revision }: Version, inside: string, folder: string): Promise<string> {
  const where = whereIs(revision);
  const prefix = `${revision}:`;
  const kind = await git(['cat-file', '-t', `${revision}:${inside}`], folder);
  const type = kind.ok ? Buffer.from(kind.bytes).toString('utf8').trim() : '';
  if (type === 'tree') return `${inside} is a folder ${where}, not a plan.`;
  const entry = await git(
    ['ls-tree', '--full-tree', isIndex(revision) ? 'HEAD' : revision, '--', inside],
    folder,
  );
  if (entry.ok && /^160000 /u.test(Buffer.from(entry.bytes).toString('utf8')))
    return `${inside} is a repository of its own ${where}; compare its plans from within it.`;
  const then = await nameThen(revision, inside, folder);
  if (then !== undefined)
    return `There is no ${inside} ${where}; it was called ${then} then: ${prefix}${then}`;
  const plans = await plansAt(revision, folder);
  const sameName = plans.find((plan) => path.posix.basename(plan) === path.posix.basename(inside));
  const near = sameName ?? nearestWord(inside, plans);
  return `There is no ${inside} ${where}.${near === undefined ? '' : ` Did you mean ${prefix}${near}?`}`;
}

/** Reads the files that a plan names, as they were at the same revision; nothing outside the repository. */
function filesAt(revision: string, planPath: string, { top }: Repository): ReadFile {
  return remembering((written) => fileAt(revision, planPath, top, written));
}

function fileAt(revision: string, planPath: string, top: string, written: string): FileAnswer {
  const name = written.replaceAll('\\', '/');
  const refusal = refusalOfPath(name);
  if (refusal !== undefined) return { ok: false, reason: refusal };
  const inside = path.posix.join(path.posix.dirname(planPath), name);
  if (inside.startsWith('../')) return { ok: false, reason: 'This file lies outside the repository.' };
  const answer = blobAtOnce(revision, inside, top);
  if (answer.ok) return asText(answer.bytes);
  return {
    ok: false,
    reason: answer.isTooLarge ? tooLarge(fileSizeLimitBytes) : `There is no such file ${whereIs(revision)}.`,
  };
}

/** `in the index`, `at HEAD~1` */
function whereIs(revision: string): string {
  return isIndex(revision) ? 'in the index' : `at ${revision}`;
}
