import { readdir } from 'node:fs/promises';
import path from 'node:path';
import type { ComparedView } from '../drawing/scene.js';
import { differenceInShort, wallCard } from '../drawing/wall/card.js';
import { MOST_ON_WALL } from '../drawing/wall/most.js';
import { type Hung, wallPage } from '../drawing/wall/page.js';
import { comparePlans } from '../findings/comparison/compare.js';
import { errorCount } from '../language/errors.js';
import type { Snapshot } from '../language/snapshot.js';
import { targetOf } from './draw-target.js';
import { evaluateAlone } from './evaluate.js';
import { exitCodes, type ExitCode } from './exit-code.js';
import { readSource, type Source, unreadableText } from './source.js';
import { CommandFailure, refusalOf, type Terminal } from './terminal.js';
import { wallDocument, wallText } from './wall-document.js';
import { writePage } from './write-page.js';

export interface WallOptions {
  readonly view: ComparedView;
  readonly theme: 'light' | 'dark';
  readonly json?: boolean;
  readonly output?: string;
  readonly width?: number;
}

/** `mahlstick wall`: the plans of a folder, or those named, as small pictures with their main figures. */
export async function wall(
  names: readonly string[],
  options: WallOptions,
  terminal: Terminal,
): Promise<ExitCode> {
  if (options.json && options.output !== undefined)
    throw new CommandFailure('--json is printed and -o writes a drawing; give one of them.');
  const target = options.output === undefined ? undefined : targetOf(options);
  const plans = await plansOf(names, terminal);
  const hung = await hangAll(plans.slice(0, MOST_ON_WALL), options.view, terminal);
  const left = Math.max(0, plans.length - MOST_ON_WALL);
  if (target !== undefined)
    await writePage(wallPage(hung, titleOf(names, terminal), left), target, options, terminal);
  else {
    const document = wallDocument(hung, left);
    await terminal.print(
      options.json ? `${JSON.stringify(document, null, 2)}\n` : wallText(document, terminal.coloured),
    );
  }
  const unreadable = hung.flatMap((each) => ('unreadable' in each ? [each.unreadable] : []));
  for (const reason of unreadable) terminal.complain(reason);
  if (left > 0) terminal.complain(`${MOST_ON_WALL} plans are shown; there are ${left} more.`);
  if (unreadable.length > 0) return exitCodes.failed;
  return hung.some((each) => 'card' in each && each.card.counts.errors > 0)
    ? exitCodes.found
    : exitCodes.fine;
}

function titleOf([first, ...more]: readonly string[], { folder }: Terminal): string {
  if (more.length > 0) return 'Plans side by side';
  return `Plans in ${path.basename(path.resolve(folder, first ?? '.'))}`;
}

/** The plans that are named, and of a folder those in it, in the order of the alphabet. */
async function plansOf(names: readonly string[], { folder }: Terminal): Promise<readonly string[]> {
  const found: string[] = [];
  for (const name of names.length === 0 ? ['.'] : names) {
    try {
      const entries = await readdir(path.resolve(folder, name));
      const plans = entries.filter((entry) => /\.mahl$/iu.test(entry)).sort();
      if (plans.length === 0)
        throw new CommandFailure(`There is no plan in ${name === '.' ? 'this folder' : name}.`);
      found.push(...plans.map((plan) => (name === '.' ? plan : path.join(name, plan))));
    } catch (error) {
      if (error instanceof CommandFailure) throw error;
      const code = error instanceof Error && 'code' in error ? error.code : undefined;
      if (code !== 'ENOTDIR') throw new CommandFailure(`${name} ${refusalOf(error)}.`);
      found.push(name);
    }
  }
  return found;
}

async function hangAll(
  names: readonly string[],
  view: ComparedView,
  terminal: Terminal,
): Promise<readonly Hung[]> {
  const hung: Hung[] = [];
  for (const name of names) {
    const answer = await readSource(name, terminal);
    if (!answer.ok) {
      hung.push({ name: path.basename(name), unreadable: unreadableText(answer.unreadable) });
      continue;
    }
    const snapshot = evaluateAlone(answer.source, terminal);
    const [base] = snapshot.plan.basedOn?.plans ?? [];
    const beside = base && path.dirname(path.resolve(answer.source.folder, base.file));
    hung.push({
      name: path.basename(name),
      card: wallCard(snapshot, view, errorCount(snapshot)),
      ...(base === undefined || beside === undefined
        ? {}
        : {
            differs: differsFrom({ ...answer.source, text: base.text, folder: beside }, snapshot, terminal),
          }),
    });
  }
  return hung;
}

/** What differs from the plan that one builds on. */
function differsFrom(base: Source, snapshot: Snapshot, terminal: Terminal): string {
  return differenceInShort(comparePlans(evaluateAlone(base, terminal), snapshot));
}
