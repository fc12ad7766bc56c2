import path from 'node:path';
import { compose } from '../drawing/compose.js';
import { renderToText } from '../drawing/headless.js';
import type { View } from '../drawing/scene.js';
import { type Distance, millimetresOf } from './distance.js';
import { evaluate } from './evaluate.js';
import { exitCodes, type ExitCode } from './exit-code.js';
import { countRemarks, remarksOf } from './remarks.js';
import { readOneSource, spokenName, standardInput } from './source.js';
import { CommandFailure, type Terminal } from './terminal.js';
import { writeWhole } from './write-whole.js';

export interface DrawOptions {
  readonly view: View;
  readonly theme: 'light' | 'dark';
  readonly output?: string;
  /** Pixels. */
  readonly width?: number;
  /** From where the picture is looked at in the view `squint`, as `lengthOf` reads it. */
  readonly distance?: Distance;
}

const USUAL_WIDTH = 1600;

type Target =
  { readonly format: 'svg'; readonly file?: string } | { readonly format: 'png'; readonly file: string };

/** `mahlstick draw`: a plan as SVG or PNG. A plan with errors is drawn as far as it can be read. */
export async function draw(name: string, options: DrawOptions, terminal: Terminal): Promise<ExitCode> {
  if (options.distance !== undefined && options.view !== 'squint') {
    throw new CommandFailure('--distance belongs to --view squint.');
  }
  const target = targetOf(options);
  const snapshot = evaluate(await readOneSource(name, terminal), terminal);
  const scene = compose(snapshot.plan, snapshot.measures, snapshot.findings, options.view, {
    distanceMillimetres: options.distance && millimetresOf(options.distance, snapshot.plan.canvas),
  });
  const svg = renderToText(scene, { theme: options.theme });
  if (target.file === undefined) {
    await terminal.print(svg);
  } else {
    const content = target.format === 'png' ? await paint(svg, options.width ?? USUAL_WIDTH, terminal) : svg;
    await writeWhole(path.resolve(terminal.folder, target.file), target.file, content);
  }
  const { errors } = countRemarks(remarksOf(snapshot));
  if (errors === 0) return exitCodes.fine;
  terminal.complain(
    `${spokenName(name)} has ${errors} error${errors === 1 ? '' : 's'}; what can't be read is not drawn. ` +
      'See `mahlstick check`.',
  );
  return exitCodes.found;
}

/** Decided before any work is done, so that a wrong ending costs nobody a wait. */
function targetOf({ output, width }: DrawOptions): Target {
  const toStandardOutput = output === undefined || output === standardInput;
  const ending = toStandardOutput ? '.svg' : path.extname(output).toLowerCase();
  if (ending === '.png' && output !== undefined) return { format: 'png', file: output };
  if (ending !== '.svg') {
    const found = ending === '' ? 'has no ending' : `ends in ${ending}`;
    throw new CommandFailure(`${output} ${found}; a drawing is written as .svg or .png.`);
  }
  if (width !== undefined) {
    throw new CommandFailure('--width counts the pixels of a .png; an .svg has any size. Add -o NAME.png.');
  }
  return toStandardOutput ? { format: 'svg' } : { format: 'svg', file: output };
}

async function paint(svg: string, width: number, terminal: Terminal): Promise<Uint8Array> {
  const { pngOf } = await import('../drawing/png.js');
  const result = await pngOf(svg, width);
  if (!result.ok) throw new CommandFailure(result.reason);
  if (result.textMissing) {
    terminal.complain('No font was found on this computer, so the drawing is without its words.');
  }
  return result.png;
}
