import { NotificationType, RequestType, RequestType0 } from 'vscode-languageserver-protocol';
import type { Range, TextEdit } from 'vscode-languageserver-types';
import type { Scene, View } from '../drawing/scene.js';
import type { SceneChange } from '../drawing/scene-change.js';
import type { HandChange } from './hand/change.js';

/**
 * What client and server say to each other beyond the Language Server Protocol. A client that knows none of it
 * still has every language feature; these messages serve the drawing beside the text, and files that only the
 * client can reach.
 */

/** `initializationOptions` of the `initialize` request. All may be missing. */
export interface InitializationOptions {
  /**
   * The client answers `mahlstick/readFile`. Without it the server reads the disk itself where it can, and
   * otherwise reports files as out of reach.
   */
  readonly readFiles?: boolean;
  /**
   * The client answers `mahlstick/readBytes`, for photographs. Without it the server reads the disk itself where it
   * can, and otherwise tells that photographs are out of reach.
   */
  readonly readBytes?: boolean;
  /**
   * The client answers `mahlstick/findPlans`. Without it the server looks through the open folders itself where it can,
   * and otherwise knows of the open plans and those that they are based on.
   */
  readonly findPlans?: boolean;
  /**
   * Address of a folder that holds `grammar/README.md` and `server/findings/README.md`, for links from codes and
   * hovers. Left out, the server points to those that it was installed with, if any.
   */
  readonly reference?: string;
  /**
   * The setting `mahlstick.rules`, so that the first diagnostics are told as the painter wants them. Later changes come
   * by `workspace/didChangeConfiguration`, or are asked for by `workspace/configuration` where the client has it.
   */
  readonly rules?: unknown;
  /**
   * Diagnostics are to be sent as soon as they are there, though the client could ask for them. The preview shows them
   * beside the drawing of the same version: what a client asks for comes in its own time, and for the documents it sees
   * fit.
   */
  readonly pushDiagnostics?: boolean;
  /**
   * The client shows pictures in Markdown that are written out in their address, so small drawings can stand beside
   * what is offered.
   */
  readonly drawings?: boolean;
  /** The settings `mahlstick.hints`, which come later as those of rules do. */
  readonly hints?: unknown;
}

export interface DocumentIdentifier {
  readonly uri: string;
}

export interface SceneParams {
  readonly textDocument: DocumentIdentifier;
  readonly view: View;
  /** From how far the picture is looked at, for the view `squint`; three times its diagonal unless said. */
  readonly distanceMillimetres?: number;
  /**
   * The sitting whose photograph the view `record` shows, by its index in the plan; the latest that could be measured
   * unless said.
   */
  readonly sitting?: number;
  /**
   * The sheet is to be read where there is little room across: larger letters beside the picture, in one column below
   * it.
   */
  readonly isNarrow?: boolean;
}

export interface HandlingParams extends SceneParams {
  /** Say also what can be taken hold of and changed in the drawing. */
  readonly handling?: boolean;
}

export interface SceneResult {
  /** The document version that was drawn: an edit made on this scene is stale when the document is newer. */
  readonly version: number;
  readonly scene: Scene;
}

export interface NextSceneParams extends HandlingParams {
  /**
   * The drawing that the client has, by the `id` that it came with: it can be told what is another in the new one. 0
   * where it has none. Left out, the drawing is told whole and has no `id`.
   */
  readonly known?: number;
}

/** A drawing told whole. */
export interface WholeScene extends SceneResult {
  readonly id?: number;
}

/** A drawing told by what is another than in the one that the client has. */
export interface ChangedScene {
  readonly version: number;
  readonly id: number;
  readonly change: SceneChange;
}

/** Client to server: the plan as a drawing. `null` when the document is not open or the view is not known. */
export const sceneRequest = new RequestType<NextSceneParams, WholeScene | ChangedScene | null, void>(
  'mahlstick/scene',
);

export interface TryChangeParams extends SceneParams {
  /** Of the document that the drawing was made from. */
  readonly version: number;
  readonly change: HandChange;
  /** The drawing that the client has, see `NextSceneParams`. */
  readonly known?: number;
}

/** A drawing that is only tried, told by what is another than in the one that the client has. */
export interface TriedChange {
  readonly version: number;
  readonly change: SceneChange;
}

/** A change that can't be made, and why: a sentence in plain words. */
export interface Refused {
  readonly version: number;
  readonly refused: string;
}

/**
 * Client to server: the plan as it would be drawn after a change made by hand in the drawing, which is only tried.
 * `null` when the document is not open.
 */
export const tryChangeRequest = new RequestType<
  TryChangeParams,
  SceneResult | TriedChange | Refused | null,
  void
>('mahlstick/tryChange');

export interface WriteChangeParams {
  readonly textDocument: DocumentIdentifier;
  readonly version: number;
  readonly change: HandChange;
}

export interface WrittenChange {
  /** Of the document that the edits are for. */
  readonly version: number;
  readonly edits: readonly TextEdit[];
  /** What to select once they are made: the name of something new, to be typed over. */
  readonly select?: Range;
}

/**
 * Client to server: the edits of the text that a change made by hand in the drawing comes to, the fewest characters
 * that do it. `null` when the document is not open.
 */
export const writeChangeRequest = new RequestType<WriteChangeParams, WrittenChange | Refused | null, void>(
  'mahlstick/writeChange',
);

export interface PlanVersion {
  readonly uri: string;
  /** Of the document. The same version comes again when a file that the plan names has changed. */
  readonly version: number;
}

/**
 * Server to client: a plan is another than before, so a scene asked for earlier is out of date. It comes before the
 * diagnostics, so that a drawing asked for at once need not wait until all remedies are tried out.
 */
export const planChangedNotification = new NotificationType<PlanVersion>('mahlstick/planChanged');

/** Server to client: the diagnostics of this version have been sent, or given to a client that asked for them. */
export const planDiagnosedNotification = new NotificationType<PlanVersion>('mahlstick/planDiagnosed');

export interface ReadFileParams {
  /** Already known to lie under a workspace folder, or under the plan's own folder when none is open. */
  readonly uri: string;
}

export type ReadFileResult =
  | { readonly ok: true; readonly text: string }
  /** The reason is shown to the painter: a sentence in plain words. */
  | { readonly ok: false; readonly reason: string };

/** Server to client, only when `readFiles` was promised: the text of a file, decoded as UTF-8. */
export const readFileRequest = new RequestType<ReadFileParams, ReadFileResult, void>('mahlstick/readFile');

export interface ReadBytesParams extends ReadFileParams {
  /** The messages are text, so bytes are wanted as base64. */
  readonly asText: boolean;
  readonly limitBytes: number;
}

export type ReadBytesResult =
  | { readonly ok: true; readonly bytes: Uint8Array | string }
  /** The reason is shown to the painter: a sentence in plain words. */
  | { readonly ok: false; readonly reason: string };

/** Server to client, only when `readBytes` was promised: a file as it is. */
export const readBytesRequest = new RequestType<ReadBytesParams, ReadBytesResult, void>(
  'mahlstick/readBytes',
);

/**
 * Server to client, only when `findPlans` was promised: the addresses of the plans in the open folders, the nearest 300
 * at most.
 */
export const findPlansRequest = new RequestType0<readonly string[], void>('mahlstick/findPlans');
