import type { Layout } from '../layout.js';
import { pathMark } from '../marks.js';
import { rectanglePath } from '../path-data.js';
import { grown } from './boxes.js';
import type { Box, Mark } from '../scene.js';

/** The wall, the mount on it, and the cut edge of the mount's window. */
export function mountMarks(sheet: Box, { mount, em }: Layout, picture: Box): readonly Mark[] {
  return [
    pathMark('sheet', rectanglePath(sheet), { fill: 'sheet' }),
    pathMark('mount', rectanglePath(mount), { fill: 'mount', stroke: { ink: 'rule', weight: 'hair' } }),
    pathMark('bevel', rectanglePath(grown(picture, 0.09 * em)), {
      stroke: { ink: 'bevel', weight: 'heavy' },
    }),
  ];
}
