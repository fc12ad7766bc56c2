import { noPhotographs, type Photographs } from '../../server/measure/photograph/photographs.js';

/**
 * Pictures whose names say how large they are, in pixels: `envelope, 1600 x 1200.png`. All others stay on their way.
 */
export const sizesByName: Photographs = {
  ...noPhotographs,
  sizeOf: (path) => {
    const [, width, height] = /(\d+) x (\d+)\.\w+$/u.exec(path) ?? [];
    return width === undefined || height === undefined
      ? undefined
      : { ok: true, width: Number(width), height: Number(height) };
  },
};
