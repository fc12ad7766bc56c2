import type { Chance } from './chance.js';

interface Frame {
  readonly at: { readonly x: number; readonly y: number };
  readonly width: number;
  readonly height: number;
}

/** A shape in a frame, as people write them; with more lines of points below it, an outline. */
export function shapeLines(frame: Frame, continued: number, chance: Chance): readonly string[] {
  if (continued > 0) {
    const all = points(frame, 6 * (continued + 1), chance);
    return [
      `  shape   smooth ${all.slice(0, 6).join(' ')}`,
      ...Array.from(
        { length: continued },
        (_, line) => `    ${all.slice(6 * (line + 1), 6 * (line + 2)).join(' ')}`,
      ),
    ];
  }
  return [`  shape   ${oneLine(frame, chance)}`];
}

function oneLine(frame: Frame, chance: Chance): string {
  const { at, width, height } = frame;
  const [x, y] = [written(at.x), written(at.y)];
  switch (chance.whole(0, 5)) {
    case 0:
      return `rectangle ${written(width)} x ${written(height)} at (${x}, ${y})`;
    case 1:
      return `rectangle (${written(at.x - width / 2)}, ${written(at.y - height / 2)}) to (${written(at.x + width / 2)}, ${written(at.y + height / 2)})`;
    case 2:
      return `ellipse ${written(width)} x ${written(height)} at (${x}, ${y})`;
    case 3:
      return `outline ${points(frame, chance.whole(4, 7), chance).join(' ')}`;
    default:
      return `smooth ${points(frame, chance.whole(5, 10), chance).join(' ')}`;
  }
}

/** Round about the middle of the frame, none far from its edge. */
function points({ at, width, height }: Frame, count: number, chance: Chance): readonly string[] {
  return Array.from({ length: count }, (_, index) => {
    const angle = (2 * Math.PI * index) / count;
    const reach = chance.between(0.75, 1) / 2;
    return `(${written(at.x + Math.cos(angle) * width * reach)}, ${written(at.y + Math.sin(angle) * height * reach)})`;
  });
}

/** In hundredths of the unit. */
function written(value: number): string {
  return String(Math.round(value * 100) / 100);
}
