import { type Command, Option } from 'commander';
import { type PaperSize, paperSizes, papers } from '../drawing/paper.js';
import { views } from '../drawing/scene.js';
import { MARGIN, OVERLAP } from '../drawing/transfer/sheets.js';
import { rulers } from '../measure/transfer/rulers.js';
import type { CheckOptions } from './check.js';
import type { DrawOptions } from './draw.js';
import type { ExitCode } from './exit-code.js';
import type { MeasureOptions } from './measure.js';
import type { MixOptions } from './mix.js';
import { collected, distance, helpText, pixels, sitting, within } from './options.js';
import type { RecordOptions } from './record.js';
import type { ScheduleOptions } from './schedule.js';
import type { Terminal } from './terminal.js';
import type { TransferOptions } from './transfer.js';

/** The commands that tell what a plan comes to; each loads what it works with only when it is called. */
export function describePlanCommands(
  program: Command,
  terminal: Terminal,
  end: (code: ExitCode | undefined) => void,
): void {
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
}
