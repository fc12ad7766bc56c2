import { evenedOut } from '../../server/drawing/record/pictures.js';
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

/** Half as wide and high as it is measured, which is enough for a page of text. */
async function shown(picture: SquaredPicture): Promise<SquaredPicture> {
  const [width, height] = [Math.floor(picture.width / 2), Math.floor(picture.height / 2)];
  const mean = (column: number, row: number, channel: number): number =>
    [0, 1, picture.width, picture.width + 1].reduce(
      (sum, next) =>
        sum + (picture.lab[3 * (2 * row * picture.width + 2 * column + next) + channel] ?? 0) / 4,
      0,
    );
  const data = new Uint8ClampedArray(4 * width * height);
  for (let row = 0; row < height; row++) {
    for (let column = 0; column < width; column++) {
      const rgb = labToRgb([mean(column, row, 0), mean(column, row, 1), mean(column, row, 2)]);
      data.set([...rgb.map((channel) => 255 * channel), 255], 4 * (row * width + column));
    }
  }
  return {
    ...picture,
    lab: withoutGrain(picture),
    shown: { width, height, jpeg: await encode({ width, height, data }) },
  };
}

/** The grain is made up for what is measured. A small picture that has it can't be packed, and shows nothing of it. */
function withoutGrain({ lab, width, height }: SquaredPicture): Float32Array {
  const smooth = new Float32Array(lab.length);
  for (const channel of [0, 1, 2]) {
    const plane = lab.filter((_, at) => at % 3 === channel);
    evenedOut(plane, width, height).forEach((mean, pixel) => {
      smooth[3 * pixel + channel] = 2 * Math.round(mean / 2);
    });
  }
  return smooth;
}
