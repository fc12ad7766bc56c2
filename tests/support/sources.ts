import { readdirSync } from 'node:fs';
import path from 'node:path';

/** The sources below some folders of the repository, without tests, as they lie in it. */
export function sourcesIn(root: string, folders: readonly string[]): readonly string[] {
  return folders.flatMap((folder) =>
    readdirSync(path.join(root, folder), { recursive: true, encoding: 'utf8' })
      .map((file) => path.posix.join(folder, file.split(path.sep).join('/')))
      .filter((file) => /\.ts$/u.test(file) && !/\.(?:test|d)\.ts$/u.test(file)),
  );
}
