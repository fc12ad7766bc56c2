import { describe, expect, it } from 'vitest';
import { reasonInWords } from '../../../grammar/index.js';
import { type ReadPage, type Spot, readPages } from '../../../tests/support/pdf-pages.js';
import { pdfOf } from '../pdf/pdf.js';
import { roboto } from '../pdf/roboto.js';
import { worked } from '../test-plans.js';
import { type FullSizeOptions, fullSizePages } from './full-size.js';
import { fittingPlaces } from './sheet-marks.js';
import type { Sheet, SheetLayout } from './sheets.js';

/** A roof whose corners are nowhere near each other, and a plate; 300 x 350 mm. */
const PLAN = `plan    "Attic, with a plate"
canvas  300 x 350 mm
grid    every 50 mm
object  roof, dominant
  shape   outline (40, 300) (150, 35) (262.5, 310.4)
object  plate
  shape   circle 60 at (150, 180)
`;
const CORNERS = [
  { x: 40, y: 300 },
  { x: 150, y: 35 },
  { x: 262.5, y: 310.4 },
];
/** What a full-size page may be off, millimetres. */
const TRUE = 0.2;

async function printed(text: string, options: FullSizeOptions) {
  const { plan, measures } = worked(text);
  const full = fullSizePages(plan, measures, options);
  if (!full.ok) throw new Error(reasonInWords(full.reason));
  const { pdf, missing } = await pdfOf(full.pages, { theme: 'light', fonts: { ...roboto, more: [] } });
  expect(missing).toEqual([]);
  const [cover, ...pages] = await readPages(pdf);
  if (cover === undefined) throw new Error('no page');
  return { layout: full.layout, cover, pages };
}

/** Where a place of the canvas is to be on a sheet. */
function onSheet({ x, y }: Spot, { window }: Sheet, { margin }: SheetLayout): Spot {
  return { x: x - window.x + margin, y: y - window.y + margin };
}

/** How far the nearest point of the page that belongs to a shape of so many points is from a place. */
function nearest({ shapes }: ReadPage, { x, y }: Spot, points: number): number {
  return Math.min(
    ...shapes
      .filter((shape) => shape.length === points)
      .flatMap((shape) => shape.map((spot) => Math.hypot(spot.x - x, spot.y - y))),
  );
}

function isOn({ x, y }: Spot, { window }: Sheet): boolean {
  return x > window.x && x < window.x + window.width && y > window.y && y < window.y + window.height;
}

/**
 * How far a corner of the roof is off on the sheet where it is farthest off, of all that it lies on. The roof has three
 * points; a line of a mark has two, its lozenge four.
 */
function furthestOff(corner: Spot, layout: SheetLayout, pages: readonly ReadPage[]): number {
  const off = layout.sheets.flatMap((sheet, index) => {
    const page = pages[index];
    return page !== undefined && isOn(corner, sheet)
      ? [nearest(page, onSheet(corner, sheet, layout), 3)]
      : [];
  });
  return off.length === 0 ? Infinity : Math.max(...off);
}

describe('full-size pages', () => {
  it.each([
    ['A4', 'upright', 210, 297],
    ['Letter', 'landscape', 279.4, 215.9],
  ] as const)('on %s %s are true to size, each where it belongs', async (paper, lies, width, height) => {
    const { layout, cover, pages } = await printed(PLAN, { paper, lies });
    expect(pages).toHaveLength(layout.sheets.length);
    expect(pages.length).toBeGreaterThan(3);
    for (const page of [cover, ...pages]) {
      expect(page.width).toBeCloseTo(width, 2);
      expect(page.height).toBeCloseTo(height, 2);
    }
    for (const corner of CORNERS) expect(furthestOff(corner, layout, pages)).toBeLessThan(TRUE);
  });

  it('show the same marks in the same places of the canvas on every sheet that shares them', async () => {
    const { layout, pages } = await printed(PLAN, { paper: 'A4' });
    for (const place of fittingPlaces(layout)) {
      layout.sheets.forEach((sheet, index) => {
        const page = pages[index];
        if (!isOn(place, sheet) || page === undefined) return;
        const { x, y } = onSheet(place, sheet, layout);
        expect(nearest(page, { x: x - 3, y }, 2)).toBeLessThan(TRUE);
        expect(nearest(page, { x, y: y + 3 }, 2)).toBeLessThan(TRUE);
      });
    }
  });

  it('begin with the map and two rules that can be measured, and say how to print', async () => {
    const { cover, layout } = await printed(PLAN, { paper: 'A4' });
    expect(cover.text).toContain('Attic, with a plate');
    expect(cover.text).toContain('300 × 350 mm at full size, on 4 sheets of A4 in 2 rows of 2');
    expect(cover.text).toContain('Print at 100 %');
    for (const { number } of layout.sheets) expect(cover.text).toMatch(new RegExp(`\\b${number}\\b`, 'u'));
    const lengths = cover.shapes
      .filter((shape) => shape.length === 2)
      .map(([from, to]) => (to?.x ?? 0) - (from?.x ?? 0));
    for (const wanted of [100, 101.6])
      expect(Math.min(...lengths.map((length) => Math.abs(length - wanted)))).toBeLessThan(TRUE);
  });

  it('say which they are, in text that can be searched', async () => {
    const { pages } = await printed(PLAN, { paper: 'A4' });
    expect(pages[1]?.text).toContain('Sheet 2: first row, second from the left (of 4)');
    expect(pages[2]?.text).toContain('Sheet 3: second row, first from the left (of 4)');
    expect(pages[0]?.text).toContain('Squares A1 to D6.');
    expect(pages[0]?.text).toContain('B2');
  });

  it('are turned round for the back, with squares that keep their names', async () => {
    const { layout, cover, pages } = await printed(PLAN, { paper: 'A4', isMirrored: true });
    expect(cover.text).toContain('left and right changed over');
    expect(pages[0]?.text).toContain('Squares F1 to C6.');
    for (const { x, y } of CORNERS) expect(furthestOff({ x: 300 - x, y }, layout, pages)).toBeLessThan(TRUE);
  });

  it('are one sheet where the canvas fits on one, without marks', async () => {
    const { pages, cover } = await printed('canvas 15 x 10 cm\nobject jug\n  shape circle 5 at (7, 5)', {
      paper: 'A4',
    });
    expect(pages).toHaveLength(1);
    expect(cover.text).toContain('on one sheet of A4');
    expect(pages[0]?.text).not.toContain('overlap');
  });

  it('are not made when they are too many, and it is said what to do', () => {
    const { plan, measures } = worked('canvas 6 x 4 m\nobject wall\n  shape rectangle (0, 0) to (6, 4)');
    const full = fullSizePages(plan, measures, { paper: 'A4' });
    expect(full.ok ? '' : reasonInWords(full.reason)).toMatch(
      /^The drawing at full size takes \d{3} sheets of A4, and at most 200 are made: take larger paper, such as A3, or /u,
    );
  });
});
