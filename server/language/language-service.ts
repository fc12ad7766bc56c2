import type {
  CodeAction,
  CodeActionKind,
  ColorInformation,
  ColorPresentation,
  CompletionItem,
  Diagnostic,
  DocumentLink,
  DocumentHighlight,
  DocumentSymbol,
  FoldingRange,
  Hover,
  InlayHint,
  Location,
  LocationLink,
  Position,
  Range,
  SelectionRange,
  SemanticTokens,
  SemanticTokensDelta,
  SymbolInformation,
  TextEdit,
  WorkspaceEdit,
} from 'vscode-languageserver-types';
import { TextDocument } from 'vscode-languageserver-textdocument';
import type { ComposeOptions } from '../drawing/compose.js';
import type { Scene, View } from '../drawing/scene.js';
import type { RuleSettings } from '../findings/settings.js';
import type { FileAnswer } from '../plan/plan.js';
import type { Abilities } from './abilities.js';
import type { Aside } from './aside.js';
import type { PlanText } from './comparison-protocol.js';
import type { HintSettings } from './hint-settings.js';
import type { Surroundings } from './library.js';
import type { Move } from './moved-files.js';
import type { Indenting } from './on-type.js';
import type { PlanPhotographsHost } from './photographs.js';
import type { Refused, SceneResult, TryChangeParams, WriteChangeParams, WrittenChange } from './protocol.js';
import type { Refusal, Renamable } from './rename.js';
import type { Snapshot } from './snapshot.js';

/**
 * Everything that an editor can ask about plans, without a connection, a disk or a clock: the whole public face
 * of this folder. Documents are kept by URI, however it is spelt; what is asked about one that is not open is answered
 * with nothing.
 * Positions count UTF-16 code units, and one outside the text counts as the nearest inside.
 */
export interface LanguageService {
  open(uri: string, version: number, text: string): void;
  /** Changes as the protocol gives them, in their order. Ignored for a document that is not open. */
  change(uri: string, version: number, changes: readonly ContentChange[]): void;
  close(uri: string): void;
  /** Files on the disk have changed, come or gone. */
  filesChanged(uris: readonly string[]): void;
  /** Other workspace folders are open than before, so plans may name other files. */
  foldersChanged(): void;
  /** Rules are to be told otherwise than before. */
  rulesChanged(settings: RuleSettings): void;
  /** Other inlay hints are wanted than before. */
  hintsChanged(settings: HintSettings): void;
  /** Reads again the files that this plan names. */
  rereadFiles(uri: string): void;

  /**
   * Reads, measures and checks a plan beside the open ones, with the files that it names; nothing of it is kept.
   * @param goOn lets other work come between; false when the answer is wanted no more
   */
  readAside(plan: PlanText, goOn: () => Promise<boolean>): Promise<Aside>;
  /** The document at its latest version; each of its parts is computed when it is first asked for. */
  snapshot(uri: string): Snapshot | undefined;
  /** The plan as a drawing. */
  scene(uri: string, view: View, options?: ComposeOptions): Scene | undefined;

  /** The plan as it would be drawn after a change by hand; the document stays as it is. */
  tryChange(params: TryChangeParams): SceneResult | Refused | null;
  /** The edits that a change by hand comes to. */
  writeChange(params: WriteChangeParams): WrittenChange | Refused | null;

  /**
   * Works out some of what the next `diagnostics` tell, one remedy at most; false when there is nothing left to do.
   * It need not be called: a host does so to let other work come between.
   */
  prepareDiagnostics(uri: string): boolean;
  /**
   * Does one piece of finding the mixtures of a plan's colours, a few milliseconds, which typing need not wait for;
   * false when there is nothing left to do. With the last piece the plan is another than before, and has its mixtures.
   */
  mixFurther(uri: string): boolean;
  /**
   * Gravest first, as all that is said of a plan. A fault in one part of the computation is told to `failed` and
   * leaves the diagnostics of the others.
   */
  diagnostics(uri: string): readonly Diagnostic[];
  /** What can be written at a place, the likeliest first. */
  completions(uri: string, position: Position): readonly CompletionItem[];
  /** What is computed about the word at a place, or what it means. */
  hover(uri: string, position: Position): Hover | undefined;
  /**
   * Reads what stands round the open plans and is not known yet: plans that they are based on, others of the workspace,
   * files they take parts from. Questions that reach beyond one plan are asked with it, or else know of the open plans
   * alone.
   */
  surroundings(): Promise<Surroundings>;
  /**
   * Where the name at a place is given, here or in a plan that this one is based on; of a file its beginning, and of a
   * part its element.
   */
  definition(uri: string, position: Position, around?: Surroundings): LocationLink | undefined;
  /** Every place that means what the name at a place means; `withDefinition` where it is given too. */
  references(
    uri: string,
    position: Position,
    withDefinition: boolean,
    around?: Surroundings,
  ): readonly Location[];
  /** What can be renamed there, or why it can't be. */
  renamable(uri: string, position: Position, around?: Surroundings): Renamable | undefined;
  /** The edits that give what is named at a place another name wherever it is spoken of, or why that can't be. */
  rename(
    uri: string,
    position: Position,
    newName: string,
    around?: Surroundings,
  ): WorkspaceEdit | Refusal | undefined;
  /** Which plans a rename there may miss, as a sentence; see `outOfReach`. */
  outOfReach(uri: string, position: Position, around: Surroundings): string | undefined;
  /** Where the plan itself speaks of what is named at a place, and where it gives the name. */
  highlights(uri: string, position: Position): readonly DocumentHighlight[];
  /** Nested or flat, as the client can take them. */
  symbols(uri: string): DocumentSymbol[] | SymbolInformation[];
  /** The blocks, and runs of comments. */
  foldingRanges(uri: string): readonly FoldingRange[];
  /** For each place what a selection there grows to, from the word to the plan. */
  selectionRanges(uri: string, positions: readonly Position[]): readonly SelectionRange[];
  /** The files that the plan names, where plans may read. */
  links(uri: string): readonly DocumentLink[];
  /** What is named in the plans that are known. */
  workspaceSymbols(query: string, around?: Surroundings): SymbolInformation[];
  /** What to change in the plans before files or folders are moved or renamed. */
  editsForMoves(moves: readonly Move[], around?: Surroundings): WorkspaceEdit | undefined;
  /** What Enter brings about, with the caret on the new line. */
  onTypeEdits(uri: string, position: Position, indenting: Indenting): readonly TextEdit[];
  /** What is measured beside what is written in a range, as far as it is wanted. */
  inlayHints(uri: string, range: Range): readonly InlayHint[];
  /** What each word stands for, packed as the protocol has it. */
  semanticTokens(uri: string): SemanticTokens;
  /** The same of the lines that a range touches. */
  semanticTokensIn(uri: string, range: Range): SemanticTokens;
  /** What changes from an earlier answer to now; everything when that answer was not the last. */
  semanticTokensDelta(uri: string, previousResultId: string): SemanticTokens | SemanticTokensDelta;
  /** Every colour that is written out; a name of one is not. */
  colours(uri: string): readonly ColorInformation[];
  /** Ways to write a picked colour, the notation that stands in the range first. */
  colourPresentations(
    uri: string,
    range: Range,
    colour: ColorInformation['color'],
  ): readonly ColorPresentation[];
  /** Edits of the whole document, or of those lines that the range touches. */
  format(uri: string, range?: Range): readonly TextEdit[];
  /** Of all kinds, or of those asked for alone. */
  codeActions(uri: string, range: Range, only?: readonly CodeActionKind[]): readonly CodeAction[];
}

export type ContentChange = Parameters<typeof TextDocument.update>[1][number];

export interface ServiceHost {
  readonly abilities: Abilities;
  /** Fetches the text of a file that a plan names; the URI has been checked to lie where plans may read. */
  readonly fetchFile: (uri: string, planUri: string) => Promise<FileAnswer>;
  /** How photographs are read and measured; without it they stay on their way. */
  readonly photographs?: Pick<PlanPhotographsHost, 'fetch' | 'square' | 'show' | 'settleMilliseconds'>;
  /** Addresses of the plans below the open workspace folders; missing where they can't be listed. */
  readonly listPlans?: () => Promise<readonly string[]>;
  /** URIs of the open workspace folders. */
  readonly folders: () => readonly string[];
  /** The plan's latest snapshot is another than before: its text has changed, or a file that it names. */
  readonly planChanged: (uri: string) => void;
  /** What was answered about a plan would be answered otherwise now, though its text is the same. */
  readonly answersChanged?: () => void;
  /** A fault of ours, not of the plan. */
  readonly failed: (what: string, error: unknown) => void;
}
