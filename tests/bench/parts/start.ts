import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { performance } from 'node:perf_hooks';
import process from 'node:process';
import { ratioOf, spreadOf } from '../figures.js';
import type { Options } from '../options.js';
import { written, type Finding } from '../report.js';
import { processorTime } from '../processor-time.js';
import { inTurn, of } from '../rounds.js';
import { ourServer, peerServers } from '../servers/kinds.js';
import type { Taken } from '../taken.js';
import { RunningServer, type ServerKind } from '../servers/server.js';

const BARE = 'node -e 0';
const FIRST_BYTE = 'node, up to its first byte';

/** From the start of a process to its answer to `initialize`, beside a process of node that does nothing. */
export async function measureStart({ rounds, alone }: Options): Promise<Finding> {
  const kinds = [ourServer(), ...(alone ? [] : peerServers())];
  const samples = await inTurn(
    [
      { name: BARE, sample: bareProcess },
      { name: FIRST_BYTE, sample: firstByte },
      ...kinds.map((kind) => ({ name: kind.name, sample: () => started(kind) })),
    ],
    rounds,
  );
  const more = (name: string, base: string, how: keyof Taken): string => {
    const bare = of(samples, base, how);
    return written(spreadOf(of(samples, name, how).map((time, round) => time - (bare[round] ?? NaN))));
  };
  return {
    part: 'start',
    data: Object.fromEntries(samples),
    tables: [
      {
        title: 'From the start of the process to `initialize` answered',
        columns: [
          'process',
          'ms',
          `more than \`${BARE}\`, ms`,
          'against it',
          'worked, ms',
          'more than to a first byte, ms',
        ],
        rows: [...samples.keys()].map((name) => [
          name,
          written(spreadOf(of(samples, name, 'elapsed'))),
          more(name, BARE, 'elapsed'),
          written(ratioOf(of(samples, name, 'elapsed'), of(samples, BARE, 'elapsed'))),
          written(spreadOf(of(samples, name, 'worked'))),
          more(name, FIRST_BYTE, 'worked'),
        ]),
        notes: [
          `Ours is bundled and minified, the others are started as npm installs them. \`${BARE}\` is measured up to its end, when nobody can tell any more how long it worked.`,
        ],
      },
    ],
  };
}

/** A process that ends at once, until it has ended. */
async function bareProcess(): Promise<Taken> {
  const begun = performance.now();
  await once(spawn(process.execPath, ['-e', '0'], { stdio: 'ignore' }), 'exit');
  return { elapsed: performance.now() - begun, worked: NaN };
}

/** A process that says something and stays. */
async function firstByte(): Promise<Taken> {
  const begun = performance.now();
  const child = spawn(process.execPath, ['-e', 'process.stdout.write("."); process.stdin.resume()'], {
    stdio: ['pipe', 'pipe', 'ignore'],
  });
  await once(child.stdout, 'data');
  const taken = { elapsed: performance.now() - begun, worked: processorTime(child.pid ?? 0) };
  const ended = once(child, 'exit');
  child.kill('SIGKILL');
  await ended;
  return taken;
}

async function started(kind: ServerKind): Promise<Taken> {
  const begun = performance.now();
  const server = new RunningServer(kind);
  await server.initialize();
  const taken = { elapsed: performance.now() - begun, worked: server.processorTime };
  await server.stop();
  return taken;
}
