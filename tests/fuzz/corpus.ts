import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import type { CampaignName } from './campaign.js';
import type { Fault } from './orders.js';

/** A case that was found to fail once, as a file keeps it. */
interface KeptCase {
  /** What was wrong, in a sentence or as it was told when it was found. */
  readonly what: string;
  readonly seed?: number;
  readonly case: unknown;
}

const folderOf = (root: string, name: CampaignName): string => path.join(root, 'tests/fuzz/corpus', name);

/** The cases of a campaign that were found earlier. @param root the folder of the repository */
export function keptCases(root: string, name: CampaignName): readonly unknown[] {
  const folder = folderOf(root, name);
  if (!existsSync(folder)) return [];
  return readdirSync(folder)
    .filter((file) => file.endsWith('.json'))
    .sort()
    .map((file) => (JSON.parse(readFileSync(path.join(folder, file), 'utf8')) as KeptCase).case);
}

/** Writes a fault down as a case of the corpus, under a name that its content gives. @returns the file */
export function keep(root: string, name: CampaignName, { what, seed, case: one }: Fault): string {
  const folder = folderOf(root, name);
  mkdirSync(folder, { recursive: true });
  // A stack names files of the machine that it was found on.
  const kept: KeptCase = {
    what: what.replaceAll(`${root}${path.sep}`, ''),
    ...(seed === undefined ? {} : { seed }),
    case: one,
  };
  const digest = createHash('sha256')
    .update(JSON.stringify(one) ?? 'null')
    .digest('hex');
  const file = path.join(folder, `${digest.slice(0, 8)}.json`);
  writeFileSync(file, `${JSON.stringify(kept, null, 2)}\n`);
  return file;
}
