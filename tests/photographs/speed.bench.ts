import { bench, describe } from 'vitest';
import { decode } from '../../server/photograph/codec/decode.js';
import { headOf } from '../../server/photograph/head/head.js';
import { squarePhotograph } from '../../server/photograph/square.js';
import type { PicturePlace } from '../../server/plan/plan.js';
import { mozJpeg, painted } from './made.js';

/** Side by side in one run: a photograph of 24 million pixels decoded, and squared up from its bytes on. */

const [width, height] = [6_000, 4_000];
/** Soft tones and the grain of a sensor, so that it is as large as what a camera writes. */
const photograph = await mozJpeg(
  painted(width, height, (x, y) => {
    const grain = ((Math.imul(x, 73_856_093) ^ Math.imul(y, 19_349_663)) >>> 7) % 25;
    return [
      120 + 90 * Math.sin(x / 300 + y / 900) + grain - 12,
      110 + 80 * Math.sin(y / 400) + grain - 12,
      90 + 60 * Math.sin((x + y) / 500) + grain - 12,
    ];
  }),
  { quality: 95, chroma_subsample: 2 },
);
const at = (across: number, down: number): PicturePlace => ({
  across: { value: across, in: 'parts' },
  down: { value: down, in: 'parts' },
});
const corners = [at(0.03, 0.02), at(0.97, 0.05), at(0.95, 0.97), at(0.02, 0.95)];
const answer = headOf(photograph);
if (!answer.ok) throw new Error(answer.reason);
const { head } = answer;

describe(`a JPEG of 24 million pixels and ${(photograph.length / 1e6).toFixed(0)} MB`, () => {
  const times = { iterations: 5, time: 0, warmupIterations: 2, warmupTime: 0 };
  bench('decoded alone', async () => void (await decode(photograph, head)), times);
  bench(
    'squared up',
    async () => void (await squarePhotograph(photograph, { path: 'a.jpg', corners, proportion: 1.5 })),
    times,
  );
});
