import type { Finding } from '../../findings/finding.js';
import type { Measures } from '../../measure/measures.js';
import type { Plan } from '../../plan/plan.js';
import { capitalised } from '../../plan/problems.js';
import { BOLD_WIDTH, textWidth } from '../captions/text-width.js';
import { headingMarks } from '../captions/heading.js';
import { viewCaption } from '../captions/words.js';
import { compose } from '../compose.js';
import { pathMark } from '../marks.js';
import type { PlacedDrawing } from '../page.js';
import { rectanglePath } from '../path-data.js';
import type { Box, Mark, View } from '../scene.js';

/** A picture on the sheet with the line round it and the words above it. */
export interface Picture {
  readonly drawing: PlacedDrawing;
  readonly marks: readonly Mark[];
}

/** What pictures of the plan are made from, and how large the letters on them are: millimetres on the paper. */
export interface PictureSource {
  readonly plan: Plan;
  readonly measures: Measures;
  readonly em: number;
}

const NONE: readonly Finding[] = [];

/** One view in a box of the picture's proportion. Findings are told in words elsewhere, so none is marked. */
export function pictureIn(view: View, at: Box, { plan, measures, em }: PictureSource): Picture {
  const canvasUnits = (em * plan.canvas.width) / at.width;
  return {
    drawing: {
      key: view,
      scene: compose(plan, measures, NONE, view, { em: canvasUnits }),
      part: 'picture',
      at,
    },
    marks: [pathMark(`${view}:edge`, rectanglePath(at), { stroke: { ink: 'bevel', weight: 'fine' } })],
  };
}

/** How much higher than its picture one with a heading is. */
export function headedBy(em: number): number {
  return 1.6 * em;
}

/** A small picture under its name, in the upper left corner of a box. */
export function headedPicture(view: View, corner: Box, source: PictureSource): Picture {
  const { em, plan } = source;
  const at = fittedBox(plan, { ...corner, y: corner.y + headedBy(em), height: corner.height - headedBy(em) });
  const picture = pictureIn(view, at, { ...source, em: 0.8 * em });
  const whole = capitalised(viewCaption(view, plan));
  // A narrow picture has a short name.
  const name = BOLD_WIDTH * textWidth(whole, 0.95 * em) <= corner.width ? whole : capitalised(view);
  const heading = headingMarks(`${view}:name`, name, '', {
    x: corner.x,
    y: corner.y,
    width: corner.width,
    em,
  });
  return { ...picture, marks: [...picture.marks, ...heading] };
}

/** The largest box of the picture's proportion in the upper left corner of another. */
export function fittedBox({ canvas }: Plan, { x, y, width, height }: Box): Box {
  const scale = Math.min(width / canvas.width, height / canvas.height);
  return { x, y, width: canvas.width * scale, height: canvas.height * scale };
}
