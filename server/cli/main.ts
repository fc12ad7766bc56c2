import path from 'node:path';
import process from 'node:process';
import { nodeDarkroom } from '../entry/darkroom-node.js';
import { exitCodes } from './exit-code.js';
import { run } from './program.js';
import { readUpTo } from './read-up-to.js';
import { complaint, type Terminal } from './terminal.js';

const darkroom = nodeDarkroom(path.join(__dirname, 'photograph.js'));

const terminal: Terminal = {
  folder: process.cwd(),
  coloured: process.stdout.isTTY === true && !process.env['NO_COLOR'],
  now: () => new Date(),
  readInput: (mostBytes) => readUpTo(process.stdin, mostBytes),
  square: darkroom.square,
  print: (output) => new Promise((resolve) => process.stdout.write(output, () => resolve())),
  explain: (text) => void process.stderr.write(text),
  complain: (message) => void process.stderr.write(complaint(message)),
};

// Whoever reads may have seen enough, as `head` does; that is no failure.
for (const stream of [process.stdout, process.stderr]) {
  stream.on('error', (error: NodeJS.ErrnoException) => {
    process.exit(error.code === 'EPIPE' ? exitCodes.fine : exitCodes.failed);
  });
}

run(process.argv.slice(2), terminal).then(
  (code) => {
    darkroom.close();
    if (code !== undefined) process.exitCode = code;
  },
  (error: unknown) => {
    const reason = error instanceof Error ? error.message : String(error);
    terminal.complain(`this is a fault of mahlstick, not of your plan: ${reason}`);
    process.exitCode = exitCodes.fault;
  },
);
