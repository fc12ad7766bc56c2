import type { Finding } from '../../server/findings/finding.js';
import type { Measures } from '../../server/measure/measures.js';
import type { Plan } from '../../server/plan/plan.js';
import { compose } from '../../server/drawing/compose.js';
import { renderToText } from '../../server/drawing/headless.js';
import { isBoardView, type View } from '../../server/drawing/scene.js';

/** The longer side, CSS pixels: letters and marks are readable, and two plates stand side by side on a page. */
const LONGER_SIDE = 320;
/** The width of a board, which is read like a page. */
const BOARD_WIDTH = 560;

/**
 * A small picture of a plan for a page of text, as an SVG file: one view of it with the marks of the findings given,
 * without mount and captions, on the plan's own ground; of a board, which is made of words and figures, all of it.
 */
export function plate(plan: Plan, measures: Measures, findings: readonly Finding[], view: View): string {
  const scene = compose(plan, measures, findings, view);
  // The letters and numbers of the grid stand beside the picture.
  if (isBoardView(view) || view === 'transfer') {
    const { width, height } = scene.sheet;
    return sized(renderToText(scene, { theme: 'light' }), BOARD_WIDTH, (BOARD_WIDTH * height) / width);
  }
  const { width, height } = plan.canvas;
  const scale = LONGER_SIDE / Math.max(width, height);
  return sized(renderToText(scene, { theme: 'light', part: 'picture' }), width * scale, height * scale);
}

function sized(svg: string, width: number, height: number): string {
  return svg.replace(/<svg [^>]*>/u, (root) =>
    root
      .replace(/ width="[^"]*"/u, ` width="${Math.round(width)}"`)
      .replace(/ height="[^"]*"/u, ` height="${Math.round(height)}"`),
  );
}
