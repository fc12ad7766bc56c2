import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { eventually, plans, type Studio } from './studio.js';

/** The plan that hands work in, and its lines at the beginning. */
export const plan = 'shelf.mahl';
export const written: readonly string[] = readFileSync(path.join(plans, plan), 'utf8').split('\n');

/**
 * A copy of the plans whose editor saves at once, so that a test can read the text; `pot.mahl` can only be read in it.
 */
export function plansThatAreSaved(): { readonly folder: string; readonly remove: () => void } {
  const parent = mkdtempSync(path.join(tmpdir(), 'mahlstick-hand-'));
  const folder = path.join(parent, 'plans');
  cpSync(plans, folder, { recursive: true });
  mkdirSync(path.join(folder, '.vscode'));
  const settings = {
    'files.autoSave': 'afterDelay',
    'files.autoSaveDelay': 50,
    'files.readonlyInclude': { '**/pot.mahl': true },
    'files.exclude': { '**/.vscode': true },
  };
  writeFileSync(path.join(folder, '.vscode/settings.json'), JSON.stringify(settings));
  return { folder, remove: () => rmSync(parent, { recursive: true, force: true }) };
}

/** How long nothing has been written when what was written is sure to be known as saved, milliseconds. */
const SETTLED = 500;

/** A place of the drawing, canvas units. */
export type At = readonly [x: number, y: number];

/** What a hand does in a drawing, and what comes of it. */
export function handIn({ page, preview, workbench }: Studio) {
  const onScreen = async ([x, y]: At) => {
    const svg = preview.locator('.drawing > svg');
    const box = await svg.boundingBox();
    const seen = ((await svg.getAttribute('viewBox')) ?? '').split(' ').map(Number);
    const [left = 0, top = 0, width = 1] = seen;
    if (box === null) throw new Error('There is no drawing.');
    const scale = box.width / width;
    return { x: box.x + (x - left) * scale, y: box.y + (y - top) * scale };
  };
  const press = async (from: At) => {
    const { x, y } = await onScreen(from);
    await page.mouse.move(x, y);
    await page.mouse.down();
  };
  const pull = async (to: At) => {
    const { x, y } = await onScreen(to);
    await page.mouse.move(x, y, { steps: 6 });
  };
  const file = path.join(workbench.folder, plan);
  const text = () => readFileSync(file, 'utf8').split('\n');
  return {
    file,
    text,
    press,
    pull,
    letGo: () => page.mouse.up(),
    drag: async (from: At, to: At) => {
      await press(from);
      await pull(to);
      await page.mouse.up();
    },
    dragByFinger: async (from: At, to: At) => {
      const [start, end] = [await onScreen(from), await onScreen(to)];
      const screen = await page.context().newCDPSession(page);
      const touch = (type: 'touchStart' | 'touchMove', part: number) =>
        screen.send('Input.dispatchTouchEvent', {
          type,
          touchPoints: [{ x: start.x + part * (end.x - start.x), y: start.y + part * (end.y - start.y) }],
        });
      await touch('touchStart', 0);
      for (const part of [0.25, 0.5, 0.75, 1]) await touch('touchMove', part);
      await screen.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
      await screen.detach();
    },
    click: async (at: At) => {
      const { x, y } = await onScreen(at);
      await page.mouse.click(x, y);
    },
    /**
     * Presses a key that takes the last change back, or makes it again. An editor that is still saving a change takes
     * the text from before it for the saved one, and leaves the file with the change.
     */
    stepBack: async (key: 'Control+z' | 'Control+Shift+z' = 'Control+z') => {
      await eventually(() => Date.now() - statSync(file).mtimeMs).toBeGreaterThan(SETTLED);
      await page.keyboard.press(key);
    },
    /** The lines that are not as at the beginning, by their numbers from one. */
    changed: () =>
      Object.fromEntries(
        text().flatMap((words, index) => (words === written[index] ? [] : [[index + 1, words] as const])),
      ),
    told: () => preview.locator('.hand-spoken').innerText(),
    notice: () => preview.locator('.hand-notice').innerText(),
    bar: preview.locator('.hand-bar'),
  };
}
