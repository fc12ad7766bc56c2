import { readdir } from 'node:fs/promises';
import path from 'node:path';
import { URI } from 'vscode-uri';

/** A workspace may hold a whole disk. */
const LIMITS = { plans: 300, folders: 2_000 };

/**
 * The addresses of the plans below folders of the disk, those nearer to the top first. Links are not followed; hidden
 * folders and those of packages are left out. What can't be read is passed over.
 */
export async function findPlansOnDisk(folders: readonly string[]): Promise<readonly string[]> {
  const found: string[] = [];
  const waiting = folders
    .map((folder) => URI.parse(folder))
    .filter(({ scheme }) => scheme === 'file')
    .map(({ fsPath }) => fsPath);
  for (let read = 0; read < waiting.length && read < LIMITS.folders && found.length < LIMITS.plans; read++) {
    const folder = waiting[read] ?? '';
    const entries = await readdir(folder, { withFileTypes: true }).catch(() => []);
    for (const entry of entries.sort((a, b) => (a.name < b.name ? -1 : 1))) {
      const place = path.join(folder, entry.name);
      if (entry.isDirectory() && !/^(?:\..*|node_modules)$/u.test(entry.name)) waiting.push(place);
      if (entry.isFile() && /\.mahl$/iu.test(entry.name)) found.push(URI.file(place).toString());
    }
  }
  return found.slice(0, LIMITS.plans);
}
