import { PDFDocument, PDFName } from '@cantoo/pdf-lib';
import { describe, expect, it } from 'vitest';
import { parse, statements } from '../../grammar/index.js';
import { pageToText, renderToText } from '../../server/drawing/headless.js';
import { pdfOf } from '../../server/drawing/pdf/pdf.js';
import { roboto } from '../../server/drawing/pdf/roboto.js';
import { planSheet } from '../../server/drawing/plan-sheet/sheet.js';
import { views } from '../../server/drawing/scene.js';
import { everything } from '../../server/language/test-support.js';
import type { LanguageService } from '../../server/language/language-service.js';
import { createLanguageService } from '../../server/language/service.js';
import type { FileAnswer } from '../../server/plan/plan.js';
import { readPdf } from '../support/pdf.js';
import { foreignIn, linksIn, placesIn, planThatSays } from './beyond-words.js';
import { hostileFiles, hostilePaths, hostileWords, passedOver } from './texts.js';

const uri = 'file:///studio/plan.mahl';
const folder = 'file:///studio/';

interface Bench {
  readonly service: LanguageService;
  /** Addresses of the files that were asked for. */
  readonly fetched: readonly string[];
  readonly failures: readonly string[];
}

async function openPlan(text: string, answer: FileAnswer = { ok: false, reason: 'None.' }): Promise<Bench> {
  const fetched: string[] = [];
  const failures: string[] = [];
  const service = createLanguageService({
    abilities: everything,
    folders: () => [folder.slice(0, -1)],
    fetchFile: (file) => {
      fetched.push(file);
      return Promise.resolve(answer);
    },
    planChanged: () => undefined,
    failed: (what, error) => failures.push(`${what}: ${String(error)}`),
  });
  service.open(uri, 1, text);
  // What files hold comes in later turns, and a plan is read again with it.
  for (let round = 0; round < 3; round++) {
    service.diagnostics(uri);
    await new Promise((resolve) => setTimeout(resolve, 0));
  }
  return { service, fetched, failures };
}

const whole = { start: { line: 0, character: 0 }, end: { line: 10_000, character: 0 } };

describe('a plan that means ill', () => {
  it.each(hostileWords.map((words) => [words.slice(0, 60), words]))('says %j as words', async (_, words) => {
    const text = planThatSays(words);
    const { service, fetched, failures } = await openPlan(text);
    for (const view of views) {
      const scene = service.scene(uri, view, { handling: true });
      if (scene === undefined) throw new Error('no scene');
      expect(foreignIn(renderToText(scene, { theme: 'light' }))).toEqual([]);
    }
    const { plan, measures, findings } = service.snapshot(uri) ?? {};
    if (!plan || !measures || !findings) throw new Error('no plan');
    const sheet = planSheet(plan, measures, findings);
    expect(foreignIn(pageToText(sheet, { theme: 'light' }))).toEqual([]);
    const { pdf } = await pdfOf(sheet, { theme: 'light', fonts: { ...roboto, more: [] } });
    expect((await readPdf(pdf)).acts).toEqual([]);
    expect(service.links(uri).filter(({ target }) => target?.startsWith(folder) !== true)).toEqual([]);
    const hints = JSON.stringify(service.inlayHints(uri, whole));
    expect(hints).not.toMatch(/command:|"command"/u);
    const hovers = placesIn(text).flatMap((place) => {
      const contents = service.hover(uri, place)?.contents;
      return contents !== undefined && typeof contents === 'object' && 'value' in contents
        ? linksIn(contents.value)
        : [];
    });
    expect(hovers).toEqual([]);
    expect(fetched.filter((file) => !file.startsWith(folder))).toEqual([]);
    expect(failures).toEqual([]);
  });

  it.each(hostilePaths)('names the file %j, which is not asked for, and is told why', async (written) => {
    const text = `canvas 40 x 30 cm\nobject jar\n  shape from "${written}" part "a"\nsketch "${written}"\n`;
    const { service, fetched, failures } = await openPlan(text);
    expect(fetched.filter((file) => !file.startsWith(folder))).toEqual([]);
    const { problems } = parse(text);
    const told = service.diagnostics(uri).filter(({ range }) => range.start.line === 2);
    // What only looks like a way out is a name like any other, and the file is not there.
    expect([...problems, ...told].length).toBeGreaterThan(0);
    expect(JSON.stringify(told)).not.toMatch(/undefined|NaN|\[object/u);
    expect(failures).toEqual([]);
  });

  it.each(Object.keys(hostileFiles))(
    'uses an SVG file with %s, which is refused with a reason',
    async (name) => {
      const file: FileAnswer = { ok: true, text: hostileFiles[name] ?? '' };
      const { service, fetched } = await openPlan(
        'canvas 40 x 30 cm\nobject jar\n  shape from "jar.svg" part "a"\n',
        file,
      );
      expect(fetched).toEqual([`${folder}jar.svg`]);
      const told = service.diagnostics(uri).filter(({ range }) => range.start.line === 2);
      expect(told.length).toBeGreaterThan(0);
      expect(told[0]?.message).toMatch(/^[`A-Z].*\.$/su);
      const scene = service.scene(uri, 'drawing');
      if (scene !== undefined) expect(foreignIn(renderToText(scene, { theme: 'light' }))).toEqual([]);
    },
  );

  it.each(Object.keys(passedOver))(
    'uses an SVG file with %s, of which only the shape comes along',
    async (name) => {
      const file: FileAnswer = { ok: true, text: passedOver[name] ?? '' };
      const { service } = await openPlan(
        'canvas 40 x 30 cm\nobject jar\n  shape from "jar.svg" part "a"\n',
        file,
      );
      const scene = service.scene(uri, 'drawing');
      if (scene === undefined) throw new Error('no scene');
      const drawing = renderToText(scene, { theme: 'light' });
      expect(foreignIn(drawing)).toEqual([]);
      expect(drawing).toContain('data-subject="object:jar"');
    },
  );
});

describe('the corpus', () => {
  it('would be noticed', () => {
    expect(foreignIn('<svg><script/><g onload="x"/><path fill="url(http://a)"/></svg>')).toHaveLength(3);
    expect(linksIn('![a](b) <img> [x](command:y) [r](file:///mahlstick/a)')).toHaveLength(4);
    expect(linksIn('`![a](b)` \\<img\\> \\[x\\]\\(command\\)')).toEqual([]);
    expect(linksIn('\\`\\`\\`\\`\\`\\<img\\> ```mahl\n<form>\n```')).toEqual([]);
    expect(linksIn('\\`<img> `')).toEqual(['<i']);
  });

  it('would be noticed in a PDF', async () => {
    const document = await PDFDocument.create();
    const page = document.addPage();
    document.addJavaScript('run', 'app.alert(1)');
    await document.attach(new Uint8Array([1]), 'a.txt');
    const { context } = document;
    const link = context.obj({ Type: 'Annot', Subtype: 'Link', Rect: [0, 0, 9, 9], A: { S: 'URI' } });
    page.node.set(PDFName.of('Annots'), context.obj([link]));
    const { acts } = await readPdf(await document.save());
    expect(acts).toEqual(['annotations', 'scripts', 'files']);
  });

  it('says its words in sentences of many statements', () => {
    const kinds = new Set(parse(planThatSays('jar')).nodes.map(({ statement }) => statement.kind));
    expect(kinds.size).toBeGreaterThan(12);
    expect(statements.length).toBeGreaterThan(kinds.size);
  });
});
