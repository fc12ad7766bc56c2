import { readdir, readFile } from 'node:fs/promises';
import path from 'node:path';

export interface PlanFile {
  /** From the top of the repository. */
  readonly name: string;
  readonly text: string;
}

const root = path.resolve(import.meta.dirname, '../..');
const folders = ['examples', 'server/findings/plans', 'server/measure/plans', 'tests/books', 'tests/grammar'];

/** The examples and the plans that the references and tests are made of. */
export async function everyPlan(): Promise<readonly PlanFile[]> {
  const plans: PlanFile[] = [];
  for (const folder of folders) {
    for (const file of (await readdir(path.join(root, folder))).sort()) {
      if (!file.endsWith('.mahl')) continue;
      const name = `${folder}/${file}`;
      plans.push({ name, text: await readFile(path.join(root, name), 'utf8') });
    }
  }
  return plans;
}
