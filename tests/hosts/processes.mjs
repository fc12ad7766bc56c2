// @ts-check
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { readFileSync } from 'node:fs';
import { createServer } from 'node:net';
import path from 'node:path';
import { createInterface } from 'node:readline';

/** @type {Set<() => unknown>} */
const pending = new Set();

/**
 * Registers what must be undone however this process ends: on return, on an error, on Ctrl+C.
 * @param {() => unknown} undo called at most once; may be called while the process exits, so the part that matters must
 *   be synchronous
 * @returns {() => Promise<void>} undoes it now
 */
export function onEnd(undo) {
  const once = async () => {
    if (pending.delete(once)) await undo();
  };
  pending.add(once);
  return once;
}

process.on('exit', () => pending.forEach((undo) => void undo()));
for (const [signal, code] of /** @type {const} */ ([
  ['SIGINT', 130],
  ['SIGTERM', 143],
  ['SIGHUP', 129],
])) {
  process.on(signal, () => process.exit(code));
}

/**
 * Kills a process and all that it has started, at once, so that nothing of it is left when this returns.
 * Only for Linux.
 * @param {number | undefined} pid
 */
export function killTree(pid) {
  if (pid === undefined) return;
  try {
    // Stopped first, or it could start another between the two lines.
    process.kill(pid, 'SIGSTOP');
    const children = readFileSync(`/proc/${pid}/task/${pid}/children`, 'utf8');
    children.split(' ').filter(Boolean).map(Number).forEach(killTree);
    process.kill(pid, 'SIGKILL');
  } catch {
    // It has ended by itself.
  }
}

/**
 * Asks a program to end when this process ends, and insists after five seconds.
 * @param {import('node:child_process').ChildProcess} child
 */
function endsWithUs(child) {
  const ended = once(child, 'exit').catch(() => undefined);
  return onEnd(async () => {
    if (child.pid === undefined || child.exitCode !== null || child.signalCode !== null) return;
    child.kill('SIGTERM');
    const impatient = setTimeout(() => child.kill('SIGKILL'), 5_000);
    await ended;
    clearTimeout(impatient);
  });
}

/**
 * Runs a program to its end.
 * @param {string} command
 * @param {readonly string[]} args
 * @param {import('node:child_process').SpawnOptions & { onLine?: (line: string) => void; limit?: number }} [options]
 *   `onLine` is given each line that the program prints, which is shown as well; after `limit` milliseconds it is ended
 * @returns {Promise<number>} its exit code; 1 when it could not be started or was ended
 */
export async function run(command, args, { onLine, limit, ...options } = {}) {
  const output = onLine === undefined ? 'inherit' : 'pipe';
  const child = spawn(command, args, { stdio: ['inherit', output, output], ...options });
  const stop = endsWithUs(child);
  if (onLine !== undefined) {
    forward(child.stdout, process.stdout, onLine);
    forward(child.stderr, process.stderr, onLine);
  }
  /** @type {Promise<number>} */
  const ended = new Promise((resolve) => {
    child.on('error', (error) => {
      console.error(`${command}: ${error.message}`);
      resolve(1);
    });
    child.on('close', (code) => resolve(code ?? 1));
  });
  try {
    return await (limit === undefined ? ended : within(ended, limit, path.basename(command)));
  } catch (error) {
    console.error(error instanceof Error ? error.message : error);
    return 1;
  } finally {
    await stop();
  }
}

/**
 * @param {import('node:stream').Readable | null} from
 * @param {NodeJS.WritableStream} to
 * @param {(line: string) => void} onLine
 */
function forward(from, to, onLine) {
  if (from === null) return;
  from.on('data', (/** @type {Buffer} */ data) => to.write(data));
  createInterface({ input: from }).on('line', onLine);
}

/**
 * A port of the loopback interface that nothing listens on.
 * @param {number} [wanted] taken if it is free
 * @returns {Promise<number>}
 */
export function freePort(wanted = 0) {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.on('error', (/** @type {NodeJS.ErrnoException} */ error) => {
      if (wanted !== 0 && error.code === 'EADDRINUSE') resolve(freePort());
      else reject(error);
    });
    probe.listen(wanted, '127.0.0.1', () => {
      const address = probe.address();
      const port = typeof address === 'object' && address !== null ? address.port : 0;
      probe.close(() => resolve(port));
    });
  });
}

/**
 * Waits for a promise, but not for ever.
 * @template T
 * @param {Promise<T>} promise
 * @param {number} milliseconds
 * @param {string} what named in the error when the time is over
 * @returns {Promise<T>}
 */
export async function within(promise, milliseconds, what) {
  /** @type {NodeJS.Timeout | undefined} */
  let timer;
  const limit = new Promise((_, reject) => {
    timer = setTimeout(
      () => reject(new Error(`${what}: not done after ${milliseconds / 1000} s`)),
      milliseconds,
    );
  });
  try {
    return await /** @type {Promise<T>} */ (Promise.race([promise, limit]));
  } finally {
    clearTimeout(timer);
  }
}
