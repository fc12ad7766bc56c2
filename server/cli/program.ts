import { Command, CommanderError, InvalidArgumentError, Option } from 'commander';
import { version } from '../../package.json';
import { type PaperSize, paperSizes, papers } from '../drawing/paper.js';
import { comparedViews, views } from '../drawing/scene.js';
import { MARGIN, OVERLAP } from '../drawing/transfer/sheets.js';
import { rulers } from '../measure/transfer/rulers.js';
import { millimetresPer } from '../plan/lengths.js';
import { inWords } from '../plan/problems.js';
import type { CheckOptions } from './check.js';
import type { CompareOptions } from './compare.js';
import { exitCodes, type ExitCode } from './exit-code.js';
import { type Distance, readDistance } from './distance.js';
import type { DrawOptions } from './draw.js';
import type { FormatOptions } from './format.js';
import type { MeasureOptions } from './measure.js';
import type { MixOptions } from './mix.js';
import type { RecordOptions } from './record.js';
import type { ScheduleOptions } from './schedule.js';
import type { ServerOptions } from './server.js';
import type { TransferOptions } from './transfer.js';
import { CommandFailure, type Terminal } from './terminal.js';
import type { WallOptions } from './wall.js';

const WIDEST = 20_000;

/**
 * Runs one command line, program name and node left out. Never rejects for what a painter can get wrong: the reason
 * is told on the error stream. `undefined` when the language server has taken over the process.
 */
export async function run(words: readonly string[], terminal: Terminal): Promise<ExitCode | undefined> {
  const ending: { code: ExitCode | undefined } = { code: exitCodes.fine };
  const printed: string[] = [];
  const program = describe(terminal, printed, (code) => (ending.code = code));
  try {
    await program.parseAsync([...words], { from: 'user' });
    return ending.code;
  } catch (error) {
    if (error instanceof CommandFailure) {
      terminal.complain(error.message);
      return exitCodes.failed;
    }
    if (!(error instanceof CommanderError)) throw error;
    return error.exitCode === 0 ? exitCodes.fine : exitCodes.failed;
  } finally {
    if (printed.length > 0) await terminal.print(printed.join(''));
  }
}

/** The commands; each loads what it works with only when it is called. */
function describe(terminal: Terminal, printed: string[], end: (code: ExitCode | undefined) => void): Command {
  const program = new Command('mahlstick')
    .description('Plans for pictures in plain text: check them, draw them, measure them.')
    .version(version, '-V, --version', 'print the version')
    .helpOption('-h, --help', 'explain a command')
    .helpCommand(false)
    .configureOutput({
      writeOut: (text) => void printed.push(text),
      writeErr: (text) => terminal.explain(text),
      outputError: (text) => terminal.complain(text.replace(/^error: /, '').trimEnd()),
    })
    .exitOverride()
    .showHelpAfterError('Try `mahlstick --help`.')
    .addHelpText('after', PROGRAM_HELP);

  program
    .command('check')
    .showHelpAfterError('Try `mahlstick check --help`.')
    .summary('say what is wrong with plans')
    .description(
      'Says what cannot be read in a plan, where it breaks its own intentions (warnings) and rules of thumb (hints), ' +
        'and what it sets aside with a reason.',
    )
    .argument('[plan...]', 'plans to check; - is the standard input')
    .option('--json', 'print JSON instead, see server/cli/README.md')
    .option('--strict', 'let warnings count as errors')
    .option('--staged', 'check the plans that are about to be committed, as they are staged in git')
    .addHelpText(
      'after',
      helpText('mahlstick check barn.mahl', [
        [0, 'no plan has an error'],
        [1, 'a plan has an error, or with --strict a warning'],
        [2, 'a file cannot be read'],
      ]),
    )
    .action(async (names: string[], options: CheckOptions) => {
      end(await (await import('./check.js')).check(names, options, terminal));
    });

  program
    .command('draw')
    .showHelpAfterError('Try `mahlstick draw --help`.')
    .summary('draw a plan as SVG, PNG or PDF')
    .description('Draws a plan. Without -o the SVG goes to the standard output.')
    .argument('<plan>', 'plan to draw; - is the standard input')
    .addOption(
      new Option('--view <view>', 'what to show; sheet is the whole plan on one page')
        .choices([...views, 'sheet'])
        .default('drawing'),
    )
    .option('--distance <length>', 'squint from so far, such as 3m (else 3 times the diagonal)', distance)
    .option('--sitting <number>', 'record after that sitting, counted in the plan (else the latest)', sitting)
    .option('--no-glazes', 'body colours alone, without the glazes that go over them')
    .option('--mirror', 'transfer with left and right changed over, for carrying over from the back')
    .option('-o, --output <file>', 'file to write, .svg, .png or .pdf')
    .option('--width <pixels>', 'width of a .png in pixels (1600 unless said)', pixels)
    .addOption(
      new Option(
        '--paper <paper>',
        'page of a .pdf: as large as the drawing with the picture true to size, or so',
      ).choices(papers),
    )
    .option('--font <file>', 'font for letters that a .pdf has none for; can be given again', collected)
    .addOption(new Option('--theme <theme>', 'paper to draw on').choices(['light', 'dark']).default('light'))
    .addHelpText(
      'after',
      helpText('mahlstick draw barn.mahl --view notan -o barn-notan.png --width 2400', [
        [0, 'drawn'],
        [1, 'drawn, but the plan has errors and what cannot be read is not drawn'],
        [2, 'not drawn: a file cannot be read or written'],
      ]),
    )
    .action(async (name: string, options: DrawOptions) => {
      end(await (await import('./draw.js')).draw(name, options, terminal));
    });

  program
    .command('measure')
    .showHelpAfterError('Try `mahlstick measure --help`.')
    .summary('measure what is seen of a plan')
    .description(
      'Prints the division and its crossings, the visible share of each object, value and colour, and the budgets.',
    )
    .argument('<plan>', 'plan to measure; - is the standard input')
    .option('--json', 'print JSON instead, see server/cli/README.md')
    .addHelpText(
      'after',
      helpText('mahlstick measure barn.mahl', [
        [0, 'measured'],
        [1, 'measured, but the plan has errors and what cannot be read is not measured'],
        [2, 'the file cannot be read'],
      ]),
    )
    .action(async (name: string, options: MeasureOptions) => {
      end(await (await import('./measure.js')).measure(name, options, terminal));
    });

  program
    .command('mix')
    .showHelpAfterError('Try `mahlstick mix --help`.')
    .summary('tell what the colours are mixed of')
    .description(
      'Tells what is known of the paints of the palette, the mixture in whole parts that is predicted to come nearest to ' +
        'each colour, strings of values, glazes, how much paint the picture takes, and what is beyond the palette.',
    )
    .argument('<plan>', 'plan to tell of; - is the standard input')
    .option('--json', 'print JSON instead, see server/cli/README.md')
    .addHelpText(
      'after',
      helpText('mahlstick mix barn.mahl', [
        [0, 'told'],
        [1, 'told, but the plan has errors and what cannot be read is left out'],
        [2, 'the file cannot be read'],
      ]),
    )
    .action(async (name: string, options: MixOptions) => {
      end(await (await import('./mix.js')).mix(name, options, terminal));
    });

  program
    .command('transfer')
    .showHelpAfterError('Try `mahlstick transfer --help`.')
    .summary('tell what to measure off, or draw it at full size')
    .description(
      'Tells the transfer grid and the points of each object, from two edges and by their squares. With -o as .pdf the ' +
        'line drawing at full size on sheets of paper, to be laid over each other; as .svg or .png the view transfer.',
    )
    .argument('<plan>', 'plan to carry over; - is the standard input')
    .option('--json', 'print JSON instead, see server/cli/README.md')
    .addOption(
      new Option('--unit <unit>', 'ruler to read lengths off (else that of the canvas)').choices(rulers),
    )
    .option('--mirror', 'left and right changed over, for carrying over from the back')
    .option('-o, --output <file>', 'file to write, .pdf, .svg or .png')
    .addOption(
      new Option('--paper <paper>', 'sheets of a .pdf (A4, or Letter for a canvas in inches)').choices(
        Object.keys(paperSizes) as PaperSize[],
      ),
    )
    .option('--landscape', 'sheets lie on their long side (else whichever takes fewer)')
    .option('--upright', 'sheets stand on their short side')
    .option(
      '--overlap <length>',
      `what neighbours both show, ${OVERLAP.least} to ${OVERLAP.most} mm (${OVERLAP.usual} mm)`,
      within('An overlap', OVERLAP),
    )
    .option(
      '--margin <length>',
      `left white round each sheet, ${MARGIN.least} to ${MARGIN.most} mm (${MARGIN.usual} mm)`,
      within('A margin', MARGIN),
    )
    .option('--width <pixels>', 'width of a .png in pixels (1600 unless said)', pixels)
    .option('--font <file>', 'font for letters that a .pdf has none for; can be given again', collected)
    .addHelpText(
      'after',
      helpText('mahlstick transfer barn.mahl -o barn-pages.pdf --paper A4', [
        [0, 'told or written'],
        [1, 'told or written, but the plan has errors and what cannot be read is left out'],
        [2, 'not done: a file cannot be read or written, or it would take too many sheets'],
      ]),
    )
    .action(async (name: string, options: TransferOptions) => {
      end(await (await import('./transfer.js')).transfer(name, options, terminal));
    });

  program
    .command('schedule')
    .showHelpAfterError('Try `mahlstick schedule --help`.')
    .summary('tell the sittings in time, or write them as a calendar')
    .description(
      'Tells the sittings in their order: layers, when each is dry to the touch, what comes too soon, and how much time ' +
        'is left to the due date. With -o they are written as a calendar, for any program that reads iCalendar.',
    )
    .argument('<plan>', 'plan to tell of; - is the standard input')
    .option('--json', 'print JSON instead, see server/cli/README.md')
    .option('-o, --output <file>', 'calendar to write, .ics; - is the standard output')
    .addHelpText(
      'after',
      helpText('mahlstick schedule barn.mahl -o barn.ics', [
        [0, 'told or written'],
        [1, 'told or written, but the plan has errors and what cannot be read is left out'],
        [2, 'not done: a file cannot be read or written, or no sitting has a day for a calendar'],
      ]),
    )
    .action(async (name: string, options: ScheduleOptions) => {
      end(await (await import('./schedule.js')).schedule(name, options, terminal));
    });

  program
    .command('record')
    .showHelpAfterError('Try `mahlstick record --help`.')
    .summary('tell what photographs of the painting show, against the plan')
    .description(
      'Tells for each sitting that names a photograph what it shows: values, colours and budgets as painted and as planned, ' +
        'each object, what came nearer and what went away, and what of the photograph cannot be trusted. With -o the plan, the ' +
        'photograph and what differs are drawn side by side.',
    )
    .argument('<plan>', 'plan to tell of; - is the standard input')
    .option('--json', 'print JSON instead, see server/cli/README.md')
    .option('-o, --output <file>', 'drawing to write, .svg, .png or .pdf')
    .option(
      '--sitting <number>',
      'draw it after that sitting, counted in the plan (else the latest)',
      sitting,
    )
    .option('--width <pixels>', 'width of a .png in pixels (1600 unless said)', pixels)
    .addOption(new Option('--paper <paper>', 'page of a .pdf').choices(papers))
    .option('--font <file>', 'font for letters that a .pdf has none for; can be given again', collected)
    .addOption(new Option('--theme <theme>', 'paper to draw on').choices(['light', 'dark']).default('light'))
    .addHelpText(
      'after',
      helpText('mahlstick record barn.mahl -o barn-record.pdf', [
        [0, 'told or drawn'],
        [1, 'told or drawn, but the plan has errors and what cannot be read is left out'],
        [2, 'not done: a file cannot be read or written'],
      ]),
    )
    .action(async (name: string, options: RecordOptions) => {
      end(await (await import('./record.js')).record(name, options, terminal));
    });

  program
    .command('compare')
    .showHelpAfterError('Try `mahlstick compare --help`.')
    .summary('tell what differs between two plans, or since a commit')
    .description(
      'Tells in a painter’s terms what differs between two plans: what moved, grew, darkened, the budgets as planned and as ' +
        'measured, which findings are gone and which are new. One plan alone is compared with its last commit. With -o both are drawn side by side.',
    )
    .argument(
      '<plan...>',
      'the earlier and the later plan: a file, or REVISION:PATH, :PATH (staged) of the git repository',
    )
    .option('--json', 'print JSON instead, see server/cli/README.md')
    .option('-o, --output <file>', 'drawing to write, .svg, .png or .pdf; - prints the SVG')
    .addOption(new Option('--view <view>', 'how to draw both').choices(comparedViews).default('drawing'))
    .option('--width <pixels>', 'width of a .png in pixels (2400 unless said)', pixels)
    .addOption(new Option('--theme <theme>', 'paper to draw on').choices(['light', 'dark']).default('light'))
    .option('--exit-code', 'end with 1 when the pictures differ')
    .option('--git-diff', 'take the seven words with which git calls a program for differences')
    .addHelpText(
      'after',
      helpText('mahlstick compare HEAD~1:barn.mahl barn.mahl', [
        [0, 'compared'],
        [1, 'compared, but a plan has errors; with --exit-code: pictures differ'],
        [2, 'not compared: no such file or revision, or a merge is not settled'],
      ]),
    )
    .action(async (names: string[], options: CompareOptions) => {
      end(await (await import('./compare.js')).compare(names, options, terminal));
    });

  program
    .command('wall')
    .showHelpAfterError('Try `mahlstick wall --help`.')
    .summary('show plans side by side, to choose from')
    .description(
      'Shows the plans of a folder, or those named, side by side: each with its values, colours, key and how much is found in ' +
        'it, and for one that builds on another what differs from that. With -o they are drawn as small pictures. ' +
        'Sixty plans at most; the rest is counted.',
    )
    .argument('[plan...]', 'folders or plans; the current folder unless said')
    .option('--json', 'print JSON instead, see server/cli/README.md')
    .option('-o, --output <file>', 'drawing to write, .svg, .png or .pdf; - prints the SVG')
    .addOption(new Option('--view <view>', 'how to draw each').choices(comparedViews).default('colour'))
    .option('--width <pixels>', 'width of a .png in pixels (2400 unless said)', pixels)
    .addOption(new Option('--theme <theme>', 'paper to draw on').choices(['light', 'dark']).default('light'))
    .addHelpText(
      'after',
      helpText('mahlstick wall studies -o studies.pdf --view notan', [
        [0, 'shown'],
        [1, 'shown, but a plan has errors and what cannot be read of it is left out'],
        [2, 'a file cannot be read or written, or there is no plan'],
      ]),
    )
    .action(async (names: string[], options: WallOptions) => {
      end(await (await import('./wall.js')).wall(names, options, terminal));
    });

  program
    .command('format')
    .showHelpAfterError('Try `mahlstick format --help`.')
    .summary('set plans in the house style')
    .description(
      'Sets plans in the house style, in their files. Comments and words stay as they are; - goes to the standard output.',
    )
    .argument('<plan...>', 'plans to format; - is the standard input')
    .option('--check', 'change nothing, name the plans that would change')
    .addHelpText(
      'after',
      helpText('mahlstick format *.mahl', [
        [0, 'all plans are in the house style now (with --check: they were)'],
        [1, 'with --check: the plans named are not'],
        [2, 'a file cannot be read or written'],
      ]),
    )
    .action(async (names: string[], options: FormatOptions) => {
      end(await (await import('./format.js')).format(names, options, terminal));
    });

  program
    .command('server')
    .showHelpAfterError('Try `mahlstick server --help`.')
    .summary('run the language server for an editor')
    .description(
      'Speaks the Language Server Protocol over the standard streams. Editors start it; people need not.',
    )
    .option('--stdio', 'speak over the standard streams')
    .addHelpText('after', helpText('mahlstick server --stdio', [[2, 'the streams are not named']]))
    .action(async (options: ServerOptions) => {
      await (await import('./server.js')).server(options);
      end(undefined);
    });

  program
    .command('help')
    .summary('explain a command')
    .description('Explains a command, or all of them in short.')
    .argument('[command]', 'command to explain')
    .action((name?: string) => {
      const known = program.commands.find((command) => command.name() === name);
      if (name !== undefined && known === undefined) {
        const names = program.commands.map((command) => command.name());
        throw new CommandFailure(`There is no command '${name}'; the commands are ${inWords(names)}.`);
      }
      (known ?? program).help();
    });

  return program;
}

function pixels(text: string): number {
  const count = Number(text);
  if (/^\d+$/.test(text) && count >= 1 && count <= WIDEST) return count;
  throw new InvalidArgumentError(`A width is a whole number of pixels from 1 to ${WIDEST}.`);
}

function collected(file: string, files: readonly string[] = []): readonly string[] {
  return [...files, file];
}

function distance(text: string): Distance {
  const read = readDistance(text);
  if (read !== undefined) return read;
  throw new InvalidArgumentError('A distance is a length from 1 mm to 1000 m, such as 3m, 250cm or 120in.');
}

function sitting(text: string): number {
  const count = Number(text);
  if (/^\d{1,6}$/.test(text) && count >= 1) return count;
  throw new InvalidArgumentError('A sitting is told by its number in the plan: 1 for the first.');
}

/** Millimetres, also where no unit is given. */
function within(what: string, { least, most }: { readonly least: number; readonly most: number }) {
  return (text: string): number => {
    const read = readDistance(text);
    const millimetres = read === undefined ? NaN : read.value * millimetresPer(read.unit ?? 'mm');
    if (millimetres >= least && millimetres <= most) return millimetres;
    throw new InvalidArgumentError(`${what} is a length from ${least} to ${most} mm, such as 10mm or 0.5in.`);
  };
}

function helpText(example: string, endings: readonly (readonly [ExitCode, string])[]): string {
  const codes = endings.map(([code, meaning]) => `  ${code}  ${meaning}`).join('\n');
  return `\nExample:\n  ${example}\n\nExit codes:\n${codes}\n`;
}

const PROGRAM_HELP = `
Examples:
  mahlstick check barn.mahl                 say what is wrong
  mahlstick draw barn.mahl -o barn.svg      draw it
  mahlstick measure barn.mahl               print shares and budgets
  mahlstick mix barn.mahl                   say what to mix
  mahlstick schedule barn.mahl -o barn.ics  put the sittings into a calendar
  mahlstick transfer barn.mahl -o barn.pdf  print the lines at full size
  mahlstick record barn.mahl                say what photographs of it show
  mahlstick compare barn.mahl               say what changed since its commit
  mahlstick wall                            show the plans of a folder
  mahlstick format barn.mahl                tidy it

Files that a plan names are read from its own folder, and only below that folder
or the current one.

Exit codes:
  0  done, no plan has an error
  1  done, but a plan has an error
  2  not done: a file cannot be read or written, or the command is not known
  3  a fault of mahlstick itself
`;
