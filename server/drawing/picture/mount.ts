import type { Layout } from '../layout.js';
import { pathMark } from '../marks.js';
import { rectanglePath } from '../path-data.js';
import { grown } from './boxes.js';
import type { Box, Mark } from '../scene.js';

/** The wall that everything hangs on. */
export function wallMark(sheet: Box): Mark {
  return pathMark('sheet', rectanglePath(sheet), { fill: 'sheet' });
}

/** The mount on the wall, and the cut edge of its window. */
export function mountMarks({ mount, em }: Layout, picture: Box): readonly Mark[] {
  return [
    pathMark('mount', rectanglePath(mount), { fill: 'mount', stroke: { ink: 'rule', weight: 'hair' } }),
    pathMark('bevel', rectanglePath(grown(picture, 0.09 * em)), {
      stroke: { ink: 'bevel', weight: 'heavy' },
    }),
  ];
}
