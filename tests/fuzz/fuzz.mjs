// @ts-check
// `npm run fuzz -- [campaign...] [--minutes N] [--seed S]`: looks for faults for a while; `memory` makes 100,000 edits.
import process from 'node:process';
import { pathToFileURL } from 'node:url';
import { bundleFuzzing } from './bundle.mjs';

const { child, command, memory, remove } = await bundleFuzzing();
try {
  const { fuzz } = await import(pathToFileURL(command).href);
  process.exitCode = await fuzz(process.argv.slice(2), { child, memory });
} finally {
  remove();
}
