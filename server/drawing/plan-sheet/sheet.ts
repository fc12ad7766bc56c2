import type { Finding } from '../../findings/finding.js';
import type { Measures } from '../../measure/measures.js';
import type { Plan } from '../../plan/plan.js';
import { describe } from '../captions/description.js';
import { planTitle } from '../captions/words.js';
import { readingOf } from '../compose.js';
import { pathMark } from '../marks.js';
import type { Page } from '../page.js';
import { type PaperSize, paperSizes } from '../paper.js';
import { rectanglePath } from '../path-data.js';
import { arrangeAcross, arrangeUpright } from './arrangement.js';

/** On A4, millimetres; larger on larger paper. */
const EM = 2.75;
const MARGINS = { side: 19, top: 18, bottom: 15 } as const;

/** Paper that sheets are printed on where canvases are measured so. */
export function usualPaper({ canvas }: Pick<Plan, 'canvas'>): PaperSize {
  return canvas.unit === 'in' ? 'Letter' : 'A4';
}

/**
 * The whole plan on one page, for a client, a gallery or a class: title, concept and mood, the drawing, notan and
 * values, both budgets, the colours, what the lines mean, the findings that stand and those set aside with the reasons.
 * Upright for a picture that is wider than high, else across. Whatever a plan holds stays on the page: what there is no
 * room for is counted. A pure function, as `compose`.
 */
export function planSheet(
  plan: Plan,
  measures: Measures,
  findings: readonly Finding[],
  paper: PaperSize = usualPaper(plan),
): Page {
  const size = paperSizes[paper];
  const isUpright = plan.canvas.width > plan.canvas.height;
  const page = isUpright ? size : { width: size.height, height: size.width };
  const unit = size.width / paperSizes.A4.width;
  const em = EM * unit;
  const content = {
    x: MARGINS.side * unit,
    y: MARGINS.top * unit,
    width: page.width - 2 * MARGINS.side * unit,
    height: page.height - (MARGINS.top + MARGINS.bottom) * unit,
  };
  const reading = readingOf(plan, measures, findings, { em });
  const { marks, pictures } = (isUpright ? arrangeUpright : arrangeAcross)(reading, findings, content);
  const paperMark = pathMark('paper', rectanglePath({ x: 0, y: 0, ...page }), { fill: '#ffffff' });
  return {
    ...page,
    title: `${planTitle(plan)}: plan sheet`,
    description: describe(reading, 'drawing', []),
    ...(plan.by === undefined ? {} : { by: plan.by }),
    em,
    marks: [paperMark, ...marks, ...pictures.flatMap((picture) => picture.marks)],
    drawings: pictures.map(({ drawing }) => drawing),
  };
}
