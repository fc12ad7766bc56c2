import { copyFileSync, cpSync, existsSync, readFileSync, readdirSync, statSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { installPackage, unpackPackage } from '../hosts/install-package.mjs';
import { temporaryFolder } from '../hosts/workspace.mjs';
import { type Studio, artefact, eventually, openStudio, plans, shape } from './studio.js';

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
    expect(statSync(vsix).size).toBeLessThan(3_000_000);
  });

  it('has a page without pictures that would not be found, and every file that its manifest names', () => {
    expect(read('readme.md')).toMatch(/^# Mahlstick\n/u);
    expect(read('readme.md')).not.toMatch(/!\[[^\]]*\]\(\w+\//u);
    const named = read('package.json').match(/"\.?\/?(dist|grammar|client)\/[^"]+"/g) ?? [];
    const wanted = named.map((file) => file.slice(1, -1));
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

  function read(file: string): string {
    const name = files.find((each) => each.toLowerCase() === file) ?? file;
    return readFileSync(path.join(folder, name), 'utf8');
  }
});

describe.each(['node', 'web'] as const)(
  'the package in an editor that has nothing else, %s extension host',
  (host) => {
    let studio: Studio;

    beforeAll(async () => {
      const extension = host === 'node' ? vsix : unpackPackage(vsix);
      studio = await openStudio({ host, plan: 'bowl.mahl', plans: somePlans(), extension });
    });
    afterAll(() => studio?.workbench.close());

    it('draws, finds, and leads from drawing to text', async () => {
      const { preview, findings, selection, workbench } = studio;
      await preview.locator(shape('bowl')).click({ force: true });
      await eventually(selection).toBe('Ln 18, Col 13 (4 selected)');
      await eventually(findings).not.toEqual([]);
      await workbench.screenshot(artefact(`package-${host}`));
    });

    it('has the page that a code leads to', async () => {
      const { goTo, page, workbench } = studio;
      await goTo('7:16');
      await page.keyboard.press('Control+K');
      await page.keyboard.press('Control+I');
      await page.locator('.monaco-hover a.code-link', { hasText: 'value-budget' }).click();
      const reference = page.frameLocator('iframe.webview.ready').last().frameLocator('iframe#active-frame');
      const heading = reference.getByRole('heading', { name: 'value budget', exact: true });
      // The page goes to it when all of it is set.
      await eventually(() => heading.boundingBox().then((box) => (box?.y ?? 9_999) < 400)).toBe(true);
      const drawing = reference.locator('img[src$="/value-budget.svg"]');
      await drawing.waitFor({ state: 'attached' });
      // The web host of tests gives the files of extensions by http, from where a page takes no pictures.
      if (host === 'node')
        await eventually(() => drawing.evaluate((img: HTMLImageElement) => img.naturalWidth)).toBeGreaterThan(
          100,
        );
      await workbench.screenshot(artefact(`package-reference-${host}`));
    });

    it.each([
      [['Plan sheet', 'PDF'], 'bowl-sheet.pdf'],
      [['Drawing', 'PNG', '1600 pixels'], 'bowl-drawing.png'],
    ])('exports: %s', async (choices, name) => {
      const { page, workbench } = studio;
      await alone('bowl.mahl', 'Mahlstick: Open Preview to the Side');
      await workbench.runCommand('Mahlstick: Export Drawing...');
      for (const choice of choices) await workbench.pick(choice);
      const input = page.locator('.quick-input-widget:visible .quick-input-box input.input');
      await eventually(() => input.inputValue()).toContain(name);
      await page.keyboard.press('Enter');
      await page.getByText(`${name} is written.`).first().waitFor();
    });

    it('measures photographs and shows what is off in them', async () => {
      await alone('quinces.mahl', 'Mahlstick: Open Preview to the Side');
      const preview = await studio.workbench.preview();
      // Until the drawing is there the rows above it still find their place.
      await preview.locator('.drawing svg [data-subject]').first().waitFor();
      await preview.locator('.views input[value="record"]').check({ force: true });
      const images = () => preview.locator('.drawing svg image').count();
      await eventually(images).toBe(5);
      await studio.workbench.screenshot(artefact(`package-record-${host}`));
    });

    it('draws plans in pages of Markdown', async () => {
      await alone('notes.md', 'Markdown: Open Preview to the Side');
      const page = await studio.workbench.preview();
      await eventually(() =>
        page.locator('.mahlstick-plan [data-subject="object:jar"]').count(),
      ).toBeGreaterThan(0);
    });

    /** Nothing else is open then. */
    async function alone(file: string, command: string): Promise<void> {
      const { workbench } = studio;
      await workbench.runCommand('View: Close All Editors');
      await workbench.openFile(file);
      await workbench.runCommand(command);
    }
  },
);

/** Small ones, one with photographs, and a page with plans in it. */
function somePlans(): string {
  const folder = temporaryFolder('some-plans');
  for (const name of ['bowl.mahl', 'notes.md']) copyFileSync(path.join(plans, name), path.join(folder, name));
  const examples = path.resolve(import.meta.dirname, '../../examples');
  copyFileSync(path.join(examples, 'quinces.mahl'), path.join(folder, 'quinces.mahl'));
  cpSync(path.join(examples, 'record'), path.join(folder, 'record'), { recursive: true });
  return folder;
}
