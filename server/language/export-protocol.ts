import { RequestType } from 'vscode-languageserver-protocol';
import type { Paper } from '../drawing/paper.js';
import type { View } from '../drawing/scene.js';
import type { DocumentIdentifier } from './protocol.js';

/** `ics` is no drawing but the sittings as a calendar, whatever the view. */
export const exportFormats = ['svg', 'pdf', 'ics'] as const;
export type ExportFormat = (typeof exportFormats)[number];

/** Themes of drawings that leave the editor: those whose colours are known outside of it. */
export const exportThemes = ['light', 'dark', 'high contrast dark', 'high contrast light'] as const;
export type ExportTheme = (typeof exportThemes)[number];

export type Exportable = View | 'sheet' | 'pages';

export interface ExportParams {
  readonly textDocument: DocumentIdentifier;
  /** A view, the plan sheet, or the lines at full size on pages of paper, which are a PDF on A4, A3 or Letter. */
  readonly what: Exportable;
  readonly format: ExportFormat;
  /** `light` unless said; a plan sheet is always on white paper. */
  readonly theme?: ExportTheme;
  readonly paper?: Paper;
  /** From how far the picture is looked at, for the view `squint`. */
  readonly distanceMillimetres?: number;
  /** The sitting that is shown, for the view `record`, by its index in the plan. */
  readonly sitting?: number;
}

/** A drawing or a calendar as a file: its text, or for PDF its bytes in base64. */
export type Exported = { readonly svg: string } | { readonly pdf: string } | { readonly ics: string };

export type ExportResult = Exported & {
  /** Of the document that was drawn. */
  readonly version: number;
  /** What the painter has to know of the file, each a sentence: the scale, letters that no font has. */
  readonly remarks: readonly string[];
};

/**
 * Client to server: the plan as a file to be kept, printed or sent. `null` when the document is not open, or the server
 * can't make such files where it runs.
 */
export const exportRequest = new RequestType<ExportParams, ExportResult | null, void>('mahlstick/export');
