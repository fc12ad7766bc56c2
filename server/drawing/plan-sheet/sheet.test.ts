import { describe, expect, it } from 'vitest';
import { readPdf } from '../../../tests/support/pdf.js';
import { pageToText } from '../headless.js';
import type { Page } from '../page.js';
import type { PaperSize } from '../paper.js';
import { pdfOf } from '../pdf/pdf.js';
import { roboto } from '../pdf/roboto.js';
import { worked } from '../test-plans.js';
import { textWidth } from '../captions/text-width.js';
import { cautionsOf } from '../../plan/materials/cautions.js';
import { overlap } from '../picture/boxes.js';
import { cautionsInWords } from './cautions.js';
import { planSheet } from './sheet.js';

function sheetOf(text: string, paper?: PaperSize): Page {
  const { plan, measures, findings } = worked(text);
  return planSheet(plan, measures, findings, paper);
}

const wordsOf = (page: Page): string =>
  page.marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])).join('\n');

/** A market of so many stalls in so many colours. */
function market(stalls: number, colours: number, canvas: string): string {
  const named = Array.from(
    { length: colours },
    (_, index) => `colour tone${index} #${(0x203040 + 0x0b0703 * index).toString(16)} dominant`,
  );
  const objects = Array.from({ length: stalls }, (_, index) => {
    const [x, y] = [(index * 17) % 90, (index * 29) % 90];
    return `object stall${index}${index === 0 ? ', dominant' : ''}\n  shape rectangle (${x}%, ${y}%) to (${x + 9}%, ${y + 8}%)\n  colour tone${index % colours}\n  value ${1 + (index % 5)}`;
  });
  return [
    'plan "Market before the rain" by "A. N. Painter"',
    'concept "Everybody is looking up."',
    'mood held breath',
    'cue "the first heavy drop"',
    `canvas ${canvas}`,
    '  medium oil',
    'divide golden',
    'focus upper left',
    'budget value dark 30%, middle 40%, light 30% within 5%',
    'budget colour dominant 60%, complement 20%, discord 20% within 5%',
    ...named,
    'allow bare ground because "the toned panel is the paving"',
    ...objects,
    'palette',
    '  paint white PW6',
    '  paint ultra PB29, warm',
  ].join('\n');
}

/** Whether marks and drawings lie on the paper; text by about how wide it is. */
function expectOnPaper({ marks, drawings, width, height }: Page): void {
  for (const mark of marks) {
    if (mark.kind !== 'text') continue;
    const wide = textWidth(mark.text, mark.size);
    const left = mark.x - { start: 0, middle: 0.5, end: 1 }[mark.anchor] * wide;
    expect(left, mark.text).toBeGreaterThan(5);
    expect(left + wide, mark.text).toBeLessThan(width - 5);
    expect(mark.y - mark.size, mark.text).toBeGreaterThan(5);
    expect(mark.y, mark.text).toBeLessThan(height - 5);
  }
  for (const { at } of drawings) {
    expect(Math.min(at.x, at.y)).toBeGreaterThan(5);
    expect(at.x + at.width).toBeLessThan(width - 5);
    expect(at.y + at.height).toBeLessThan(height - 5);
  }
}

/** Whether no line of text lies over another; letters are taken a little narrower than they may be. */
function expectApart({ marks }: Page): void {
  const boxes = marks.flatMap((mark) => {
    if (mark.kind !== 'text' || mark.text === '') return [];
    const width = 0.9 * textWidth(mark.text, mark.size);
    const x = mark.x - { start: 0, middle: 0.5, end: 1 }[mark.anchor] * width;
    return [{ text: mark.text, x, y: mark.y - 0.6 * mark.size, width, height: 0.6 * mark.size }];
  });
  boxes.forEach((one, index) => {
    const over = boxes.slice(index + 1).find((other) => overlap(one, other));
    expect(over && `${one.text} / ${over.text}`).toBeUndefined();
  });
}

/** Everything that is done at the easel: paints, mixtures, sittings and what is dangerous in them. */
function easel(paints: number, sittings: number): string {
  const tubes = [
    'PW6',
    'PY35',
    'PY43',
    'PR108',
    'PR101',
    'PB29',
    'PB28',
    'PG18',
    'PBr24',
    'PB35',
    'PY40',
    'PW1',
  ];
  return [
    ...tubes.slice(2, paints).map((index) => `  paint ${index.toLowerCase()}-of-the-box ${index}`),
    ...Array.from(
      { length: sittings },
      (_, index) =>
        `sitting "Sitting the ${index + 1}" on 2027-0${1 + Math.floor(index / 9)}-1${index % 9}\n  works stall${index}, stall0\n  layer body colour, fat\n  medium "linseed oil, turpentine"`,
    ),
    'due 2027-08-01',
  ].join('\n');
}

const canvases = ['120 x 70 cm', '60 x 90 cm', '80 x 80 cm', '300 x 40 cm', '20 x 200 cm'];

describe('the plan sheet', () => {
  it('tells what is painted, how, and why rules are set aside', () => {
    const words = wordsOf(sheetOf(market(12, 4, '120 x 70 cm')));
    for (const told of [
      'Market before the rain',
      '120 × 70 cm, oil. By A. N. Painter',
      'Everybody is looking up.',
      'Mood: held breath',
      'Notan in three tones',
      'Values in five steps',
      'tone3',
      'dominant · #414549',
      'white PW6, ultra PB29 (warm)',
      'division: golden section',
      'Set aside on purpose',
      '“the toned panel is the paving”',
    ])
      expect(words).toContain(told);
    expect(words).toMatch(/dominant · #414549 · \d[\d.]*[A-Z]+ \d/);
    expect(words).toMatch(/Bare ground shows on [\d.]+ %/);
  });

  it.each(canvases)(
    'keeps forty objects in fifteen colours on the page, and counts what is left out: %s',
    (canvas) => {
      const page = sheetOf(market(40, 15, canvas));
      expectOnPaper(page);
      expect(wordsOf(page)).toMatch(/and \w+ more/);
      const [drawing, ...others] = page.drawings.map(({ at }) => at.width * at.height);
      expect(drawing).toBeGreaterThan(3 * Math.max(...others));
    },
  );

  it.each(canvases)('tells what is mixed, when it is painted, and every caution whole: %s', (canvas) => {
    for (const [paints, sittings] of [
      [2, 0],
      [6, 3],
      [12, 20],
    ] as const) {
      const page = sheetOf(`${market(20, 6, canvas)}\n${easel(paints, sittings)}`);
      expectOnPaper(page);
      expectApart(page);
      const words = wordsOf(page);
      expect(words).toContain('Paints and mixtures');
      expect(words.replaceAll('\u00A0', ' ')).toMatch(/\d (?:white|ultra)/);
      expect(words.replaceAll('\n', ' ')).toContain('then away by local rules.');
      if (sittings === 0) continue;
      expect(words).toContain('Mon 11 Jan 2027 Sitting the 2');
      expect(words).toContain('body colour, fat, dry on');
      expect(words.replaceAll('\n', ' ')).toContain('keep flame and cigarettes away.');
      if (paints > 6) expect(words).toMatch(/and \S+ more (mixtures|sittings)/);
    }
  });

  it('tells hazards that ask for the same care together', () => {
    const { plan } = worked('palette\n  paint lemon PY35\n  paint viridian PG18\n  paint smalt PB28');
    expect(cautionsInWords(cautionsOf(plan))[0]).toMatch(
      /^Cadmium in `lemon` \(PY35\), cobalt in `smalt` \(PB28\) and chromium in `viridian` \(PG18\): no sanding, no spraying/,
    );
  });

  it.each(['', 'canvas 30 x 40 cm', 'plan "Only a title"'])(
    'has a place for everything of hardly any plan: %j',
    (text) => {
      const page = sheetOf(text);
      expectOnPaper(page);
      expect(page.drawings.map(({ key }) => key)).toEqual(['drawing', 'notan', 'values']);
    },
  );

  it('is upright for a picture that is wider than high, across for others, Letter for inches', () => {
    const size = ({ width, height }: Page) => [width, height];
    expect(size(sheetOf('canvas 90 x 60 cm'))).toEqual([210, 297]);
    expect(size(sheetOf('canvas 60 x 90 cm'))).toEqual([297, 210]);
    expect(size(sheetOf('canvas 20 x 16 in'))).toEqual([215.9, 279.4]);
    expect(size(sheetOf('canvas 20 x 16 in', 'A3'))).toEqual([297, 420]);
  });

  it('keeps hostile text as text', () => {
    const hostile = '</text><script>alert(1)</script>]]>&amp;';
    const page = sheetOf(
      `plan "${hostile}" by "${hostile}"\nconcept "${'W'.repeat(4000)}"\ncanvas 90 x 60 cm\ncolour ${'x'.repeat(300)} #2f6f73\nallow bare ground because "${hostile}"`,
    );
    const svg = pageToText(page, { theme: 'light' });
    expect(svg).not.toContain('<script');
    expect(svg).toContain('&lt;script&gt;');
    expectOnPaper(page);
  });

  it('has ids that do not meet in SVG', () => {
    const svg = pageToText(sheetOf(market(8, 3, '60 x 90 cm')), { theme: 'light' });
    const ids = [...svg.matchAll(/ id="([^"]*)"/g)].map(([, id]) => id);
    expect(ids.length).toBeGreaterThan(8);
    expect(new Set(ids).size).toBe(ids.length);
    for (const [, id] of svg.matchAll(/url\(#([^)]*)\)/g)) expect(ids).toContain(id);
    expect(svg).toMatch(/viewBox="0 0 297 210" width="297mm"/);
  });

  it('is one page of PDF whose words can be found', async () => {
    const page = sheetOf(
      market(12, 4, '60 x 90 cm').replace('Everybody is looking up.', 'Όλοι κοιτούν ψηλά.'),
    );
    const { pdf, missing } = await pdfOf(page, { theme: 'light', fonts: { ...roboto, more: [] } });
    const read = await readPdf(pdf);
    expect(missing).toEqual([]);
    expect(Math.abs(read.width - 297)).toBeLessThan(0.2);
    expect(Math.abs(read.height - 210)).toBeLessThan(0.2);
    expect(read.title).toBe('Market before the rain: plan sheet');
    expect(read.author).toBe('A. N. Painter');
    for (const told of ['Όλοι κοιτούν ψηλά.', 'stall7', 'Notan', '“the toned panel is the paving”'])
      expect(read.text).toContain(told);
  });
});
