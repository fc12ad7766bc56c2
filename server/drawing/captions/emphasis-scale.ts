import { pathMark, textMark } from '../marks.js';
import { linePath, rectanglePath } from '../path-data.js';
import { bands } from '../picture/bands.js';
import { hexOf } from '../picture/ink.js';
import { EMPHASIS_GREYS } from '../views/emphasis.js';
import { quietTone } from '../picture/quiet.js';
import type { Reading } from '../views/reading.js';
import { type Block, stacked } from './block.js';
import { headingMarks } from './heading.js';
import { lines } from './title.js';
import { inQuotes } from './words.js';
import { capitalised } from '../../plan/problems.js';

/** The shading as a strip from weak to strong, with the part of the strongest place at each border. */
export function emphasisScaleBlock(reading: Reading, width: number): Block {
  const { em } = reading.layout;
  const high = 1.5 * em;
  const bare = { from: 0, to: bands[0]?.from ?? 0, colour: quietTone(reading, EMPHASIS_GREYS)(undefined) };
  const cells = [bare, ...bands];
  return {
    height: 1.5 * em + high + 1.4 * em,
    marks: (x, y) => {
      const top = y + 1.5 * em;
      const at = (part: number) => x + part * width;
      const figure = (part: number, index: number) =>
        textMark(
          `emphasis:figure:${index}`,
          String(Math.round(100 * part)),
          at(part),
          top + high + 1.05 * em,
          {
            size: 0.82 * em,
            ink: 'ink',
            anchor: index === 0 ? 'start' : part === 1 ? 'end' : 'middle',
          },
        );
      return [
        ...headingMarks('emphasis', 'Emphasis', '% of the strongest place', { x, y, width, em }),
        ...cells.map(({ from, to, colour }, index) =>
          pathMark(
            `emphasis:cell:${index}`,
            rectanglePath({ x: at(from), y: top, width: at(to) - at(from), height: high }),
            { fill: hexOf(colour) },
          ),
        ),
        ...bands.map(({ from }, index) =>
          pathMark(
            `emphasis:tick:${index}`,
            linePath([
              { x: at(from), y: top },
              { x: at(from), y: top + high + 0.25 * em },
            ]),
            { stroke: { ink: 'quiet', weight: 'hair' } },
          ),
        ),
        pathMark('emphasis:frame', rectanglePath({ x, y: top, width, height: high }), {
          stroke: { ink: 'quiet', weight: 'fine' },
        }),
        ...[...cells.map(({ from }) => from), 1].map(figure),
      ];
    },
  };
}

/** By which means the focal point wins the eye: those that the plan states, else those that it has. */
export function meansBlock(reading: Reading, width: number): Block {
  const { em } = reading.layout;
  const means = reading.measures.emphasis.focal?.means ?? [];
  const stated = means.filter((each) => each.stated);
  const shown = stated.length > 0 ? stated : means.filter(({ holds }) => holds);
  if (shown.length === 0) return { height: 0, marks: () => [] };
  const heading: Block = {
    height: 1.5 * em,
    marks: (x, y) => headingMarks('means', 'The focal point wins by', '', { x, y, width, em }),
  };
  const rows = shown.map(({ means: name, holds, inWords }) =>
    lines(
      `means:${name}`,
      meansInWords(name, holds, inQuotes(inWords)),
      4,
      { size: 0.86 * em, leading: 1.3 * em, width },
      (key, text, x, y, size) => textMark(key, text, x, y, { size, ink: holds ? 'quiet' : 'ink' }),
    ),
  );
  return stacked([heading, ...rows], 0.15 * em);
}

/** `Value – not yet: its contrast of value is 66 % of …`; the name is not said twice. */
function meansInWords(name: string, holds: boolean, inWords: string): string {
  if (!holds) return `${capitalised(name)} – not yet: ${inWords}`;
  return inWords.startsWith(`${name} `) ? capitalised(inWords) : `${capitalised(name)}: ${inWords}`;
}
