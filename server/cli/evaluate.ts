import { parse } from '../../grammar/index.js';
import { takeSnapshot, type Snapshot } from '../language/snapshot.js';
import { Memory } from '../measure/memory.js';
import { Mixer } from '../measure/mixing/mixer.js';
import { OutlineCache } from '../plan/outline-cache.js';
import { filesBeside } from './files-beside.js';
import type { Source } from './source.js';
import type { Terminal } from './terminal.js';

/** The plan that a text states, with its measures and findings; each part is computed when it is first asked for. */
export function evaluate({ text, folder, readFile }: Source, terminal: Pick<Terminal, 'folder'>): Snapshot {
  return takeSnapshot({
    uri: '',
    version: 1,
    text,
    parse: () => parse(text),
    reader: () => readFile ?? filesBeside(folder, terminal.folder),
    outlines: new OutlineCache(),
    memory: new Memory(),
    mixer: Mixer.eager(),
  });
}
