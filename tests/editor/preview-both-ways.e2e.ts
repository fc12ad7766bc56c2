import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Studio, artefact, eventually, openStudio, putAway, shape } from './studio.js';

describe.each(['node', 'web'] as const)(
  'text and drawing, each from the other, %s extension host',
  (host) => {
    let studio: Studio;

    beforeAll(async () => {
      studio = await openStudio({ host, plan: 'bowl.mahl' });
      await studio.preview.locator(shape('bowl')).waitFor({ timeout: 60_000 });
    });
    afterAll(() => studio?.workbench.close());

    const view = () => studio.preview.locator('.drawing svg').getAttribute('data-view');
    const atTheBowl = 'Ln 18, Col 13 (4 selected)';

    it('names the language in the status bar', async () => {
      const mode = studio.page.locator('[id="status.editor.mode"]');
      await eventually(() => mode.textContent()).toBe('Mahlstick Plan');
    });

    it('marks in the drawing what the cursor is at', async () => {
      const { current, goTo } = studio;
      await goTo('19');
      await eventually(current).toEqual(['object:bowl']);
      await studio.workbench.screenshot(artefact(`preview-${host}`));
      await goTo('23');
      await eventually(current).toEqual(['lead:edge']);
      await goTo('11');
      await eventually(current).toEqual([]);
    });

    it('draws what is typed, and finds anew; one undo takes both back', async () => {
      const { findings, goTo, page, shapeOf, spoken, type } = studio;
      const before = await shapeOf('bowl');
      await eventually(async () => (await findings()).join()).toContain('cover');
      const foundBefore = await findings();
      await goTo('19:26');
      await type('1');
      await eventually(() => shapeOf('bowl')).not.toBe(before);
      await eventually(findings).not.toEqual(foundBefore);
      await eventually(spoken).not.toBe('');

      await page.keyboard.press('Control+Z');
      await eventually(() => shapeOf('bowl')).toBe(before);
      await eventually(findings).toEqual(foundBefore);
    });

    it('selects the words of what is clicked', async () => {
      await studio.preview.locator(shape('bowl')).click({ force: true });
      await eventually(studio.selection).toBe(atTheBowl);
    });

    it('lets a thin line be hit from a little beside it', async () => {
      const hit = await studio.preview
        .locator('.outlines [data-subject="lead:edge"] .line')
        .first()
        .evaluate((line) => {
          if (!(line instanceof SVGPathElement)) return 'no path';
          const at = line
            .getPointAtLength(line.getTotalLength() / 3)
            .matrixTransform(line.getScreenCTM() ?? undefined);
          return document
            .elementFromPoint(at.x, at.y + 3)
            ?.closest('[data-subject]')
            ?.getAttribute('data-subject');
        });
      expect(hit).toBe('lead:edge');
    });

    it('selects the words of a finding that is clicked in the list', async () => {
      await studio.preview.locator('.findings li button', { hasText: 'The darks cover' }).click();
      await eventually(studio.selection).toBe('Ln 7, Col 23 (8 selected)');
    });

    it('changes the view by arrow keys, and by a command', async () => {
      const { page, preview, workbench } = studio;
      await preview.locator('.views input:checked').focus();
      await page.keyboard.press('ArrowRight');
      await eventually(view).toBe('notan');
      await page.keyboard.press('ArrowLeft');
      await eventually(view).toBe('drawing');

      await workbench.runCommand('Mahlstick: Choose View of the Preview');
      await page.getByPlaceholder('How do you want to see the plan?').waitFor();
      await workbench.pick('Colour');
      await eventually(view).toBe('colour');
      expect(await preview.locator('.views input:checked').getAttribute('value')).toBe('colour');
      await preview.locator('.views input[value="drawing"]').check({ force: true });
      await eventually(view).toBe('drawing');
    });

    it('lets nothing run or load that is not its own, and needs no more itself', async () => {
      const { preview, refusals } = studio;
      expect(refusals).toEqual([]);
      const policy = await preview
        .locator('meta[http-equiv="Content-Security-Policy"]')
        .getAttribute('content');
      expect(policy).toMatch(
        /^default-src 'none'; script-src 'nonce-[0-9a-f]{32}'; style-src [^;]+; img-src blob:; base-uri 'none'; form-action 'none'$/,
      );
      expect(policy).not.toContain('unsafe');
      const ran = await preview.locator('body').evaluate(async (body) => {
        const script = document.createElement('script');
        script.textContent = 'document.body.dataset.ran = "yes"';
        body.append(script);
        const fetched = await fetch(location.href).then(
          () => 'fetched',
          () => 'refused',
        );
        return { script: body.dataset['ran'] ?? 'refused', fetched };
      });
      expect(ran).toEqual({ script: 'refused', fetched: 'refused' });
      await eventually(() => refusals.length).toBeGreaterThan(0);
    });

    it('does not draw what is no scene', async () => {
      const { goTo, page, preview, selection, shapeOf, type } = studio;
      const before = await shapeOf('bowl');
      await preview
        .locator('body')
        .evaluate(() =>
          window.postMessage(
            { type: 'scene', epoch: 1_000, version: 1_000, scene: { view: 'drawing' } },
            '*',
          ),
        );
      await eventually(() => preview.locator('body').getAttribute('data-refused')).toBe('1');
      expect(await shapeOf('bowl')).toBe(before);
      await preview.locator(shape('bowl')).click({ force: true });
      await eventually(selection).toBe(atTheBowl);
      await goTo('19:26');
      await type('1');
      await eventually(() => shapeOf('bowl')).not.toBe(before);
      await page.keyboard.press('Control+Z');
      await eventually(() => shapeOf('bowl')).toBe(before);
    });

    it('shows what a hostile plan says as text', async () => {
      const { workbench } = studio;
      await workbench.runCommand('View: Close All Editors');
      await workbench.openFile('hostile.mahl');
      await workbench.runCommand('Mahlstick: Open Preview to the Side');
      const hostile = await workbench.preview();
      await hostile.locator('svg text', { hasText: '<img src=x' }).first().waitFor();
      await workbench.screenshot(artefact(`preview-hostile-${host}`));
      expect(await hostile.locator('body img, body svg script, body svg image[href], body a').count()).toBe(
        0,
      );
      expect(await hostile.locator('body').getAttribute('data-ran')).toBeNull();
    });

    it('helps to begin where nothing is drawn yet', async () => {
      const { workbench } = studio;
      await workbench.runCommand('View: Close All Editors');
      await workbench.openFile('blank.mahl');
      await workbench.runCommand('Mahlstick: Open Preview to the Side');
      const blank = await workbench.preview();
      await blank.getByRole('heading', { name: 'Nothing is drawn yet' }).waitFor();
      await workbench.screenshot(artefact(`preview-blank-${host}`));
    });

    it('is restored, with its view and the distance of a squint, when the window is loaded again', async () => {
      const { page, workbench } = studio;
      await workbench.runCommand('View: Close All Editors');
      await workbench.openFile('bowl.mahl');
      await workbench.runCommand('Mahlstick: Open Preview to the Side');
      await studio.preview.locator('.views input[value="squint"]').check({ force: true });
      await eventually(view).toBe('squint');
      const distance = studio.preview.getByRole('slider', { name: 'Seen from' });
      await distance.press('End');
      const told = await distance.getAttribute('aria-valuetext');
      expect(told).toMatch(/^\d[\d.]* m$/);
      const millimetres = 1_000 * Number.parseFloat(told ?? '');
      await putAway(page, new RegExp(`distanceMillimetres[\\\\"]*:${millimetres}\\D`, 'u'));
      await page.reload();
      const restored = await workbench.preview();
      await restored.locator('.drawing svg[data-view="squint"]').waitFor({ timeout: 60_000 });
      expect(await restored.locator('.views input:checked').getAttribute('value')).toBe('squint');
      const again = restored.getByRole('slider', { name: 'Seen from' });
      await eventually(() => again.getAttribute('aria-valuetext')).toBe(told);
    });
  },
);
