import type { Scene } from '../../../server/drawing/scene.js';
import { toldScene } from '../../../server/drawing/scene-change.js';
import type { ChangedScene, WholeScene } from '../../../server/language/protocol.js';
import type { Taken } from '../taken.js';
import type { RunningServer } from './server.js';
import type { TypedLine } from './typing.js';

/** How long it takes until a drawing is there, and until the diagnostics are too. */
export interface Drawn {
  readonly drawing: Taken;
  readonly all: Taken;
}

const uriOf = ({ kind }: RunningServer, name: string): string => `file:///bench/${name}.${kind.language}`;

/** A document open in a server, which is typed in. */
export class OpenDocument {
  #version = 1;
  /** The drawing that came last, as the preview keeps it. */
  #drawing: { readonly id: number; readonly scene: Scene } | undefined;

  private constructor(
    private readonly server: RunningServer,
    private readonly uri: string,
  ) {}

  /** Opens a text under a name of its own, and waits until the server has told what it finds. */
  static async open(server: RunningServer, name: string, text: string): Promise<OpenDocument> {
    const document = new OpenDocument(server, uriOf(server, name));
    const told = document.#diagnosed();
    server.open(document.uri, text);
    await told;
    return document;
  }

  /** Opens a plan in the same way. @returns it, and how long that takes with its drawing */
  static async openAndDraw(
    server: RunningServer,
    name: string,
    text: string,
  ): Promise<{ readonly document: OpenDocument; readonly opened: Drawn }> {
    const document = new OpenDocument(server, uriOf(server, name));
    const opened = document.#drawn();
    server.open(document.uri, text);
    return { document, opened: await opened };
  }

  /** Types once more. @returns how long it takes until the diagnostics are there, without what the server only waits */
  async typeAndWait(typed: TypedLine): Promise<Taken> {
    const told = this.#diagnosed();
    const taken = this.server.stopwatch();
    this.#type(typed);
    await told;
    const { elapsed, worked } = taken();
    return { elapsed: elapsed - this.server.kind.waits, worked };
  }

  /** Types once more, and asks for the drawing as the preview does, as soon as the plan is told to be another. */
  typeAndDraw(typed: TypedLine): Promise<Drawn> {
    const drawn = this.#drawn(this.#version + 1);
    this.#type(typed);
    return drawn;
  }

  close(): void {
    this.server.notify('textDocument/didClose', { textDocument: { uri: this.uri } });
  }

  #type(typed: TypedLine): void {
    this.#version += 1;
    this.server.notify('textDocument/didChange', {
      textDocument: { uri: this.uri, version: this.#version },
      contentChanges: [typed.type()],
    });
  }

  /** The next diagnostics. */
  #diagnosed(): Promise<unknown> {
    return this.server.next<{ readonly uri: string }>(
      'textDocument/publishDiagnostics',
      ({ uri }) => uri === this.uri,
    );
  }

  /** The drawing and the diagnostics of a version, from now on. */
  async #drawn(version = this.#version): Promise<Drawn> {
    const { server, uri } = this;
    const isIt = (params: { readonly uri: string; readonly version: number }): boolean =>
      params.uri === uri && params.version === version;
    const taken = server.stopwatch();
    const drawn = server.next('mahlstick/planChanged', isIt).then(async () => {
      const before = this.#drawing;
      const asked = { textDocument: { uri }, view: 'drawing', known: before?.id ?? 0 };
      const answer = (await server.request('mahlstick/scene', asked)) as WholeScene | ChangedScene | null;
      if (answer?.version !== version)
        throw new Error(`version ${answer?.version} was drawn, not ${version}`);
      const scene = toldScene(answer, before?.scene);
      if (scene === undefined) throw new Error('a drawing was told by another than there is');
      this.#drawing = { id: answer.id ?? 0, scene };
      return taken();
    });
    const diagnosed = server.next('textDocument/publishDiagnostics', isIt);
    const [drawing] = await Promise.all([drawn, diagnosed]);
    return { drawing, all: taken() };
  }
}
