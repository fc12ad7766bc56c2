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
    isWhole: true,
    areaAt: () => undefined,
  };
  const byArea = areas.map((area, index) => ({ area, first: 10 * index, pieces: [] }));
  const cells = new FieldCells({ width: 2, height: 1 }, map, byArea);
  expect([...cells.fieldsIn({ left: 0, top: 0, right: 1, bottom: 0 })]).toEqual([0, 10 * (last - GROUND)]);
});
