import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { handIn, plan, plansThatAreSaved, written } from './hand-studio.js';
import { type Studio, artefact, eventually, openStudio, shape } from './studio.js';

describe('working by hand in the drawing', () => {
  const saved = plansThatAreSaved();
  let studio: Studio;
  let hand: ReturnType<typeof handIn>;

  beforeAll(async () => {
    studio = await openStudio({ plan, plans: saved.folder, size: { width: 1600, height: 1000 } });
    await studio.preview.locator(shape('jug')).waitFor();
    hand = handIn(studio);
  });
  afterAll(async () => {
    await studio?.workbench.close();
    saved.remove();
  });

  const keys = (...pressed: readonly string[]) =>
    pressed.reduce(async (before, key) => {
      await before;
      await studio.page.keyboard.press(key);
    }, Promise.resolve());
  const outline = (thing: string) =>
    studio.preview.locator(`.outlines [data-subject="${thing}"] .line`).first().getAttribute('d');
  const focus = (thing: string) => studio.preview.locator(`.outlines [data-subject="${thing}"]`).focus();

  /** As a painter would come back to the text as it was. */
  afterEach(async () => {
    for (let steps = 0; steps < 20 && Object.keys(hand.changed()).length > 0; steps += 1) {
      const before = JSON.stringify(hand.changed());
      // A key is lost while the editor is still on its way between text and page.
      await eventually(async () => {
        await focus('object:wall');
        await hand.stepBack();
        for (let looks = 0; looks < 30 && JSON.stringify(hand.changed()) === before; looks += 1)
          await studio.page.waitForTimeout(100);
        return JSON.stringify(hand.changed());
      }).not.toBe(before);
      // The text has the focus in between.
      await eventually(() =>
        studio.preview.locator('body').evaluate(({ ownerDocument }) => ownerDocument.hasFocus()),
      ).toBe(true);
    }
    expect(hand.changed()).toEqual({});
  });

  it('moves a thing with the mouse, as one edit of one line that one undo takes back', async () => {
    const before = await outline('object:jug');
    await hand.press([12, 14]);
    await hand.pull([8, 20.6]);
    await eventually(hand.told).toMatch(/^jug 4 cm left, 6\.6 cm down/);
    await studio.workbench.screenshot(artefact('hand-moving'));
    expect(hand.changed()).toEqual({});
    await hand.letGo();
    const moved = { 21: '  at      (8, 20.6)    // beside the cloth' };
    await eventually(hand.changed).toEqual(moved);
    await eventually(() => outline('object:jug')).not.toBe(before);

    await hand.stepBack();
    await eventually(hand.changed).toEqual({});
    await eventually(() => outline('object:jug')).toBe(before);
  });

  it('does again what was taken back', async () => {
    const before = await outline('object:jug');
    const moved = { 21: '  at      (11, 14)    // beside the cloth' };
    const further = { 21: '  at      (10, 14)    // beside the cloth' };
    await focus('object:jug');
    await keys('Alt+Shift+ArrowLeft');
    await eventually(hand.changed).toEqual(moved);
    await eventually(() => outline('object:jug')).not.toBe(before);
    const left = await outline('object:jug');
    await keys('Alt+Shift+ArrowLeft');
    await eventually(hand.changed).toEqual(further);

    await hand.stepBack();
    await eventually(hand.changed).toEqual(moved);
    await hand.stepBack();
    await eventually(hand.changed).toEqual({});
    await eventually(() => outline('object:jug')).toBe(before);
    // Two steps: a text that comes back to what was saved last counts as saved, even while another is being written.
    await hand.stepBack('Control+Shift+z');
    await eventually(() => outline('object:jug')).toBe(left);
    await hand.stepBack('Control+Shift+z');
    await eventually(hand.changed).toEqual(further);
  });

  it('leaves a click as it was: it selects the words', async () => {
    await hand.click([12, 14]);
    await eventually(studio.selection).toBe('Ln 19, Col 12 (3 selected)');
    expect(hand.changed()).toEqual({});
  });

  it('puts back what is let go of with Escape', async () => {
    const before = await outline('object:jug');
    await hand.press([12, 14]);
    await hand.pull([8, 20]);
    await eventually(() => outline('object:jug')).not.toBe(before);
    await keys('Escape');
    await eventually(() => outline('object:jug')).toBe(before);
    await hand.letGo();
    expect(await studio.preview.locator('.hand .ghost path').count()).toBe(0);
    expect(hand.changed()).toEqual({});
  });

  it('moves a thing by keys, and loses none that is pressed quickly', async () => {
    await focus('object:jug');
    await keys(...Array<string>(4).fill('Alt+Shift+ArrowRight'), 'Alt+ArrowUp', 'Alt+ArrowUp');
    await eventually(hand.changed).toEqual({ 21: '  at      (16, 13.8)    // beside the cloth' });
    await eventually(hand.told).toMatch(/^jug 4 cm right, 0\.2 cm up\.$|^jug .*up\.$/);
    expect(await studio.focused()).toEqual(['object:jug']);
  });

  it('moves a point of an outline, with the mouse and by keys', async () => {
    await hand.click([27, 23]);
    const handle = studio.preview.getByRole('button', { name: 'point 1 of cloth', exact: true });
    await handle.waitFor({ state: 'attached' });
    await studio.workbench.screenshot(artefact('hand-points'));
    await hand.drag([22, 18], [20, 16]);
    await eventually(hand.changed).toEqual({ 25: '  shape   outline (20, 16) (32, 17) (34, 26) (20, 25)' });
    await focus('object:cloth');
    await keys('g', 'g', 'ArrowLeft', 'Shift+ArrowUp');
    await eventually(hand.changed).toEqual({ 25: '  shape   outline (20, 16) (31.9, 16) (34, 26) (20, 25)' });
    await keys('Escape');
    expect(await studio.focused()).toEqual(['object:cloth']);
  });

  it('puts the focal point on a crossing, in its words', async () => {
    await hand.press([24, 12]);
    await hand.pull([24.5, 11.7]);
    await eventually(hand.told).toContain('on golden upper right');
    await hand.letGo();
    await eventually(hand.changed).toEqual({ 5: 'focus   upper right' });
  });

  it('moves a place of a lead', async () => {
    await focus('lead:fold');
    await hand.drag([4, 27], [6, 28]);
    await eventually(hand.changed).toEqual({ 28: 'lead    fold from (6, 28) to (22, 22)' });
  });

  it('moves and sizes as it is seen in the mirror', async () => {
    await studio.preview.locator('.views input[value="mirror"]').check({ force: true });
    await studio.preview.locator('.drawing svg[data-view="mirror"]').waitFor();
    await hand.drag([28, 14], [32, 20.6]);
    await eventually(hand.changed).toEqual({ 21: '  at      (8, 20.6)    // beside the cloth' });
    await eventually(() => outline('object:jug')).toContain('32');
    await hand.drag([29, 25.1], [27, 26.1]);
    await eventually(hand.changed).toEqual({
      20: '  shape   ellipse 8 x 10',
      21: '  at      (9, 21.1)    // beside the cloth',
    });
    await studio.preview.locator('.views input[value="drawing"]').check({ force: true });
    await studio.preview.locator('.drawing svg[data-view="drawing"]').waitFor();
  });

  it('goes on over a text that changes meanwhile', async () => {
    await hand.press([12, 14]);
    await hand.pull([10, 19]);
    writeFileSync(hand.file, written.join('\n').replace('at      (12, 14)', 'at      (13, 14)'));
    await eventually(() => studio.page.locator('.view-line', { hasText: '(13, 14)' }).count()).toBe(1);
    await eventually(() => studio.preview.locator('.hand-tag').innerText()).toContain('2 cm left');
    await hand.pull([8, 20.6]);
    await hand.letGo();
    await eventually(hand.changed).toEqual({ 21: '  at      (9, 20.6)    // beside the cloth' });
  });

  it('ends when what is held is taken out of the text, and writes nothing', async () => {
    await hand.press([12, 14]);
    await hand.pull([10, 19]);
    const without = written.filter((_, index) => index < 17 || index > 22);
    writeFileSync(hand.file, without.join('\n'));
    await eventually(hand.notice).toBe('jug is not in the drawing any more.');
    await hand.pull([8, 20.6]);
    await hand.letGo();
    expect(hand.text()).toEqual(without);
  });

  it('lets nothing snap when it is told so', async () => {
    const snap = hand.bar.getByRole('button', { name: 'Snap to the division' });
    await snap.click();
    await hand.drag([24, 12], [24.5, 11.7]);
    await eventually(hand.changed).toEqual({ 5: 'focus   (24.5, 11.7)' });
    await snap.click();
    expect(await snap.getAttribute('aria-pressed')).toBe('true');
  });

  it('sizes a thing by a corner of the box round it, and by a side that snaps', async () => {
    await hand.click([12, 14]);
    const corner = studio.preview.getByRole('button', { name: 'lower right corner of jug', exact: true });
    await corner.waitFor({ state: 'attached' });
    await hand.press([15, 18.5]);
    await hand.pull([17, 19.5]);
    await eventually(hand.told).toMatch(/^jug 8 × 10 cm/);
    await studio.workbench.screenshot(artefact('hand-sizing'));
    expect(hand.changed()).toEqual({});
    await hand.letGo();
    const sized = { 20: '  shape   ellipse 8 x 10', 21: '  at      (13, 14.5)    // beside the cloth' };
    await eventually(hand.changed).toEqual(sized);
    await hand.stepBack();
    await eventually(hand.changed).toEqual({});

    // The golden section of 40 cm lies at 15.28 cm.
    await focus('object:jug');
    await hand.press([15, 14]);
    await hand.pull([15.5, 15]);
    await eventually(hand.told).toMatch(/^jug 6\.3 × 9 cm; on a division line/);
    await hand.letGo();
    await eventually(hand.changed).toEqual({
      20: '  shape   ellipse 6.28 x 9',
      21: '  at      (12.14, 14)    // beside the cloth',
    });
  });

  it('sizes a thing in proportion with Shift, and by its handles with keys', async () => {
    await focus('object:jug');
    await hand.press([15, 18.5]);
    await studio.page.keyboard.down('Shift');
    await hand.pull([17, 21.5]);
    await hand.letGo();
    await studio.page.keyboard.up('Shift');
    await eventually(hand.changed).toEqual({
      20: '  shape   ellipse 8 x 12',
      21: '  at      (13, 15.5)    // beside the cloth',
    });
    await focus('object:jug');
    await keys('g', 'ArrowLeft', 'ArrowLeft', 'Shift+ArrowDown');
    await eventually(hand.changed).toEqual({
      20: '  shape   ellipse 8.2 x 11',
      21: '  at      (12.9, 16)    // beside the cloth',
    });
    await eventually(hand.told).toMatch(/^jug 8\.2 × 11 cm/);
    await keys('Escape');
    expect(await studio.focused()).toEqual(['object:jug']);
  });

  it('sizes and moves a thing with a finger', async () => {
    await focus('object:jug');
    const snap = hand.bar.getByRole('button', { name: 'Snap to the division' });
    await snap.click();
    await focus('object:jug');
    await hand.dragByFinger([15, 18.5], [17, 19.5]);
    await eventually(hand.changed).toEqual({
      20: '  shape   ellipse 8 x 10',
      21: '  at      (13, 14.5)    // beside the cloth',
    });
    await hand.dragByFinger([13, 14.5], [12, 16.5]);
    await eventually(hand.changed).toEqual({
      20: '  shape   ellipse 8 x 10',
      21: '  at      (12, 16.5)    // beside the cloth',
    });
    await snap.click();
  });

  it('makes an object larger by keys', async () => {
    await focus('object:jug');
    await keys('Alt+=');
    await eventually(hand.changed).toEqual({ 20: '  shape   ellipse 6.3 x 9.45' });
  });

  it('draws an ellipse, whose name can be typed over at once', async () => {
    await hand.bar.getByRole('button', { name: 'Draw: ellipse' }).click();
    await hand.drag([28, 2], [34, 6]);
    await eventually(studio.selection).toMatch(/\(9 selected\)$/);
    await studio.type('plum');
    await eventually(() => hand.text().join('\n')).toMatch(
      /^object {2}plum\n {2}shape {3}ellipse 6 x 4 at \(31, 4\)$/m,
    );
    expect(hand.text().filter((line) => !written.includes(line))).toHaveLength(2);
  });

  it('draws a lead point by point, by keys alone', async () => {
    await hand.bar.getByRole('button', { name: 'Draw: lead' }).press('Enter');
    await studio.preview
      .getByRole('application', { name: /^Cross, 20 cm from the left, 15 cm from the top/ })
      .waitFor();
    await keys(
      'Shift+ArrowLeft',
      ' ',
      'Shift+ArrowDown',
      'Shift+ArrowDown',
      'ArrowRight',
      ' ',
      'Shift+ArrowRight',
      ' ',
    );
    await keys('Backspace');
    await studio.workbench.screenshot(artefact('hand-drawing'));
    await keys('Enter');
    await eventually(() => hand.text().join('\n')).toMatch(/^lead {4}\S+ from \(19, 15\) to \(19\.1, 17\)$/m);
  });

  it('gives the marked object a value and a colour', async () => {
    const value = hand.bar.getByRole('group', { name: 'Value of jug' });
    // The drawing may still move while the bar above it loses a row.
    const mark = () =>
      eventually(async () => {
        await hand.click([12, 14]);
        return value.waitFor({ timeout: 3_000 }).then(
          () => 'marked',
          () => 'not marked',
        );
      }).toBe('marked');
    await mark();
    // Again after something else was marked by keys, which leaves the cursor of the text where it is.
    await focus('object:wall');
    await hand.bar.getByRole('group', { name: 'Value of wall' }).waitFor();
    await mark();
    await value.getByRole('radio', { name: 'step 3 of 5' }).check({ force: true });
    await eventually(hand.changed).toEqual({ 22: '  value   3' });
    await hand.bar.getByRole('radio', { name: 'rust' }).check({ force: true });
    await eventually(() => hand.text().join('\n')).toMatch(
      /^object {2}jug, dominant\n(?: {2}.*\n)*? {2}colour {2}rust$/m,
    );
    expect(hand.text()).toHaveLength(written.length + 1);
    await hand.bar.getByLabel('A colour of its own').fill('#336699');
    await eventually(() => hand.text().join('\n')).toMatch(/^ {2}colour {2}#336699$/m);
  });

  it('puts the focal point on a crossing that is chosen by name', async () => {
    await focus('focus');
    await hand.bar.getByLabel('Crossing of the focal point').selectOption('golden lower left');
    await eventually(hand.changed).toEqual({ 5: 'focus   lower left' });
  });

  it('writes nothing in a plan that can only be read, and says so', async () => {
    const { page, preview, workbench } = studio;
    await workbench.runCommand('View: Close All Editors');
    await workbench.openFile('pot.mahl');
    await workbench.runCommand('Mahlstick: Open Preview to the Side');
    await preview.locator(shape('pot')).waitFor();
    const before = await outline('object:pot');
    await hand.drag([14, 15], [20, 15]);
    await eventually(hand.notice).toContain('This plan can only be read');
    await eventually(hand.told).toContain('This plan can only be read');
    await eventually(() => outline('object:pot')).toBe(before);
    expect(readFileSync(path.join(workbench.folder, 'pot.mahl'), 'utf8')).toContain('(10, 8) to (18, 22)');
    await workbench.screenshot(artefact('hand-read-only'));
    expect(await page.locator('.tab.dirty').count()).toBe(0);
  });
});

describe('working by hand in the drawing, in the web', () => {
  let studio: Studio;

  beforeAll(async () => {
    studio = await openStudio({ host: 'web', plan, size: { width: 1600, height: 1000 } });
    await studio.preview.locator(shape('jug')).waitFor({ timeout: 60_000 });
  });
  afterAll(() => studio?.workbench.close());

  it('moves a thing with the mouse, and takes it back', async () => {
    const hand = handIn(studio);
    const line = (words: string) => studio.page.locator('.view-line', { hasText: words }).count();
    await hand.drag([12, 14], [8, 20.6]);
    await eventually(() => line('(8, 20.6)')).toBe(1);
    await studio.page.keyboard.press('Control+z');
    await eventually(() => line('(12, 14)')).toBe(1);
  });
});
