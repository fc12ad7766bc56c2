import { decode } from 'fast-png';
import { encode as encodeJpeg } from 'jpeg-js';
import { describe, expect, it } from 'vitest';
import { Resvg } from '@resvg/resvg-js';
import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { renderToText } from './headless.js';
import { imageMark } from './marks.js';
import { pdfOf } from './pdf/pdf.js';
import { roboto } from './pdf/roboto.js';
import { pageOf } from './paper.js';
import { bytesOfPicture, isPictureData, jpegPicture } from './picture-data.js';
import { indexedPicture } from './picture-of-pixels.js';
import type { ImageMark, Mark, PictureData, Scene } from './scene.js';
import { sceneOf, worked } from './test-plans.js';

const plan = 'plan "Blank"\ncanvas 40 x 30 cm\n  ground #ffffff\n';

/** A picture of two halves, the left one dark. */
const halves = indexedPicture({
  width: 2,
  height: 1,
  pixels: Uint8Array.of(0, 1),
  colours: ['#102030', '#e0c040'],
});
const redJpeg = jpegPicture(
  encodeJpeg({ width: 8, height: 8, data: Buffer.alloc(8 * 8 * 4).fill(Buffer.of(200, 30, 20, 255)) }, 90)
    .data,
);

/** A sheet that shows pictures and nothing else. */
function sheetWith(...marks: readonly Mark[]): Scene {
  const scene = sceneOf(plan, 'drawing');
  return { ...scene, layers: [{ name: 'picture', marks }], sheet: scene.picture };
}

function pixelAt(svg: string, x: number, y: number): readonly number[] {
  const { pixels, width } = new Resvg(svg, { fitTo: { mode: 'width', value: 40 } }).render();
  return [...pixels.subarray(4 * (y * width + x), 4 * (y * width + x) + 3)];
}

function offBy(seen: readonly number[], wanted: readonly number[]): number {
  return Math.max(...wanted.map((channel, index) => Math.abs(channel - (seen[index] ?? 0))));
}

const left = { x: 0, y: 0, width: 20, height: 30 };
const right = { x: 20, y: 0, width: 20, height: 30 };

describe('a picture written out in its address', () => {
  it('is a PNG of few colours, the first of which may be clear', () => {
    const made = indexedPicture({
      width: 2,
      height: 2,
      pixels: Uint8Array.of(0, 1, 2, 1),
      colours: [undefined, '#ff0000', '#00ff80'],
    });
    const { width, height, palette, data } = decode(bytesOfPicture(made));
    expect({ width, height, data: [...data] }).toEqual({ width: 2, height: 2, data: [0, 1, 2, 1] });
    expect(palette).toEqual([
      [0, 0, 0, 0],
      [255, 0, 0, 255],
      [0, 255, 128, 255],
    ]);
  });

  it('is written out once for the same bytes', () => {
    const bytes = Uint8Array.of(0xff, 0xd8, 0xff);
    expect(jpegPicture(bytes)).toBe(jpegPicture(bytes));
    expect([...bytesOfPicture(jpegPicture(bytes))]).toEqual([...bytes]);
  });

  it.each([
    'https://example.org/a.png',
    '//example.org/a.png',
    'file:///etc/passwd',
    'javascript:alert(1)',
    'data:image/svg+xml;base64,PHN2Zy8+',
    'data:text/html;base64,PHN2Zy8+',
    'data:image/png,abc',
    'data:image/png;base64,iVBOR"/><script>',
    'data:image/png;base64,iVBOR\n',
    'DATA:image/png;base64,iVBOR',
    'blob:https://example.org/1',
    `data:image/png;base64,${'A'.repeat(8_000_000)}`,
  ])('is refused when it is not one of ours: %.60s', (href) => {
    expect(isPictureData(href)).toBe(false);
    const mark: ImageMark = { kind: 'image', key: 'bad', box: left, href: href as PictureData };
    expect(renderToText(sheetWith(mark), { theme: 'light' })).not.toContain('href');
  });
});

describe('a picture on a sheet', () => {
  it('is stretched over its box in SVG, and painted so in pixels', () => {
    const svg = renderToText(
      sheetWith(imageMark('halves', halves, left, { tip: 'Two halves.' }), imageMark('red', redJpeg, right)),
      { theme: 'light' },
    );
    expect(svg).toContain('<title>Two halves.</title>');
    expect(offBy(pixelAt(svg, 2, 15), [0x10, 0x20, 0x30])).toBeLessThan(12);
    expect(offBy(pixelAt(svg, 17, 15), [0xe0, 0xc0, 0x40])).toBeLessThan(12);
    expect(offBy(pixelAt(svg, 30, 15), [200, 30, 20])).toBeLessThan(12);
  });

  it('is shown by another address where one is given', () => {
    const svg = renderToText(sheetWith(imageMark('red', redJpeg, left)), {
      theme: 'light',
      addressOf: (picture) => `blob:${picture.length}`,
    });
    expect(svg).toContain(`href="blob:${redJpeg.length}"`);
    expect(svg).not.toContain('base64');
  });

  it('is in a PDF once, however often it is drawn, and one that is broken is left out', async () => {
    const broken = 'data:image/png;base64,AAAA' as const;
    const scene = sheetWith(
      imageMark('one', redJpeg, left),
      imageMark('other', redJpeg, right),
      imageMark('png', halves, right),
      imageMark('broken', broken, right),
    );
    const { page } = pageOf(scene, worked(plan).plan, 'A4');
    const print = () => pdfOf(page, { theme: 'light', fonts: { ...roboto, more: [] } });
    const { pdf } = await print();
    const text = Buffer.from(pdf).toString('latin1');
    expect(text.match(/\/DCTDecode/g)).toHaveLength(1);
    expect([...(await print()).pdf]).toEqual([...pdf]);
    const task = getDocument({ data: Uint8Array.from(pdf), verbosity: 0 });
    try {
      const { fnArray } = await (await (await task.promise).getPage(1)).getOperatorList();
      expect(fnArray.filter((operator: number) => operator === OPS.paintImageXObject)).toHaveLength(3);
    } finally {
      await task.destroy();
    }
  });
});
