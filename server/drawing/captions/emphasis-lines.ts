import { areaName } from '../picture/path-signs.js';
import type { Reading } from '../views/reading.js';
import { rankedPlaces } from '../views/emphasis.js';
import type { LegendLine } from './legend.js';
import { numberedLine } from './path-lines.js';
import { partOrTimes } from './words.js';

/** The strong places by rank, with what meets there and how strong they are. */
export function emphasisLines(reading: Reading): readonly LegendLine[] {
  const places = rankedPlaces(reading);
  const { focal } = reading.measures.emphasis;
  if (places.length === 0) return [{ key: 'no emphasis', text: 'no border here draws the eye yet' }];
  const whole = focal === undefined ? 'the strongest place' : 'the focal point';
  return [
    { key: 'places', text: `strong places by rank, with their pull as a part of ${whole}’s` },
    ...places.map(({ rank, areas, share, focal: isFocal }) => {
      const [front, behind] = areas.map((area) => areaName(area, reading.plan.objects));
      const meeting = `${front} against ${behind}`;
      const text = isFocal ? `at the focal point, ${meeting}` : `${meeting}, ${partOrTimes(share)}`;
      return numberedLine(`place:${rank}`, rank, text);
    }),
  ];
}
