import { PassThrough } from 'node:stream';
import { createMessageConnection, StreamMessageReader, StreamMessageWriter } from 'vscode-jsonrpc/node';
import type { ClientCapabilities } from 'vscode-languageserver-protocol';
import { createConnection, type Connection } from 'vscode-languageserver/node';
import { serve, type ServerHost } from '../../server/language/connection.js';
import { connectionOptions } from '../../server/language/hello.js';
import { fullClient } from './clients.js';
import { Client } from './server.js';

/** A server in this process and an editor of it, which speak over streams as if they were two processes. */
export interface Spoken {
  readonly client: Client;
  readonly end: () => void;
}

/** A client that offers everything, and asks for diagnostics itself. */
const capabilities: ClientCapabilities = {
  ...fullClient,
  textDocument: { ...fullClient.textDocument, diagnostic: { dynamicRegistration: false } },
};

/**
 * Begins both, and has them say hello.
 * @param as what the server is given for its connection, where that is another
 */
export async function speak(
  host: ServerHost,
  as: (connection: Connection) => Connection = (connection) => connection,
  offered: ClientCapabilities = capabilities,
): Promise<Spoken> {
  const [there, back] = [new PassThrough(), new PassThrough()];
  const server = createConnection(
    new StreamMessageReader(there),
    new StreamMessageWriter(back),
    connectionOptions,
  );
  serve(as(server), host);
  const connection = createMessageConnection(new StreamMessageReader(back), new StreamMessageWriter(there));
  const client = new Client(connection);
  connection.onRequest('client/registerCapability', () => null);
  connection.onRequest('window/workDoneProgress/create', () => null);
  await client.initialize(offered, {
    processId: null,
    workspaceFolders: [{ uri: 'file:///studio', name: 'studio' }],
  });
  return {
    client,
    end: () => {
      connection.dispose();
      server.dispose();
    },
  };
}
