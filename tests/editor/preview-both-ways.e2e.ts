import path from 'node:path';
import type { FrameLocator } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Workbench, openWorkbench } from '../hosts/workbench.mjs';

const plans = path.resolve(import.meta.dirname, 'preview-plans');
const artefacts = path.resolve(import.meta.dirname, '../../artefacts');
/** Another build of the extension than this repository's, if one is named. */
const extension = process.env['MAHLSTICK_EXTENSION'] ? { extension: process.env['MAHLSTICK_EXTENSION'] } : {};
const bowl = '[data-layer="picture"] [data-subject="object:bowl"]';

const eventually = <T>(ask: () => Promise<T> | T) => expect.poll(ask, { timeout: 15_000 });

describe.each(['node', 'web'] as const)(
  'text and drawing, each from the other, %s extension host',
  (host) => {
    let workbench: Workbench;
    let preview: FrameLocator;
    const refusals: string[] = [];

    beforeAll(async () => {
      workbench = await openWorkbench({ host, plans, ...extension });
      workbench.page.setDefaultTimeout(20_000);
      workbench.page.on('console', (message) => {
        if (/content security policy/i.test(message.text())) refusals.push(message.text());
      });
      await workbench.openFile('bowl.mahl');
      await workbench.runCommand('Mahlstick: Open Preview to the Side');
      preview = await workbench.preview();
      await preview.locator(bowl).waitFor();
    });
    afterAll(() => workbench?.close());

    const keyboard = () => workbench.page.keyboard;
    const outline = () => preview.locator(bowl).getAttribute('d');
    const findings = () => preview.locator('.findings li').allInnerTexts();
    const current = () => preview.locator('.outlines [aria-current]').evaluateAll(subjects);
    const focused = () => preview.locator('.outlines g:focus').evaluateAll(subjects);
    const selection = () => workbench.page.locator('[id="status.editor.selection"]').innerText();

    function subjects(groups: readonly Element[]): (string | null)[] {
      return groups.map((group) => group.getAttribute('data-subject'));
    }

    async function goTo(place: string): Promise<void> {
      await keyboard().press('Control+G');
      await keyboard().type(place);
      await keyboard().press('Enter');
    }

    it('marks in the drawing what the cursor is at', async () => {
      await goTo('19');
      await eventually(current).toEqual(['object:bowl']);
      await goTo('23');
      await eventually(current).toEqual(['lead:edge']);
      await goTo('11');
      await eventually(current).toEqual([]);
    });

    it('draws what is typed, and finds anew; one undo takes both back', async () => {
      const [before, foundBefore] = [await outline(), await findings()];
      expect(foundBefore.join()).toContain('cover');
      await goTo('19:26');
      await keyboard().type('1');
      await eventually(outline).not.toBe(before);
      await eventually(findings).not.toEqual(foundBefore);
      expect(await preview.locator('.spoken').getAttribute('role')).toBe('status');
      await eventually(() => preview.locator('.spoken').innerText()).not.toBe('');

      await keyboard().press('Control+Z');
      await eventually(outline).toBe(before);
      await eventually(findings).toEqual(foundBefore);
    });

    it('selects the words of what is clicked', async () => {
      await preview.locator(bowl).click({ force: true });
      await eventually(selection).toBe('Ln 18, Col 13 (4 selected)');
    });

    it('lets a thin line be hit from a little beside it', async () => {
      const hit = await preview
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
      await preview.locator('.findings li button', { hasText: 'The darks cover' }).click();
      await eventually(selection).toBe('Ln 7, Col 23 (8 selected)');
    });

    it('can be gone through and chosen from by keyboard alone', async () => {
      await preview.locator('.views input:checked').focus();
      await eventually(() => preview.locator('.views input:focus').count()).toBe(1);
      await keyboard().press('Tab');
      const first = await focused();
      expect(first).toHaveLength(1);
      await keyboard().press('ArrowDown');
      expect(await focused()).not.toEqual(first);
      for (let step = 0; step < 12 && (await focused())[0] !== 'object:bowl'; step++)
        await keyboard().press('ArrowDown');
      const item = preview.locator('.outlines g:focus');
      expect(await item.getAttribute('role')).toBe('button');
      expect(await item.getAttribute('aria-label')).toMatch(/^Bowl: .*, line 18$/);
      await keyboard().press('Enter');
      await eventually(selection).toBe('Ln 18, Col 13 (4 selected)');
    });

    it('changes the view by arrow keys, and by a command', async () => {
      await preview.locator('.views input:checked').focus();
      await keyboard().press('ArrowRight');
      const view = () => preview.locator('.drawing svg').getAttribute('data-view');
      await eventually(view).toBe('notan');
      await workbench.page.screenshot({ path: path.join(artefacts, `preview-notan-${host}.png`) });
      await keyboard().press('ArrowLeft');
      await eventually(view).toBe('drawing');

      await workbench.runCommand('Mahlstick: Choose View of the Preview');
      await workbench.page.getByPlaceholder('How do you want to see the plan?').waitFor();
      await keyboard().type('Colour');
      await keyboard().press('Enter');
      await eventually(view).toBe('colour');
      expect(await preview.locator('.views input:checked').getAttribute('value')).toBe('colour');
      await preview.locator('.views input[value="drawing"]').check({ force: true });
      await eventually(view).toBe('drawing');
    });

    it('lets nothing run or load that is not its own, and needs no more itself', async () => {
      expect(refusals).toEqual([]);
      const policy = await preview
        .locator('meta[http-equiv="Content-Security-Policy"]')
        .getAttribute('content');
      expect(policy).toMatch(
        /^default-src 'none'; script-src 'nonce-[0-9a-f]{32}'; style-src [^;]+; base-uri 'none'; form-action 'none'$/,
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
      const before = await outline();
      await preview
        .locator('body')
        .evaluate(() =>
          window.postMessage(
            { type: 'scene', epoch: 1_000, version: 1_000, scene: { view: 'drawing' } },
            '*',
          ),
        );
      await eventually(() => preview.locator('body').getAttribute('data-refused')).toBe('1');
      expect(await outline()).toBe(before);
      await preview.locator(bowl).click({ force: true });
      await eventually(selection).toBe('Ln 18, Col 13 (4 selected)');
      await goTo('19:26');
      await keyboard().type('1');
      await eventually(outline).not.toBe(before);
      await keyboard().press('Control+Z');
      await eventually(outline).toBe(before);
    });

    it('is restored, with its view, when the window is loaded again', async () => {
      await preview.locator('.views input[value="values"]').check({ force: true });
      await eventually(() => preview.locator('.drawing svg').getAttribute('data-view')).toBe('values');
      // VS Code in a browser writes what it will restore every five seconds.
      await workbench.page.waitForTimeout(6_000);
      await workbench.page.reload();
      preview = await workbench.preview();
      await preview.locator('.drawing svg[data-view="values"]').waitFor();
      expect(await preview.locator('.views input:checked').getAttribute('value')).toBe('values');
    });

    it('helps to begin where nothing is drawn yet', async () => {
      await workbench.runCommand('View: Close All Editors');
      await workbench.openFile('blank.mahl');
      await workbench.runCommand('Mahlstick: Open Preview to the Side');
      const blank = await workbench.preview();
      await blank.getByRole('heading', { name: 'Nothing is drawn yet' }).waitFor();
      await workbench.screenshot(path.join(artefacts, `preview-blank-${host}.png`));
    });

    it('shows what a hostile plan says as text', async () => {
      await workbench.runCommand('View: Close All Editors');
      await workbench.openFile('hostile.mahl');
      await workbench.runCommand('Mahlstick: Open Preview to the Side');
      const hostile = await workbench.preview();
      await hostile.locator('svg text', { hasText: '<img src=x' }).first().waitFor();
      expect(await hostile.locator('body img, body svg script, body svg image').count()).toBe(0);
      expect(await hostile.locator('body').getAttribute('data-ran')).toBeNull();
    });
  },
);
