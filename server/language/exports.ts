import * as v from 'valibot';
import { LSPErrorCodes, ResponseError, type CancellationToken, type Connection } from 'vscode-languageserver';
import { speaking, t } from '../../grammar/index.js';
import { papers } from '../drawing/paper.js';
import { views } from '../drawing/scene.js';
import {
  type Exported,
  type ExportParams,
  type ExportResult,
  exportFormats,
  exportRequest,
  exportThemes,
} from './export-protocol.js';
import { ofLook } from './forms.js';
import { admitted, cancelled, type Guard } from './guard.js';
import type { Snapshot } from './snapshot.js';
import { aTurn } from './turns.js';

/** What a file is made of, and the language in which its painter is told about it. */
export type Drawn = Pick<Snapshot, 'plan' | 'measures' | 'findingsInEnglish'> &
  Partial<Pick<Snapshot, 'language'>>;

/**
 * Makes a file of a plan. It is had from the host, because what writes SVG and PDF is large and loaded when it is asked
 * for.
 */
export type Exporter = (
  drawn: Drawn,
  params: ExportParams,
  /** Address of the folder that the tool is installed in, where it is known. */
  installed: string | undefined,
) => Promise<(Exported & { readonly remarks: readonly string[] }) | NotMade>;

/** Why an exporter makes no file of a plan: a sentence to the painter. */
export interface NotMade {
  readonly refused: string;
}

const wanted = v.object({
  textDocument: v.object({ uri: v.string() }),
  what: v.picklist([...views, 'sheet', 'pages']),
  format: v.picklist(exportFormats),
  theme: v.optional(v.picklist(exportThemes)),
  paper: v.optional(v.picklist(papers)),
  ...ofLook.entries,
});

/** Answers clients that want a drawing as a file. */
export function answerExports(
  connection: Connection,
  guard: Guard,
  exporter: Exporter | undefined,
  installed: () => string | undefined,
): void {
  connection.onRequest(
    exportRequest.method,
    async (
      params: ExportParams,
      token: CancellationToken,
    ): Promise<ExportResult | null | ResponseError<void>> => {
      const session = admitted(guard, exportRequest.method, wanted, params);
      if (session instanceof ResponseError) return session;
      if (token.isCancellationRequested) return cancelled();
      try {
        const { service } = session;
        const { uri } = params.textDocument;
        // What leaves the house has its mixtures in it.
        while (service.mixFurther(uri)) {
          await aTurn();
          if (token.isCancellationRequested) return cancelled();
        }
        const snapshot = service.snapshot(uri);
        if (snapshot === undefined || exporter === undefined) return null;
        const exported = await exporter(snapshot, params, installed());
        if (token.isCancellationRequested) return cancelled();
        if ('refused' in exported) return new ResponseError(LSPErrorCodes.RequestFailed, exported.refused);
        return { version: snapshot.version, ...exported };
      } catch (error) {
        guard.failed(exportRequest.method, error);
        return new ResponseError(
          LSPErrorCodes.RequestFailed,
          speaking(session.abilities.language, () => t('The drawing could not be made.')),
        );
      }
    },
  );
}
