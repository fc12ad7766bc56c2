import { length } from '../../findings/words/words.js';
import type { Point } from '../../plan/geometry/point.js';
import { constructionBoxes, focusMarks, leadMarks } from '../picture/construction.js';
import { Labels } from '../picture/labels.js';
import {
  carriedOnMarks,
  plateSide,
  entryMarks,
  exitMarks,
  missed,
  missedBoxes,
  stopLineMarks,
  stopMarks,
} from '../picture/path-signs.js';
import { quietShapes, quietTone } from '../picture/quiet.js';
import { regionOf } from '../picture/region.js';
import { type PictureMarks, type Reading } from './reading.js';

/** Dark enough to know the picture by, light enough for chalk to stand out from all of it. */
const PATH_GREYS = { darkest: 6.8, lightest: 9.3 } as const;

const LABEL_SIZE_EMS = 0.88;
const LEAD_STRENGTH = 1.7;
/** Where along a lead its name is tried, as parts of it: not where leads meet. */
const NAME_PLACES = [0.35, 0.25, 0.45, 0.15, 0.55, 0.65];

/** Where the eye comes in, what it is led by, where it is meant to stop, and where it can leave. */
export function drawPath(reading: Reading): PictureMarks {
  const { layout, plan, subjects } = reading;
  const path = reading.measures.eyePath;
  const { em } = layout;
  const tone = quietTone(reading, PATH_GREYS);
  const ground = tone(undefined);
  const { kept, spared } = constructionBoxes(reading);
  const labels = new Labels(reading, tone, kept);
  const lines = [...spared, ...missedBoxes(reading, path)];
  // On the thing itself: its strongest place may be where another thing begins, and that thing a stop as well.
  const places = path.stops.map(({ at, object }) =>
    labels.standing(
      regionOf(reading.cells, object)?.heart ?? at,
      plateSide(em),
      [0, 0.25 * em, 0.8 * em, 1.4 * em],
      lines,
    ),
  );
  const style = {
    size: LABEL_SIZE_EMS * em,
    reaches: [0.5 * em, em, 1.7 * em],
    spared: lines,
  };
  const distances = missed(reading, path).flatMap(({ subject, miss, nearest, focus }) =>
    labels.write(`${subject}:miss:distance`, length(miss, plan.canvas), {
      ...style,
      places: [{ x: (nearest.x + focus.x) / 2, y: (nearest.y + focus.y) / 2 }, nearest],
      subject,
    }),
  );
  const names = plan.leads.flatMap((lead, index) => {
    const subject = subjects.leads[index];
    if (subject === undefined) return [];
    return labels.write(`${subject}:name`, lead.name, {
      ...style,
      places: partsOf(lead.points, NAME_PLACES),
      subject,
    });
  });

  return {
    shapes: quietShapes(reading, PATH_GREYS),
    construction: [
      ...stopLineMarks(reading, places, ground),
      ...carriedOnMarks(reading, path, ground),
      ...leadMarks(reading, ground, LEAD_STRENGTH),
      ...exitMarks(reading, path, ground),
      ...focusMarks(reading, tone),
    ],
    names: [
      ...entryMarks(reading, path),
      ...stopMarks(reading, path, places, ground),
      ...distances,
      ...names,
    ],
    taken: labels.taken,
    leftOut: 0,
  };
}

/** Places along a line, as parts of its length. */
function partsOf(points: readonly Point[], parts: readonly number[]): readonly Point[] {
  const lengths = points.map((point, index) => {
    const before = points[index - 1];
    return before === undefined ? 0 : Math.hypot(point.x - before.x, point.y - before.y);
  });
  const total = lengths.reduce((sum, each) => sum + each, 0);
  return parts.flatMap((part) => {
    let left = part * total;
    for (let index = 1; index < points.length; index++) {
      const from = points[index - 1] as Point;
      const to = points[index] as Point;
      const piece = lengths[index] ?? 0;
      if (left <= piece && piece > 0) {
        return [
          { x: from.x + ((to.x - from.x) * left) / piece, y: from.y + ((to.y - from.y) * left) / piece },
        ];
      }
      left -= piece;
    }
    return [];
  });
}
