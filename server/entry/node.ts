import { existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import process from 'node:process';
import { pathToFileURL } from 'node:url';
import { createConnection } from 'vscode-languageserver/node';
import type { Sentences } from '../../grammar/index.js';
import { version } from '../../package.json';
import { serve } from '../language/connection.js';
import { connectionOptions } from '../language/hello.js';
import { nodeDarkroom } from './darkroom-node.js';
import { readBytesFromDisk, readFromDisk } from './disk.js';
import type * as Features from './features.js';
import type { Renderers } from './renderers.js';
import { findPlansOnDisk } from './find-plans.js';

/**
 * The language server as a process of its own. `--stdio` (also the default) speaks over its standard streams,
 * `--node-ipc` over the channel to the Node process that started it. It ends when that channel or its input ends,
 * and within seconds when the process that the client names in `initialize` is gone.
 */

const transports = ['--stdio', '--node-ipc', '--pipe', '--socket'];
const named = process.argv.some((argument) => transports.includes(argument.split('=')[0] ?? ''));
if (!named) process.argv.push('--stdio');

const connection = createConnection(connectionOptions);
process.on('disconnect', () => process.exit(1));
// The features are guarded one by one; a promise that nobody awaits is told of here, and costs no one the server.
process.on('unhandledRejection', (reason) => connection.console.error(`Unhandled: ${String(reason)}`));
serve(connection, {
  version,
  readFile: readFromDisk,
  readBytes: readBytesFromDisk,
  squarePhotograph: () => nodeDarkroom(path.join(__dirname, 'photograph.js')).square,
  findPlans: findPlansOnDisk,
  features,
  languages: () => ({ de: germanSentences }),
  exportDrawing: (...asked) => features().exporterWith(loadRenderers)(...asked),
  ...installedReference(),
});

/** The reference lies beside the bundle's folder, in a clone as in the extension. */
function installedReference(): { readonly reference?: string } {
  const folder = path.resolve(__dirname, '..');
  return existsSync(path.join(folder, 'grammar/README.md')) ? { reference: pathToFileURL(folder).href } : {};
}

/** From the bundle beside this one, which node loads once. */
function features(): typeof Features {
  return createRequire(__filename)('./features.js') as typeof Features;
}

/** From the bundle beside this one. */
function germanSentences(): Sentences {
  return (createRequire(__filename)('./german.js') as { readonly german: Sentences }).german;
}

/** From the bundle beside this one. */
function loadRenderers(): Renderers {
  return (createRequire(__filename)('./export.js') as { readonly renderers: Renderers }).renderers;
}
