import { Resvg } from '@resvg/resvg-js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  EMPTY_OUTLINE,
  type Outline,
  ellipse,
  join,
  pathData,
  polygon,
  rectangle,
  smooth,
  transform,
} from '../../plan/geometry/outline.js';
import { rotate, scale, translate } from '../../plan/geometry/matrix.js';
import type { Point } from '../../plan/geometry/point.js';
import { type LayerAreas, type VisibleAreas, areaOf, visibleAreas } from './areas.js';

/** Squared canvas units: 1e-8 of the canvas. */
const SLACK = 4e-5;
const CANVAS = { width: 80, height: 50 };
const TOLERANCE = 0.0002 * Math.hypot(CANVAS.width, CANVAS.height);

/** Whole and half units come up often, so that borders touch, coincide and meet in corners. */
const coordinate = fc.oneof(
  fc.integer({ min: -20, max: 100 }),
  fc.integer({ min: -40, max: 200 }).map((half) => half / 2),
  fc.double({ min: -60, max: 140, noNaN: true }),
);
const point = fc.record({ x: coordinate, y: coordinate });
const hostileNumber = fc.oneof(fc.double(), fc.constantFrom(NaN, Infinity, -Infinity, 1e308, 5e-324, -0));
const hostilePoint = fc.record({ x: hostileNumber, y: hostileNumber });
const points = fc.array(point, { maxLength: 14 });

const outline: fc.Arbitrary<Outline> = fc.oneof(
  { weight: 3, arbitrary: fc.tuple(point, point).map(([a, b]) => rectangle(a, b)) },
  {
    weight: 3,
    arbitrary: fc.tuple(point, coordinate, coordinate).map(([c, x, y]) => ellipse(c, x, y, TOLERANCE)),
  },
  { weight: 3, arbitrary: points.map(polygon) },
  { weight: 3, arbitrary: points.map((through) => smooth(through, TOLERANCE)) },
  {
    weight: 1,
    arbitrary: fc.tuple(points, points).map(([a, b]) => join([polygon(a), smooth(b, TOLERANCE)])),
  },
  { weight: 1, arbitrary: points.map((p): Outline => ({ ...polygon(p), fillRule: 'evenodd' })) },
  { weight: 1, arbitrary: fc.array(hostilePoint, { maxLength: 6 }).map((p) => smooth(p, TOLERANCE)) },
  { weight: 1, arbitrary: point.map((p) => polygon([p, p, p, p])) },
  { weight: 1, arbitrary: fc.constant(EMPTY_OUTLINE) },
);
const scene = fc.array(
  outline.map((shape) => ({ outline: shape })),
  { maxLength: 12 },
);

function sum(areas: VisibleAreas): number {
  return areas.layers.reduce((total, { share }) => total + share, areas.bareShare);
}

function everyShare(layer: LayerAreas): readonly number[] {
  return [layer.share, layer.hiddenShare, layer.offCanvasShare];
}

describe('any scene', () => {
  it('has shares between 0 and 1 that add up to 1 with the bare ground', () => {
    fc.assert(
      fc.property(scene, (layers) => {
        const areas = visibleAreas(CANVAS, layers);
        expect(Math.abs(sum(areas) - 1)).toBeLessThan(1e-8);
        for (const share of areas.layers.flatMap(everyShare)) {
          expect(share).toBeGreaterThanOrEqual(0);
          expect(share).toBeLessThanOrEqual(1 + 1e-9);
        }
      }),
      { numRuns: 300, seed: 20 },
    );
  });

  it('hides a shape as far as others cover it', () => {
    fc.assert(
      fc.property(scene, (layers) => {
        for (const layer of visibleAreas(CANVAS, layers).layers) {
          const covered = layer.onCanvasArea - layer.visibleArea;
          const most = layer.coveredBy.reduce((total, { area }) => total + area, 0);
          const least = Math.max(0, ...layer.coveredBy.map(({ area }) => area));
          expect(covered).toBeLessThanOrEqual(most + SLACK);
          expect(covered).toBeGreaterThanOrEqual(least - SLACK);
        }
      }),
      { numRuns: 100, seed: 21 },
    );
  });

  it('gives rings of the area it tells', () => {
    fc.assert(
      fc.property(scene, (layers) => {
        const areas = visibleAreas(CANVAS, layers);
        for (const { visible, visibleArea } of areas.layers) {
          expect(Math.abs(areaOf(visible) - visibleArea)).toBeLessThan(SLACK);
        }
        expect(Math.abs(areaOf(areas.bare) - areas.bareArea)).toBeLessThan(SLACK);
      }),
      { numRuns: 100, seed: 22 },
    );
  });

  it('shows nothing of a shape moved off the canvas, and the rest as if it were not there', () => {
    fc.assert(
      fc.property(scene, outline, fc.nat(), (layers, extra, at) => {
        const index = at % (layers.length + 1);
        const away = { outline: transform(extra, translate(1000, 0)) };
        const areas = visibleAreas(CANVAS, [...layers.slice(0, index), away, ...layers.slice(index)]);
        const without = visibleAreas(CANVAS, layers);
        expect(areas.layers[index]?.share).toBe(0);
        const others = areas.layers.filter((_, layer) => layer !== index);
        expect(others.map(({ share }) => share)).toEqual(without.layers.map(({ share }) => share));
        expect(areas.bareShare).toBe(without.bareShare);
      }),
      { numRuns: 100, seed: 23 },
    );
  });

  it('shows all of the front shape, and leaves the same bare whatever the order', () => {
    fc.assert(
      fc.property(scene, (layers) => {
        const areas = visibleAreas(CANVAS, layers);
        const turned = visibleAreas(CANVAS, layers.toReversed());
        expect(areas.layers.at(-1)?.hiddenShare ?? 0).toBe(0);
        expect(turned.layers.at(-1)?.hiddenShare ?? 0).toBe(0);
        expect(Math.abs(areas.bareShare - turned.bareShare)).toBeLessThan(1e-8);
      }),
      { numRuns: 100, seed: 24 },
    );
  });

  it('is measured the same after a change as when it is new', () => {
    const many = fc.array(
      outline.map((shape) => ({ outline: shape })),
      { minLength: 36, maxLength: 50 },
    );
    fc.assert(
      fc.property(many, outline, fc.nat({ max: 35 }), (layers, other, at) => {
        visibleAreas(CANVAS, layers);
        const changed = layers.with(at, { outline: other });
        const afresh = changed.map((layer) => ({ outline: { ...layer.outline } }));
        expect(visibleAreas(CANVAS, changed)).toEqual(visibleAreas(CANVAS, afresh));
      }),
      { numRuns: 12, seed: 26 },
    );
  });

  it('keeps shares when everything is drawn at another size', () => {
    fc.assert(
      fc.property(scene, fc.double({ min: 0.01, max: 100, noNaN: true }), (layers, factor) => {
        const canvas = { width: CANVAS.width * factor, height: CANVAS.height * factor };
        const larger = layers.map((layer) => ({ outline: transform(layer.outline, scale(factor)) }));
        const shares = visibleAreas(canvas, larger).layers.map(({ share }) => share);
        visibleAreas(CANVAS, layers).layers.forEach(({ share }, index) => {
          expect(Math.abs(share - (shares[index] ?? NaN))).toBeLessThan(1e-7);
        });
      }),
      { numRuns: 100, seed: 25 },
    );
  });
});

describe('against an independent renderer (resvg)', () => {
  const SCENES = Array.from({ length: 25 }, (_, seed) => seed + 1);
  const PIXELS_ACROSS = 1000;
  const PIXELS_DOWN = (PIXELS_ACROSS * CANVAS.height) / CANVAS.width;

  it.each(SCENES)('pixels of each colour agree within 0.2 %% of the canvas, scene %i', (seed) => {
    const shapes = randomShapes(seed);
    const counts = pixelsByColour(shapes.map(({ svg }, index) => svg(colourOf(index))).join(''));
    const areas = visibleAreas(CANVAS, shapes);
    const drawn = (index: number) => (counts.get(colourOf(index)) ?? 0) / (PIXELS_ACROSS * PIXELS_DOWN);
    areas.layers.forEach(({ share }, index) => {
      expect(Math.abs(share - drawn(index))).toBeLessThan(0.002);
    });
    expect(Math.abs(areas.bareShare - drawn(-1))).toBeLessThan(0.002);
  });

  /** Index -1 is the ground. */
  function colourOf(index: number): string {
    return `#${(0x101010 + (index + 1) * 0x0a0503).toString(16)}`;
  }

  function pixelsByColour(inside: string): ReadonlyMap<string, number> {
    const { width, height } = CANVAS;
    const image = new Resvg(
      `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" ` +
        `shape-rendering="crispEdges"><rect width="${width}" height="${height}" fill="${colourOf(-1)}"/>${inside}</svg>`,
      { fitTo: { mode: 'width', value: PIXELS_ACROSS }, font: { loadSystemFonts: false } },
    ).render();
    const { pixels } = image;
    const counts = new Map<string, number>();
    for (let i = 0; i < pixels.length; i += 4) {
      const colour = `#${pixels.readUIntBE(i, 3).toString(16).padStart(6, '0')}`;
      counts.set(colour, (counts.get(colour) ?? 0) + 1);
    }
    return counts;
  }
});

interface DrawnShape {
  readonly outline: Outline;
  /** The same shape in SVG, by SVG's own elements where it has them. */
  readonly svg: (fill: string) => string;
}

function randomShapes(seed: number): readonly DrawnShape[] {
  const random = randomNumbers(seed);
  const within = (from: number, to: number) => from + (to - from) * random();
  return Array.from({ length: 4 + Math.floor(random() * 16) }, (_, index): DrawnShape => {
    const centre = { x: within(-5, 85), y: within(-5, 55) };
    const [a, b, turn] = [within(2, 22), within(2, 22), within(0, 360)];
    const turned = `transform="rotate(${turn} ${centre.x} ${centre.y})"`;
    const corners = (count: number, step: number, shortest: number) =>
      Array.from({ length: count }, (_corner, i) => {
        const angle = ((i * step) / count) * 2 * Math.PI + turn;
        const radius = a * within(shortest, 1);
        return { x: centre.x + radius * Math.cos(angle), y: centre.y + radius * Math.sin(angle) };
      });
    switch (index % 5) {
      case 0: {
        const [from, to] = [
          { x: centre.x - a, y: centre.y - b },
          { x: centre.x + a, y: centre.y + b },
        ];
        return {
          outline: transform(rectangle(from, to), rotate(turn, centre)),
          svg: (fill) =>
            `<rect x="${from.x}" y="${from.y}" width="${2 * a}" height="${2 * b}" fill="${fill}" ${turned}/>`,
        };
      }
      case 1:
        return {
          outline: transform(ellipse(centre, a, b, TOLERANCE), rotate(turn, centre)),
          svg: (fill) =>
            `<ellipse cx="${centre.x}" cy="${centre.y}" rx="${a}" ry="${b}" fill="${fill}" ${turned}/>`,
        };
      case 2:
        return straight(corners(3 + Math.floor(random() * 5), 1, 0.4));
      case 3: {
        const outline = smooth(corners(3 + Math.floor(random() * 6), 1, 0.3), TOLERANCE);
        return { outline, svg: (fill) => `<path d="${pathData(outline, 6)}" fill="${fill}"/>` };
      }
      default:
        return straight(corners(7, 3, 0.9), random() < 0.5 ? 'evenodd' : undefined);
    }
  });
}

function straight(corners: readonly Point[], fillRule?: 'evenodd'): DrawnShape {
  const places = corners.map(({ x, y }) => `${x},${y}`).join(' ');
  return {
    outline: { ...polygon(corners), ...(fillRule && { fillRule }) },
    svg: (fill) => `<polygon points="${places}" fill="${fill}" fill-rule="${fillRule ?? 'nonzero'}"/>`,
  };
}

/** Numbers from 0 to 1, the same for the same seed: Lehmer's generator with the figures of Park and Miller 1988. */
function randomNumbers(seed: number): () => number {
  let state = seed * 7919;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}
