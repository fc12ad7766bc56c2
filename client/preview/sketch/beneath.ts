import { t } from '../../../grammar/localised.js';
import { type Scene, type SketchPlace, type View, isBoardView } from '../../../server/drawing/scene.js';

/** Views in which lines count. In those of tones or colours a sketch would be mixed into what is to be read. */
const shownIn: ReadonlySet<View> = new Set(['drawing', 'mirror', 'path']);

/** What lies under the drawing: the sketch, or the photograph of a sitting, by its index in the plan. */
export type Chosen = 'sketch' | number;

/** A sketch or photograph that a scene names. */
export interface Beneath {
  readonly chosen: Chosen;
  /** `sketch`, `photograph`: as it is told of. */
  readonly kind: 'sketch' | 'photograph';
  readonly file: string;
  readonly corners: readonly SketchPlace[];
  readonly grey?: SketchPlace | undefined;
  /** How strongly it is to show, a part of one, where nothing else was set. */
  readonly opacity: number;
  /** It lies under the drawing; else only its corners are placed. */
  readonly isUnder: boolean;
}

/** How strongly a photograph shows unless it was set: it and the shapes over it alike. */
const USUAL_OPACITY = 0.5;

/**
 * What lies under the drawing of a scene. In the view of the record it is the photograph that is shown there, whose
 * corners can be placed; in views that are read by their tones nothing.
 */
export function beneath(scene: Scene, chosen: Chosen | undefined): Beneath | undefined {
  const { photographs = [], handling, record, view } = scene;
  if (view === 'record') return photographBeneath(photographs, record?.chosen, false);
  if (isBoardView(view) || !shownIn.has(view)) return undefined;
  if (typeof chosen === 'number') {
    const photograph = photographBeneath(photographs, chosen, true);
    if (photograph !== undefined) return photograph;
  }
  const sketch = handling?.sketch;
  return sketch && { chosen: 'sketch', kind: 'sketch', ...sketch, isUnder: true };
}

function photographBeneath(
  photographs: NonNullable<Scene['photographs']>,
  sitting: number | undefined,
  isUnder: boolean,
): Beneath | undefined {
  const photograph = photographs.find((each) => each.sitting === sitting);
  if (photograph === undefined) return undefined;
  const { file, corners, grey } = photograph;
  const chosen = photograph.sitting;
  return { chosen, kind: 'photograph', file, corners, grey, opacity: USUAL_OPACITY, isUnder };
}

export interface Option {
  readonly value: string;
  readonly words: string;
}

/** What may be chosen to lie under the drawing of a scene; none where there is no choice. */
export function choicesBeneath({ photographs = [], handling, view }: Scene): readonly Option[] {
  if (photographs.length === 0 || !shownIn.has(view)) return [];
  return [
    { value: 'sketch', words: handling?.sketch === undefined ? t('Nothing') : t('Sketch') },
    ...photographs.map(({ sitting, name }) => ({
      value: String(sitting),
      words: t('Photograph {0} {1}', sitting + 1, name),
    })),
  ];
}
