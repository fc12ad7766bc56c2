import { pathMark, textMark } from '../marks.js';
import { rectanglePath } from '../path-data.js';
import type { Box, Mark } from '../scene.js';
import { inks } from './full-drawing.js';
import type { SheetLayout } from './sheets.js';

/** Which sheet is where, small, with one of them filled in; fitted into a box and as wide as that comes to. */
export function smallMap(
  { sheets, whole }: SheetLayout,
  size: { readonly width: number; readonly height: number },
  room: Box,
  filled: number,
): { readonly marks: readonly Mark[]; readonly width: number } {
  const scale = Math.min(room.width / whole.width, room.height / whole.height);
  const onPage = ({ x, y, width, height }: Box): Box => ({
    x: room.x + (x - whole.x) * scale,
    y: room.y + (y - whole.y) * scale,
    width: width * scale,
    height: height * scale,
  });
  const shown = sheets.find(({ number }) => number === filled);
  return {
    width: whole.width * scale,
    marks: [
      ...(shown === undefined
        ? []
        : [pathMark('map:this', rectanglePath(onPage(shown.window)), { fill: '#c9d6e0' })]),
      pathMark('map:canvas', rectanglePath(onPage({ x: 0, y: 0, ...size })), {
        stroke: { ink: inks.line, weight: 'fine' },
      }),
      pathMark('map:sheets', sheets.map(({ window }) => rectanglePath(onPage(window))).join(''), {
        stroke: { ink: inks.faint, weight: 'hair' },
      }),
    ],
  };
}

/** The numbers of the sheets in the middle of what each shows, on the canvas in millimetres. */
export function sheetNumbers({ sheets }: SheetLayout, size: number): readonly Mark[] {
  return sheets.map(({ number, window }) =>
    textMark(
      `number-${number}`,
      String(number),
      window.x + window.width / 2,
      window.y + window.height / 2 + 0.36 * size,
      { size, ink: inks.line, halo: inks.paper, anchor: 'middle', face: 'strong' },
    ),
  );
}
