import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { bench, describe } from 'vitest';
import { reasonInWords } from '../../grammar/index.js';
import { decode } from '../../server/photograph/codec/decode.js';
import { headOf } from '../../server/photograph/head/head.js';
import { squarePhotograph } from '../../server/photograph/square.js';
import type { PicturePlace } from '../../server/plan/plan.js';

/** Side by side in one run: a photograph of 24 million pixels decoded, and squared up from its bytes on. */

/** 6000 x 4000 pixels, as a camera wrote them; of the package `exif` (MIT). */
const photograph = readFileSync(createRequire(import.meta.url).resolve('exif/test/sony-alpha-6000.jpg'));
const at = (across: number, down: number): PicturePlace => ({
  across: { value: across, in: 'parts' },
  down: { value: down, in: 'parts' },
});
const corners = [at(0.03, 0.02), at(0.97, 0.05), at(0.95, 0.97), at(0.02, 0.95)];
const answer = headOf(photograph);
if (!answer.ok) throw new Error(reasonInWords(answer.reason));
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
