import { parse } from '../../grammar/index.js';
import { takeSnapshot, type Snapshot } from '../language/snapshot.js';
import type { Photographs } from '../measure/photograph/photographs.js';
import { Memory } from '../measure/memory.js';
import { Mixer } from '../measure/mixing/mixer.js';
import { gatherPhotographs, namesPictures } from '../photograph/gather.js';
import { OutlineCache } from '../plan/outline-cache.js';
import { filesBeside, picturesBeside } from './files-beside.js';
import type { Source } from './source.js';
import type { Terminal } from './terminal.js';

/**
 * The plan that a text states, with its measures and findings; each part is computed when it is first asked for.
 * @param needs `plan` for a command that tells nothing of photographs, so that none is read
 */
export async function evaluate(
  source: Source,
  terminal: Pick<Terminal, 'folder' | 'square'>,
  needs: 'photographs' | 'plan' = 'photographs',
): Promise<Snapshot> {
  const alone = evaluateAlone(source, terminal);
  if (needs === 'plan' || !namesPictures(alone.plan)) return alone;
  const readPicture = picturesBeside(source.folder, terminal.folder);
  return evaluateAlone(source, terminal, await gatherPhotographs(alone.plan, readPicture, terminal.square));
}

/** The same at once, with the photographs that are given. */
export function evaluateAlone(
  { text, folder, readFile }: Source,
  terminal: Pick<Terminal, 'folder'>,
  photographs?: Photographs,
): Snapshot {
  return takeSnapshot({
    uri: '',
    version: 1,
    text,
    parse: () => parse(text),
    reader: () => readFile ?? filesBeside(folder, terminal.folder),
    outlines: new OutlineCache(),
    memory: new Memory(),
    mixer: Mixer.eager(),
    ...(photographs ? { photographs } : {}),
  });
}
