import { expect, test } from 'vitest';
import { rec2020FromCulori, rec2020ToCulori } from './rec2020.js';

test('a display grey of 0.5 is the camera grey of the same light', () => {
  // 0.5 ^ 2.4 = 0.18946 of the light; ITU-R BT.2020 table 4 encodes it as 1.0993 x 0.18946 ^ 0.45 - 0.0993.
  const [encoded] = rec2020ToCulori([0.5, 0.5, 0.5]);
  expect(encoded).toBeCloseTo(1.0993 * 0.18946 ** 0.45 - 0.0993, 4);
});

test('channels come back, below nought and above one as well', () => {
  const back = rec2020FromCulori(rec2020ToCulori([-0.2, 0.01, 1.1]));
  [-0.2, 0.01, 1.1].forEach((channel, index) => expect(back[index]).toBeCloseTo(channel, 9));
});
