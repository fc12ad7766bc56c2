import path from 'node:path';
import { comparePlans } from '../findings/comparison/compare.js';
import { canvasSize, planTitle } from '../drawing/captions/words.js';
import { counted } from '../findings/words/words.js';
import { errorsSentence } from '../language/errors.js';
import { compareDocument } from './compare-document.js';
import { compareText } from './compare-text.js';
import { conflictSentence } from './conflict.js';
import { shown } from './display.js';
import { errorsOf } from './ending.js';
import { evaluateAlone } from './evaluate.js';
import { exitCodes, type ExitCode } from './exit-code.js';
import { readOneSource, type Source } from './source.js';
import { CommandFailure, type Terminal } from './terminal.js';

/** How git names a side that is not there. */
const NOTHING = '/dev/null';

/**
 * What git is answered as its program for differences of plans (`diff.NAME.command`): it gives the path, then the file,
 * the hash and the mode of both sides, and for a file that was renamed its new path and a note. Of a path that is not
 * merged it gives the path alone. Always ends well, because git stops at a program that does not.
 */
export async function gitDiff(words: readonly string[], terminal: Terminal): Promise<ExitCode> {
  const [at = '', oldFile, , , newFile, , , newPath] = words;
  if (oldFile === undefined || newFile === undefined) {
    if (words.length !== 1)
      throw new CommandFailure(
        '--git-diff takes what git gives: path, old file, hash, mode, new file, hash, mode.',
      );
    await terminal.print(
      `${shown(at)} is not merged yet: compare its sides with \`mahlstick compare ":2:${shown(at)}" ":3:${shown(at)}"\`.\n`,
    );
    return exitCodes.fine;
  }
  await terminal.print(await told({ at, oldFile, newFile, newPath: newPath ?? at }, terminal));
  return exitCodes.fine;
}

interface Given {
  readonly at: string;
  readonly oldFile: string;
  readonly newFile: string;
  readonly newPath: string;
}

async function told({ at, oldFile, newFile, newPath }: Given, terminal: Terminal): Promise<string> {
  try {
    const earlier = await side(oldFile, at, terminal);
    const later = await side(newFile, newPath, terminal);
    if (earlier === undefined)
      return later === undefined ? '' : `${shown(newPath)} is new: ${inShort(later, terminal)}\n\n`;
    if (later === undefined) return `${shown(at)} is gone: ${inShort(earlier, terminal)}\n\n`;
    const conflict = conflictSentence(earlier, true) ?? conflictSentence(later, true);
    if (conflict !== undefined) return `${shown(conflict)}\n\n`;
    const [before, now] = [evaluateAlone(earlier, terminal), evaluateAlone(later, terminal)];
    const sides = {
      earlier: { name: at === newPath ? `${at} before` : at, errors: errorsOf(before) },
      later: { name: newPath, errors: errorsOf(now) },
    };
    const document = compareDocument(comparePlans(before, now), sides, earlier.text === later.text);
    const unread = [sides.earlier, sides.later]
      .filter(({ errors }) => errors > 0)
      .map(({ name, errors }) => `${errorsSentence(shown(name), errors, 'not compared')}\n`);
    return `${compareText(document, terminal.coloured)}${unread.join('')}\n`;
  } catch (error) {
    if (!(error instanceof CommandFailure)) throw error;
    return `${shown(at)}: ${shown(error.message)}\n\n`;
  }
}

/** One side; the files that it names are those of the working tree, as git does not say of which commit it is. */
async function side(file: string, at: string, terminal: Terminal): Promise<Source | undefined> {
  if (file === NOTHING) return undefined;
  const source = await readOneSource(file, terminal);
  return { ...source, name: at, folder: path.dirname(path.resolve(terminal.folder, at)) };
}

/** `“The winter barn”, 90 × 60 cm, twelve objects.` */
function inShort(source: Source, terminal: Terminal): string {
  const { plan } = evaluateAlone(source, terminal);
  const count = plan.objects.length;
  const objects = `${count === 0 ? 'no' : counted(count)} object${count === 1 ? '' : 's'}`;
  return `“${shown(planTitle(plan))}”, ${canvasSize(plan.canvas)}, ${objects}.`;
}
