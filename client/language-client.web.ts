import { BrowserMessageReader, BrowserMessageWriter, LanguageClient } from 'vscode-languageclient/browser';
import { Conversation, type ConversationParts } from './conversation.js';

/** A worker that fails ends nothing by itself: what waits for its answer would wait for ever. */
class WorkerReader extends BrowserMessageReader {
  constructor(worker: Worker) {
    super(worker);
    worker.addEventListener('error', () => this.fireClose());
  }
}

/** Talks with a server that is a worker, which `begin` begins. */
export function converse(begin: () => Worker, parts: ConversationParts): Conversation {
  // The reader and writer are made here: older VS Codes wrap workers, which the language client then takes for no
  // worker at all.
  const connect = () => {
    const worker = begin();
    return Promise.resolve({
      reader: new WorkerReader(worker),
      writer: new BrowserMessageWriter(worker),
    });
  };
  return new Conversation(parts, (options) => new LanguageClient('mahlstick', 'Mahlstick', connect, options));
}
