import {
  chmodSync,
  mkdirSync,
  readFileSync,
  readdirSync,
  statSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import path from 'node:path';
import { Ajv } from 'ajv';
import { describe, expect, it } from 'vitest';
import type { CheckDocument } from '../../server/cli/schema/check.js';
import type { MeasureDocument } from '../../server/cli/schema/measure.js';
import type { WallDocument } from '../../server/cli/schema/wall.js';
import { session } from '../support/command-line.js';
import { readPdf } from '../support/pdf.js';
import { examplesFolder, root } from './examples-folder.js';

const plans = examplesFolder();
const { top, write } = plans;

const broken = 'plan    "Broken"\ncanvas  20 x 20 cm\nobject  a\n  shape   circle 5\n  colour  teel\n';

/** Within this process, as most of a command's time would go into starting one; `process.test.ts` starts some. */
async function run(words: readonly string[], { input = '', from = plans.folder }: RunOptions = {}) {
  const { code, output, errors } = await session(words, input, from);
  return { code, stdout: output, stderr: errors };
}

interface RunOptions {
  readonly input?: string | Uint8Array;
  /** The current folder. */
  readonly from?: string;
}

function validator(name: string) {
  const schema = JSON.parse(readFileSync(path.join(root, 'server/cli/schema', name), 'utf8')) as object;
  return new Ajv({ strict: true, allErrors: true }).compile(schema);
}

describe('mahlstick', () => {
  it('lists the commands when it is to explain one that there is not', async () => {
    expect(await run(['help', 'nonsense'])).toEqual({
      code: 2,
      stdout: '',
      stderr:
        "mahlstick: There is no command 'nonsense'; the commands are check, draw, measure, mix, transfer, schedule, record, compare, wall, format, server and help.\n",
    });
  });

  it('guesses what was meant, and ends with 2', async () => {
    const { code, stdout, stderr } = await run(['mesure', 'ten.mahl']);
    expect([code, stdout]).toEqual([2, '']);
    expect(stderr).toContain("mahlstick: unknown command 'mesure'\n(Did you mean measure?)");
  });
});

describe('check', () => {
  it('finds no errors in the examples', async () => {
    const names = readdirSync(plans.folder).filter((name) => name.endsWith('.mahl'));
    const { code, stdout, stderr } = await run(['check', ...names]);
    expect([code, stderr]).toEqual([0, '']);
    expect(stdout).toMatch(/^8 plans: no errors, 5 warnings, /m);
    expect(stdout).toContain('because "read from across the road');
  });

  it('points at the words of an error, and ends with 1', async () => {
    write('broken.mahl', broken);
    const { code, stdout } = await run(['check', 'broken.mahl']);
    expect(code).toBe(1);
    expect(stdout).toContain('  broken.mahl:5:11  error  ');
    expect(stdout).toContain('    5 | colour  teel\n      |         ^^^^\n');
  });

  it('ends with 1 for warnings when it is strict', async () => {
    expect((await run(['check', 'moth-night.mahl'])).code).toBe(0);
    expect((await run(['check', '--strict', 'moth-night.mahl'])).code).toBe(1);
    expect((await run(['check', '--strict', 'winter-barn.mahl'])).code).toBe(0);
  });

  it('ends with 2 for a file that is not there, and still checks the others', async () => {
    write('broken.mahl', broken);
    const { code, stdout, stderr } = await run(['check', 'none.mahl', 'broken.mahl', 'parts']);
    expect(code).toBe(2);
    expect(stdout).toContain('broken.mahl: 1 error');
    expect(stderr).toBe('mahlstick: none.mahl is not there.\nmahlstick: parts is a folder, not a file.\n');
  });

  it('reads no more than 5 MB of a plan, so that a device without an end is refused', async () => {
    const long = write('long.mahl', `// ${'a'.repeat(5 * 1024 * 1024)}`);
    const ending = { code: 2, stdout: '' };
    expect(await run(['check', 'long.mahl'])).toEqual({
      ...ending,
      stderr: 'mahlstick: long.mahl is larger than 5 MB.\n',
    });
    expect(await run(['measure', '-'], { input: readFileSync(long) })).toEqual({
      ...ending,
      stderr: 'mahlstick: the standard input is larger than 5 MB.\n',
    });
    expect((await run(['draw', '/dev/zero'])).stderr).toBe('mahlstick: /dev/zero is larger than 5 MB.\n');
    expect(await run(['format', ''])).toEqual({ ...ending, stderr: 'mahlstick: "" names no file.\n' });
  });

  it('ends with 2 for bytes that are no UTF-8, and tells the place', async () => {
    write('latin.mahl', Buffer.from([...Buffer.from('plan "x"\nmood gr'), 0xfc, 0x6e, 0x0a]));
    const { code, stdout, stderr } = await run(['check', 'latin.mahl']);
    expect([code, stdout]).toEqual([2, '']);
    expect(stderr).toBe(
      'mahlstick: latin.mahl is no text in UTF-8: byte 8 of line 2 belongs to another encoding; save it as UTF-8.\n',
    );
  });

  it('reads a byte order mark and CRLF, and counts lines as editors do', async () => {
    write('windows.mahl', `\ufeff${broken.replaceAll('\n', '\r\n')}`);
    expect((await run(['check', 'windows.mahl'])).stdout).toContain('  windows.mahl:5:11  error  ');
  });

  it('reads the standard input, and files from the current folder for it', async () => {
    const input = readFileSync(path.join(plans.folder, 'goldfinch.mahl'));
    expect(await run(['check', '-'], { input })).toMatchObject({ code: 0, stderr: '' });
  });

  it('reads files that a plan names from the folder of the plan', async () => {
    expect(await run(['check', `${plans.folder}/goldfinch.mahl`], { from: top })).toMatchObject({ code: 0 });
  });

  it('refuses what a plan has no business reading', async () => {
    writeFileSync(path.join(top, 'secret.svg'), '<svg><path id="x" d="M 0 0 L 1 1 L 0 1 Z"/></svg>');
    symlinkSync(path.join(top, 'secret.svg'), path.join(plans.folder, 'link.svg'));
    write(
      'hostile.mahl',
      'object a\n  shape from "../secret.svg"\nobject b\n  shape from "link.svg"\nobject c\n  shape from "/etc/passwd"\n',
    );
    const { code, stdout } = await run(['check', 'hostile.mahl']);
    expect(code).toBe(1);
    expect(stdout).toContain(
      "hostile.mahl:2:14  error  `../secret.svg` cannot be read. This file lies outside the plan's folder",
    );
    expect(stdout).toContain(
      "hostile.mahl:4:14  error  `link.svg` cannot be read. This file lies outside the plan's folder",
    );
    expect(stdout).toContain(
      'hostile.mahl:6:14  error  `/etc/passwd` cannot be read. Files are named by their path from the plan',
    );
  });

  it('takes names that would trip a careless program', async () => {
    const names = ['constructor', 'toString', 'hasOwnProperty', 'valueOf', 'then', 'value', 'plan', 'object'];
    const objects = names.map((name) => `object ${name}\n  shape circle 2 at (5, 5)\n  value 3\n`).join('');
    write(
      'names.mahl',
      `plan "${'\u001b[2J'}<script>&\u202e"\ncanvas 20 x 20 cm\n${objects}path ${names.join(', ')}\n`,
    );
    const { code, stdout } = await run(['check', 'names.mahl']);
    expect(code).toBe(0);
    expect(
      [...stdout].filter((character) => /[\p{Cc}\u202e]/u.test(character) && character !== '\n'),
    ).toEqual([]);
    const drawn = await run(['draw', 'names.mahl']);
    expect(drawn.code).toBe(0);
    expect(drawn.stdout).not.toContain('<script>');
    expect(drawn.stdout).not.toContain('\u001b');
  });

  it('prints JSON that its schema describes', async () => {
    write('broken.mahl', broken);
    write('latin.mahl', Buffer.from([0xfc]));
    const { code, stdout, stderr } = await run([
      'check',
      '--json',
      'moth-night.mahl',
      'broken.mahl',
      'none.mahl',
      'latin.mahl',
    ]);
    expect([code, stderr]).toEqual([2, '']);
    const document = JSON.parse(stdout) as CheckDocument;
    const valid = validator('check-2.json');
    valid(document);
    expect(valid.errors).toBeNull();
    expect(document.files.map((file) => (file.read ? file.title : file.reason))).toEqual([
      'Moth night',
      'Broken',
      'is not there',
      expect.stringContaining('byte 1 of line 1'),
    ]);
    expect(document.summary).toMatchObject({ errors: 1, warnings: 3, setAside: 3 });
    const [poster, second] = document.files;
    expect(poster?.read && poster.findings.find(({ setAside }) => setAside)?.setAside?.place.line).toBe(41);
    expect(second?.read && second.findings.find(({ severity }) => severity === 'error')?.place).toEqual({
      line: 5,
      column: 11,
      endColumn: 15,
    });
  });
});

describe('draw', () => {
  it('writes a PDF that is true to size, or on paper with the scale told', async () => {
    expect(await run(['draw', 'ten.mahl', '-o', 'ten.pdf'])).toEqual({ code: 0, stdout: '', stderr: '' });
    const page = await readPdf(readFileSync(path.join(plans.folder, 'ten.pdf')));
    expect(page.text).toContain('division: golden section');
    const { code, stderr } = await run(['draw', 'ten.mahl', '-o', 'a4.pdf', '--paper', 'A4']);
    expect(code).toBe(0);
    expect(stderr).toMatch(/^mahlstick: The picture is drawn at 1 : [\d.]+ of true size\.\n$/);
    const a4 = await readPdf(readFileSync(path.join(plans.folder, 'a4.pdf')));
    expect(Math.min(a4.width, a4.height)).toBeCloseTo(210, 0);
    expect(page.width).toBeGreaterThan(a4.width);
  });

  it('writes the plan sheet, and names letters that no font has', async () => {
    write('sheet.mahl', 'plan "⁵ 山"\ncanvas 40 x 30 cm\n');
    const font = path.join(root, 'node_modules/svgdom/fonts/OpenSans-Regular.ttf');
    const draw = ['draw', 'sheet.mahl', '--view', 'sheet', '-o', 'sheet.pdf'];
    expect((await run(draw)).stderr).toContain('The fonts of the PDF lack ⁵ and 山;');
    expect((await run([...draw, '--font', font])).stderr).toContain('The fonts of the PDF lack 山;');
    expect((await readPdf(readFileSync(path.join(plans.folder, 'sheet.pdf')))).title).toBe(
      '⁵ 山: plan sheet',
    );
    expect((await run([...draw, '--font', 'sheet.mahl'])).stderr).toBe(
      'mahlstick: sheet.mahl is no TrueType or OpenType font that can be read.\n',
    );
    const svg = await run(['draw', 'sheet.mahl', '--view', 'sheet', '--paper', 'A3']);
    expect(svg.stdout).toMatch(/viewBox="0 0 297 420"/);
  });

  it('draws every view to the standard output', async () => {
    for (const view of [
      'drawing',
      'notan',
      'values',
      'colour',
      'squint',
      'mirror',
      'path',
      'emphasis',
      'transfer',
    ]) {
      const { code, stdout, stderr } = await run(['draw', 'ten.mahl', '--view', view]);
      expect([code, stderr]).toEqual([0, '']);
      expect(stdout).toMatch(/^<\?xml version="1\.0" encoding="UTF-8"\?>\n<svg [^]*<\/svg>\n$/);
      expect(stdout).toContain(`data-view="${view}"`);
    }
  });

  it('writes an SVG, and a PNG of the width asked for', async () => {
    expect(await run(['draw', 'ten.mahl', '-o', 'ten.svg', '--theme', 'dark'])).toEqual({
      code: 0,
      stdout: '',
      stderr: '',
    });
    expect(readFileSync(path.join(plans.folder, 'ten.svg'), 'utf8')).toContain('</svg>');
    expect((await run(['draw', 'ten.mahl', '-o', 'ten.png', '--width', '321'])).code).toBe(0);
    const png = readFileSync(path.join(plans.folder, 'ten.png'));
    expect(png.subarray(1, 4).toString()).toBe('PNG');
    // PNG (ISO/IEC 15948), 11.2.2: the width is the first field of IHDR, at byte 16.
    expect(png.readUInt32BE(16)).toBe(321);
  });

  it('leaves nothing behind where it cannot write', async () => {
    mkdirSync(path.join(plans.folder, 'taken.svg'));
    const before = readdirSync(plans.folder);
    expect(await run(['draw', 'ten.mahl', '-o', 'taken.svg'])).toEqual({
      code: 2,
      stdout: '',
      stderr: 'mahlstick: taken.svg is a folder, not a file.\n',
    });
    expect((await run(['draw', 'ten.mahl', '-o', 'none/ten.svg'])).stderr).toBe(
      'mahlstick: none/ten.svg: its folder is not there.\n',
    );
    expect(readdirSync(plans.folder)).toEqual(before);
    expect(readdirSync(path.join(plans.folder, 'taken.svg'))).toEqual([]);
  });
});

describe('measure', () => {
  it('prints tables for people', async () => {
    const { code, stdout, stderr } = await run(['measure', 'winter-barn.mahl']);
    expect([code, stderr]).toEqual([0, '']);
    expect(stdout).toMatch(/^ {2}barn +dominant +middle +3 +rust +\d+\.\d % /m);
    expect(stdout).not.toContain('\u001b');
  });

  it('prints JSON that its schema describes', async () => {
    const valid = validator('measure-2.json');
    for (const name of ['ten.mahl', 'quinces.mahl']) {
      const { code, stdout } = await run(['measure', '--json', name]);
      expect(code).toBe(0);
      const document = JSON.parse(stdout) as MeasureDocument;
      valid(document);
      expect(valid.errors).toBeNull();
      const shares = document.objects.reduce((sum, { share }) => sum + share, document.values.bareShare);
      expect(shares).toBeCloseTo(1, 6);
    }
  });
});

describe('format', () => {
  const untidy = 'plan "One"\r\n\r\n\r\ncanvas 40 x 30 cm // the old panel\r\n   medium oil\r\n';
  const tidy = 'plan    "One"\r\n\r\ncanvas  40 x 30 cm  // the old panel\r\n  medium  oil\r\n';

  it('writes files anew with the line ends, the mark and the permissions that they had', async () => {
    const file = write('one.mahl', `\ufeff${untidy}`);
    chmodSync(file, 0o640);
    expect(await run(['format', 'one.mahl'])).toEqual({ code: 0, stdout: '', stderr: '' });
    expect(readFileSync(file, 'utf8')).toBe(`\ufeff${tidy}`);
    expect(statSync(file).mode & 0o777).toBe(0o640);
    expect(readdirSync(plans.folder).filter((name) => name.startsWith('one.mahl'))).toEqual(['one.mahl']);
  });

  it('does not touch what is in the house style', async () => {
    const file = write('one.mahl', tidy);
    utimesSync(file, 1_000_000, 1_000_000);
    const before = statSync(file);
    expect((await run(['format', 'one.mahl'])).code).toBe(0);
    expect(statSync(file)).toMatchObject({ ino: before.ino, mtimeMs: before.mtimeMs });
  });

  it('only names files with --check, and ends with 1', async () => {
    write('one.mahl', untidy);
    const ending = await run(['format', '--check', 'ten.mahl', 'one.mahl']);
    expect(ending).toEqual({ code: 1, stdout: 'one.mahl\n', stderr: '' });
    expect(readFileSync(path.join(plans.folder, 'one.mahl'), 'utf8')).toBe(untidy);
    expect(await run(['format', '--check', 'ten.mahl'])).toEqual({ code: 0, stdout: '', stderr: '' });
  });

  it('follows a link to the file that it names', async () => {
    const file = write('one.mahl', untidy);
    symlinkSync(file, path.join(plans.folder, 'link.mahl'));
    expect((await run(['format', 'link.mahl'])).code).toBe(0);
    expect(readFileSync(file, 'utf8')).toBe(tidy);
  });

  it('formats the standard input to the standard output', async () => {
    expect(await run(['format', '-'], { input: untidy })).toEqual({ code: 0, stdout: tidy, stderr: '' });
  });

  it('leaves a file alone that is no UTF-8, and goes on with the next', async () => {
    const bytes = Buffer.from([0x70, 0xff]);
    const file = write('latin.mahl', bytes);
    write('one.mahl', untidy);
    expect((await run(['format', 'latin.mahl', 'one.mahl'])).code).toBe(2);
    expect(readFileSync(file)).toEqual(bytes);
    expect(readFileSync(path.join(plans.folder, 'one.mahl'), 'utf8')).toBe(tidy);
  });
});

describe('server', () => {
  it('says what is missing', async () => {
    expect(await run(['server'])).toEqual({
      code: 2,
      stdout: '',
      stderr: 'mahlstick: The language server speaks over the standard streams: add --stdio.\n',
    });
  });
});

describe('wall', () => {
  it('tells of the plans that are named, what can’t be read too, and of a variant what differs', async () => {
    mkdirSync(path.join(plans.folder, 'studies'));
    write('studies/pear.mahl', 'canvas 40 x 30 cm\nobject pear\n  shape circle 12\n  value 2\n');
    write('studies/pear-light.mahl', 'based on "pear.mahl"\nplan "Light"\nobject pear\n  value 5\n');
    const { code, stdout } = await run(['wall', 'studies', '--json']);
    const document = JSON.parse(stdout) as WallDocument;
    const validate = validator('wall-1.json');
    expect(validate(document), JSON.stringify(validate.errors)).toBe(true);
    expect(code).toBe(0);
    expect(document.plans).toMatchObject([
      {
        file: 'pear-light.mahl',
        title: 'Light',
        differs: expect.stringMatching(/^Differs from “Untitled plan” in objects /u) as unknown,
      },
      { file: 'pear.mahl', title: 'Untitled plan' },
    ]);
    const lost = await run(['wall', 'studies/pear.mahl', 'lost.mahl', '-o', 'wall.svg']);
    expect(lost).toMatchObject({ code: 2, stderr: 'mahlstick: lost.mahl is not there.\n' });
  });

  it('says that there is no plan', async () => {
    mkdirSync(path.join(plans.folder, 'empty'));
    expect((await run(['wall', 'empty'])).stderr).toBe('mahlstick: There is no plan in empty.\n');
  });
});
