import { readFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { compose } from '../../server/drawing/compose.js';
import { worked } from '../../server/drawing/test-plans.js';
import { type Studio, eventually, openStudio, plans, shape } from './studio.js';

const written = readFileSync(path.join(plans, 'bowl.mahl'), 'utf8');
const corner = '(32, 19.5)';

/** The outline of the bowl as a text draws it, worked out here. */
function outlineOf(text: string): string {
  const { plan, measures, findings } = worked(text);
  const marks = compose(plan, measures, findings, 'drawing').layers.flatMap((layer) => layer.marks);
  const bowl = marks.find((mark) => mark.kind === 'path' && mark.subject === 'object:bowl');
  return bowl?.kind === 'path' ? bowl.d : '';
}

describe.each(['node', 'web'] as const)(
  'a drawing beside a text that is typed, %s extension host',
  (host) => {
    let studio: Studio;

    beforeAll(async () => {
      studio = await openStudio({ host, plan: 'bowl.mahl' });
      await studio.preview.locator(shape('bowl')).waitFor();
    });
    afterAll(() => studio?.workbench.close());

    it('is of the last of a hundred keys, and goes back to none before it', async () => {
      const { goTo, page, preview, shapeOf } = studio;
      await preview.locator(shape('bowl')).evaluate((bowl) => {
        const drawn: (string | null)[] = [];
        Object.assign(window, { drawnOutlines: drawn });
        new MutationObserver(() => drawn.push(bowl.getAttribute('d'))).observe(bowl, {
          attributeFilter: ['d'],
        });
      });
      // Behind the 32 of the lower right corner, which the keys make wider and back, and leave a little wider.
      await goTo('19:35');
      for (let round = 0; round < 49; round++) {
        await page.keyboard.press(String(round % 10));
        await page.keyboard.press('Backspace');
      }
      await page.keyboard.type('.5');
      const last = outlineOf(written.replace(corner, '(32.5, 19.5)'));
      expect(last).not.toBe('');
      await eventually(() => shapeOf('bowl')).toBe(last);
      // The findings come after the drawing; then nothing more is on its way.
      await page.waitForTimeout(1_000);
      const drawn = await preview
        .locator('body')
        .evaluate(() => (window as unknown as { drawnOutlines: string[] }).drawnOutlines);
      expect(drawn.at(-1)).toBe(last);
      expect(drawn.filter((outline) => outline === last)).toHaveLength(1);
      expect(await shapeOf('bowl')).toBe(last);
    });

    it('draws what can be read of a plan with errors, says what can’t, and all again when it is mended', async () => {
      const { findings, goTo, page, preview, shapeOf, type } = studio;
      const text = page.locator('.editor-group-container.active .view-lines').first();
      await goTo('13:99');
      await page.keyboard.press('Enter');
      await type('shaep circle');
      await eventually(findings).toEqual(expect.arrayContaining([expect.stringMatching(/shaep/)]));
      expect(await shapeOf('bowl')).not.toBeNull();
      expect(await preview.locator(shape('cloth')).count()).toBeGreaterThan(0);
      await goTo('20:99');
      for (let key = 0; key < 3; key++) await page.keyboard.press('Backspace');
      await eventually(() => text.innerText()).not.toContain('19.5)');
      await eventually(() => preview.locator(shape('bowl')).count()).toBe(0);
      await type('.5)');
      await eventually(() => preview.locator(shape('bowl')).count()).toBeGreaterThan(0);
      await goTo('14:1');
      await page.keyboard.press('Control+Shift+K');
      await eventually(async () => (await findings()).join()).not.toMatch(/shaep/);
    });

    it('begins a new plan by asking for canvas, division and crossing', async () => {
      const { page, workbench } = studio;
      await workbench.runCommand('Mahlstick: New Plan...');
      await workbench.pick('40 x 30 cm');
      await workbench.pick('Upright');
      await workbench.pick('thirds');
      await workbench.pick('lower left');
      await page.locator('.tab', { hasText: /^Preview Untitled/ }).waitFor();
      await page.keyboard.type('First pear');
      const text = page.locator('.editor-group-container.active .view-lines').first();
      const lines = async () => (await text.innerText()).replaceAll('\u00a0', ' ').split('\n');
      for (const line of ['plan    "First pear"', 'canvas  30 x 40 cm', 'divide  thirds'])
        await eventually(lines).toContain(line);
      expect((await lines()).join('\n')).toMatch(/^focus {3}lower left/m);
    });
  },
);
