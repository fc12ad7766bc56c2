import { marked } from '../../grammar/marked.js';
import { type Reason, reasonOf } from '../../grammar/reason.js';

/** Larger files are refused, by the server and by a client that reads for it. */
export const fileSizeLimitBytes = 5 * 1024 * 1024;

/** Said of a file of more than so many bytes. */
export function tooLarge(limitBytes: number): Reason {
  return reasonOf(marked('This file is larger than {0} MB.'), limitBytes / 1024 / 1024);
}
