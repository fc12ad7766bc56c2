import { afterAll, beforeAll, describe, it } from 'vitest';
import { plansThatAreSaved, handIn, plan } from './hand-studio.js';
import { type Studio, eventually, openStudio, shape } from './studio.js';

/** A painter without a mouse: from the text to the drawing, through all that can be done there, and back. */
describe('the preview worked by keyboard alone', () => {
  const saved = plansThatAreSaved();
  let studio: Studio;
  let hand: ReturnType<typeof handIn>;

  beforeAll(async () => {
    studio = await openStudio({ plans: saved.folder, plan });
    hand = handIn(studio);
    await studio.preview.locator(shape('jug')).waitFor();
    await studio.page.mouse.move(0, 0);
  });
  afterAll(async () => {
    await studio?.workbench.close();
    saved.remove();
  });

  const keys = async (...pressed: string[]) => {
    for (const key of pressed) await studio.page.keyboard.press(key);
  };
  /** The name of what has the focus in the page, as it is read aloud or written. */
  const here = () =>
    studio.preview.locator('body').evaluate(() => {
      const at = document.activeElement;
      return at?.getAttribute('aria-label') ?? at?.getAttribute('value') ?? at?.textContent ?? '';
    });
  /** Goes on with Tab until something has the focus. */
  const tabTo = async (name: RegExp, key = 'Tab') => {
    for (let press = 0; press < 60; press++) {
      if (name.test(await here())) return;
      await studio.page.keyboard.press(key);
    }
    throw new Error(`Tab does not come to ${String(name)}, it is at '${await here()}'.`);
  };
  const view = () => studio.preview.locator('.drawing > svg').getAttribute('data-view');

  it('comes from the text into the drawing by the editor’s own keys', async () => {
    await studio.goTo('1:1');
    // To the group of editors at the right.
    await keys('Control+2');
    await eventually(() => studio.preview.locator('body').evaluate(() => document.hasFocus())).toBe(true);
    await tabTo(/^drawing$/);
  });

  it('chooses another view, and comes back', async () => {
    await keys('ArrowRight');
    await eventually(view).toBe('notan');
    await keys('ArrowLeft');
    await eventually(view).toBe('drawing');
  });

  it('makes the drawing larger, and fits it again', async () => {
    await tabTo(/^Zoom in$/);
    await keys('Enter');
    await eventually(() => studio.preview.locator('.zoomed-to').textContent()).toBe('125 %');
    await tabTo(/^Fit$/);
    await keys('Enter');
    await eventually(() => studio.preview.locator('.zoomed-to').textContent()).toBe('100 %');
  });

  it('finds the jug, and moves it', async () => {
    await keys('/');
    await studio.page.keyboard.type('ju');
    await keys('ArrowDown', 'Enter');
    await eventually(studio.focused).toEqual(['object:jug']);
    const before = await studio.shapeOf('jug');
    await keys('Alt+ArrowRight', 'Alt+ArrowRight', 'Alt+Shift+ArrowDown');
    await eventually(hand.changed).toEqual({ 21: '  at      (12.2, 15)    // beside the cloth' });
    await eventually(() => studio.shapeOf('jug')).not.toBe(before);
    // Presses that came while one was being written went with it, so there are three steps at most.
    await keys('Control+Z', 'Control+Z', 'Control+Z');
    await eventually(hand.changed).toEqual({});
    await eventually(() => studio.shapeOf('jug')).toBe(before);
    // The text had the focus for each step back, and gave it back.
    await eventually(studio.focused).toEqual(['object:jug']);
  });

  it('gives it another value', async () => {
    await tabTo(/^step \d of \d$|^\d$/, 'Shift+Tab');
    await keys('ArrowRight');
    await eventually(() => Object.values(hand.changed()).join()).toMatch(/^ {2}value {3}\d$/);
  });

  it('draws a rectangle, and its name has the caret', async () => {
    await tabTo(/^Draw: rectangle$/, 'Shift+Tab');
    await keys('Enter');
    await studio.preview.getByRole('application').waitFor();
    await keys('Shift+ArrowLeft', ' ', 'Shift+ArrowDown', 'Shift+ArrowRight', 'Shift+ArrowRight', ' ');
    await eventually(() => hand.text().join('\n')).toMatch(/^object {2}new-shape\n {2}shape {3}rectangle /m);
    await eventually(studio.selection).toMatch(/\(9 selected\)$/);
    await studio.type('book');
    await eventually(() => hand.text().join('\n')).toMatch(/^object {2}book$/m);
  });

  it('goes from a finding to its words', async () => {
    await keys('Control+2');
    await tabTo(/^(?:Warning|Hint): /);
    await keys('Enter');
    await eventually(studio.selection).toMatch(/selected\)$/);
  });

  it('can be left for the text', async () => {
    await keys('Control+1');
    await eventually(() => studio.preview.locator('body').evaluate(() => document.hasFocus())).toBe(false);
  });
});
