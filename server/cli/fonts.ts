import { createReadStream } from 'node:fs';
import path from 'node:path';
import { loadRenderers } from './rendered.js';
import { readUpTo } from './read-up-to.js';
import { CommandFailure, refusalOf, type Terminal } from './terminal.js';

/** Fonts for Chinese, Japanese and Korean are the largest there are. */
const LARGEST_MEGABYTES = 50;

/**
 * The fonts that a painter gives for letters which the tool's own lacks.
 * @throws CommandFailure for a file that can't be read or is no font
 */
export async function readFonts(
  names: readonly string[],
  terminal: Terminal,
): Promise<readonly Uint8Array[]> {
  if (names.length === 0) return [];
  const { checkFont } = await loadRenderers();
  return Promise.all(
    names.map(async (name) => {
      const bytes = await readFontFile(name, terminal);
      const checked = checkFont(bytes);
      if (!checked.ok) throw new CommandFailure(`${name} ${checked.reason}.`);
      return bytes;
    }),
  );
}

async function readFontFile(name: string, { folder }: Terminal): Promise<Uint8Array> {
  const most = LARGEST_MEGABYTES * 1024 * 1024;
  let bytes: Uint8Array;
  try {
    bytes = await readUpTo(createReadStream(path.resolve(folder, name)), most + 1);
  } catch (error) {
    throw new CommandFailure(`${name} ${refusalOf(error)}.`);
  }
  if (bytes.length > most) throw new CommandFailure(`${name} is larger than ${LARGEST_MEGABYTES} MB.`);
  return bytes;
}
