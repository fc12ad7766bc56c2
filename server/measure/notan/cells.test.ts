import { expect, it } from 'vitest';
import { GROUND } from '../borders/borders.js';
import { FieldCells } from './cells.js';

it('cells have the fields of more areas than a call takes arguments', () => {
  const last = 150_000;
  const areas = Array.from({ length: last - GROUND + 1 }, (_, index) => index + GROUND);
  const map = {
    columns: 2,
    rows: 1,
    labels: [Int32Array.of(GROUND, last)],
    gaps: [],
    areaAt: () => undefined,
  };
  const byArea = areas.map((area, index) => ({ area, first: 10 * index, pieces: [] }));
  const cells = new FieldCells({ width: 2, height: 1 }, map, byArea);
  expect([...cells.fieldsIn({ left: 0, top: 0, right: 1, bottom: 0 })]).toEqual([0, 10 * (last - GROUND)]);
});

it('a field is looked for where it lies, whatever cells are given to it elsewhere', () => {
  const [canvas, side] = [{ left: 0, top: 0, right: 8, bottom: 8 }, 8];
  const box = { left: 2.5, top: 2.5, right: 3.5, bottom: 4.5 };
  const labels = Array.from({ length: side }, () => new Int32Array(side).fill(GROUND));
  (labels[7] as Int32Array)[7] = 0;
  const map = { columns: side, rows: side, labels, gaps: [63], areaAt: () => undefined };
  const cells = new FieldCells({ width: side, height: side }, map, [
    { area: GROUND, first: 0, pieces: [{ rings: [], box: canvas, area: 62 }] },
    { area: 0, first: 1, pieces: [{ rings: [], box, area: 2 }] },
  ]);
  expect(cells.extentOf([1])).toEqual({ left: 1, top: 1, right: 4, bottom: 5 });
});
