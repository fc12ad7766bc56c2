import { describe, expect, it } from 'vitest';
import { footOf, layOut, sheetOf } from './layout.js';

const formats = [
  ['square', 40, 40],
  ['landscape', 90, 60],
  ['figure, upright', 38, 46],
  ['A3 upright', 29.7, 42],
  ['tall poster', 50, 120],
  ['panorama', 160, 40],
  ['frieze', 500, 20],
  ['in metres', 1.2, 0.8],
  ['in millimetres', 400, 300],
] as const;

describe('the sheet', () => {
  it.each(formats)(
    'of a %s holds mount and captions, with letters of a size that can be read',
    (_, width, height) => {
      const layout = layOut(width, height);
      const captionHeight = 20 * layout.em;
      const sheet = sheetOf(layout, layout.column.y + captionHeight);
      const { mount, column, em } = layout;
      expect(mount.x).toBeGreaterThan(sheet.x);
      expect(mount.x + mount.width).toBeLessThan(sheet.x + sheet.width);
      expect(column.x + column.width).toBeLessThan(sheet.x + sheet.width);
      expect(column.y + captionHeight).toBeLessThan(sheet.y + sheet.height);
      expect(column.width).toBeGreaterThan(13 * em);
      // 7.5 px where the sheet is shown 300 px wide; only a frieze would have letters as high as itself.
      if (width < 10 * height) expect((300 * em) / sheet.width).toBeGreaterThanOrEqual(7.5);
      expect(em).toBeLessThanOrEqual(0.12 * height);
    },
  );

  it.each(formats)(
    'of a %s for a narrow page has letters of 9 px where it is shown 200 px wide',
    (_, width, height) => {
      const layout = layOut(width, height, true);
      const sheet = sheetOf(layout, layout.column.y + 20 * layout.em);
      expect(layout.captions).toBe('below');
      expect(layout.column.width).toBeGreaterThan(13 * layout.em);
      // On a panorama they would be as high as the picture.
      if (width < 3 * height) expect((200 * layout.em) / sheet.width).toBeGreaterThanOrEqual(9);
    },
  );

  it('has its captions beside a tall picture and below any other', () => {
    expect(formats.map(([, width, height]) => layOut(width, height).captions)).toEqual([
      'below',
      'below',
      'below',
      'below',
      'beside',
      'below',
      'below',
      'below',
      'below',
    ]);
  });

  it('scales with the canvas', () => {
    const small = layOut(9, 6);
    const large = layOut(900, 600);
    expect(large.em / small.em).toBeCloseTo(100, 9);
    expect(large.column.y / small.column.y).toBeCloseTo(100, 9);
  });

  it('has its foot below both the mount and the captions', () => {
    const layout = layOut(50, 120);
    for (const height of [10, 300]) {
      const foot = footOf(layout, height);
      expect(foot.y).toBeGreaterThan(layout.mount.y + layout.mount.height);
      expect(foot.y).toBeGreaterThan(layout.column.y + height);
    }
  });
});
