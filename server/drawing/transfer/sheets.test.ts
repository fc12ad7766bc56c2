import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fittingMarks, fittingPlaces } from './sheet-marks.js';
import { FOOT, MOST_SHEETS, countSheets, sheetName, sheetsOf, type SheetOptions } from './sheets.js';

const options: fc.Arbitrary<SheetOptions> = fc.record({
  paper: fc.constantFrom('A4' as const, 'A3' as const, 'Letter' as const),
  lies: fc.constantFrom(undefined, 'upright' as const, 'landscape' as const),
  overlap: fc.option(fc.double({ min: 3, max: 50, noNaN: true }), { nil: undefined }),
  margin: fc.option(fc.double({ min: 5, max: 40, noNaN: true }), { nil: undefined }),
});
const side = fc.double({ min: 1, max: 1500, noNaN: true });

describe('sheets of a full-size drawing', () => {
  it('show every point of the canvas, and each neighbour the strip between them', () => {
    fc.assert(
      fc.property(
        side,
        side,
        options,
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (width, height, wanted, across, down) => {
          const layout = sheetsOf({ width, height }, wanted);
          if (layout === undefined) return;
          const { sheets, columns, rows, margin, page, overlap } = layout;
          expect(sheets).toHaveLength(columns * rows);
          expect(sheets.length).toBe(countSheets({ width, height }, wanted));
          const x = across * width;
          const y = down * height;
          expect(
            sheets.some(
              ({ window }) =>
                x >= window.x &&
                x <= window.x + window.width &&
                y >= window.y &&
                y <= window.y + window.height,
            ),
          ).toBe(true);
          for (const { column, row, window } of sheets) {
            expect(window.width).toBeCloseTo(page.width - 2 * margin, 9);
            expect(window.height).toBeCloseTo(page.height - 2 * margin - FOOT, 9);
            const right = sheets.find((other) => other.row === row && other.column === column + 1);
            if (right) expect(window.x + window.width - right.window.x).toBeCloseTo(overlap, 6);
            const below = sheets.find((other) => other.column === column && other.row === row + 1);
            if (below) expect(window.y + window.height - below.window.y).toBeCloseTo(overlap, 6);
          }
        },
      ),
    );
  });

  it('are as few as the paper allows, none that shows nothing of the canvas', () => {
    fc.assert(
      fc.property(side, side, options, (width, height, wanted) => {
        const size = { width, height };
        const layout = sheetsOf(size, wanted);
        if (layout === undefined) return;
        const both = (['upright', 'landscape'] as const).map((lies) =>
          countSheets(size, { ...wanted, lies }),
        );
        if (wanted.lies === undefined) expect(layout.sheets.length).toBe(Math.min(...both));
        const last = layout.sheets.at(-1)?.window;
        // Without the last column or row the edge of the canvas, or what is shown round it, would be missing.
        if (layout.columns > 1) expect((last?.x ?? 0) + layout.overlap).toBeLessThan(width + 4);
        if (layout.rows > 1) expect((last?.y ?? 0) + layout.overlap).toBeLessThan(height + 4);
      }),
    );
  });

  it('count as arithmetic says', () => {
    // A window of 194 x 264 mm, 10 mm of it seen again: 908 = 5 x 184 - 12, 608 = 3 x 254 - 154.
    expect(sheetsOf({ width: 900, height: 600 }, { paper: 'A4' })).toMatchObject({ columns: 5, rows: 3 });
    expect(sheetsOf({ width: 180, height: 250 }, { paper: 'A4' })?.sheets).toHaveLength(1);
    expect(sheetsOf({ width: 250, height: 160 }, { paper: 'A4' })?.page).toEqual({ width: 297, height: 210 });
    expect(sheetsOf({ width: 250, height: 160 }, { paper: 'A4', lies: 'upright' })?.sheets).toHaveLength(2);
    expect(sheetsOf({ width: 355.6, height: 279.4 }, { paper: 'Letter' })).toMatchObject({
      columns: 2,
      rows: 2,
    });
  });

  it('are refused when they are too many, and keep a margin that printers can print', () => {
    expect(sheetsOf({ width: 5000, height: 5000 }, { paper: 'A4' })).toBeUndefined();
    expect(countSheets({ width: 5000, height: 5000 }, { paper: 'A4' })).toBeGreaterThan(MOST_SHEETS);
    expect(sheetsOf({ width: 100, height: 100 }, { paper: 'A4', margin: 0 })?.margin).toBe(5);
    expect(sheetsOf({ width: 100, height: 100 }, { paper: 'Letter', margin: 5 })?.margin).toBe(6.35);
  });

  it('have marks on two sheets or four, at one place of the canvas', () => {
    const layout = sheetsOf({ width: 900, height: 600 }, { paper: 'A4' });
    if (layout === undefined) throw new Error('no sheets');
    const places = fittingPlaces(layout);
    // Two in each strip between neighbours, and one where four meet.
    expect(places).toHaveLength(2 * (4 * 3 + 5 * 2) + 4 * 2);
    for (const { x, y } of places) {
      const on = layout.sheets.filter(
        ({ window }) =>
          x > window.x && x < window.x + window.width && y > window.y && y < window.y + window.height,
      );
      expect([2, 4]).toContain(on.length);
    }
  });

  it('are drawn with the marks that they show, however many sheets there are', () => {
    const layout = sheetsOf({ width: 2400, height: 2000 }, { paper: 'A4' });
    if (layout === undefined) throw new Error('no sheets');
    const places = fittingPlaces(layout);
    const shown = layout.sheets.map((sheet) => {
      const [mark] = fittingMarks(places, layout.overlap, sheet, '#000000');
      // Each has one closed shape, the lozenge.
      return mark?.kind === 'path' ? mark.d.split('Z').length - 1 : 0;
    });
    // Two in the strips at its four sides, and one at its four corners.
    expect(Math.max(...shown)).toBe(2 * 4 + 4);
    expect(Math.min(...shown)).toBe(2 * 2 + 1);
  });

  it('are called by number and place, which no square is', () => {
    const sheet = { number: 5, column: 0, row: 1, window: { x: 0, y: 0, width: 1, height: 1 } };
    expect(sheetName(sheet)).toBe('Sheet 5: second row, first from the left');
    expect(sheetName({ ...sheet, row: 11, column: 20 })).toBe('Sheet 5: 12th row, 21st from the left');
    expect(sheetName({ ...sheet, row: 12, column: 22 })).toBe('Sheet 5: 13th row, 23rd from the left');
  });
});
