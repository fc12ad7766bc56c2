import { type Sentences, speaking, spokenNow } from '../../grammar/index.js';
import type { Finding } from '../findings/finding.js';
import type { Measures } from '../measure/measures.js';
import { Memory } from '../measure/memory.js';
import { keptWordless } from '../measure/wordless.js';
import type { Ring } from '../plan/geometry/outline.js';
import type { Plan } from '../plan/plan.js';
import { type Block, EMPTY_BLOCK } from './captions/block.js';
import { budgetBars } from './captions/budgets.js';
import { captionsBlock, headBlock } from './captions/captions.js';
import { describe, describeBoard } from './captions/description.js';
import { findingsBlock } from './captions/findings.js';
import { legendOf } from './captions/legends.js';
import { planTitle, viewCaption } from './captions/words.js';
import { footOf, type Layout, layOut, sheetOf } from './layout.js';
import { balanceMarks } from './picture/balance-sign.js';
import { handlingOf, photographsOf } from './handling/handling.js';
import type { Board } from './board.js';
import { findingMarks } from './picture/finding-marks.js';
import { findingsFor } from './picture/findings-for.js';
import { mountMarks, wallMark } from './picture/mount.js';
import { mapCells } from './picture/region.js';
import { type BoardView, type PictureView, type Scene, type View, isBoardView } from './scene.js';
import { paletteBoard } from './palette/palette.js';
import { shownRecord } from './record/choice.js';
import { recordBoard } from './record/record.js';
import { sittingsBoard } from './sittings/sittings.js';
import { drawColour } from './views/colour.js';
import { drawDrawing } from './views/drawing.js';
import { drawEmphasis } from './views/emphasis.js';
import { drawMirror } from './views/mirror.js';
import { drawNotan } from './views/notan.js';
import { drawPath } from './views/path.js';
import type { PictureMarks, Reading } from './views/reading.js';
import { drawSquint } from './views/squint.js';
import { subjectsOf } from './views/subjects.js';
import { drawTransfer } from './views/transfer.js';
import { drawValues } from './views/values.js';
import { viewingOf } from './viewing.js';

/** The views that show how the picture hangs. */
const HANGS: ReadonlySet<View> = new Set(['drawing', 'values']);

export interface ComposeOptions {
  /** From how far the picture is looked at in the view `squint`; three times its diagonal unless said. */
  readonly distanceMillimetres?: number | undefined;
  /** The sheet is to be read where there is little room across. */
  readonly isNarrow?: boolean | undefined;
  /** Show the glazes over the body colours of what has one; they are shown unless said. */
  readonly glazes?: boolean | undefined;
  /** The view `transfer` with left and right changed over, to carry the drawing over from the back. */
  readonly isMirrored?: boolean | undefined;
  /** Say also what can be taken hold of and changed in the drawing. */
  readonly handling?: boolean | undefined;
  /**
   * The sitting whose photograph the view `record` shows, by its index in the plan; the latest that could be measured
   * unless said.
   */
  readonly sitting?: number | undefined;
  /** Height of the letters in canvas units, instead of one that goes by the size of the sheet. */
  readonly em?: number | undefined;
  /**
   * What the findings are told in, the list of them, and why a thing can’t be moved: the rest of the drawing is
   * English.
   */
  readonly language?: Sentences | undefined;
  /** Keeps from one version of a document to the next what does not change; the scene is the same without it. */
  readonly memory?: Memory | undefined;
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
  const { memory = new Memory(), handling = false, ...look } = options;
  const read = (): Reading => readingOf(plan, measures, findings, { ...look, memory });
  if (isBoardView(view)) return composeBoard(read(), view, handling);
  const layout = layoutFor(plan, look);
  const head = headBlock({ plan, measures, layout }, view);
  const seen = [keptWordless(plan, memory), measures, findings, head.height];
  const asked = [spokenNow(), handling, ...Object.entries(look).flat()];
  const headless = memory.recall('headless scene', view, [...seen, ...asked], () =>
    composeHeadless(read(), view, head.height, handling),
  );
  return withHead(headless, head, layout);
}

/**
 * The same for what reads the plan for more than the scene.
 * @param handling as in `ComposeOptions`
 */
export function composeReading(reading: Reading, view: View, handling = false): Scene {
  if (isBoardView(view)) return composeBoard(reading, view, handling);
  const head = headBlock(reading, view);
  return withHead(composeHeadless(reading, view, head.height, handling), head, reading.layout);
}

/** The scene with the words that its captions begin with, which alone hang on what a plan says besides the picture. */
function withHead(headless: Scene, head: Block, { column }: Layout): Scene {
  const words = head.marks(column.x, column.y);
  return {
    ...headless,
    layers: headless.layers.map((layer) =>
      layer.name === 'captions' ? { ...layer, marks: [...words, ...layer.marks] } : layer,
    ),
  };
}

/** The scene without the words at the head of its captions, and with room for them. */
function composeHeadless(reading: Reading, view: PictureView, headHeight: number, handling: boolean): Scene {
  const { plan, layout, picture } = reading;
  const drawn = drawView(view, reading);
  const shown = findingsFor(view, reading);
  const legend = legendOf(reading, view, drawn.leftOut);
  const { column, em } = layout;
  const captions = captionsBlock({ ...EMPTY_BLOCK, height: headHeight }, reading, view, legend);
  const foot = footOf(layout, captions.height);
  const list = speaking(reading.language, () => findingsBlock(shown, foot.width, em));
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
        marks: [
          wallMark(sheet),
          ...mountMarks(layout, picture),
          ...(HANGS.has(view) ? balanceMarks(reading) : []),
        ],
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
    ...photographsWanted(reading, handling),
    ...(handling ? { handling: speaking(reading.language, () => handlingOf(reading)) } : {}),
  };
}

/** The sheet of a view that shows other things than the picture. Nothing on it can be taken hold of. */
function composeBoard(reading: Reading, view: BoardView, handling: boolean): Scene {
  const { plan, layout, subjects } = reading;
  const { em } = layout;
  const board = boardOf(view, reading);
  const { card, below, belowAt } = board;
  const shown = findingsFor(view, reading, board.placeOf);
  const right = Math.max(card.x + card.width, belowAt.x + (belowAt.x > card.x ? layout.column.width : 0));
  const foot = {
    x: card.x,
    y: Math.max(card.y + card.height, belowAt.y + below.height) + 1.1 * em,
    width: right - card.x,
  };
  const list = speaking(reading.language, () => findingsBlock(shown, foot.width, em));
  const record = view === 'record' ? shownRecord(reading) : undefined;
  const lowest = list.height > 0 ? foot.y + list.height : foot.y - 1.1 * em;
  const { wall } = layout;
  const sheet = {
    x: card.x - wall,
    y: card.y - wall,
    width: right - card.x + 2 * wall,
    height: lowest + 0.5 * em - card.y + 2 * wall,
  };
  return {
    view,
    sheet,
    picture: board.picture,
    em,
    title: `${planTitle(plan)}: ${viewCaption(view, plan)}`,
    description: describeBoard(reading, board.described),
    layers: [
      { name: 'mount', marks: [wallMark(sheet), ...board.mount] },
      { name: 'picture', marks: board.shapes },
      { name: 'construction', marks: board.construction },
      { name: 'names', marks: board.names },
      { name: 'findings', marks: findingMarks(shown, { layout, picture: board.marked }, board.taken) },
      {
        name: 'captions',
        marks: [...board.written, ...below.marks(belowAt.x, belowAt.y), ...list.marks(foot.x, foot.y)],
      },
    ],
    subjects: subjects.all,
    budgets: budgetBars(reading),
    legend: board.legend.map(({ key, text }) => ({ key, text })),
    ...(record === undefined ? {} : { record }),
    ...photographsWanted(reading, handling),
  };
}

/** What a page lays under the drawing, and where it places corners. */
function photographsWanted({ plan }: Reading, handling: boolean): Pick<Scene, 'photographs'> {
  const photographs = handling ? photographsOf(plan) : [];
  return photographs.length === 0 ? {} : { photographs };
}

/** What views and captions of a plan are composed from. */
export function readingOf(
  plan: Plan,
  measures: Measures,
  findings: readonly Finding[],
  {
    distanceMillimetres,
    isNarrow,
    em,
    glazes = true,
    isMirrored = false,
    sitting,
    language,
    memory = new Memory(),
  }: ComposeOptions = {},
): Reading {
  const { width, height } = plan.canvas;
  const reported = findings.filter(({ allowed }) => allowed === undefined);
  const rings = visibleRings(plan, measures);
  return {
    plan,
    measures,
    findings: reported,
    layout: layoutFor(plan, { isNarrow, em }),
    picture: { x: 0, y: 0, width, height },
    subjects: subjectsOf(plan, reported),
    cells: memory.recall('cells', '', [width, height, ...rings], () => mapCells(width, height, rings)),
    memory,
    viewing: viewingOf(plan.canvas, distanceMillimetres),
    showsGlazes: glazes,
    isMirrored,
    sitting,
    language,
  };
}

function layoutFor({ canvas }: Plan, { isNarrow, em }: Pick<ComposeOptions, 'isNarrow' | 'em'>): Layout {
  const layout = layOut(canvas.width, canvas.height, isNarrow);
  return em === undefined ? layout : { ...layout, em };
}

/** What is seen of each object, in the order of `plan.objects`. */
function visibleRings(plan: Plan, measures: Measures): readonly (readonly Ring[])[] {
  const rings: (readonly Ring[])[] = plan.objects.map(() => []);
  plan.coveringOrder.forEach((object, layer) => {
    rings[object] = measures.areas.layers[layer]?.visible ?? [];
  });
  return rings;
}

function boardOf(view: BoardView, reading: Reading): Board {
  switch (view) {
    case 'palette':
      return paletteBoard(reading);
    case 'sittings':
      return sittingsBoard(reading);
    case 'record':
      return recordBoard(reading);
  }
}

function drawView(view: PictureView, reading: Reading): PictureMarks {
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
    case 'transfer':
      return drawTransfer(reading);
  }
}
