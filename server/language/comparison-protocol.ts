import { RequestType } from 'vscode-languageserver-protocol';
import type { ComparedView, Scene } from '../drawing/scene.js';
import type { WallCard } from '../drawing/wall/card.js';
import type { Change } from '../findings/comparison/change.js';
import type { FileAnswer } from '../plan/plan.js';

/** A plan that need not be open, with its text. */
export interface PlanText {
  /** From where files that it names are looked for. */
  readonly uri: string;
  readonly text: string;
  /**
   * The files that it names, by the paths written in it, for a version of which the files beside it are not those of
   * today; the server then reads none itself, and answers with `needs` where one is missing.
   */
  readonly files?: Readonly<Record<string, FileAnswer>>;
}

export interface CompareParams {
  readonly earlier: PlanText;
  readonly later: PlanText;
  readonly view: ComparedView;
}

/** A change, with what it is about in the drawings. */
export type ToldChange = Pick<Change, 'topic' | 'kind' | 'message' | 'earlier' | 'later'>;

export interface ComparedPlans {
  readonly earlier: ComparedSide;
  readonly later: ComparedSide;
  /** What matters most to the picture first. */
  readonly changes: readonly ToldChange[];
  /**
   * What has to be known of the whole, each a sentence: that nothing differs, that canvases do, that a plan has errors.
   */
  readonly remarks: readonly string[];
}

export interface ComparedSide {
  readonly scene: Scene;
  /** Of the canvas, so that both can be shown to one scale. */
  readonly widthMillimetres: number;
}

/** The paths of files that have to be given with the texts. */
export interface NeededFiles {
  readonly needs: { readonly earlier: readonly string[]; readonly later: readonly string[] };
}

/** Client to server: what differs between two plans in a painter's terms, with both as drawings. */
export const compareRequest = new RequestType<CompareParams, ComparedPlans | NeededFiles | null, void>(
  'mahlstick/compare',
);

export interface CardParams {
  readonly plan: PlanText;
  readonly view: ComparedView;
}

export interface CardResult {
  readonly card: WallCard;
  /** What differs from the plan that it builds on. */
  readonly differs?: string;
}

/** Client to server: a plan as it hangs on the wall of variants. */
export const cardRequest = new RequestType<CardParams, CardResult | null, void>('mahlstick/card');
