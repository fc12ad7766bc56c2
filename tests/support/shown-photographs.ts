import type { Measures } from '../../server/measure/measures.js';
import type { SquaredPicture } from '../../server/measure/photograph/photographs.js';
import type { SittingRecord } from '../../server/measure/photograph/record.js';
import { encode } from '../../server/photograph/codec/encode.js';
import { labToRgb } from '../../server/plan/colour/srgb.js';

/** The same measures, with photographs that can be drawn: those that tests make have pixels to be measured only. */
export async function withShownPhotographs(measures: Measures): Promise<Measures> {
  const { record } = measures;
  if (!record) return measures;
  const sittings = await Promise.all(
    record.sittings.map(async (each): Promise<SittingRecord> =>
      each.is === 'measured' ? { ...each, picture: await shown(each.picture) } : each,
    ),
  );
  return { ...measures, record: { ...record, sittings } };
}

async function shown(picture: SquaredPicture): Promise<SquaredPicture> {
  const { width, height, lab } = picture;
  const data = new Uint8ClampedArray(4 * width * height);
  for (let pixel = 0; pixel < width * height; pixel++) {
    const [l = 0, a = 0, b = 0] = lab.subarray(3 * pixel, 3 * pixel + 3);
    data.set([...labToRgb([l, a, b]).map((channel) => 255 * channel), 255], 4 * pixel);
  }
  return { ...picture, shown: { width, height, jpeg: await encode({ width, height, data }) } };
}
