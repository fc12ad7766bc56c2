import path from 'node:path';
import { conflictSentence } from './conflict.js';
import { repositoryAt, stagedPlans } from './git.js';
import type { SourceAnswer } from './source.js';
import { CommandFailure, type Terminal } from './terminal.js';
import { readAt } from './versions.js';

/** The plans that are about to be committed, as they are in the index, and not as they are in the working tree. */
export async function* stagedSources({ folder }: Pick<Terminal, 'folder'>): AsyncGenerator<SourceAnswer> {
  const { prefix } = await repositoryAt(folder);
  for (const inside of await stagedPlans(folder)) {
    const name = path.posix.relative(prefix, inside);
    try {
      const source = { ...(await readAt({ revision: '', path: inside }, `:${inside}`, folder)), name };
      const conflict = conflictSentence(source);
      if (conflict === undefined) yield { ok: true, source };
      else
        yield { ok: false, unreadable: { name, reason: 'holds both sides of a merge that is not settled' } };
    } catch (error) {
      if (!(error instanceof CommandFailure)) throw error;
      yield {
        ok: false,
        unreadable: { name, reason: `can’t be read as it is staged: ${error.message.replace(/\.$/u, '')}` },
      };
    }
  }
}
