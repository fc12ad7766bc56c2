import path from 'node:path';
import type { ConsoleMessage, FrameLocator, Page } from 'playwright-core';
import { expect } from 'vitest';
import { type Workbench, type WorkbenchOptions, openWorkbench } from '../hosts/workbench.mjs';
import { borrowWorkbench } from './windows.js';

export const plans = path.resolve(import.meta.dirname, 'preview-plans');

/** Where a picture for a person to look at is put. */
export const artefact = (name: string): string =>
  path.resolve(import.meta.dirname, '../../artefacts', `${name}.png`);

/** Milliseconds for one step: loading the window again takes a busy machine with two cores a good part of it. */
const limit = 60_000;

/** Waits until an answer is as `expect` says. */
export const eventually = <T>(ask: () => Promise<T> | T) => expect.poll(ask, { timeout: limit });

/**
 * Has VS Code in a browser put away, for when it is loaded again, editors whose state tells `what`, and waits until
 * it has. It does so when its window loses the focus; else only every few seconds when a machine is idle.
 */
export async function putAway(page: Page, what: RegExp): Promise<void> {
  const loseFocus = () =>
    page.evaluate(async () => {
      const isFocused = document.hasFocus.bind(document);
      window.dispatchEvent(new Event('focus'));
      document.hasFocus = () => false;
      window.dispatchEvent(new Event('blur'));
      // It asks for the focus once more when the events are done with.
      await new Promise((resolve) => setTimeout(resolve, 200));
      document.hasFocus = isFocused;
    });
  const found = () =>
    page.evaluate(async ({ source }) => {
      const answer = <T>(request: IDBRequest<T>) =>
        new Promise<T>((resolve, reject) => {
          request.onsuccess = () => resolve(request.result);
          request.onerror = () => reject(request.error ?? new Error('no answer'));
        });
      const texts = (await indexedDB.databases()).map(async ({ name = '' }) => {
        if (!name.startsWith('vscode-web-state-db')) return '';
        const database = await answer(indexedDB.open(name));
        try {
          const [store] = database.objectStoreNames;
          if (store === undefined) return '';
          const all = database.transaction(store).objectStore(store).getAll();
          return JSON.stringify(await answer(all));
        } finally {
          database.close();
        }
      });
      return new RegExp(source, 'u').test((await Promise.all(texts)).join('\n'));
    }, what);
  await eventually(async () => {
    await loseFocus();
    return found();
  }).toBe(true);
}

/** A plan in an editor with its preview beside it, as seen from outside. */
export interface Studio {
  readonly workbench: Workbench;
  readonly page: Page;
  /** The page of the preview. */
  readonly preview: FrameLocator;
  /** What the browser says it refused by a content security policy. */
  readonly refusals: readonly string[];
  /** Puts the cursor at a `line` or `line:column`, counted from one, of the plan. */
  readonly goTo: (place: string) => Promise<void>;
  readonly type: (text: string) => Promise<void>;
  /** As the status bar says it: `Ln 18, Col 13 (4 selected)`. */
  readonly selection: () => Promise<string>;
  /** The path of an object in the picture. */
  readonly shapeOf: (object: string) => Promise<string | null>;
  readonly findings: () => Promise<string[]>;
  /** Keys of what is marked in the drawing as the cursor's. */
  readonly current: () => Promise<(string | null)[]>;
  /** Keys of what has the focus in the drawing. */
  readonly focused: () => Promise<(string | null)[]>;
  /** What the live region says. */
  readonly spoken: () => Promise<string>;
}

export interface StudioOptions extends Partial<WorkbenchOptions> {
  /** The name of the plan that is opened. */
  readonly plan: string;
}

/** The windows of studios that are not closed. */
export const inUse = new Set<Workbench>();

/** Opens a plan and its preview, in the node host unless said otherwise. Close its workbench after use. */
export async function openStudio({ plan, ...options }: StudioOptions): Promise<Studio> {
  /** Another build of the extension than this repository's, if one is named. */
  const named = process.env['MAHLSTICK_EXTENSION'];
  const wanted = { host: 'node', plans, ...(named ? { extension: named } : {}), ...options } as const;
  const isOfItsOwn = options.extension !== undefined || (wanted.host === 'web' && wanted.plans !== plans);
  const opened = await (isOfItsOwn ? openWorkbench(wanted) : borrowWorkbench(wanted));
  const { page } = opened;
  page.setDefaultTimeout(limit);
  const refusals: string[] = [];
  const listen = (message: ConsoleMessage) => {
    if (/content security policy/i.test(message.text())) refusals.push(message.text());
  };
  page.on('console', listen);
  const workbench = {
    ...opened,
    close: () => {
      inUse.delete(workbench);
      page.off('console', listen);
      return opened.close();
    },
  };
  inUse.add(workbench);
  try {
    await workbench.openFile(plan);
    await workbench.runCommand('Mahlstick: Open Preview to the Side');
    return { workbench, page, refusals, ...parts(page, await workbench.preview()) };
  } catch (error) {
    await workbench.close();
    throw error;
  }
}

function parts(page: Page, preview: FrameLocator) {
  return {
    preview,
    goTo: (place: string) => goTo(page, place),
    type: (text: string) => page.keyboard.type(text),
    selection: () => page.locator('[id="status.editor.selection"]').innerText(),
    shapeOf: (object: string) => preview.locator(shape(object)).getAttribute('d'),
    findings: () => preview.locator('.findings li').allInnerTexts(),
    current: () => preview.locator('.outlines [aria-current]').evaluateAll(subjects),
    focused: () => preview.locator('.outlines g:focus').evaluateAll(subjects),
    spoken: () => preview.locator('.spoken').innerText(),
  };
}

/** A busy editor may lose a key, or not have the focus yet when the next comes: then all is done again. */
async function goTo(page: Page, place: string): Promise<void> {
  const line = new RegExp(`^Ln ${place.split(':')[0]},`);
  const soon = { timeout: 5_000 };
  const end = Date.now() + limit;
  for (;;) {
    try {
      await page.keyboard.press('Control+G');
      await page.locator('.quick-input-widget:visible .quick-input-box input.input').fill(`:${place}`, soon);
      await page.keyboard.press('Enter');
      await page.locator('.quick-input-widget').waitFor({ state: 'hidden', ...soon });
      await page.locator('.editor-group-container.active .monaco-editor.focused').waitFor(soon);
      await page.locator('[id="status.editor.selection"]', { hasText: line }).waitFor(soon);
      return;
    } catch (error) {
      if (Date.now() > end) throw error;
      await page.keyboard.press('Escape');
    }
  }
}

/** A selector of an object in the picture. */
export function shape(object: string): string {
  return `[data-layer="picture"] [data-subject="object:${object}"]`;
}

function subjects(groups: readonly Element[]): (string | null)[] {
  return groups.map((group) => group.getAttribute('data-subject'));
}
