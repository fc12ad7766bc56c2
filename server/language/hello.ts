import * as v from 'valibot';
import { Message, type ConnectionOptions, type InitializeParams } from 'vscode-languageserver';
import type { Wishes } from './abilities.js';

const object = v.looseObject({});

/** The library reads a client's capabilities before it asks us; a client that names none, or only null, has none. */
function withCapabilities(params: unknown): object {
  const given = v.is(object, params) ? params : {};
  return { ...given, capabilities: v.is(object, given['capabilities']) ? given['capabilities'] : {} };
}

/** How messages are taken in, for the connection that the server speaks over. */
export const connectionOptions: ConnectionOptions = {
  messageStrategy: {
    handleMessage: (message, next) => {
      const isHello = Message.isRequest(message) && message.method === 'initialize';
      return next(isHello ? ({ ...message, params: withCapabilities(message.params) } as Message) : message);
    },
  },
};

/** Addresses of the folders that the client has open. */
export function foldersOf({ workspaceFolders, rootUri }: InitializeParams): readonly string[] {
  if (workspaceFolders !== undefined && workspaceFolders !== null)
    return workspaceFolders.map(({ uri }) => uri);
  return typeof rootUri === 'string' ? [rootUri] : [];
}

/** What a client asks for beyond what the protocol has a word for. */
export function wishesOf({ initializationOptions }: InitializeParams): Wishes {
  return {
    wantsPush: v.is(v.object({ pushDiagnostics: v.literal(true) }), initializationOptions),
    drawings: v.is(v.object({ drawings: v.literal(true) }), initializationOptions),
  };
}

/** Address of the folder that holds the reference, where the client says one. */
export function referenceOf({ initializationOptions }: InitializeParams): string | undefined {
  const options = v.safeParse(v.object({ reference: v.string() }), initializationOptions);
  return options.success ? options.output.reference : undefined;
}
