import { performance } from 'node:perf_hooks';
import type { Taken } from '../taken.js';
import type { RunningServer } from './server.js';

/** A line of a document that is typed in, a little otherwise each time. */
export interface TypedLine {
  readonly line: number;
  /** What it is after so many edits; never twice the same. */
  readonly after: (edits: number) => string;
}

/** Where a number stands that is typed over in each kind of document; in plans, where an object is. */
export const typedIn = {
  css: /^ {2}margin: \d+px (\d+)/,
  json: /^ {6}"at": \[([\d.]+)/,
  yaml: /^ {4}at: \[([\d.]+)/,
  mahl: /^ {2}shape .* at \((-?[\d.]+)/,
} as const;

/** The line nearest to the middle of a text that has a number where `pattern` groups it; that number grows by hundredths. */
export function typedLineOf(text: string, pattern: RegExp): TypedLine {
  const lines = text.split('\n');
  const middle = Math.floor(lines.length / 2);
  const found = lines
    .map((content, line) => ({ content, line, number: pattern.exec(content) }))
    .filter(({ number }) => number !== null)
    .sort((one, other) => Math.abs(one.line - middle) - Math.abs(other.line - middle))[0];
  const [before = '', number = ''] = found?.number ?? [];
  if (found === undefined) throw new Error('there is no line to type in');
  const at = (found.number?.index ?? 0) + before.length - number.length;
  return {
    line: found.line,
    after: (edits) =>
      found.content.slice(0, at) +
      (edits === 0 ? number : (Number(number) + edits / 100).toFixed(2)) +
      found.content.slice(at + number.length),
  };
}

/** A document open in a server, which is typed in. */
export class OpenDocument {
  #edits = 0;

  constructor(
    readonly server: RunningServer,
    readonly uri: string,
    private readonly typed: TypedLine,
  ) {}

  get version(): number {
    return this.#edits + 1;
  }

  /** Types once more, without waiting for anything. */
  type(): void {
    const before = this.typed.after(this.#edits);
    this.#edits += 1;
    const { line } = this.typed;
    this.server.notify('textDocument/didChange', {
      textDocument: { uri: this.uri, version: this.version },
      contentChanges: [
        {
          range: { start: { line, character: 0 }, end: { line, character: before.length } },
          text: this.typed.after(this.#edits),
        },
      ],
    });
  }

  /** Types once more. @returns how long it takes until the diagnostics are there, without what the server only waits */
  async typeAndWait(): Promise<Taken> {
    const told = this.server.next<{ readonly uri: string }>(
      'textDocument/publishDiagnostics',
      ({ uri }) => uri === this.uri,
    );
    const worked = this.server.processorTime;
    const begun = performance.now();
    this.type();
    await told;
    return {
      elapsed: performance.now() - begun - this.server.kind.waits,
      worked: this.server.processorTime - worked,
    };
  }

  /**
   * Types once more, and asks for the drawing as the preview does, as soon as the plan is told to be another.
   *
   * @returns how long it takes until the drawing is there, and until the diagnostics are too
   */
  async typeAndDraw(): Promise<{ readonly drawing: Taken; readonly all: Taken }> {
    const both = drawnAndDiagnosed(this.server, this.uri, this.version + 1);
    this.type();
    return both;
  }
}

/** How long it takes from now until the drawing of a version is there, and until its diagnostics are too. */
export async function drawnAndDiagnosed(
  server: RunningServer,
  uri: string,
  version: number,
): Promise<{ readonly drawing: Taken; readonly all: Taken }> {
  const isIt = (params: { readonly uri: string; readonly version: number }): boolean =>
    params.uri === uri && params.version === version;
  const worked = server.processorTime;
  const begun = performance.now();
  const taken = (): Taken => ({
    elapsed: performance.now() - begun,
    worked: server.processorTime - worked,
  });
  const drawn = server.next('mahlstick/planChanged', isIt).then(async () => {
    const answer = await server.request('mahlstick/scene', { textDocument: { uri }, view: 'drawing' });
    const answered = (answer as { readonly version: number } | null)?.version;
    if (answered !== version) throw new Error(`version ${answered} was drawn, not ${version}`);
    return taken();
  });
  const diagnosed = server.next('textDocument/publishDiagnostics', isIt);
  const drawing = await drawn;
  await diagnosed;
  return { drawing, all: taken() };
}
