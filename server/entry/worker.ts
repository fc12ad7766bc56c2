import { BrowserMessageReader, BrowserMessageWriter, createConnection } from 'vscode-languageserver/browser';
import { version } from '../../package.json';
import { serve } from '../language/connection.js';
import { exportDrawing } from './export.js';

/** The language server in a web worker. It reaches no disk: files come from the client, or not at all. */

// The types at hand are those of a page, where `self` is the window.
const port = self as unknown as MessagePort;

serve(createConnection(new BrowserMessageReader(port), new BrowserMessageWriter(port)), {
  version,
  exportDrawing,
});
