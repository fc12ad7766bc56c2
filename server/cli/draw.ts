import path from 'node:path';
import { compose } from '../drawing/compose.js';
import { type PageOfDrawing, type Paper, pageOf, scaleInWords } from '../drawing/paper.js';
import { planSheet } from '../drawing/plan-sheet/sheet.js';
import type { View } from '../drawing/scene.js';
import type { Snapshot } from '../language/snapshot.js';
import { inWords } from '../plan/problems.js';
import { type Distance, millimetresOf } from './distance.js';
import { type Target, targetOf } from './draw-target.js';
import { endingWith, errorsOf } from './ending.js';
import { evaluate } from './evaluate.js';
import type { ExitCode } from './exit-code.js';
import { readFonts } from './fonts.js';
import { loadRenderers, pdfFile, pngFile } from './rendered.js';
import { readOneSource } from './source.js';
import { CommandFailure, type Terminal } from './terminal.js';
import { writeWhole } from './write-whole.js';

export interface DrawOptions {
  readonly view: View | 'sheet';
  readonly theme: 'light' | 'dark';
  readonly output?: string;
  /** Pixels. */
  readonly width?: number;
  /** From where the picture is looked at in the view `squint`, as `lengthOf` reads it. */
  readonly distance?: Distance;
  /** The sitting that the view `record` shows, 1 for the first of the plan. */
  readonly sitting?: number;
  readonly paper?: Paper;
  /** False to leave off what is seen through glazes. */
  readonly glazes?: boolean;
  /** The view `transfer` with left and right changed over. */
  readonly mirror?: boolean;
  /** Files of fonts for letters that the tool's own lacks. */
  readonly font?: readonly string[];
}

const USUAL_WIDTH = 1600;
/** The views that show glazes. */
const WITH_GLAZES: ReadonlySet<DrawOptions['view']> = new Set(['drawing', 'colour', 'sittings']);

/** `mahlstick draw`: a plan as SVG, PNG or PDF. A plan with errors is drawn as far as it can be read. */
export async function draw(name: string, options: DrawOptions, terminal: Terminal): Promise<ExitCode> {
  if (options.distance !== undefined && options.view !== 'squint') {
    throw new CommandFailure('--distance belongs to --view squint.');
  }
  if (options.sitting !== undefined && options.view !== 'record') {
    throw new CommandFailure('--sitting belongs to --view record.');
  }
  if (options.glazes === false && !WITH_GLAZES.has(options.view)) {
    throw new CommandFailure('--no-glazes belongs to --view drawing, colour or sittings.');
  }
  if (options.mirror && options.view !== 'transfer') {
    throw new CommandFailure('--mirror belongs to --view transfer.');
  }
  const target = targetOf(options);
  refusePaper(options, target);
  const fonts = target.format === 'pdf' ? await readFonts(options.font ?? [], terminal) : [];
  const snapshot = await evaluate(await readOneSource(name, terminal), terminal);
  refuseSitting(options, snapshot);
  await write(target, snapshot, options, fonts, terminal);
  return endingWith(name, errorsOf(snapshot), 'not drawn', terminal);
}

function refusePaper({ view, paper, theme }: DrawOptions, { format }: Target): void {
  if (view !== 'sheet') {
    if (paper !== undefined && format !== 'pdf')
      throw new CommandFailure('--paper belongs to a .pdf or to --view sheet. Add -o NAME.pdf.');
    return;
  }
  if (paper === 'true') throw new CommandFailure('A plan sheet is printed on A4, A3 or Letter.');
  if (theme === 'dark')
    throw new CommandFailure('A plan sheet is on white paper; --theme dark is for views.');
}

/** Another sitting than the one that was asked for would be taken for it. */
function refuseSitting({ sitting }: DrawOptions, { plan }: Snapshot): void {
  if (sitting === undefined) return;
  if (plan.sittings[sitting - 1]?.photo !== undefined) return;
  const photographed = plan.sittings.flatMap(({ photo }, index) => (photo === undefined ? [] : [index + 1]));
  const known =
    photographed.length === 0
      ? 'No sitting of the plan has one.'
      : `There is one for ${photographed.length === 1 ? 'sitting' : 'sittings'} ${inWords(photographed.map(String))}.`;
  throw new CommandFailure(`There is no photograph for sitting ${sitting}. ${known}`);
}

async function write(
  target: Target,
  snapshot: Snapshot,
  options: DrawOptions,
  fonts: readonly Uint8Array[],
  terminal: Terminal,
): Promise<void> {
  const { theme } = options;
  const drawn = options.view === 'sheet' ? sheet(snapshot, options) : view(options.view, snapshot, options);
  if (target.format === 'pdf') {
    const { page, scale } = drawn.onPage();
    await writeTo(target.file, await pdfFile(page, theme, terminal, fonts), terminal);
    if (scale !== 1) terminal.complain(`The picture is drawn at ${scaleInWords(scale)}.`);
    return;
  }
  const svg = await drawn.svg(theme);
  if (target.file === undefined) {
    await terminal.print(svg);
    return;
  }
  const content = target.format === 'png' ? await pngFile(svg, options.width ?? USUAL_WIDTH, terminal) : svg;
  await writeTo(target.file, content, terminal);
}

/** A drawing that is not yet in the form that is asked for. */
interface Drawn {
  readonly svg: (theme: DrawOptions['theme']) => Promise<string>;
  readonly onPage: () => PageOfDrawing;
}

function view(
  name: View,
  { plan, measures, findings }: Snapshot,
  { distance, sitting, paper, glazes, mirror }: DrawOptions,
): Drawn {
  const scene = compose(plan, measures, findings, name, {
    glazes,
    isMirrored: mirror,
    sitting: sitting === undefined ? undefined : sitting - 1,
    distanceMillimetres: distance && millimetresOf(distance, plan.canvas),
  });
  return {
    svg: async (theme) => (await loadRenderers()).renderToText(scene, { theme }),
    onPage: () => pageOf(scene, plan, paper ?? 'true'),
  };
}

function sheet({ plan, measures, findings }: Snapshot, { paper }: DrawOptions): Drawn {
  const page = planSheet(plan, measures, findings, paper === 'true' ? undefined : paper);
  return {
    svg: async (theme) => (await loadRenderers()).pageToText(page, { theme }),
    onPage: () => ({ page, scale: 1 }),
  };
}

function writeTo(file: string, content: string | Uint8Array, { folder }: Terminal): Promise<void> {
  return writeWhole(path.resolve(folder, file), file, content);
}
