import fc from 'fast-check';
import { expect, it } from 'vitest';
import { reasonInWords } from '../../../grammar/index.js';
import { exif, joined } from '../../../tests/photographs/made.js';
import { cameraFacts } from '../exif.js';
import { sizeOfPicture } from '../size.js';
import { headOf } from './head.js';

const beginnings = [
  [0xff, 0xd8, 0xff, 0xe1],
  [0xff, 0xd8, 0xff, 0xc0, 0, 17, 8],
  [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13, 0x49, 0x48, 0x44, 0x52],
  [0x52, 0x49, 0x46, 0x46, 40, 0, 0, 0, 0x57, 0x45, 0x42, 0x50, 0x56, 0x50, 0x38, 0x20],
].map((bytes) => Uint8Array.from(bytes));

it('whatever follows the first bytes of a picture, its head is read or refused in a sentence', () => {
  fc.assert(
    fc.property(fc.constantFrom(...beginnings), fc.uint8Array({ maxLength: 400 }), (beginning, rest) => {
      const bytes = joined(beginning, rest);
      const answer = headOf(bytes);
      if (!answer.ok) expect(reasonInWords(answer.reason)).toMatch(/\.$/);
      expect(sizeOfPicture(bytes).ok).toBe(answer.ok);
    }),
    { numRuns: 2_000 },
  );
});

it('whatever is spoilt in what the camera tells, nothing is read beyond it', () => {
  const whole = exif({ orientation: 6, taken: '2026:03:09 17:20:00', space: 1, rule: 'R03' });
  const spoilings = fc.array(fc.tuple(fc.nat(whole.length - 1), fc.nat(255)), { maxLength: 12 });
  fc.assert(
    fc.property(spoilings, fc.nat(whole.length), (changes, length) => {
      const bytes = Uint8Array.from(whole);
      for (const [at, value] of changes) bytes[at] = value;
      const { orientation, taken } = cameraFacts(bytes.subarray(0, length));
      expect(orientation).toBeGreaterThanOrEqual(1);
      expect(orientation).toBeLessThanOrEqual(8);
      expect(taken ?? '2026-03-09').toMatch(/^\d{4}-\d{2}-\d{2}$/);
    }),
    { numRuns: 2_000 },
  );
});
