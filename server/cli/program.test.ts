import { describe, expect, it } from 'vitest';
import { session } from '../../tests/support/command-line.js';

const plan = 'plan    "One"\ncanvas  40 x 30 cm\n';

describe('run', () => {
  it.each([
    [['chek', 'x.mahl'], 'Did you mean check?'],
    [['check', '--jsno', '-'], 'Did you mean --json?'],
    [
      ['draw', '-', '--view', 'notann'],
      'Allowed choices are drawing, notan, values, colour, squint, mirror, path, emphasis, transfer, palette, sittings, record, sheet.',
    ],
    [['draw', '-', '--view', 'squint', '--distance', 'far'], 'A distance is a length from 1 mm to 1000 m'],
    [['draw', '-', '--view', 'record', '--sitting', '0'], 'A sitting is told by its number in the plan'],
    [['draw', '-', '--sitting', '2'], '--sitting belongs to --view record.'],
    [
      ['draw', '-', '--view', 'record', '--sitting', '2'],
      'There is no photograph for sitting 2. No sitting of the plan has one.',
    ],
    [['draw', '-', '--distance', '3m'], '--distance belongs to --view squint.'],
    [
      ['draw', '-', '--view', 'notan', '--no-glazes'],
      '--no-glazes belongs to --view drawing, colour or sittings.',
    ],
    [['draw', '-', '--width', '0', '-o', 'a.png'], 'A width is a whole number of pixels from 1 to 20000.'],
    [['draw', '-', '--width', '12'], 'Add -o NAME.png.'],
    [['draw', '-', '-o', 'a.gif'], 'a.gif ends in .gif; a drawing is written as .svg, .png or .pdf.'],
    [['draw', '-', '-o', 'a'], 'a has no ending; a drawing is written as .svg, .png or .pdf.'],
    [['draw', '-', '-o', 'a.pdf', '--width', '12'], 'a .pdf has any size'],
    [['draw', '-', '--paper', 'A4'], '--paper belongs to a .pdf or to --view sheet.'],
    [['draw', '-', '--paper', 'A5', '-o', 'a.pdf'], 'Allowed choices are true, A4, A3, Letter.'],
    [['draw', '-', '--font', 'a.ttf'], '--font is put into a .pdf'],
    [['draw', '-', '--font', 'none.ttf', '-o', 'a.pdf'], 'none.ttf is not there.'],
    [['draw', '-', '--view', 'sheet', '--paper', 'true'], 'A plan sheet is printed on A4, A3 or Letter.'],
    [['draw', '-', '--view', 'sheet', '--theme', 'dark'], 'A plan sheet is on white paper'],
    [['check'], 'Try `mahlstick check --help`.'],
    [['check', '-', '-'], 'The standard input (-) can be read only once.'],
    [['measure', '-', 'other'], 'too many arguments'],
    [['server'], 'add --stdio'],
  ])('ends %j with 2 and says what would be right', async (words, said) => {
    const { code, output, complaints } = await session(words, plan);
    expect(code).toBe(2);
    expect(output).toBe('');
    expect(complaints.join('\n')).toContain(said);
  });

  it('explains itself', async () => {
    const { code, output } = await session(['--help']);
    expect(code).toBe(0);
    for (const command of ['check', 'draw', 'measure', 'format', 'server']) {
      const help = await session([command, '--help']);
      expect(help.code).toBe(0);
      expect(help.output).toContain(`Example:\n  mahlstick ${command} `);
      expect(help.output).toContain('Exit codes:\n');
      expect(output).toContain(command);
    }
  });

  it('shows its help when it is given nothing to do', async () => {
    const { code, output, complaints } = await session([]);
    expect([code, output]).toEqual([2, '']);
    expect(complaints.join('')).toContain('Usage: mahlstick');
  });

  it('formats, checks, measures and draws the standard input', async () => {
    expect(await session(['format', '-'], 'plan "One"\ncanvas 40 x 30 cm')).toEqual({
      code: 0,
      output: plan,
      complaints: [],
      errors: '',
    });
    expect((await session(['check', '-'], plan)).output).toContain('the standard input: no errors');
    expect((await session(['measure', '-'], plan)).output).toMatch(/^One\n40 x 30 cm/);
    expect((await session(['draw', '-'], plan)).output).toMatch(/^<\?xml[^]+<\/svg>\n$/);
  });

  it('takes a squint from the distance that is asked for', async () => {
    // A quarter of a degree at 10 m is 4.4 cm.
    const { output } = await session(['draw', '-', '--view', 'squint', '--distance', '10m'], plan);
    expect(output).toContain('stdDeviation="4.363"');
  });

  it('draws a glaze over its body colour, or the body colour alone', async () => {
    const glazed = `${plan}object jug
  shape rectangle (5, 5) to (20, 25)
  colour #d9c04a
  glaze #a8401c
palette
  paint white PW6
  paint yellow PY74
  paint red PR101
`;
    expect((await session(['draw', '-'], glazed)).output).toContain('data-key="glaze over object:jug"');
    expect((await session(['draw', '-', '--no-glazes'], glazed)).output).not.toContain('glaze over');
  });

  it('lets warnings end with 1 only when it is strict', async () => {
    const warned = 'plan "No canvas"\n';
    expect((await session(['check', '-'], warned)).code).toBe(0);
    expect((await session(['check', '--strict', '-'], warned)).code).toBe(1);
  });

  it('draws and measures a plan with errors as far as it can, and ends with 1', async () => {
    const broken = `${plan}object a\n  shape circle 5\n  colour teel\n`;
    for (const command of ['draw', 'measure']) {
      const { code, output, complaints } = await session([command, '-'], broken);
      expect(code).toBe(1);
      expect(output).toContain('One');
      expect(complaints).toHaveLength(1);
      expect(complaints[0]).toContain('the standard input has 1 error;');
    }
  });
});
