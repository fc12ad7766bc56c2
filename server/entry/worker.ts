import { BrowserMessageReader, BrowserMessageWriter, createConnection } from 'vscode-languageserver/browser';
import type { Sentences } from '../../grammar/index.js';
import { version } from '../../package.json';
import { serve } from '../language/connection.js';
import * as features from '../language/features.js';
import { connectionOptions } from '../language/hello.js';
import { webDarkroom } from './darkroom-web.js';
import { exporterWith } from './export.js';
import type { Renderers } from './renderers.js';

/** The language server in a web worker. It reaches no disk: files come from the client, or not at all. */

// The types at hand are those of a page, where `self` is the window.
const port = self as unknown as MessagePort;

const connection = createConnection(
  new BrowserMessageReader(port),
  new BrowserMessageWriter(port),
  connectionOptions,
);
serve(connection, {
  version,
  features: () => features,
  carriesBytes: true,
  languages: (installed) => ({ de: () => loadGerman(installed) }),
  exportDrawing: exporterWith(loadRenderers),
  squarePhotograph: (installed) =>
    installed === undefined ? undefined : webDarkroom(bundleIn(installed, 'photograph')).square,
});

interface WithBundles {
  readonly importScripts: (address: string) => void;
  mahlstickExport?: { readonly renderers: Renderers };
  mahlstickGerman?: { readonly german: Sentences };
}

/**
 * From where the client says that the tool is installed: a worker of an editor can't tell from where it was loaded
 * itself.
 */
function loadRenderers(installed: string | undefined): Renderers {
  const worker = self as unknown as WithBundles;
  if (worker.mahlstickExport === undefined && installed !== undefined)
    worker.importScripts(bundleIn(installed, 'export'));
  if (worker.mahlstickExport === undefined) throw new Error('What writes drawings is not there.');
  return worker.mahlstickExport.renderers;
}

function loadGerman(installed: string | undefined): Sentences {
  const worker = self as unknown as WithBundles;
  if (installed !== undefined) worker.importScripts(bundleIn(installed, 'german'));
  if (worker.mahlstickGerman === undefined) throw new Error('The German sentences are not there.');
  return worker.mahlstickGerman.german;
}

/** The address of a bundle of the tool that is installed in a folder. */
function bundleIn(installed: string, name: string): string {
  return `${installed.replace(/\/$/u, '')}/dist/${name}.js`;
}
