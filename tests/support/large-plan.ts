/** As many as a plan may have. */
export const OBJECTS = 2_000;
const POINTS_EACH = 100;
export const LARGE_CANVAS = 'canvas  80 x 50 cm';

/** The points of a leaf of so many, somewhere on the canvas. */
export function leaf(index: number, points: number, radius = 3): readonly string[] {
  const [x, y] = [(index * 37) % 80, (index * 53) % 50];
  return Array.from({ length: points }, (_, k) => {
    const angle = (2 * Math.PI * k) / points;
    return `(${(x + Math.cos(angle) * radius).toFixed(3)}, ${(y + Math.sin(angle) * radius).toFixed(3)})`;
  });
}

const lines = Array.from({ length: OBJECTS }, (_, index) => [
  `object  leaf${index}`,
  '  plane   middle',
  `  shape   outline ${leaf(index, POINTS_EACH).join(' ')}`,
  `  value   ${(index % 5) + 1}`,
  '',
]).flat();

/** A plan of 10,000 lines, 2,000 objects and 200,000 points, and one line for its canvas. */
export const largePlan = [LARGE_CANVAS, ...lines].join('\n');
