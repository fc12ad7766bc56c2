import { describe, expect, it } from 'vitest';
import { comparePlans } from '../findings/comparison/compare.js';
import { SERIF_WIDTH, textWidth } from './captions/text-width.js';
import { comparisonPage } from './comparison/page.js';
import type { Page } from './page.js';
import { worked } from './test-plans.js';
import { wallPage } from './wall/page.js';

const MARGIN = 14;
const long = 'Market women under the arcade on a wet November morning, '.repeat(8);

/** How wide the widest line of a title is in the broadest face that it may be set in, millimetres. */
function titleWidth({ marks }: Page): number {
  return Math.max(
    ...marks.map((mark) =>
      mark.kind === 'text' && mark.face === 'title' ? SERIF_WIDTH * textWidth(mark.text, mark.size) : 0,
    ),
  );
}

describe('a long title', () => {
  const plan = worked(`plan "${long}"\ncanvas 60 x 40 cm\n`);

  it.each([
    ['of a comparison', comparisonPage(comparePlans(plan, plan), { earlier: 'a', later: 'b' }, 'Same.')],
    ['of a wall', wallPage([{ name: 'a.mahl', unreadable: 'a.mahl is not there.' }], long)],
  ])('%s stays between the margins', (_, page) => {
    expect(titleWidth(page)).toBeGreaterThan(0);
    expect(titleWidth(page)).toBeLessThanOrEqual(page.width - 2 * MARGIN);
  });
});
