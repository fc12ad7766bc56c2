import { describe, expect, it } from 'vitest';
import { polygon } from '../../plan/geometry/outline.js';
import { holdsBox, mapCells, ownerAt, regionOf } from './region.js';

const bend = polygon([
  { x: 10, y: 10 },
  { x: 60, y: 10 },
  { x: 60, y: 20 },
  { x: 20, y: 20 },
  { x: 20, y: 60 },
  { x: 10, y: 60 },
]);

describe('the map of cells', () => {
  const map = mapCells(144, 72, [bend.rings, polygon([]).rings]);

  it('knows who is seen where', () => {
    expect(ownerAt(map, { x: 15, y: 50 })).toBe(0);
    expect(ownerAt(map, { x: 40, y: 40 })).toBeUndefined();
    expect(ownerAt(map, { x: -1, y: 500 })).toBeUndefined();
  });

  it('puts the heart of a bent shape inside it, where its middle is not', () => {
    const region = regionOf(map, 0);
    const { centre } = region?.extent ?? {};
    expect(centre && ownerAt(map, centre)).toBeUndefined();
    expect(region && ownerAt(map, region.heart)).toBe(0);
  });

  it('tells boxes that lie wholly inside from others', () => {
    const region = regionOf(map, 0);
    if (region === undefined) throw new Error('The bend is not seen.');
    expect(holdsBox(region, { x: 11, y: 11, width: 45, height: 7 })).toBe(true);
    expect(holdsBox(region, { x: 11, y: 11, width: 45, height: 12 })).toBe(false);
    expect(holdsBox(region, { x: 58, y: 12, width: 5, height: 5 })).toBe(false);
  });

  it('has no region for what is not seen', () => {
    expect(regionOf(map, 1)).toBeUndefined();
    expect(regionOf(map, 7)).toBeUndefined();
  });
});
