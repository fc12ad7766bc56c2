import { LanguageClient, TransportKind } from 'vscode-languageclient/node';
import { Conversation, type ConversationParts } from './conversation.js';

/** `dist/language-client.js`: talks with a server that is a process of its own. `module` is its script. */
export function converse(module: string, parts: ConversationParts): Conversation {
  // Trees of large plans die young: with room for them the garbage collector takes a fifth of the time.
  const run = { module, transport: TransportKind.ipc, options: { execArgv: ['--max-semi-space-size=64'] } };
  return new Conversation(
    parts,
    (options) => new LanguageClient('mahlstick', 'Mahlstick', { run, debug: run }, options),
  );
}
