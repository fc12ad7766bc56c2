import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Studio, artefact, eventually, openStudio, shape } from './studio.js';

describe('the toolbar of the preview, by keyboard alone', () => {
  let studio: Studio;

  beforeAll(async () => {
    studio = await openStudio({ plan: 'bowl.mahl' });
    await studio.preview.locator(shape('bowl')).waitFor();
  });
  afterAll(() => studio?.workbench.close());

  const button = (name: string) => studio.preview.getByRole('button', { name, exact: true });
  const zoomed = () => studio.preview.locator('.zoomed-to').textContent();
  const across = (selector: string) =>
    studio.preview
      .locator(selector)
      .first()
      .evaluate((found) => found.getBoundingClientRect().width);

  it('is gone through with Tab, and each control has a name and a tooltip', async () => {
    const { page, preview } = studio;
    // In a panel of this width some of them wait behind a button.
    await button('More').press('Enter');
    await preview.locator('.views input:checked').focus();
    const names: string[] = [];
    for (let press = 0; press < 15; press++) {
      await page.keyboard.press('Tab');
      names.push(
        await preview.locator('body').evaluate(() => {
          const at = document.activeElement;
          return at?.closest('.tool-row') && at instanceof HTMLElement && at.title !== ''
            ? (at.getAttribute('aria-label') ?? at.textContent)
            : '';
        }),
      );
    }
    expect(names.filter((name) => name !== '')).toEqual([
      'Zoom out',
      'Zoom in',
      'Fit',
      'Picture',
      'Find an object or lead',
      'More',
      'Division',
      'Grid',
      'Names',
      'Leads',
      'Findings',
      'Glazes',
      'Copy image',
      'Export…',
    ]);
  });

  it('zooms by keys and buttons, sharp, and fits the page again', async () => {
    const { page, workbench } = studio;
    const usual = await across('.drawing svg');
    await button('Zoom in').focus();
    await page.keyboard.press('Enter');
    await eventually(zoomed).toBe('125 %');
    await page.keyboard.press('+');
    await page.keyboard.press('+');
    await eventually(zoomed).toBe('200 %');
    expect((await across('.drawing svg')) / usual).toBeCloseTo(2, 1);
    await page.keyboard.press('-');
    await eventually(zoomed).toBe('150 %');
    await workbench.screenshot(artefact('preview-bar-zoomed'));

    const box = studio.preview.locator('.drawing');
    await box.focus();
    const before = await box.evaluate(({ scrollLeft }) => scrollLeft);
    await page.keyboard.press('ArrowRight');
    await eventually(() => box.evaluate(({ scrollLeft }) => scrollLeft)).toBeGreaterThan(before);

    await page.keyboard.press('p');
    const picture = () => across('[data-layer="picture"] [data-key="ground"]');
    await eventually(async () => (await picture()) / (await across('.drawing'))).toBeGreaterThan(0.9);
    await workbench.screenshot(artefact('preview-bar-picture'));
    await page.keyboard.press('0');
    await eventually(zoomed).toBe('100 %');
    expect(await across('.drawing svg')).toBeCloseTo(usual, 0);
  });

  it('keeps what is under the pointer there while the wheel zooms, and stays as large from view to view', async () => {
    const { page, preview } = studio;
    const box = await preview.locator(shape('bowl')).boundingBox();
    if (box === null) throw new Error('The bowl is not seen.');
    const at = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
    await page.mouse.move(at.x, at.y);
    await page.keyboard.down('Control');
    await page.mouse.wheel(0, -100);
    await page.mouse.wheel(0, -100);
    await page.keyboard.up('Control');
    await eventually(zoomed).not.toBe('100 %');
    await eventually(async () => {
      const after = await preview.locator(shape('bowl')).boundingBox();
      return after === null
        ? 99
        : Math.hypot(after.x + after.width / 2 - at.x, after.y + after.height / 2 - at.y);
    }).toBeLessThan(3);
    const told = await zoomed();
    const size = await across('[data-layer="picture"] [data-key="ground"]');
    await preview.locator('.views input:checked').focus();
    await page.keyboard.press('ArrowRight');
    await preview.locator('.drawing svg[data-view="notan"]').waitFor();
    expect(await zoomed()).toBe(told);
    expect(await across('[data-layer="picture"] [data-key="ground"]')).toBeCloseTo(size, 0);
    await page.keyboard.press('ArrowLeft');
    await preview.locator('.drawing svg[data-view="drawing"]').waitFor();
  });

  it('draws the drawing along by the middle button, and selects nothing by it', async () => {
    const { page, preview } = studio;
    const box = preview.locator('.drawing');
    await page.keyboard.press('+');
    await page.keyboard.press('+');
    const place = await box.boundingBox();
    if (place === null) throw new Error('The drawing is not seen.');
    const from = await box.evaluate(({ scrollLeft, scrollTop }) => ({ scrollLeft, scrollTop }));
    await page.mouse.move(place.x + place.width / 2, place.y + place.height / 2);
    await page.mouse.down({ button: 'middle' });
    await page.mouse.move(place.x + place.width / 2 + 40, place.y + place.height / 2 + 30, { steps: 4 });
    await page.mouse.up({ button: 'middle' });
    await eventually(() => box.evaluate(({ scrollLeft, scrollTop }) => ({ scrollLeft, scrollTop }))).toEqual({
      scrollLeft: from.scrollLeft - 40,
      scrollTop: from.scrollTop - 30,
    });
    expect(await preview.locator('body').evaluate(() => document.hasFocus())).toBe(true);
  });

  it('scrolls to what the cursor is at, and leaves the focus in the text', async () => {
    const { goTo, page, preview, workbench } = studio;
    const inSight = () =>
      preview.locator('.drawing').evaluate((drawing) => {
        const around = drawing.getBoundingClientRect();
        const { left, right, top, bottom } =
          drawing.querySelector('.outlines [data-subject="object:bowl"]')?.getBoundingClientRect() ?? around;
        return left < around.right && right > around.left && top < around.bottom && bottom > around.top;
      });
    for (let press = 0; press < 3; press++) await page.keyboard.press('+');
    await preview.locator('.drawing').evaluate((drawing) => drawing.scrollTo(0, drawing.scrollHeight));
    expect(await inSight()).toBe(false);
    await workbench.runCommand('View: Focus First Editor Group');
    await goTo('19');
    await eventually(inSight).toBe(true);
    expect(await preview.locator('body').evaluate(() => document.hasFocus())).toBe(false);
  });

  it('hides what lies over the picture, so that it can be neither seen nor gone to', async () => {
    const { page, preview, workbench } = studio;
    const outline = preview.locator('.outlines [data-subject="lead:edge"]');
    await button('Fit').focus();
    await page.keyboard.press('0');
    for (const name of ['Division', 'Names', 'Leads', 'Findings']) {
      await button(name).focus();
      expect(await button(name).getAttribute('aria-pressed')).toBe('true');
      await page.keyboard.press('Space');
      await eventually(() => button(name).getAttribute('aria-pressed')).toBe('false');
    }
    await eventually(() => outline.count()).toBe(0);
    await eventually(() => preview.locator('[data-layer="names"] text').count()).toBe(0);
    await eventually(() => preview.locator('[data-layer="findings"] *').count()).toBe(0);
    expect(await preview.locator('.drawing svg > desc').textContent()).toContain('Hidden in the drawing:');
    expect(await preview.locator('.findings li').count()).toBeGreaterThan(0);
    await workbench.screenshot(artefact('preview-bar-hidden'));
    await button('Leads').focus();
    await page.keyboard.press('Space');
    await eventually(() => outline.count()).toBe(1);
  });

  it('finds a thing by a part of its name, marks it and goes to it', async () => {
    const { page, preview, focused, workbench } = studio;
    await button('Fit').focus();
    await page.keyboard.press('/');
    const field = preview.getByRole('combobox', { name: 'Find an object or lead' });
    await eventually(() => field.evaluate((input) => input === document.activeElement)).toBe(true);
    await page.keyboard.type('O');
    const options = preview.getByRole('option');
    await eventually(() => options.allTextContents()).toEqual(['clothobject', 'bowlobject']);
    await page.keyboard.press('ArrowDown');
    await eventually(() =>
      preview
        .locator('.outlines .pointed')
        .evaluateAll((all) => all.map((each) => each.getAttribute('data-subject'))),
    ).toEqual(['object:bowl']);
    await workbench.screenshot(artefact('preview-bar-find'));
    await page.keyboard.press('Enter');
    await eventually(focused).toEqual(['object:bowl']);
    expect(await field.getAttribute('aria-expanded')).toBe('false');

    await page.keyboard.press('Control+F');
    await eventually(() => field.evaluate((input) => input === document.activeElement)).toBe(true);
    await page.keyboard.type('pear');
    await preview.getByText('Nothing is called that.').waitFor();
  });
});
