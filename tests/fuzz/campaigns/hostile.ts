import assert from 'node:assert/strict';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import fc from 'fast-check';
import { pageToText, renderToText } from '../../../server/drawing/headless.js';
import { pdfOf } from '../../../server/drawing/pdf/pdf.js';
import { roboto } from '../../../server/drawing/pdf/roboto.js';
import { planSheet } from '../../../server/drawing/plan-sheet/sheet.js';
import { views } from '../../../server/drawing/scene.js';
import { openPlan, settled } from '../../../server/language/test-support.js';
import { foreignIn, linksIn, placesIn, planThatSays } from '../../hostile/beyond-words.js';
import { hostileFiles, hostilePaths, hostileWords, passedOver } from '../../hostile/texts.js';
import { session } from '../../support/command-line.js';
import { readPdf } from '../../support/pdf.js';
import { campaign } from '../campaign.js';
import { holdSession } from '../sessions.js';

const pieces = [
  ...hostileWords.filter((words) => words.length < 200),
  ...hostilePaths,
  '<',
  '>',
  '&',
  '"',
  "'",
  '`',
  '\\',
  '](',
  '![',
  '${',
  '%',
  '\u202e',
  '\u2066',
  '\u200f',
  '\0',
  '\u001b[31m',
  '\u009b',
  '\ud800',
  '\udfff',
  '\ufffe',
  '\u2028',
  ']]>',
  '<!--',
  '&#0;',
  '||',
  '```',
  '\r',
  '  ',
  'focus',
  'тень',
  '🎨',
  '//',
];
const words = fc
  .array(fc.constantFrom(...pieces), { minLength: 1, maxLength: 5 })
  .map((some) => some.join(''));

const tags = [
  '<g>',
  '</g>',
  '<rect id="a" width="9" height="9"/>',
  '<path id="a" d="M0 0H9V9Z"/>',
  '<script>alert(1)</script>',
  '<a:b xmlns:a="x"/>',
  '<svg:rect id="a" width="2" height="2"/>',
  '<use href="#a"/>',
  '<style>*{fill:url(http://a)}</style>',
  '<g transform="scale(1e308) rotate(NaN)">',
  '<g transform="matrix(0 0 0 0 0 0)">',
  '<g id="a">',
  '<![CDATA[<g>]]>',
  '&x;',
  '&#x0;',
  '<?php ?>',
  '<!DOCTYPE svg [<!ENTITY x "y">]>',
  '<g style="display:none" id="a">',
  '<clipPath id="a">',
  '<path id="a" d="M0 0 A 1e300 1 0 0 1 9 9 Z"/>',
  '<polygon id="a" points="0,0 9,9 1e400,3"/>',
  '<title>',
  '<g xmlns="">',
];
const svg = fc.oneof(
  { weight: 1, arbitrary: fc.constantFrom(...Object.values(hostileFiles), ...Object.values(passedOver)) },
  {
    weight: 3,
    arbitrary: fc
      .tuple(fc.array(fc.constantFrom(...tags), { maxLength: 12 }), words)
      .map(
        ([some, name]) =>
          `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9">${some.join('')}<desc>${name}</desc></svg>`,
      ),
  },
  {
    weight: 1,
    arbitrary: fc
      .tuple(fc.constantFrom('<g>', '<svg>', '<g id="a">'), fc.nat(3_000))
      .map(
        ([tag, depth]) =>
          `<svg xmlns="http://www.w3.org/2000/svg">${tag.repeat(depth)}<rect id="a" width="1" height="1"/>`,
      ),
  },
);

const jar = 'object pot\n  shape from "jar.svg" part "a"\n  value 3\n';

/**
 * Words, names and SVG files that try to be more than that, through all that shows them: drawings, sheets, PDF, hovers,
 * terminals.
 */
export const hostile = campaign({
  runs: 2,
  cases: fc.record({ words, svg, view: fc.constantFrom(...views), isPdf: fc.nat(7).map((one) => one === 0) }),
  hold: async ({ words: said, svg: drawing, view, isPdf }) => {
    const text = `${planThatSays(said)}${jar}`;
    const { service, uri, failures } = openPlan(text.replaceAll('|', '¦'), undefined, {
      'file:///studio/jar.svg': { ok: true, text: drawing },
    });
    service.diagnostics(uri);
    await settled();
    const snapshot = service.snapshot(uri);
    const scene = service.scene(uri, view, { handling: true });
    assert(snapshot && scene);
    assert.deepEqual(foreignIn(renderToText(scene, { theme: 'light' })), []);
    const { plan, measures, findings } = snapshot;
    const sheet = planSheet(plan, measures, findings);
    assert.deepEqual(foreignIn(pageToText(sheet, { theme: 'light' })), []);
    if (isPdf) {
      const { pdf } = await pdfOf(sheet, { theme: 'light', fonts: { ...roboto, more: [] } });
      assert.deepEqual((await readPdf(pdf)).acts, []);
    }
    for (const place of placesIn(snapshot.text)) {
      const contents = service.hover(uri, place)?.contents;
      if (typeof contents === 'object' && 'value' in contents) assert.deepEqual(linksIn(contents.value), []);
    }
    assert.deepEqual(failures, []);
    await holdTerminal(text, drawing);
  },
});

/** What commands print of it. */
async function holdTerminal(text: string, drawing: string): Promise<void> {
  const folder = mkdtempSync(path.join(tmpdir(), 'mahlstick-hostile-'));
  try {
    writeFileSync(path.join(folder, 'plan.mahl'), text);
    writeFileSync(path.join(folder, 'jar.svg'), drawing);
    for (const command of ['check', 'measure', 'mix', 'schedule', 'transfer', 'wall'])
      holdSession(await session([command, 'plan.mahl'], '', folder));
    for (const words of [
      ['format', '--check', 'plan.mahl'],
      ['compare', 'plan.mahl', 'plan.mahl'],
    ])
      holdSession(await session(words, '', folder));
  } finally {
    rmSync(folder, { recursive: true });
  }
}
