import { readFileSync } from 'node:fs';
import path from 'node:path';
import type { FrameLocator } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { speaking } from '../../grammar/index.js';
import { german as sentences } from '../../server/entry/german.js';
import { standing } from '../../server/findings/check.js';
import { type Workbench, openWorkbench } from '../hosts/workbench.mjs';
import { manifestTexts } from '../support/manifest.js';
import { checked } from '../support/plan.js';
import { artefact, eventually, inUse, plans } from './studio.js';

const german = manifestTexts('de');

/** What is found in the plan, without the marks round its words. */
const told = speaking(sentences, () =>
  standing(checked(readFileSync(path.join(plans, 'bowl.mahl'), 'utf8')).findings).map(({ message }) =>
    message.replaceAll('`', ''),
  ),
);

/** Those that the list below the drawing leaves out. */
async function missingIn(preview: FrameLocator): Promise<readonly string[]> {
  const said = (await preview.locator('.findings .said').allInnerTexts())
    .join('\n')
    .replaceAll('\u00a0', ' ');
  return told.filter((message) => !said.includes(message));
}

async function open(host: 'node' | 'web'): Promise<Workbench> {
  const opened = await openWorkbench({ host, plans, language: 'de' });
  inUse.add(opened);
  return opened;
}

describe('an editor in German', () => {
  let workbench: Workbench;

  beforeAll(async () => {
    workbench = await open('node');
    await workbench.openFile('bowl.mahl');
    await workbench.runCommand('Mahlstick: Vorschau daneben öffnen');
  });
  afterAll(async () => {
    inUse.delete(workbench);
    await workbench?.close();
  });

  const quickInput = () => workbench.page.locator('.quick-input-widget:visible');
  const listed = () => quickInput().locator('.quick-input-list .monaco-list-row').allInnerTexts();

  it('lists commands by their German titles, and their English ones below', async () => {
    const { page } = workbench;
    await page.keyboard.press('F1');
    await quickInput().locator('.quick-input-box input.input').fill('>Mahlstick');
    for (const command of ['compareWithPlan', 'newPlan', 'openPreview'])
      await eventually(async () => (await listed()).join('\n')).toContain(
        `Mahlstick: ${german[`command.${command}`]}`,
      );
    await eventually(async () => (await listed()).join('\n')).toContain('Mahlstick: New Plan...');
    await workbench.screenshot(artefact('german-palette'));
    await page.keyboard.press('Escape');
  });

  it('has a preview whose words are German, and says so to readers', async () => {
    const { page } = workbench;
    const preview = await workbench.preview();
    await preview.locator('.findings li').first().waitFor();
    expect(await page.locator('.tab.active').last().innerText()).toContain('Vorschau bowl.mahl');
    expect(await preview.locator('html').getAttribute('lang')).toBe('de');
    expect(await preview.locator('.views label').allInnerTexts()).toEqual([
      'Zeichnung',
      'Notan',
      'Tonwerte',
      'Farbe',
      'Blinzeln',
      'Spiegelbild',
      'Blickweg',
      'Betonung',
      'Übertragung',
      'Palette',
      'Sitzungen',
      'Werkprotokoll',
    ]);
    await preview.getByRole('button', { name: 'Vergrößern' }).press('Enter');
    await eventually(() => preview.locator('.zoomed-to').textContent()).toBe('125 %');
    await preview.getByRole('button', { name: 'Einpassen', exact: true }).press('Enter');
    expect(await preview.locator('.findings header').innerText()).toMatch(
      /^Befunde\s+\d+ Warnungen, \d+ Hinweise$/u,
    );
    expect(await preview.locator('.findings .place').first().innerText()).toMatch(/^Zeile \d+$/u);
    await workbench.screenshot(artefact('german-preview'));
  });

  it('tells findings in German, below the drawing and among the problems', async () => {
    const { page } = workbench;
    expect(told.join(' ')).toContain('Die dunklen Töne nehmen 38.8 % des Bildes ein');
    const preview = await workbench.preview();
    await eventually(() => missingIn(preview)).toEqual([]);
    // Its mark in the drawing belongs to the same sentence.
    expect(await preview.locator('.findings .sign').allInnerTexts()).toContain('1');
    await workbench.runCommand('View: Toggle Problems');
    const problems = page.locator('.markers-panel .monaco-list-row');
    await problems.filter({ hasText: 'Die dunklen Töne nehmen 38.8 % des Bildes ein' }).first().waitFor();
    await workbench.screenshot(artefact('german-findings'));
    await workbench.runCommand('View: Toggle Problems');
  });

  it('asks for a new plan in German, keeps the words of the plan language, and begins the plan in German', async () => {
    const { page } = workbench;
    await workbench.runCommand('Mahlstick: Neuer Plan …');
    const placeholder = () =>
      quickInput().locator('.quick-input-box input.input').getAttribute('placeholder');
    await eventually(placeholder).toBe('Wie groß ist die Leinwand?');
    await workbench.pick('50 x 40 cm');
    await eventually(placeholder).toBe('Wie steht sie?');
    await workbench.pick('Hochformat');
    await eventually(placeholder).toBe('Wie ist die Leinwand geteilt?');
    await workbench.pick('golden');
    await eventually(placeholder).toBe('Auf welchem Schnittpunkt der Teilung liegt der Blickpunkt?');
    // The words of the plan, and behind them what they mean.
    await eventually(listed).toEqual([
      'upper rightoben rechts',
      'upper leftoben links',
      'lower rightunten rechts',
      'lower leftunten links',
    ]);
    await workbench.pick('upper right');
    await page.locator('.tab', { hasText: 'Vorschau Untitled-1' }).waitFor();
    const lines = page.locator('.editor-group-container .view-line');
    await eventually(async () => (await lines.allInnerTexts()).join('\n')).toMatch(
      /plan\s+"Titel"[^]*object\s+Motiv/u,
    );
    await workbench.screenshot(artefact('german-new-plan'));
  });
});

describe('an editor in German in a browser alone', () => {
  it('has German words in its pages, and German findings', async () => {
    const workbench = await open('web');
    try {
      await workbench.openFile('bowl.mahl');
      // Of an extension under development this host takes the English titles.
      await workbench.runCommand('Mahlstick: Open Preview to the Side');
      const preview = await workbench.preview();
      await preview.getByRole('radio', { name: 'Tonwerte' }).waitFor();
      expect(await preview.locator('html').getAttribute('lang')).toBe('de');
      await eventually(() => missingIn(preview)).toEqual([]);
    } finally {
      inUse.delete(workbench);
      await workbench.close();
    }
  });
});
