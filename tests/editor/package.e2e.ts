import { existsSync, readFileSync, readdirSync, statSync } from 'node:fs';
import path from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { installPackage } from '../hosts/install-package.mjs';
import { temporaryFolder } from '../hosts/workspace.mjs';
import { artefact, eventually, openStudio, shape } from './studio.js';

/** As `npm run package` makes it. */
const vsix = path.resolve(import.meta.dirname, '../../artefacts/mahlstick.vsix');

describe('the package, installed', () => {
  let folder: string;
  let files: readonly string[];

  beforeAll(async () => {
    folder = await installPackage(vsix, temporaryFolder('packages'));
    files = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((file) =>
      statSync(path.join(folder, file)).isFile(),
    );
  });

  it('holds no sources, tests or maps, and is small', () => {
    expect(files.filter((file) => /\.(ts|map|mahl|vsix)$|(^|\/)(tests|node_modules)\//.test(file))).toEqual(
      [],
    );
    expect(statSync(vsix).size).toBeLessThan(3_700_000);
  });

  it('has the picture of its page, and every file that its manifest names', () => {
    const [, picture = 'none'] = /!\[[^\]]*\]\(([^)]+)\)/.exec(read('readme.md')) ?? [];
    const named = read('package.json').match(/"\.?\/?(dist|grammar|client)\/[^"]+"/g) ?? [];
    const wanted = [picture, ...named.map((file) => file.slice(1, -1))];
    expect(wanted.length).toBeGreaterThan(6);
    expect(
      wanted.filter((file) => !file.includes('mahlstick.js') && !existsSync(path.join(folder, file))),
    ).toEqual([]);
  });

  it('has the licence of each library in it, in full', () => {
    const licences = read('dist/licences.txt');
    for (const library of ['chevrotain', '@svgdotjs/svg.js', 'munsell', 'vscode-languageclient', 'valibot']) {
      expect(licences).toMatch(new RegExp(`^${library} \\d`, 'm'));
    }
    expect(files).toEqual(expect.arrayContaining(['LICENSE.txt', 'NOTICE']));
  });

  it('works by itself in an editor that has nothing else, and has the page that a code leads to', async () => {
    const { workbench, page, preview, findings, selection, goTo } = await openStudio({
      plan: 'bowl.mahl',
      extension: vsix,
    });
    try {
      await preview.locator(shape('bowl')).click({ force: true });
      await eventually(selection).toBe('Ln 18, Col 13 (4 selected)');
      await eventually(findings).not.toEqual([]);
      await workbench.screenshot(artefact('package'));

      await goTo('7:16');
      await page.keyboard.press('Control+K');
      await page.keyboard.press('Control+I');
      await page.locator('.monaco-hover a.code-link', { hasText: 'value-budget' }).click();
      const reference = page.frameLocator('iframe.webview.ready').last().frameLocator('iframe#active-frame');
      const heading = reference.getByRole('heading', { name: 'value budget', exact: true });
      // The page goes to it when all of it is set.
      await eventually(() => heading.boundingBox().then((box) => (box?.y ?? 9_999) < 400)).toBe(true);
      const drawing = reference.locator('img[src$="/value-budget.svg"]');
      await eventually(() => drawing.evaluate((img: HTMLImageElement) => img.naturalWidth)).toBeGreaterThan(
        100,
      );
      await workbench.screenshot(artefact('package-reference'));
    } finally {
      await workbench.close();
    }
  });

  function read(file: string): string {
    const name = files.find((each) => each.toLowerCase() === file) ?? file;
    return readFileSync(path.join(folder, name), 'utf8');
  }
});
