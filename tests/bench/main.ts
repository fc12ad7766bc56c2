import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import process from 'node:process';
import { machine } from './machine.js';
import { optionsOf, type Options, type PartName } from './options.js';
import { measureChange } from './parts/change.js';
import { measureEdit } from './parts/edit.js';
import { measureGrowth } from './parts/growth.js';
import { measureMemory } from './parts/memory.js';
import { measureParse } from './parts/parse.js';
import { measureSize } from './parts/size.js';
import { measureStart } from './parts/start.js';
import { benchFolder, peerVersion } from './peers.js';
import { markdownOf, type Finding } from './report.js';

/** The benchmark itself: what `run.mjs` bundles and starts. */

const measuring: Readonly<Record<PartName, (options: Options) => Finding | Promise<Finding>>> = {
  parse: measureParse,
  change: measureChange,
  edit: measureEdit,
  start: measureStart,
  memory: measureMemory,
  size: measureSize,
  growth: measureGrowth,
};

const peers = [
  'vscode-css-languageservice',
  'vscode-json-languageservice',
  'yaml-language-server',
  'vscode-langservers-extracted',
];

const options = optionsOf(process.argv.slice(2));
const before = machine();
const findings: Finding[] = [];
for (const part of options.parts) {
  console.error(`measuring: ${part}`);
  findings.push(await measuring[part](options));
}
const after = machine();
const versions = Object.fromEntries((options.alone ? [] : peers).map((name) => [name, peerVersion(name)]));
const folder = path.resolve(benchFolder, '../..', options.to);
const markdown = markdownOf(
  'Benchmark',
  [
    `${before.processor}, ${before.cores} cores, ${before.memoryGigabytes} GB; node ${before.node}`,
    `load of the machine ${before.load.toFixed(1)} before, ${after.load.toFixed(1)} after`,
    `${options.rounds} rounds in turn; medians, with quartiles in brackets${options.quick ? '; a quick run, which measures nothing' : ''}`,
    options.alone
      ? 'without others beside it'
      : Object.entries(versions)
          .map(([name, version]) => `${name} ${version}`)
          .join(', '),
  ],
  findings,
);
mkdirSync(folder, { recursive: true });
writeFileSync(path.join(folder, 'bench.md'), markdown);
const data = Object.fromEntries(findings.map(({ part, data: of }) => [part, of]));
writeFileSync(
  path.join(folder, 'bench.json'),
  `${JSON.stringify({ before, after, options, versions, ...data }, undefined, 2)}\n`,
);
console.log(markdown);
