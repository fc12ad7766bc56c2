import type { Finding } from '../findings/finding.js';
import type { Measures } from '../measure/measures.js';
import type { Plan } from '../plan/plan.js';
import { compose } from './compose.js';
import { renderToText } from './headless.js';
import type { View } from './scene.js';

/** The longer side, CSS pixels: letters and marks are readable, and two plates stand side by side on a page. */
const LONGER_SIDE = 320;

/**
 * A small picture of a plan for a page of text, as an SVG file: one view of it with the marks of the findings given,
 * without mount and captions, on the plan's own ground.
 */
export function plate(plan: Plan, measures: Measures, findings: readonly Finding[], view: View): string {
  const { width, height } = plan.canvas;
  const scale = LONGER_SIDE / Math.max(width, height);
  const svg = renderToText(compose(plan, measures, findings, view), { theme: 'light', part: 'picture' });
  return svg.replace(/<svg [^>]*>/u, (root) =>
    root
      .replace(/ width="[^"]*"/u, ` width="${Math.round(width * scale)}"`)
      .replace(/ height="[^"]*"/u, ` height="${Math.round(height * scale)}"`),
  );
}
