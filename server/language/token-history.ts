import type { SemanticTokens, SemanticTokensDelta } from 'vscode-languageserver-types';
import { tokensEdits } from './semantic-tokens.js';

/** The last tokens that were sent of each document, so that afterwards only what changes need be sent. */
export class TokenHistory {
  readonly #last = new Map<string, { readonly resultId: string; readonly data: readonly number[] }>();
  #count = 0;

  whole(uri: string, data: readonly number[]): SemanticTokens {
    return { resultId: this.#keep(uri, data), data: [...data] };
  }

  /** @param previous the answer that the client has */
  since(uri: string, previous: string, data: readonly number[]): SemanticTokens | SemanticTokensDelta {
    const last = this.#last.get(uri);
    if (last?.resultId !== previous) return this.whole(uri, data);
    return { resultId: this.#keep(uri, data), edits: [...tokensEdits(last.data, data)] };
  }

  forget(uri: string): void {
    this.#last.delete(uri);
  }

  #keep(uri: string, data: readonly number[]): string {
    const resultId = String(++this.#count);
    this.#last.set(uri, { resultId, data });
    return resultId;
  }
}
