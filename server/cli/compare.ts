import path from 'node:path';
import { comparisonPage } from '../drawing/comparison/page.js';
import { type Comparison, comparePlans, noChangeInWords } from '../findings/comparison/compare.js';
import type { Page } from '../drawing/page.js';
import type { ComparedView } from '../drawing/scene.js';
import { errorsSentence } from '../language/errors.js';
import type { Snapshot } from '../language/snapshot.js';
import { type ComparedSide, compareDocument } from './compare-document.js';
import { compareText } from './compare-text.js';
import { conflictSentence } from './conflict.js';
import { targetOf } from './draw-target.js';
import { errorsOf } from './ending.js';
import { evaluateAlone } from './evaluate.js';
import { exitCodes, type ExitCode } from './exit-code.js';
import { gitDiff } from './git-diff.js';
import { refuseRepeatedInput, type Source, spokenName } from './source.js';
import { CommandFailure, type Terminal } from './terminal.js';
import { readCommitted, readVersion } from './versions.js';
import { writePage } from './write-page.js';

export interface CompareOptions {
  readonly json?: boolean;
  readonly output?: string;
  readonly width?: number;
  readonly view: ComparedView;
  readonly theme: 'light' | 'dark';
  /** Ends with 1 when the pictures differ. */
  readonly exitCode?: boolean;
  /** The words are those with which git calls a program that shows differences. */
  readonly gitDiff?: boolean;
}

/** `mahlstick compare`: what differs between two plans, or between a plan and its version in git. */
export async function compare(
  names: readonly string[],
  options: CompareOptions,
  terminal: Terminal,
): Promise<ExitCode> {
  if (options.gitDiff === true) return gitDiff(names, terminal);
  refuse(names, options);
  const target = options.output === undefined ? undefined : targetOf(options);
  const [first = '', second] = names;
  // Of one plan, what has come since it was committed.
  const earlier =
    second === undefined ? await readCommitted(first, terminal) : await readVersion(first, terminal);
  const later = await readVersion(second ?? first, terminal);
  for (const source of [earlier, later]) {
    const conflict = conflictSentence(source);
    if (conflict !== undefined) throw new CommandFailure(conflict);
  }
  const [before, now] = [evaluateAlone(earlier, terminal), evaluateAlone(later, terminal)];
  const comparison = comparePlans(before, now);
  const sides = { earlier: sideOf(earlier, before), later: sideOf(later, now) };
  const isSameText = earlier.text === later.text;
  if (target === undefined) {
    const document = compareDocument(comparison, sides, isSameText);
    await terminal.print(
      options.json ? `${JSON.stringify(document, null, 2)}\n` : compareText(document, terminal.coloured),
    );
  } else await writePage(pageOf(comparison, sides, isSameText, options.view), target, options, terminal);
  // What could be read was compared; that there is more is said.
  const unread = [sides.earlier, sides.later].filter(({ errors }) => errors > 0);
  for (const { name, errors } of unread)
    terminal.complain(errorsSentence(spokenName(name), errors, 'not compared'));
  const differs = options.exitCode === true && comparison.changes.length > 0;
  return unread.length > 0 || differs ? exitCodes.found : exitCodes.fine;
}

/** Decided before any work is done. */
function refuse(names: readonly string[], { json, output }: CompareOptions): void {
  if (names.length > 2) throw new CommandFailure('Two plans are compared, or one with its last commit.');
  refuseRepeatedInput(names);
  if (json && output !== undefined)
    throw new CommandFailure('--json is printed and -o writes a drawing; give one of them.');
}

function sideOf({ name }: Source, snapshot: Snapshot): ComparedSide {
  const title = snapshot.plan.title?.value;
  return { name, ...(title === undefined ? {} : { title }), errors: errorsOf(snapshot) };
}

/** Both plans side by side, each under its name. */
function pageOf(
  comparison: Comparison,
  { earlier, later }: { readonly earlier: ComparedSide; readonly later: ComparedSide },
  isSameText: boolean,
  view: ComparedView,
): Page {
  const titled = ({ name }: ComparedSide): string =>
    name.includes(':') ? name : path.basename(spokenName(name));
  const titles = { earlier: titled(earlier), later: titled(later) };
  return comparisonPage(comparison, titles, noChangeInWords(isSameText), view);
}
