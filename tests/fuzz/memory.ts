import process from 'node:process';
import { steadyEditor } from './steady.js';

/** Edits between two looks at the heap. */
const STRETCH = 5_000;
/** Stretches in which caches of a bounded size fill up. */
const WARMING_UP = 4;
/**
 * What the heap may have more of in the second half than in the first: an edit that left a hundred bytes would leave 4
 * MB.
 */
const MOST_GROWTH_BYTES = 3_000_000;

/** Makes edits and looks at the heap after collecting garbage; tells and gives whether it stays flat. */
async function lookAtMemory(edits: number, seed: number, collect: () => void): Promise<boolean> {
  const editor = steadyEditor(seed);
  const used: number[] = [];
  const begun = Date.now();
  for (let made = 0; made < edits; made += STRETCH) {
    await editor.edit(Math.min(STRETCH, edits - made));
    collect();
    used.push(process.memoryUsage().heapUsed);
    const seconds = Math.round((Date.now() - begun) / 1000);
    console.log(`  ${made + STRETCH} edits in ${seconds} s: ${((used.at(-1) ?? 0) / 1e6).toFixed(2)} MB`);
  }
  for (const failure of editor.failures) console.error(`  FOUND: ${failure}`);
  const warm = used.slice(WARMING_UP);
  const half = Math.ceil(warm.length / 2);
  // Caches fill up and are emptied again, so the least of each half counts.
  const growth = Math.min(...warm.slice(half)) - Math.min(...warm.slice(0, half));
  const isFlat = warm.length >= 4 && growth <= MOST_GROWTH_BYTES;
  console.log(
    `memory: ${(growth / 1e6).toFixed(2)} MB between the halves after warming up: ${isFlat ? 'flat' : 'NOT flat'}`,
  );
  return isFlat && editor.failures.length === 0;
}

const [edits = '100000', seed = '1'] = process.argv.slice(2);
const { gc: collect } = globalThis as { gc?: () => void };
if (collect === undefined) throw new Error('Garbage can be collected with --expose-gc only.');
process.exitCode = (await lookAtMemory(Number(edits), Number(seed), collect)) ? 0 : 1;
