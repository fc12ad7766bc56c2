import { constructionBoxes, focusMarks } from './construction.js';
import { hexOf, lineOn, mix } from './ink.js';
import { nameMarks } from './names.js';
import { type PictureMarks, type Reading, isUnplanned, paintOf, seenObjects } from './reading.js';
import { shapeMarks } from './shapes.js';
import { roleSign } from './signs.js';

/** The colours laid in flat, as they will be painted, each named and with the sign of its role. */
export function drawColour(reading: Reading): PictureMarks {
  const { plan, layout } = reading;
  const ground = plan.canvas.ground.colour;
  const shapes = shapeMarks(reading, hexOf(ground), (object) => {
    const paint = isUnplanned(object) ? ground : paintOf(object, plan);
    const edge = hexOf(mix(paint, lineOn(paint), 0.3));
    return {
      fill: hexOf(paint),
      stroke: { ink: edge, weight: 'hair' },
      hatch: hexOf(mix(paint, lineOn(paint), 0.6)),
    };
  });
  const { kept } = constructionBoxes(reading);
  const names = nameMarks(
    reading,
    seenObjects(reading),
    ({ object, subject }) => {
      const paint = paintOf(object, plan);
      const ink = hexOf(lineOn(paint));
      const halo = hexOf(paint);
      const role = object.colour?.role;
      const named = object.colour?.named === undefined ? undefined : plan.colours[object.colour.named];
      const style = { text: named?.name ?? object.name, ink, halo };
      if (role === undefined) return style;
      const radius = 0.3 * layout.em;
      return {
        ...style,
        sign: (x, y) => roleSign(`${subject}:role`, role, { x, y }, radius, { ink, ground: halo, subject }),
      };
    },
    { kept, spared: [] },
  );
  return {
    shapes,
    construction: focusMarks(reading, ground),
    names: names.marks,
    taken: names.taken,
    leftOut: names.leftOut,
  };
}
