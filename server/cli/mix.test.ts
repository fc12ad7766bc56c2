import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { session } from '../../tests/support/command-line.js';
import { cells } from './display.js';
import { mixSchema } from './schema/mix.js';

const PLAN = `plan    "Supper by the stove"
canvas  60 x 40 cm
  ground  #b5813a
colour  plaster 2.5Y 7/3
object  wall
  plane   background
  shape   rectangle (0, 0) to (60, 40)
  colour  plaster
  value   4
object  floor
  plane   background
  shape   rectangle (0, 30) to (60, 40)
  colour  plaster
  value   3
object  kettle, dominant
  shape   circle 7 at (20, 16)
  colour  5PB 4/12
  glaze   crimson
palette
  paint   white PW6
  paint   ochre PY42
  paint   crimson PR122
  paint   black PBk7
  paint   odd
  tube    37 ml
`;

async function told(text: string): Promise<string> {
  return (await session(['mix', '-'], text)).output;
}

describe('mahlstick mix', () => {
  it('tells paints, mixtures, glazes, strings and amounts in a painter’s words', async () => {
    const { code, output, complaints } = await session(['mix', '-'], PLAN);
    expect([code, complaints]).toEqual([0, []]);
    const headings = output.split('\n').filter((line) => /^[A-Z]/.test(line));
    expect(headings.slice(0, 8)).toEqual([
      'Supper by the stove',
      'Paints',
      'Primaries',
      'Mixtures',
      'Glazes',
      'Strings of values',
      'How much of each',
      'What to look at',
    ]);
    expect(output).toMatch(/^ {2}ochre {4}PY42 yellow iron oxide, warm, semi-opaque; measured$/m);
    expect(output).toMatch(/^ {2}odd {6}unknown$/m);
    expect(output).toMatch(/^ {2}red {5}cool crimson; no warm one$/m);
    expect(output).toMatch(/^ {2}blue {4}none$/m);
    expect(output).toMatch(
      /^ {2}#\w{6} {2}2\.5Y 7\.0\/3\.0 +wall, \d\d\.\d %\n {4}\d.*white.*ochre.*\n {4}.* off, .*; \d+ ml$/m,
    );
    expect(output).toMatch(/beyond the palette/);
    expect(output).toMatch(/^ {2}kettle: 1 crimson : \d+ medium, seen as #\w{6}$/m);
    expect(output).toMatch(/^ {2}plaster, from dark to light\n {5}3 {2}#.*\n {5}4 {2}#/m);
    expect(output).toMatch(/^ {2}white {4,}\d.* ml, \d.* tubes$/m);
    expect(output.match(/Mixtures are predictions/g)).toHaveLength(1);
    expect(output).not.toMatch(/undefined|NaN/);
  });

  it('keeps to 80 columns, whatever the paints are called', async () => {
    const long = PLAN.replaceAll('crimson', 'the-crimson-from-the-box-of-my-aunt').replaceAll(
      'wall',
      '食堂の壁',
    );
    for (const line of (await told(long)).split('\n')) expect(cells(line), line).toBeLessThanOrEqual(80);
  });

  it('says of a dark that no paint was measured so dark', async () => {
    const output = await told(PLAN.replace('5PB 4/12', 'N 1/'));
    expect(output).toContain('off, another colour: darker than any paint that was measured;');
    expect(output).not.toContain('beyond the palette');
  });

  it('tells nothing of a finding that the plan sets aside', async () => {
    const aside = `${PLAN}allow   colour beyond the palette because "it is to sing"\n`;
    expect(await told(PLAN)).toContain('No mixture of the palette comes near');
    expect(await told(aside)).not.toContain('No mixture of the palette comes near');
  });

  it('says so where there is no palette, or none that can be mixed', async () => {
    expect(await told('canvas  40 x 30 cm\n')).toBe('Untitled plan\nNo palette is planned.\n');
    const bare = `${PLAN.slice(0, PLAN.indexOf('palette'))}palette\n  paint   odd\n`.replace(
      '  glaze   crimson\n',
      '',
    );
    expect(await told(bare)).toContain('no paint that mixtures can be worked out from');
  });

  it('prints what its schema says', async () => {
    const { output } = await session(['mix', '--json', '-'], PLAN);
    const { palette } = v.parse(mixSchema, JSON.parse(output));
    expect(palette?.paints.map(({ name, basis }) => [name, basis])).toEqual([
      ['white', 'measured'],
      ['ochre', 'measured'],
      ['crimson', 'measured'],
      ['black', 'measured'],
      ['odd', 'unknown'],
    ]);
    expect(palette?.colours.map(({ objects, ground }) => [objects, ground])).toEqual([
      [['wall'], false],
      [['floor'], false],
      [['kettle'], false],
      [[], true],
    ]);
    expect(palette?.colours.find(({ beyond }) => beyond)?.objects).toEqual(['kettle']);
    expect(palette?.addition?.left).toHaveLength(1);
    expect(palette?.reach).toHaveLength(72);
    expect(palette?.glazes[0]?.mixture?.parts).toEqual([{ paint: 'crimson', parts: 1 }]);
  });

  it('tells of what it can read of a plan with errors', async () => {
    const { code, complaints } = await session(['mix', '-'], PLAN.replace('5PB 4/12', 'blu'));
    expect(code).toBe(1);
    expect(complaints.join()).toContain("has 1 error; what can't be read is left out");
  });
});
