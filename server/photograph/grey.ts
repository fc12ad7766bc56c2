import { marked } from '../../grammar/marked.js';
import type { Point } from '../plan/geometry/point.js';
import type { Pixels } from './codec/decode.js';
import type { Row } from './colour/matrix.js';
import type { Tables } from './resample.js';

/** What the linear channels are to be multiplied with, so that the grey patch is a neutral grey as light as it was. */
export interface GreyBalance {
  readonly factors: Row;
  readonly cast: number;
  readonly fault?: string;
}

/** The patch is a disc of this part of the longer side of the photograph, and no smaller than some pixels. */
const RADIUS = 0.005;
const LEAST_RADIUS = 3;
/** More of it at the ends of a channel than this, and its mean is no longer what was seen. */
const MOST_CLIPPED = 0.02;
/** Parts of white; below the first, noise and packing weigh as much as the colour. */
const DARKEST = 0.02;
const LIGHTEST = 0.95;
/** Common practice, no source: daylight taken for the light of a bulb, or the other way round, comes to less. */
const STRONGEST_CAST = 3;

const asItIs: Row = [1, 1, 1];

/**
 * Balances a photograph by a place in it that is a neutral grey, by factors for its linear channels.
 * @param at in pixels as they are stored
 * @param light the part of each linear channel in the light that is seen (the row for Y)
 */
export function greyBalance(pixels: Pixels, tables: Tables, at: Point, light: Row): GreyBalance {
  const { data, width, height } = pixels;
  const radius = Math.max(LEAST_RADIUS, RADIUS * Math.max(width, height));
  const top = tables[0].length - 1;
  const step = Math.round(top / 255);
  const sums = [0, 0, 0];
  let [count, clipped] = [0, 0];
  for (let y = Math.max(0, Math.floor(at.y - radius)); y < Math.min(height, at.y + radius); y++) {
    for (let x = Math.max(0, Math.floor(at.x - radius)); x < Math.min(width, at.x + radius); x++) {
      if (Math.hypot(x + 0.5 - at.x, y + 0.5 - at.y) > radius) continue;
      const from = 4 * (y * width + x);
      const levels = [data[from] ?? 0, data[from + 1] ?? 0, data[from + 2] ?? 0];
      levels.forEach(
        (level, channel) => (sums[channel] = (sums[channel] ?? 0) + (tables[channel as 0][level] ?? 0)),
      );
      if (Math.max(...levels) >= top - step || Math.min(...levels) <= 0) clipped++;
      count++;
    }
  }
  const unused = (fault: string, cast = 1): GreyBalance => ({ factors: asItIs, cast, fault });
  if (count === 0)
    return unused(marked('The grey patch lies outside the photograph, so its colours are left as they are.'));
  const mean = sums.map((sum) => sum / count) as unknown as Row;
  const [red, green, blue] = mean;
  const seen = red * light[0] + green * light[1] + blue * light[2];
  if (clipped > MOST_CLIPPED * count || seen > LIGHTEST)
    return unused(
      seen > 0.2
        ? marked(
            'The grey patch is burnt out, so its colour can’t be told, and the photograph is left as it is. Expose less, or point at a darker grey.',
          )
        : marked(
            'A channel of the grey patch is at its end, so its colour can’t be told, and the photograph is left as it is. Point at another grey.',
          ),
    );
  if (seen < DARKEST)
    return unused(
      marked(
        'The grey patch is too dark to balance by, so the photograph is left as it is. Point at a lighter grey.',
      ),
    );
  const factors: Row = [seen / red, seen / green, seen / blue];
  const cast = Math.max(...factors) / Math.min(...factors);
  if (!(cast <= STRONGEST_CAST))
    return unused(
      marked(
        'What `grey` points at is too strong a colour for a grey seen in tinted light, so the photograph is left as it is. Look at its place.',
      ),
      Number.isFinite(cast) ? cast : STRONGEST_CAST,
    );
  return { factors, cast };
}
