// @ts-check
import { setTimeout } from 'node:timers/promises';

/** What does not come to rest within this is taken for something that never does. */
const MOST_MILLISECONDS = 60_000;

/**
 * Waits until what is read stays the same: the drawing of a page comes before its findings.
 * @param {() => Promise<string>} read
 * @param {number} milliseconds for which it has not changed
 * @throws {Error} if it goes on changing for a minute
 */
export async function settled(read, milliseconds) {
  const end = Date.now() + MOST_MILLISECONDS;
  let text = '';
  for (let since = Date.now(); Date.now() - since < milliseconds; await setTimeout(100)) {
    const now = await read();
    if (now !== text) since = Date.now();
    if (since > end) throw new Error('The page does not come to rest.');
    text = now;
  }
}
