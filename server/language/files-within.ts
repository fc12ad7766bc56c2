import { marked } from '../../grammar/marked.js';
import * as v from 'valibot';
import type { Connection, InitializeParams } from 'vscode-languageserver';
import { fromBase64 } from '../drawing/base64.js';
import type { PictureBytes } from '../photograph/gather.js';
import { photographLimitBytes } from '../photograph/limits.js';
import type { FileAnswer } from '../plan/plan.js';
import { rootsOf } from './paths.js';
import {
  findPlansRequest,
  readBytesRequest,
  readFileRequest,
  type InitializationOptions,
  type ReadBytesResult,
  type ReadFileResult,
} from './protocol.js';

/** What the server reaches from where it runs. */
export interface FilesHost {
  /**
   * Reads a text from where the server runs; missing where it can't. Used for clients that do not read files
   * themselves. Must not follow links out of `roots`, and must not read more than `fileSizeLimitBytes`.
   */
  readonly readFile?: (uri: string, roots: readonly string[]) => Promise<FileAnswer>;
  /** Reads any file from where the server runs, as `readFile` does; missing where it can't. */
  readonly readBytes?: (uri: string, roots: readonly string[]) => Promise<PictureBytes>;
  /** Messages carry bytes as they are, and not text alone. */
  readonly carriesBytes?: boolean;
  /**
   * Addresses of the plans below folders, for clients that do not look for them; missing where the server reaches no
   * disk.
   */
  readonly findPlans?: (folders: readonly string[]) => Promise<readonly string[]>;
}

/** Files that plans may name, and the plans below the open folders. */
export interface FilesWithin {
  readonly fetch: (uri: string, planUri: string) => Promise<FileAnswer>;
  readonly fetchBytes: (uri: string, planUri: string) => Promise<PictureBytes>;
  readonly list: () => Promise<readonly string[]>;
}

/**
 * How files are had: from the client, from where the server runs, or from nowhere.
 * @param folders the open ones, as they are when it is asked for
 */
export function filesWithin(
  connection: Connection,
  host: FilesHost,
  { initializationOptions }: InitializeParams,
  folders: () => readonly string[],
): FilesWithin {
  const offers: Parts['offers'] = (what) =>
    v.is(v.object({ [what]: v.literal(true) }), initializationOptions);
  const parts = { connection, host, offers, folders };
  return { fetch: fetcher(parts), fetchBytes: bytesFetcher(parts), list: lister(parts) };
}

interface Parts {
  readonly connection: Connection;
  readonly host: FilesHost;
  /** What the client does for the server. */
  readonly offers: (
    what: keyof Pick<InitializationOptions, 'readFiles' | 'readBytes' | 'findPlans'>,
  ) => boolean;
  readonly folders: () => readonly string[];
}

/** Files come from the client when it offers to read them, else from where the server runs, else from nowhere. */
function fetcher({ connection, host: { readFile }, offers, folders }: Parts): FilesWithin['fetch'] {
  if (offers('readFiles')) {
    return async (uri) => v.parse(readFileResult, await connection.sendRequest(readFileRequest, { uri }));
  }
  if (readFile !== undefined) return (uri, planUri) => readFile(uri, rootsOf(planUri, folders()));
  return () => Promise.resolve({ ok: false, reason: marked('Files cannot be read here.') });
}

/** Photographs come from the disk where the server reaches it, else from the client when it offers to read them. */
function bytesFetcher({
  connection,
  host: { readBytes, carriesBytes = false },
  offers,
  folders,
}: Parts): FilesWithin['fetchBytes'] {
  const isOffered = offers('readBytes');
  return async (uri, planUri) => {
    if (readBytes !== undefined && (!isOffered || uri.startsWith('file:')))
      return readBytes(uri, rootsOf(planUri, folders()));
    if (!isOffered) return { ok: false, reason: marked('Photographs cannot be read here.') };
    const params = { uri, asText: !carriesBytes, limitBytes: photographLimitBytes };
    const result = v.parse(readBytesResult, await connection.sendRequest(readBytesRequest, params));
    if (!result.ok) return result;
    const { bytes } = result;
    return { ok: true, bytes: typeof bytes === 'string' ? fromBase64(bytes) : bytes };
  };
}

/** Plans are looked for by whoever reads files. */
function lister({ connection, host: { findPlans }, offers, folders }: Parts): FilesWithin['list'] {
  if (offers('findPlans'))
    return async () => v.parse(v.array(v.string()), await connection.sendRequest(findPlansRequest));
  if (offers('readFiles') || findPlans === undefined) return () => Promise.resolve([]);
  return () => findPlans(folders());
}

const readFileResult: v.GenericSchema<ReadFileResult> = v.variant('ok', [
  v.object({ ok: v.literal(true), text: v.string() }),
  v.object({ ok: v.literal(false), reason: v.string() }),
]);

const readBytesResult: v.GenericSchema<ReadBytesResult> = v.variant('ok', [
  v.object({ ok: v.literal(true), bytes: v.union([v.string(), v.instance(Uint8Array)]) }),
  v.object({ ok: v.literal(false), reason: v.string() }),
]);
