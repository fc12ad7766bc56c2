import { Command, CommanderError, Option } from 'commander';
import { version } from '../../package.json';
import { comparedViews } from '../drawing/scene.js';
import { inWords } from '../plan/problems.js';
import type { CompareOptions } from './compare.js';
import { exitCodes, type ExitCode } from './exit-code.js';
import type { FormatOptions } from './format.js';
import { helpText, pixels } from './options.js';
import { describePlanCommands } from './plan-commands.js';
import type { ServerOptions } from './server.js';
import { CommandFailure, type Terminal } from './terminal.js';
import type { WallOptions } from './wall.js';

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
      outputError: (text) => {
        // What was likely meant stands on a line of its own, which is the library's; other breaks are in what was
        // typed.
        const [said = '', guess] = text.trimEnd().split(/\n(?=\(Did you mean [^\n]*\)$)/u);
        terminal.complain(said.replace(/^error: /, '').replaceAll('\n', ' '));
        if (guess !== undefined) terminal.explain(`${guess}\n`);
      },
    })
    .exitOverride()
    .showHelpAfterError('Try `mahlstick --help`.')
    .addHelpText('after', PROGRAM_HELP);

  describePlanCommands(program, terminal, end);

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
