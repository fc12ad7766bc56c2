import { CommandFailure } from './terminal.js';

export interface ServerOptions {
  readonly stdio?: boolean;
}

/** `mahlstick server --stdio`: hands the standard streams to the language server, which ends with its input. */
export async function server({ stdio }: ServerOptions): Promise<void> {
  if (!stdio) throw new CommandFailure('The language server speaks over the standard streams: add --stdio.');
  // It listens as soon as it is loaded.
  await import('../entry/node.js');
}
