import type { Finding } from '../findings/finding.js';
import type { Measures } from '../measure/measures.js';
import type { Ring } from '../plan/geometry/outline.js';
import type { Plan } from '../plan/plan.js';
import { type Block, inColumns, stacked } from './captions/block.js';
import { barsBlock, barsEnd } from './captions/bars.js';
import { budgetBars, colourRows, valueRows } from './captions/budgets.js';
import { drawColour } from './views/colour.js';
import { describe } from './captions/description.js';
import { drawDrawing } from './views/drawing.js';
import { findingMarks, findingsFor } from './picture/finding-marks.js';
import { findingsBlock } from './captions/findings.js';
import { footOf, layOut, sheetOf } from './layout.js';
import { type LegendLine, legendBlock } from './captions/legend.js';
import { legendOf } from './captions/legends.js';
import { mountMarks } from './picture/mount.js';
import { drawNotan } from './views/notan.js';
import type { PictureMarks, Reading } from './views/reading.js';
import { mapCells } from './picture/region.js';
import { scaleBlock } from './captions/scale.js';
import type { Scene, View } from './scene.js';
import { subjectsOf } from './views/subjects.js';
import { titleBlock } from './captions/title.js';
import { drawValues } from './views/values.js';
import { countInWords, planTitle } from './captions/words.js';

/**
 * What a view of a plan shows, as plain data for `render`. Findings that the plan sets aside are not marked.
 * A pure function: the same plan gives the same scene.
 */
export function compose(plan: Plan, measures: Measures, findings: readonly Finding[], view: View): Scene {
  const { width, height } = plan.canvas;
  const reported = findings.filter(({ allowed }) => allowed === undefined);
  const reading: Reading = {
    plan,
    measures,
    findings: reported,
    layout: layOut(width, height),
    picture: { x: 0, y: 0, width, height },
    subjects: subjectsOf(plan, reported),
    cells: mapCells(width, height, visibleRings(plan, measures)),
  };
  const { layout, picture } = reading;
  const drawn = drawView(view, reading);
  const numbered = findingsFor(view, reading);
  const legend = legendOf(reading, view, drawn.leftOut);
  const { column, em } = layout;
  const captions = captionBlock(reading, view, legend);
  const foot = footOf(layout, captions.height);
  const list = findingsBlock(numbered, foot.width, em);
  const sheet = sheetOf(layout, list.height > 0 ? foot.y + list.height : column.y + captions.height);
  return {
    view,
    sheet,
    picture,
    em,
    title: `${planTitle(plan)}: ${viewCaption(view, plan)}`,
    description: describe(reading, view),
    layers: [
      { name: 'mount', marks: mountMarks(sheet, layout, picture) },
      { name: 'picture', marks: drawn.shapes },
      { name: 'construction', marks: drawn.construction },
      { name: 'names', marks: drawn.names },
      { name: 'findings', marks: findingMarks(numbered, reading, drawn.taken) },
      { name: 'captions', marks: [...captions.marks(column.x, column.y), ...list.marks(foot.x, foot.y)] },
    ],
    subjects: reading.subjects.all,
    budgets: budgetBars(reading),
    legend: legend.map(({ key, text }) => ({ key, text })),
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
  }
}

/** `values in five steps` */
export function viewCaption(view: View, plan: Plan): string {
  switch (view) {
    case 'drawing':
      return 'drawing';
    case 'notan':
      return `notan in ${countInWords(plan.scale.groups.length)} tones`;
    case 'values':
      return `values in ${countInWords(plan.scale.steps)} steps`;
    case 'colour':
      return 'colours laid in flat';
  }
}

const COLUMN_GAP_EMS = 2;
const BLOCK_GAP_EMS = 0.9;
/** Narrower than this, bars and scale stand below each other. */
const TWO_COLUMNS_FROM_EMS = 26;

function captionBlock(reading: Reading, view: View, legend: readonly LegendLine[]): Block {
  const { plan, layout } = reading;
  const { em, column } = layout;
  const gap = BLOCK_GAP_EMS * em;
  const columnGap = COLUMN_GAP_EMS * em;
  const double = column.width >= TWO_COLUMNS_FROM_EMS * em;
  const width = double ? (column.width - columnGap) / 2 : column.width;
  const values = valueRows(reading);
  const colours = colourRows(reading);
  const end = barsEnd([...values, ...colours]);
  const scale = () => scaleBlock(reading, width);
  const valueBars = () => barsBlock(reading, { key: 'value', heading: 'Values', rows: values, end }, width);
  const colourBars = () =>
    barsBlock(reading, { key: 'colour', heading: 'Colours', rows: colours, end }, width);
  const signs = () => legendBlock(legend, width, em);
  const [left, right] = ((): readonly [readonly Block[], readonly Block[]] => {
    switch (view) {
      case 'drawing':
        return [
          [scale(), valueBars()],
          [colourBars(), signs()],
        ];
      case 'notan':
      case 'values':
        return [[scale(), signs()], [valueBars()]];
      case 'colour':
        return [[colourBars()], [signs()]];
    }
  })();
  const caption =
    view === 'drawing' ? (plan.concept?.value ?? 'Drawing') : sentenceCase(viewCaption(view, plan));
  const figures = double
    ? inColumns([stacked(left, gap), stacked(right, gap)], width, columnGap)
    : stacked([...left, ...right], gap);
  return stacked([titleBlock(plan, caption, column.width, em), figures], 1.1 * em);
}

function sentenceCase(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
}
