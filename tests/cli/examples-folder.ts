import { cpSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeEach } from 'vitest';

export const root = path.resolve(import.meta.dirname, '../..');

/** A fresh folder for each test of the file, with the examples in it. */
export function examplesFolder() {
  const top = mkdtempSync(path.join(tmpdir(), 'mahlstick-cli-'));
  let folder: string;
  beforeEach(() => {
    folder = mkdtempSync(path.join(top, 'test-'));
    cpSync(path.join(root, 'examples'), folder, { recursive: true });
  });
  afterAll(() => rmSync(top, { recursive: true, force: true }));
  return {
    /** What holds the folders of all tests. */
    top,
    get folder() {
      return folder;
    },
    write: (name: string, content: string | Uint8Array): string => {
      const file = path.join(folder, name);
      writeFileSync(file, content);
      return file;
    },
  };
}
