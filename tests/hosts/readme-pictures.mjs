// @ts-check
// Takes the pictures of the front page from the real editor: `npm run pictures`, or with their names those alone. Look
// at each.
import { copyFileSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { withPalette } from './palette-png.mjs';
import { examples, root } from './paths.mjs';
import { settled } from './settled.mjs';
import { openWorkbench } from './workbench.mjs';
import { temporaryFolder } from './workspace.mjs';

/** @typedef {import('./workbench.d.mts').Workbench} Workbench */
/**
 * @typedef {object} Picture
 * @property {import('./settings.mjs').Theme} theme
 * @property {() => string} plans the folder that is opened
 * @property {(workbench: Workbench) => Promise<void>} show
 */

const size = { width: 1180, height: 760 };

/** By the names of their files in client/media. @type {Readonly<Record<string, Picture>>} */
const pictures = {
  // A finding, what to try, and the edit that does it.
  editor: {
    theme: 'light',
    plans: () => {
      const folder = path.join(temporaryFolder('pictures'), 'studio');
      mkdirSync(folder);
      copyFileSync(path.join(examples, 'tutorial/7-colours.mahl'), path.join(folder, 'greengrocer.mahl'));
      return folder;
    },
    show: async (workbench) => {
      await workbench.openFile('greengrocer.mahl');
      await withView(workbench, 'Colour');
      await goTo(workbench, 'discord 10%');
      await workbench.page.keyboard.press('Control+.');
      await workbench.page.locator('.action-widget').getByText('the colour').first().waitFor();
      // The preview shows the budget that the cursor is at.
      const preview = await workbench.preview();
      await preview.locator('body').evaluate((body) => {
        for (const part of [document.documentElement, body, ...body.querySelectorAll('*')])
          part.scrollTop = 0;
      });
      await setTimeout(1_000);
    },
  },
  record: {
    theme: 'dark',
    plans: () => examples,
    show: async (workbench) => {
      await workbench.openFile('quinces.mahl');
      await withView(workbench, 'Record');
      await goTo(workbench, 'photo   "record/quinces-03.jpg"');
      await (await workbench.preview()).locator('image').first().waitFor({ state: 'attached' });
      await atRest(workbench);
    },
  },
  wall: {
    theme: 'light',
    plans: () => examples,
    show: async (workbench) => {
      await workbench.openFile('winter-barn.mahl');
      await workbench.runCommand('View: Toggle Primary Side Bar Visibility');
      await workbench.runCommand('Mahlstick: Wall of Plans');
      await atRest(workbench);
    },
  },
};

/** Opens the preview beside the text. @param {Workbench} workbench @param {string} view */
async function withView(workbench, view) {
  await workbench.runCommand('View: Toggle Primary Side Bar Visibility');
  await workbench.runCommand('Mahlstick: Open Preview to the Side');
  const preview = await workbench.preview();
  await preview.getByRole('radio', { name: view, exact: true }).check({ force: true });
  await atRest(workbench);
}

/**
 * Places the cursor in the words, which are sought in the file that the folder has.
 * @param {Workbench} workbench
 * @param {string} words
 */
async function goTo({ page, folder, plans }, words) {
  const text = plans
    .map((name) => readFileSync(path.join(folder, name), 'utf8'))
    .find((one) => one.includes(words));
  const before = text?.slice(0, text.indexOf(words)).split('\n') ?? [];
  await page.locator('.editor-group-container .monaco-editor .view-lines').first().click();
  await page.keyboard.press('Control+g');
  await page.keyboard.type(`${before.length}:${(before.at(-1)?.length ?? 0) + 3}`);
  await page.keyboard.press('Enter');
  await setTimeout(2_000);
}

/** Waits until the page beside the text is drawn and at rest. @param {Workbench} workbench */
async function atRest(workbench) {
  const preview = await workbench.preview();
  await preview.locator('svg').first().waitFor();
  await preview.getByText(/Reading the plan|^\d+ of \d+ plans$/).waitFor({ state: 'hidden' });
  await settled(() => preview.locator('body').innerHTML(), 2_000);
}

const wanted = process.argv.slice(2);
for (const [name, { theme, plans, show }] of Object.entries(pictures)) {
  if (wanted.length > 0 && !wanted.includes(name)) continue;
  const workbench = await openWorkbench({ host: 'node', theme, plans: plans(), size });
  const file = path.join(root, 'client/media', `${name}.png`);
  try {
    await show(workbench);
    await workbench.screenshot(file);
  } finally {
    await workbench.close();
  }
  const png = withPalette(readFileSync(file));
  writeFileSync(file, png);
  console.log(`${file}, ${Math.round(png.length / 1000)} KB`);
}
