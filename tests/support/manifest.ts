import { readFileSync } from 'node:fs';
import path from 'node:path';

const root = path.resolve(import.meta.dirname, '../..');
const read = (file: string): string => readFileSync(path.join(root, file), 'utf8');

/** The manifest of the extension as it is written, with `%key%` for what is told in several languages. */
export const rawManifest = read('package.json');

/** What the keys of the manifest stand for; in English where no language is named. */
export function manifestTexts(language?: string): Readonly<Record<string, string>> {
  return JSON.parse(
    read(language === undefined ? 'package.nls.json' : `package.nls.${language}.json`),
  ) as Record<string, string>;
}

/**
 * The manifest as an editor reads it: each value that is `%key%` is the text of the key; unknown keys stay as they are.
 */
export function manifestIn(language?: string): unknown {
  const texts = { ...manifestTexts(), ...(language === undefined ? {} : manifestTexts(language)) };
  return JSON.parse(rawManifest, (_, value: unknown) =>
    typeof value === 'string' && /^%.+%$/u.test(value) ? (texts[value.slice(1, -1)] ?? value) : value,
  );
}
