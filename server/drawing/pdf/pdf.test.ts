import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readPdf } from '../../../tests/support/pdf.js';
import { compose } from '../compose.js';
import { type Paper, pageOf } from '../paper.js';
import type { View } from '../scene.js';
import { worked } from '../test-plans.js';
import { checkFont } from './fonts.js';
import { pdfOf } from './pdf.js';
import { roboto } from './roboto.js';
import { missingLettersSentence } from './words.js';

const MILLIMETRES = { cm: 10, mm: 1, in: 25.4, m: 1000 } as const;

/** A font of another maker, which has letters that Roboto lacks. */
const openSans = readFileSync(
  new URL('../../../node_modules/svgdom/fonts/OpenSans-Regular.ttf', import.meta.url),
);

function planOf(canvas: string, name = 'jug', title = 'One jug'): string {
  return `plan "${title}" by "A. N. Painter"\ncanvas ${canvas}\nobject ${name}, dominant\n  shape rectangle (25%, 25%) to (75%, 75%)\n  value 2\n`;
}

async function printed(
  text: string,
  {
    view = 'drawing',
    paper = 'true',
    more = [],
  }: { view?: View; paper?: Paper; more?: readonly Uint8Array[] } = {},
) {
  const { plan, measures, findings } = worked(text);
  const scene = compose(plan, measures, findings, view);
  const { page, scale } = pageOf(scene, plan, paper);
  const { pdf, missing } = await pdfOf(page, { theme: 'light', fonts: { ...roboto, more } });
  return { plan, scene, page, scale, pdf, missing, read: await readPdf(pdf) };
}

describe('a drawing as PDF', () => {
  it.each(['40 x 30 cm', '300 x 500 mm', '20 x 16 in', '2 x 1.2 m'])(
    'is as large as its sheet with the picture true to size: %s',
    async (canvas) => {
      const { scene, scale, read } = await printed(planOf(canvas));
      const unit = MILLIMETRES[(canvas.split(' ').at(-1) ?? 'cm') as keyof typeof MILLIMETRES];
      expect(scale).toBe(1);
      expect(Math.abs(read.width - scene.sheet.width * unit)).toBeLessThan(0.2);
      expect(Math.abs(read.height - scene.sheet.height * unit)).toBeLessThan(0.2);
    },
  );

  it('is drawn smaller where no page can be so large, and says so', async () => {
    const { scale, read } = await printed(planOf('9 x 6 m'));
    expect(Math.max(read.width, read.height)).toBeCloseTo(5080, 0);
    expect(scale).toBeLessThan(0.6);
    expect(read.subject).toMatch(/Drawn at 1 : \d\.\d+ of true size\.$/);
  });

  it.each([
    ['A4', '60 x 90 cm', 210, 297],
    ['A3', '90 x 60 cm', 297, 420],
    ['Letter', '16 x 20 in', 215.9, 279.4],
  ] as const)('fits %s', async (paper, canvas, width, height) => {
    const { page, read } = await printed(planOf(canvas), { paper });
    const [shorter = 0, longer = 0] = [read.width, read.height].sort((a, b) => a - b);
    expect(Math.abs(shorter - width)).toBeLessThan(0.2);
    expect(Math.abs(longer - height)).toBeLessThan(0.2);
    const at = page.drawings[0]?.at ?? { x: 0, y: 0, width: 0, height: 0 };
    for (const margin of [at.x, at.y, page.width - at.x - at.width, page.height - at.y - at.height])
      expect(margin).toBeGreaterThan(9.99);
  });

  it.each(['tankard', 'κανάτι', 'кувшин', 'kručka'])(
    'keeps a name as text that can be found: %s',
    async (name) => {
      const { read, missing } = await printed(planOf('40 x 30 cm', name));
      // Once, although a halo is drawn round it.
      expect(read.text.split(name)).toHaveLength(2);
      expect(missing).toEqual([]);
    },
  );

  it('carries title and painter, and no date', async () => {
    const { read, pdf } = await printed(planOf('40 x 30 cm'));
    expect(read.title).toBe('One jug: drawing');
    expect(read.author).toBe('A. N. Painter');
    expect(read.text).toContain('One jug');
    expect(Buffer.from(pdf).toString('latin1')).not.toMatch(/CreationDate|ModDate/);
  });

  it('is the same bytes for the same plan', async () => {
    const [one, other] = await Promise.all([printed(planOf('40 x 30 cm')), printed(planOf('40 x 30 cm'))]);
    expect(Buffer.compare(one.pdf, other.pdf)).toBe(0);
  });

  it('tells of letters that it has no font for, and takes them from a font that is given', async () => {
    const text = planOf('40 x 30 cm', 'jug', 'Jug ⁵ 山');
    const without = await printed(text);
    expect(without.missing).toEqual(['⁵', '山']);
    expect(missingLettersSentence(without.missing)).toBe(
      'The fonts of the PDF lack ⁵ and 山; a box stands for each of them.',
    );
    const given = await printed(text, { more: [openSans] });
    expect(given.missing).toEqual(['山']);
    expect(given.read.text).toContain('Jug ⁵');
  });

  it.each(['quinces', 'noon-greek'])('holds every word of the sheet of %s', async (name) => {
    const text = readFileSync(new URL(`../../../examples/${name}.mahl`, import.meta.url), 'utf8');
    for (const view of ['drawing', 'path'] as const) {
      const { scene, read, missing } = await printed(text, { view });
      const words = (line: string) => line.split(/\s+/u).filter((word) => word !== '');
      const found = new Set(words(read.text.replace(/\n/gu, ' ')));
      const written = scene.layers
        .flatMap(({ marks }) => marks)
        .flatMap((mark) => (mark.kind === 'text' ? words(mark.text) : []));
      expect(missing).toEqual([]);
      expect(written.filter((word) => !found.has(word) && !read.text.includes(word))).toEqual([]);
    }
  });

  it('refuses what is no font', () => {
    expect(checkFont(openSans)).toEqual({ ok: true });
    expect(checkFont(new TextEncoder().encode('no font at all')).ok).toBe(false);
    expect(checkFont(openSans.subarray(0, 400)).ok).toBe(false);
    expect(checkFont(new Uint8Array()).ok).toBe(false);
  });
});
