import { performance } from 'node:perf_hooks';
import { bareBlocks } from '../contestants/bare-blocks.js';
import { bareJson } from '../contestants/bare-json.js';
import type { Contestant } from '../contestants/contestant.js';
import { css } from '../contestants/css.js';
import { json } from '../contestants/json.js';
import { ours, oursChecked, oursParse } from '../contestants/ours.js';
import { yaml } from '../contestants/yaml.js';
import { ratioOf, spreadOf } from '../figures.js';
import type { Options } from '../options.js';
import { written, type Finding, type Table } from '../report.js';
import { inTurn, of, type Samples } from '../rounds.js';
import { stopwatch, type Taken } from '../taken.js';

/** Other documents of the same kind, so that nothing is answered from what was kept of the last one. */
const DOCUMENTS = 3;
/** What a sample takes at least: the clock is finer, but a busy machine is not. */
const SAMPLE_MILLISECONDS = 60;
/** Lines of the longest document that is measured and checked too. */
const MOST_CHECKED = 1_000;
/** Until everything that matters is compiled. */
const WARMING_MILLISECONDS = 800;

/** Lines a millisecond that services read and check, in one process. */
export async function measureParse({ rounds, sizes, quick, alone }: Options): Promise<Finding> {
  const services = alone ? [] : [css(), json(), yaml()];
  const all = [ours, oursParse, oursChecked, ...services, bareBlocks, bareJson];
  const tables: Table[] = [];
  const data: Record<string, unknown> = {};
  for (const lines of sizes) {
    // How measuring and checking grow is told in a table of its own.
    const contestants = all.filter((contestant) => contestant !== oursChecked || lines <= MOST_CHECKED);
    const read = await Promise.all(contestants.map((contestant) => prepared(contestant, lines, quick)));
    const samples = await inTurn(read, rounds);
    data[lines] = Object.fromEntries(samples);
    tables.push(tableOf(lines, contestants, samples));
  }
  return { part: 'parse', tables, data };
}

async function prepared(contestant: Contestant, lines: number, quick: boolean) {
  const documents = Array.from({ length: DOCUMENTS }, (_, index) => contestant.document(lines, index + 1));
  let turn = 0;
  const once = async (): Promise<void> => {
    const text = documents[(turn += 1) % DOCUMENTS] ?? '';
    await contestant.read(text);
  };
  /** What a thousand lines took, of as many documents as fill a while. */
  const during = async (milliseconds: number): Promise<Taken> => {
    const taken = stopwatch();
    const begun = performance.now();
    let read = 0;
    do {
      await once();
      read += lines;
    } while (performance.now() - begun < milliseconds);
    const { elapsed, worked } = taken();
    return { elapsed: (elapsed * 1000) / read, worked: (worked * 1000) / read };
  };
  await during(quick ? 0 : WARMING_MILLISECONDS);
  return {
    name: contestant.name,
    sample: async (): Promise<Taken> => {
      globalThis.gc?.();
      return during(quick ? 0 : SAMPLE_MILLISECONDS);
    },
  };
}

function tableOf(lines: number, contestants: readonly Contestant[], samples: Samples): Table {
  const characters = (contestant: Contestant): string =>
    (contestant.document(lines, 1).length / lines).toFixed(0);
  const speeds = (name: string): readonly number[] => of(samples, name, 'elapsed').map((time) => 1000 / time);
  const ratio = (name: string, how: keyof Taken): string =>
    written(ratioOf(of(samples, name, how), of(samples, ours.name, how)));
  return {
    title: `Documents of ${lines} lines, read`,
    columns: [
      'service',
      'does',
      'characters a line',
      'lines/ms',
      'ours* to it',
      'ours* to it, of time worked',
    ],
    rows: contestants.map((contestant) => [
      contestant.name,
      contestant.does,
      characters(contestant),
      written(spreadOf(speeds(contestant.name))),
      ratio(contestant.name, 'elapsed'),
      ratio(contestant.name, 'worked'),
    ]),
    notes: [`* How many times as many lines \`${ours.name}\` reads in the same time.`],
  };
}
