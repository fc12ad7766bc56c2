import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { comparisonPage } from '../../server/drawing/comparison/page.js';
import { comparedScenes } from '../../server/drawing/comparison/scenes.js';
import { pageToText } from '../../server/drawing/headless.js';
import { markOf, worked } from '../../server/drawing/test-plans.js';
import { wallCard } from '../../server/drawing/wall/card.js';
import { wallPage } from '../../server/drawing/wall/page.js';
import { comparePlans, noChangeInWords } from '../../server/findings/comparison/compare.js';

// Pages with pictures side by side as they were when somebody last looked at them; `-u` writes them anew.

const kept = (name: string) => path.join(import.meta.dirname, 'side-by-side', name);
const shelf = `plan "A shelf at dusk"
canvas 60 x 40 cm
  ground #8f8271
divide thirds
focus lower right
budget value dark 40%, middle 35%, light 25% within 5%
colour clay #a4583a dominant
colour slate #4a5560 complement
object wall
  plane background
  shape rectangle (0, 0) to (60, 26)
  colour slate
  value 2
object board
  plane background
  shape rectangle (0, 26) to (60, 40)
  colour clay
  value 2
object jug, dominant
  shape smooth (36, 12) (41, 11) (46, 12) (48, 22) (44, 31) (38, 31) (34, 22)
  colour clay
  value 4
object plate, secondary
  shape ellipse 14 x 8 at (16, 28)
  colour slate
  value 5
object spoon
  plane foreground
  shape outline (22, 34) (34, 36) (34, 37) (22, 36)
  value 4
`;
const moved = shelf
  .replace('focus lower right', 'focus lower left')
  .replace(
    '(36, 12) (41, 11) (46, 12) (48, 22) (44, 31) (38, 31) (34, 22)',
    '(16, 9) (21, 8) (26, 9) (28, 19) (24, 28) (18, 28) (14, 19)',
  )
  .replace('at (16, 28)', 'at (44, 30)')
  .replace('ellipse 14 x 8', 'ellipse 18 x 8')
  .replace(/object spoon[^]*$/u, 'object moth\n  shape circle 4 at (50, 8)\n  colour clay\n  value 3\n');

const compared = (earlier: string, later: string) => comparePlans(worked(earlier), worked(later));

describe('pages with pictures side by side', () => {
  it('mark what moved, came and went in the pictures, and list it', async () => {
    const page = comparisonPage(
      compared(shelf, moved),
      { earlier: 'shelf.mahl before', later: 'shelf.mahl' },
      '',
    );
    await expect(pageToText(page, { theme: 'light' })).toMatchFileSnapshot(kept('compared.svg'));
  });

  it('show plans on a wall, those that can’t be read too', async () => {
    const hung = [shelf, moved].map((text, index) => ({
      name: `shelf-${index + 1}.mahl`,
      card: wallCard(worked(text), 'colour', 0),
    }));
    const page = wallPage(
      [...hung, { name: 'lost.mahl', unreadable: 'lost.mahl is not there.' }],
      'Plans in studies',
      2,
    );
    await expect(pageToText(page, { theme: 'light' })).toMatchFileSnapshot(kept('wall.svg'));
  });

  it('draw both to one scale, whatever their canvases are measured in', () => {
    const inches = shelf.replace('60 x 40 cm', '30 x 20 cm').replaceAll(/\(\d+, \d+\)/gu, '(5, 5)');
    const [left, right] = comparisonPage(compared(shelf, inches), { earlier: 'a', later: 'b' }, '').drawings;
    expect(left?.at.width).toBeCloseTo(2 * (right?.at.width ?? 0), 9);
    expect(left?.at.height).toBeCloseTo(2 * (right?.at.height ?? 0), 9);
  });

  it('have arrows from where things were to where they are, and none for what stayed', () => {
    const { earlier, later } = comparedScenes(compared(shelf, moved), 'drawing');
    expect(markOf(later, 'was:jug')).toMatchObject({ subject: 'object:jug', tip: 'Where jug was' });
    expect(markOf(later, 'way:jug:head')).toBeDefined();
    expect(markOf(later, 'was:focus')).toBeDefined();
    expect(markOf(later, 'was:wall')).toBeUndefined();
    expect(markOf(later, 'new:moth')).toBeDefined();
    expect(markOf(earlier, 'gone:spoon')).toBeDefined();
  });

  it('say so when nothing differs, and count what there is no room for', () => {
    const words = noChangeInWords(false);
    const same = comparisonPage(compared(shelf, `// again\n${shelf}`), { earlier: 'a', later: 'b' }, words);
    expect(same.marks).toContainEqual(expect.objectContaining({ text: words }));
    const many = readFileSync(new URL('../../examples/quinces.mahl', import.meta.url), 'utf8');
    const other = many
      .replaceAll(/value {3}\d/gu, 'value   3')
      .replaceAll(/edges {3}\w+\n/gu, 'edges   lost\n');
    const page = comparisonPage(compared(many, other), { earlier: 'a', later: 'b' }, '');
    expect(page.marks).toContainEqual(
      expect.objectContaining({ text: expect.stringMatching(/^and .* more changes$/u) as unknown }),
    );
    const lowest = Math.max(...page.marks.map((mark) => (mark.kind === 'text' ? mark.y : 0)));
    expect(lowest).toBeLessThan(page.height);
  });
});
