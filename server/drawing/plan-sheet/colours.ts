import type { ColourRole } from '../../../grammar/index.js';
import { isNeutral } from '../../plan/colour/model.js';
import { formatMunsell, toMunsell } from '../../plan/colour/munsell.js';
import type { Colour } from '../../plan/colour/colour.js';
import type { Block } from '../captions/block.js';
import { BOLD_WIDTH, fitted, textWidth } from '../captions/text-width.js';
import { andMore, percent } from '../captions/words.js';
import { pathMark, textMark } from '../marks.js';
import { rectanglePath } from '../path-data.js';
import { hexOf } from '../picture/ink.js';
import type { Reading } from '../views/reading.js';
import type { List } from './fitting.js';

/** The colours that the plan names: swatch, name, role, how they are written, Munsell's notation, share. */
export function coloursList({ plan, measures, layout }: Reading, width: number): List {
  const { em } = layout;
  return {
    key: 'colours',
    heading: 'Named colours',
    remark: plan.colours.length === 0 ? '' : '% of the picture',
    entries: plan.colours.map(({ key, name, colour, role }, index) =>
      colourEntry(
        {
          key: `colour:${key}`,
          name,
          role,
          colour,
          share: measures.colours.colours[index]?.share ?? 0,
        },
        width,
        em,
      ),
    ),
    more: (count) => andMore(count, 'colour', 'colours'),
  };
}

interface Entry {
  readonly key: string;
  readonly name: string;
  readonly role: ColourRole | undefined;
  readonly colour: Colour;
  readonly share: number;
}

function colourEntry({ key, name, role, colour, share }: Entry, width: number, em: number): Block {
  const indent = 2.9 * em;
  const figure = share > 0 ? percent(share) : 'not seen';
  const facts = [...(role === undefined ? [] : [role]), ...notations(colour)].join(' · ');
  const room = width - indent - textWidth(figure, 0.92 * em) - 0.6 * em;
  return {
    height: 2.45 * em,
    marks: (x, y) => [
      pathMark(`${key}:swatch`, rectanglePath({ x, y: y + 0.12 * em, width: 2.3 * em, height: 2.1 * em }), {
        fill: hexOf(colour),
        stroke: { ink: 'rule', weight: 'hair' },
      }),
      textMark(`${key}:name`, fitted(name, 0.92 * em, room / BOLD_WIDTH), x + indent, y + 0.95 * em, {
        size: 0.92 * em,
        ink: 'ink',
        face: 'strong',
      }),
      textMark(`${key}:share`, figure, x + width, y + 0.95 * em, {
        size: 0.92 * em,
        ink: 'ink',
        anchor: 'end',
      }),
      textMark(`${key}:notation`, fitted(facts, 0.82 * em, width - indent), x + indent, y + 2.1 * em, {
        size: 0.82 * em,
        ink: 'quiet',
      }),
    ],
  };
}

/** As it is written, and Munsell's notation where that is not the same. */
function notations(colour: Colour): readonly string[] {
  const { hueDegrees, value, chroma } = toMunsell(colour);
  const munsell = formatMunsell(isNeutral(colour) ? undefined : hueDegrees, value, chroma);
  const { notation } = colour;
  if (notation.kind === 'computed') return [munsell];
  return notation.kind === 'munsell' ? [notation.text] : [notation.text, munsell];
}
