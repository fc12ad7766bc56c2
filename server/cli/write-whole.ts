import writeFileAtomic from 'write-file-atomic';
import { CommandFailure, refusalOf } from './terminal.js';

/**
 * Writes a file whole or not at all. One that is there keeps its permissions.
 * @throws CommandFailure if it cannot be written; what was there before is then still there
 */
export async function writeWhole(file: string, name: string, content: string | Uint8Array): Promise<void> {
  try {
    await writeFileAtomic(file, content);
  } catch (error) {
    const missingFolder = error instanceof Error && 'code' in error && error.code === 'ENOENT';
    throw new CommandFailure(
      missingFolder ? `${name}: its folder is not there.` : `${name} ${refusalOf(error)}.`,
    );
  }
}
