import type { SizeAnswer } from '../measure/photograph/photographs.js';
import { cameraFacts } from './exif.js';
import { headOf } from './head/head.js';
import { uprightSize } from './orientation.js';

/** How large a picture is, upright: by its head alone. Never throws, whatever the bytes. */
export function sizeOfPicture(bytes: Uint8Array): SizeAnswer {
  const answer = headOf(bytes);
  if (!answer.ok) return answer;
  return { ok: true, ...uprightSize(answer.head, cameraFacts(answer.head.exif).orientation) };
}
