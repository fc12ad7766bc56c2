import type { Finding } from '../findings/finding.js';
import type { Measures } from '../measure/measures.js';
import type { Ring } from '../plan/geometry/outline.js';
import type { Plan } from '../plan/plan.js';
import { budgetBars } from './captions/budgets.js';
import { captionsBlock } from './captions/captions.js';
import { describe } from './captions/description.js';
import { findingsBlock } from './captions/findings.js';
import { legendOf } from './captions/legends.js';
import { planTitle, viewCaption } from './captions/words.js';
import { footOf, layOut, sheetOf } from './layout.js';
import { balanceMarks } from './picture/balance-sign.js';
import { handlingOf } from './handling/handling.js';
import { findingMarks } from './picture/finding-marks.js';
import { findingsFor } from './picture/findings-for.js';
import { mountMarks } from './picture/mount.js';
import { mapCells } from './picture/region.js';
import type { Scene, View } from './scene.js';
import { drawColour } from './views/colour.js';
import { drawDrawing } from './views/drawing.js';
import { drawEmphasis } from './views/emphasis.js';
import { drawMirror } from './views/mirror.js';
import { drawNotan } from './views/notan.js';
import { drawPath } from './views/path.js';
import type { PictureMarks, Reading } from './views/reading.js';
import { drawSquint } from './views/squint.js';
import { subjectsOf } from './views/subjects.js';
import { drawValues } from './views/values.js';
import { viewingOf } from './viewing.js';

/** The views that show how the picture hangs. */
const HANGS: ReadonlySet<View> = new Set(['drawing', 'values']);

export interface ComposeOptions {
  /** From how far the picture is looked at in the view `squint`; three times its diagonal unless said. */
  readonly distanceMillimetres?: number | undefined;
  /** The sheet is to be read where there is little room across. */
  readonly isNarrow?: boolean | undefined;
  /** Say also what can be taken hold of and changed in the drawing. */
  readonly handling?: boolean | undefined;
  /** Height of the letters in canvas units, instead of one that goes by the size of the sheet. */
  readonly em?: number | undefined;
}

/**
 * What a view of a plan shows, as plain data for `render`. Findings that the plan sets aside are not marked.
 * A pure function: the same plan gives the same scene.
 */
export function compose(
  plan: Plan,
  measures: Measures,
  findings: readonly Finding[],
  view: View,
  options: ComposeOptions = {},
): Scene {
  const reading = readingOf(plan, measures, findings, options);
  const { layout, picture } = reading;
  const drawn = drawView(view, reading);
  const shown = findingsFor(view, reading);
  const legend = legendOf(reading, view, drawn.leftOut);
  const { column, em } = layout;
  const captions = captionsBlock(reading, view, legend);
  const foot = footOf(layout, captions.height);
  const list = findingsBlock(shown, foot.width, em);
  const sheet = sheetOf(layout, list.height > 0 ? foot.y + list.height : column.y + captions.height);
  return {
    view,
    sheet,
    picture,
    em,
    title: `${planTitle(plan)}: ${viewCaption(view, plan)}`,
    description: describe(reading, view, legend),
    layers: [
      {
        name: 'mount',
        marks: [...mountMarks(sheet, layout, picture), ...(HANGS.has(view) ? balanceMarks(reading) : [])],
      },
      {
        name: 'picture',
        marks: drawn.shapes,
        ...(drawn.blur === undefined ? {} : { blur: drawn.blur }),
      },
      { name: 'construction', marks: drawn.construction },
      { name: 'names', marks: drawn.names },
      { name: 'findings', marks: findingMarks(shown, reading, drawn.taken) },
      { name: 'captions', marks: [...captions.marks(column.x, column.y), ...list.marks(foot.x, foot.y)] },
    ],
    subjects: reading.subjects.all,
    budgets: budgetBars(reading),
    legend: legend.map(({ key, text }) => ({ key, text })),
    ...(view === 'squint' ? { viewing: reading.viewing } : {}),
    ...(options.handling === true ? { handling: handlingOf(reading) } : {}),
  };
}

/** What views and captions of a plan are composed from. */
export function readingOf(
  plan: Plan,
  measures: Measures,
  findings: readonly Finding[],
  { distanceMillimetres, isNarrow, em }: ComposeOptions = {},
): Reading {
  const { width, height } = plan.canvas;
  const reported = findings.filter(({ allowed }) => allowed === undefined);
  const layout = layOut(width, height, isNarrow);
  return {
    plan,
    measures,
    findings: reported,
    layout: em === undefined ? layout : { ...layout, em },
    picture: { x: 0, y: 0, width, height },
    subjects: subjectsOf(plan, reported),
    cells: mapCells(width, height, visibleRings(plan, measures)),
    viewing: viewingOf(plan.canvas, distanceMillimetres),
  };
}

/** What is seen of each object, in the order of `plan.objects`. */
function visibleRings(plan: Plan, measures: Measures): readonly (readonly Ring[])[] {
  const rings: (readonly Ring[])[] = plan.objects.map(() => []);
  plan.coveringOrder.forEach((object, layer) => {
    rings[object] = measures.areas.layers[layer]?.visible ?? [];
  });
  return rings;
}

function drawView(view: View, reading: Reading): PictureMarks {
  switch (view) {
    case 'drawing':
      return drawDrawing(reading);
    case 'notan':
      return drawNotan(reading);
    case 'values':
      return drawValues(reading);
    case 'colour':
      return drawColour(reading);
    case 'squint':
      return drawSquint(reading);
    case 'mirror':
      return drawMirror(reading);
    case 'path':
      return drawPath(reading);
    case 'emphasis':
      return drawEmphasis(reading);
  }
}
