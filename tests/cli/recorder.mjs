// @ts-check
// Loaded before a program of node: writes down, a line each, whatever it asks of a network and which other programs it
// runs.
import childProcess from 'node:child_process';
import dgram from 'node:dgram';
import dns from 'node:dns';
import { appendFileSync } from 'node:fs';
import { syncBuiltinESMExports } from 'node:module';
import net from 'node:net';
import { isMainThread } from 'node:worker_threads';

/** @param {string} what @param {string} detail */
const tell = (what, detail) => appendFileSync(process.env['MAHLSTICK_RECORD'] ?? '', `${what} ${detail}\n`);

/**
 * @param {object} owner
 * @param {readonly string[]} names of its functions
 * @param {string} what a call of them does
 */
function record(owner, names, what) {
  const functions = /** @type {Record<string, (...args: unknown[]) => unknown>} */ (owner);
  for (const name of names) {
    const original = functions[name];
    functions[name] = function (...args) {
      tell(what, `${name} ${JSON.stringify(args.filter((arg) => typeof arg !== 'function'))}`);
      return original?.apply(this, args);
    };
  }
}

const lookUps = ['lookup', 'resolve', 'resolve4', 'resolve6', 'reverse'];
record(net.Socket.prototype, ['connect'], 'connects');
record(net.Server.prototype, ['listen'], 'listens');
record(dgram.Socket.prototype, ['bind', 'connect', 'send'], 'sends');
record(dns, lookUps, 'looks up');
record(dns.promises, lookUps, 'looks up');
record(childProcess, ['exec', 'execFile', 'execFileSync', 'execSync', 'fork', 'spawn', 'spawnSync'], 'runs');
syncBuiltinESMExports();
tell('begins', isMainThread ? 'a program' : 'a thread');
