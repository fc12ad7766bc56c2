import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import * as v from 'valibot';
import { afterAll, describe, expect, it } from 'vitest';
import { session } from '../../tests/support/command-line.js';
import { readPages } from '../../tests/support/pdf-pages.js';
import { cells } from './display.js';
import { transferSchema } from './schema/transfer.js';

const PLAN = `plan    "Attic, with a plate"
canvas  60 x 44 cm
divide  thirds
focus   upper right
horizon 15
grid    every 10 cm
object  wall
  plane   background
  shape   rectangle (0, 0) to (60, 30)
object  roof, dominant
  shape   outline (12.5, 30) (30, 4.2) (48, 50)
object  plate
  shape   circle 6 at (30, 24)
lead    beam from left edge to focus
`;

const folder = mkdtempSync(path.join(tmpdir(), 'mahlstick-transfer-'));
afterAll(() => rmSync(folder, { recursive: true }));

async function document(text: string, ...words: readonly string[]) {
  const { output } = await session(['transfer', '-', '--json', ...words], text);
  return v.parse(transferSchema, JSON.parse(output));
}

describe('mahlstick transfer', () => {
  it('tells the grid, each point from two edges and by its square, and the lines, in 80 columns', async () => {
    const { code, output, complaints } = await session(['transfer', '-'], PLAN);
    expect([code, complaints]).toEqual([0, []]);
    expect(output).toContain('6 × 5 squares of 10 cm, the last row 4 cm high, lettered from the left,');
    expect(output).toMatch(/^ {2}roof: 1 point lies off the canvas$/m);
    expect(output).toMatch(/^ +1 {2}corner +30\.0 +4\.2 +D1 +0\.0 +4\.2$/m);
    expect(output).toMatch(/^ +\d {2}crosses the bottom edge +\d+\.\d +44\.0 +[A-F]5 /m);
    expect(output).toMatch(/^ {2}plate: circle, radius 3 cm\n +1 {2}centre +30\.0 +24\.0 +D3 +0\.0 +4\.0$/m);
    expect(output).toMatch(/focal point +40\.0 +14\.7 +E2 +0\.0 +4\.7$/m);
    expect(output).toMatch(/Thirds: uprights 20 cm, 40 cm from the left; levels 14\.7 cm, 29\.3 cm/u);
    expect(output).toMatch(
      /rounded to whole millimetres, which moves the worst of these points\s+by 0\.\d+ mm/u,
    );
    expect(output).not.toMatch(/undefined|NaN/u);
    for (const line of output.split('\n')) expect(cells(line), line).toBeLessThanOrEqual(80);
  });

  it('reads lengths off another ruler, and says what that costs', async () => {
    const { output } = await session(['transfer', '-', '--unit', 'in'], PLAN);
    expect(output).toMatch(/^ +1 {2}corner +11 13\/16 +1 5\/8 +D1 +0 +1 5\/8$/m);
    expect(output).toContain('rounded to sixteenths of an inch');
    const inches = await document('canvas 16 x 20 in\nobject jug\n  shape rectangle (2, 3) to (5.375, 9)');
    expect(inches).toMatchObject({ ruler: 'in', rounding: 0 });
    expect(inches.objects[0]?.shapes[0]?.points[1]?.told).toEqual({ fromLeft: '5 3/8 in', fromTop: '3 in' });
  });

  it('prints JSON that its schema describes, from which each place can be found again', async () => {
    const { grid, objects, places } = await document(PLAN);
    expect(grid).toMatchObject({ stated: true, line: 'grid every 10 cm' });
    const all = [...objects.flatMap(({ shapes }) => shapes.flatMap(({ points }) => points)), ...places];
    expect(all.length).toBeGreaterThan(12);
    for (const { square, fromLeft, fromTop, fromSquareLeft, fromSquareTop } of all) {
      const [, letters, row] = /^([A-Z]+)(\d+)$/u.exec(square) ?? [];
      expect((grid.columns.find(({ name }) => name === letters)?.from ?? NaN) + fromSquareLeft).toBeCloseTo(
        fromLeft,
        3,
      );
      expect((grid.rows.find(({ name }) => name === row)?.from ?? NaN) + fromSquareTop).toBeCloseTo(
        fromTop,
        3,
      );
    }
  });

  it('changes left and right over for the back, and squares and points keep their names', async () => {
    const [front, back] = [await document(PLAN), await document(PLAN, '--mirror')];
    expect(back.grid.columns.map(({ name }) => name)).toEqual(['F', 'E', 'D', 'C', 'B', 'A']);
    const corner = ({ objects }: typeof front) =>
      objects
        .find(({ object }) => object === 'roof')
        ?.shapes[0]?.points.find(({ fromTop }) => fromTop === 30);
    expect([corner(front)?.fromLeft, corner(back)?.fromLeft]).toEqual([12.5, 47.5]);
    expect(corner(front)?.number).toBe(corner(back)?.number);
    expect([corner(front)?.square, corner(back)?.square]).toEqual(['B4', 'B4']);
  });

  it('says which grid is taken where none is stated', async () => {
    const { output } = await session(['transfer', '-'], 'canvas 60 x 40 cm\n');
    expect(output).toContain('None is stated; `grid every 10 cm` in the plan keeps this one.');
  });

  it('writes full-size pages, and says what to do with them', async () => {
    writeFileSync(path.join(folder, 'attic.mahl'), PLAN);
    const { code, errors } = await session(
      ['transfer', 'attic.mahl', '-o', 'pages.pdf', '--overlap', '1.5cm', '--landscape'],
      '',
      folder,
    );
    expect(errors).toContain('pages.pdf is written: a page with the map, and 9 sheets of A4. Print at 100 %');
    expect(code).toBe(0);
    const pages = await readPages(readFileSync(path.join(folder, 'pages.pdf')));
    expect(pages).toHaveLength(10);
    expect(pages[0]?.width).toBeCloseTo(297, 1);
    expect(pages[1]?.text).toContain('Neighbours overlap by 15 mm');
  });

  it('writes the view transfer as SVG, also turned round', async () => {
    writeFileSync(path.join(folder, 'attic.mahl'), PLAN);
    await session(['transfer', 'attic.mahl', '-o', 'attic.svg', '--mirror'], '', folder);
    expect(readFileSync(path.join(folder, 'attic.svg'), 'utf8')).toContain('left and right changed over');
  });

  it.each([
    [['--paper', 'A4'], '--paper belongs to full-size pages. Add -o NAME.pdf.'],
    [['--overlap', '1mm'], 'An overlap is a length from 3 to 50 mm, such as 10mm or 0.5in.'],
    [['--margin', '2in'], 'A margin is a length from 5 to 40 mm'],
    [['-o', 'a.pdf', '--landscape', '--upright'], 'Sheets lie upright or landscape, not both.'],
    [['-o', 'a.pdf', '--json'], '--json goes to the standard output.'],
    [['-o', 'a.svg', '--unit', 'in'], '--unit belongs to the table.'],
    [['-o', 'a.gif'], 'a.gif ends in .gif'],
    [['--width', '300'], '--width counts the pixels of a .png.'],
  ] as const)('refuses %j with a sentence', async (words, wanted) => {
    const { code, errors } = await session(['transfer', '-', ...words], PLAN, folder);
    expect([code, errors]).toEqual([2, expect.stringContaining(wanted)]);
  });

  it('writes nothing where it would take too many sheets', async () => {
    const { code, complaints } = await session(
      ['transfer', '-', '-o', 'wall.pdf'],
      'canvas 6 x 4 m\n',
      folder,
    );
    expect(code).toBe(2);
    expect(complaints[0]).toMatch(
      /^The drawing at full size takes \d+ sheets of A4, and at most 200 are made/u,
    );
    expect(existsSync(path.join(folder, 'wall.pdf'))).toBe(false);
  });
});
