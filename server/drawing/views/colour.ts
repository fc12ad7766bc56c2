import { pathMark } from '../marks.js';
import { circlePath } from '../path-data.js';
import { constructionBoxes, focusMarks } from '../picture/construction.js';
import { hexOf, lineOn, mix } from '../picture/ink.js';
import { nameMarks } from '../picture/names.js';
import { flatTone } from './flat.js';
import { type PictureMarks, type Reading, type SeenObject, glazedPaintOf, seenObjects } from './reading.js';
import { shapeMarks } from '../picture/shapes.js';
import { roleSign } from '../picture/signs.js';

/** A colour is told on so many of its objects; the legend tells the rest. */
const MOST_OF_ONE_COLOUR = 6;

/** The colours laid in flat, as they will be painted, each named and with the sign of its role. */
export function drawColour(reading: Reading): PictureMarks {
  const { plan, layout } = reading;
  const ground = plan.canvas.ground.colour;
  const paint = flatTone(reading);
  const shapes = shapeMarks(reading, hexOf(ground), (object) => {
    const tone = paint(object);
    const edge = hexOf(mix(tone, lineOn(tone), 0.3));
    const glazed = glazedPaintOf(object, reading);
    return {
      ...(glazed === undefined ? {} : { glaze: hexOf(glazed) }),
      fill: hexOf(tone),
      stroke: { ink: edge, weight: 'hair' },
      hatch: hexOf(mix(tone, lineOn(tone), 0.6)),
    };
  });
  const { kept } = constructionBoxes(reading);
  const names = nameMarks(
    reading,
    namedInColour(seenObjects(reading)),
    {
      view: 'colour',
      text: ({ name, colour }) =>
        (colour?.named === undefined ? undefined : plan.colours[colour.named]?.name) ?? name,
      tone: (object) => (object && glazedPaintOf(object, reading)) ?? paint(object),
      sign: ({ colour }, subject, at, inks) =>
        colour?.role === undefined
          ? []
          : [
              pathMark(`${subject}:role:bedding`, circlePath(at, 0.42 * layout.em), {
                fill: inks.ground,
                subject,
              }),
              ...roleSign(`${subject}:role`, colour.role, at, 0.3 * layout.em, { ...inks, subject }),
            ],
    },
    { kept, spared: [] },
  );
  return {
    shapes,
    construction: focusMarks(reading, paint),
    ...names,
    taken: [...names.taken, ...kept],
  };
}

/** Those that matter most of each named colour, for a fence of thirty posts need not be told thirty times. */
function namedInColour(seen: readonly SeenObject[]): readonly SeenObject[] {
  const counts = new Map<number, number>();
  return seen.filter(({ object: { colour } }) => {
    if (colour?.named === undefined) return true;
    const count = (counts.get(colour.named) ?? 0) + 1;
    counts.set(colour.named, count);
    return count <= MOST_OF_ONE_COLOUR;
  });
}
