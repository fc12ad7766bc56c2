import { describe, expect, it } from 'vitest';
import type { PaletteMeasure } from '../../measure/mixing/mixing.js';
import { type Lab, computedColour } from '../../plan/colour/model.js';
import { textWidth } from '../captions/text-width.js';
import type { PathMark, Scene } from '../scene.js';
import { readPdf } from '../../../tests/support/pdf.js';
import { pageOf } from '../paper.js';
import { pdfOf } from '../pdf/pdf.js';
import { roboto } from '../pdf/roboto.js';
import { markOf, marksOf, sceneOf, worked } from '../test-plans.js';
import { kitchenPlan, studioScene } from '../test-studio.js';

const texts = (scene: Scene) =>
  scene.layers.flatMap(({ marks }) => marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])));

function path(scene: Scene, key: string): PathMark {
  const mark = markOf(scene, key);
  if (mark?.kind !== 'path') throw new Error(`No path with the key ${key}.`);
  return mark;
}

/** The middle of the box round the first figures of a path. */
function middleOf({ d }: PathMark): { readonly x: number; readonly y: number } {
  const points = [...d.matchAll(/(-?[\d.]+) (-?[\d.]+)/g)].map(([, x, y]) => ({
    x: Number(x),
    y: Number(y),
  }));
  const rectangle = /^M(-?[\d.]+) (-?[\d.]+)H(-?[\d.]+)V(-?[\d.]+)/.exec(d);
  if (rectangle !== null) {
    const [left = 0, top = 0, right = 0, bottom = 0] = rectangle.slice(1).map(Number);
    return { x: (left + right) / 2, y: (top + bottom) / 2 };
  }
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  return { x: (Math.min(...xs) + Math.max(...xs)) / 2, y: (Math.min(...ys) + Math.max(...ys)) / 2 };
}

describe('the view of the palette', () => {
  const scene = studioScene(kitchenPlan, 'palette');

  it('says how to begin where there is no palette, and shows the bare ground', () => {
    const bare = sceneOf('canvas 40 x 30 cm\nobject a\n  shape circle 3 at (9, 9)', 'palette');
    expect(texts(bare).join(' ')).toContain('No palette yet. Begin one with a line ‘palette’');
    expect(bare.description).toContain('No palette yet.');
    expect(bare.picture).toEqual({ x: 0, y: 0, width: 40, height: 30 });
  });

  it('tells of each paint its index, side, transparency and whether it is the mother, in words', () => {
    const told = (key: string) =>
      marksOf(scene, 'captions').flatMap((mark) =>
        mark.kind === 'text' && mark.subject === `paint:${key}` ? [mark.text] : [],
      );
    expect(told('ultra').join(' ')).toContain('PB29, warm, mother of all mixtures');
    expect(told('ultra')).toContain('3.7 ml, 0.1 tubes');
    expect(told('mystery').join(' ')).toContain('estimated');
    expect(texts(scene)).toContain('Four tubes');
    expect(texts(scene)).toContain('Blue: no cool one');
  });

  it('shows full tone and tint of a paint, and a box struck through where no colour of it is known', () => {
    expect(path(scene, 'paint:ultra').fill).toBe('#1b1c5a');
    expect(path(scene, 'paint:ultra:tint').fill).toBe('#c8c8d8');
    const unknown = studioScene(kitchenPlan, 'palette', (palette) => ({
      ...palette,
      paints: palette.paints.map((paint, index) => (index === 1 ? { basis: 'unknown' } : paint)),
    }));
    expect(path(unknown, 'paint:ultra').fill).toBeUndefined();
    expect(markOf(unknown, 'paint:ultra:unknown')).toBeDefined();
    expect(markOf(unknown, 'wheel:paint:ultra')).toBeUndefined();
    expect(texts(unknown).join(' ')).toContain('Not in the mixtures: ultra.');
  });

  it('says what each colour is mixed of, by how much it is off, and who is painted with it', () => {
    const names = texts(scene);
    expect(names).toContain('delft at step 4');
    expect(names).toContain('delft at step 2');
    expect(names).toContain('lemon');
    expect(names).toContain('3 white : 2 ultra');
    expect(names).toContain('1.5 off, hardly to be seen');
    expect(names).toContain('4 ml for');
    const jug = marksOf(scene, 'captions').find((mark) => mark.kind === 'text' && mark.text === 'jug');
    expect(jug?.subject).toBe('object:jug');
  });

  it('marks what the palette does not reach by its shape on the wheel, and by a sign at its mixture', () => {
    const key = marksOf(scene, 'construction').find(({ tip }) => tip === 'lemon, beyond the palette.')?.key;
    const sign = path(scene, key ?? '');
    // A triangle, where the others are discs.
    expect(sign.d.match(/L/g)).toHaveLength(2);
    expect(path(scene, `${key}:nearest`).stroke?.dash).toBe('dashed');
    const row = key?.replace('wheel:', '') ?? '';
    expect(path(scene, `${row}:frame`).stroke?.ink).toBe('warning');
    expect(path(scene, `${row}:beyond`).tip).toBe('Beyond the palette.');
    expect(scene.legend.map((entry) => entry.key)).toContain('beyond');
  });

  it('lays CIELAB out from above: red to the right, yellow up, and greys in the middle', () => {
    const middle = {
      x: scene.picture.x + scene.picture.width / 2,
      y: scene.picture.y + scene.picture.height / 2,
    };
    const placed = (...lab: Lab) => {
      const made = studioScene(kitchenPlan, 'palette', (palette) => ({
        ...palette,
        paints: palette.paints.map((paint, index) =>
          index === 1 ? { ...paint, full: computedColour(lab) } : paint,
        ),
      }));
      const at = middleOf(path(made, 'wheel:paint:ultra'));
      return { x: at.x - middle.x, y: at.y - middle.y };
    };
    const em = scene.em;
    expect(Math.hypot(placed(60, 0, 0).x, placed(60, 0, 0).y)).toBeLessThan(0.05 * em);
    expect(placed(60, 50, 0).x).toBeGreaterThan(2 * em);
    expect(Math.abs(placed(60, 50, 0).y)).toBeLessThan(0.05 * em);
    expect(placed(60, 0, 50).y).toBeLessThan(-2 * em);
    expect(placed(60, 0, -50).y).toBeGreaterThan(2 * em);
  });

  it('draws the outline of what can be mixed: 40 all round is a ring of one radius', () => {
    const { d } = path(scene, 'wheel:reach');
    const middle = {
      x: scene.picture.x + scene.picture.width / 2,
      y: scene.picture.y + scene.picture.height / 2,
    };
    const radii = [...d.matchAll(/(-?[\d.]+) (-?[\d.]+)/g)].map(([, x, y]) =>
      Math.hypot(Number(x) - middle.x, Number(y) - middle.y),
    );
    expect(radii).toHaveLength(72);
    for (const radius of radii) expect(radius).toBeCloseTo(radii[0] ?? 0, 2);
  });

  it('has strings of values from dark to light, and glazes as body, glaze and what is seen', () => {
    const cells = [0, 1, 2].map((index) => middleOf(path(scene, `string:0:${index}`)).x);
    expect([...cells].sort((a, b) => a - b)).toEqual(cells);
    expect(texts(scene).join(' ')).toContain('step 2: ultra alone, 1.1 off');
    expect(path(scene, 'glaze:object:fruit:over white').fill).toBe('#a8401c');
    expect(path(scene, 'glaze:object:fruit:seen').fill).toBe('#a0661f');
    expect(texts(scene).join(' ')).toContain('mystery alone in 9 medium, an estimate');
  });

  it('names no more colours on the wheel than can be read, and counts the rest', () => {
    const tones = Array.from(
      { length: 30 },
      (_, index) =>
        `object tone${index}\n  shape circle 1 at (${index + 2}, 5)\n  colour hsl(${12 * index} 60% 50%)\n`,
    ).join('');
    const many = studioScene(`${kitchenPlan}${tones}`, 'palette');
    const named = marksOf(many, 'names').filter(({ key }) => /^wheel:swatch:.*:name$/.test(key));
    expect(named.length).toBeGreaterThan(5);
    expect(named.length).toBeLessThanOrEqual(14);
    expect(many.legend.find(({ key }) => key === 'left out')?.text).toMatch(/have no room for a name$/);
  });

  it('shows paints and wheel while the mixtures are still worked out, and says so', () => {
    const waiting = studioScene(kitchenPlan, 'palette', ({ mixing, ...palette }) => {
      expect(mixing).toBeDefined();
      return palette;
    });
    expect(texts(waiting)).toContain('The mixtures are being worked out.');
    expect(waiting.description).toContain('The mixtures are being worked out.');
    expect(markOf(waiting, 'wheel:reach')).toBeUndefined();
    expect(markOf(waiting, 'wheel:paint:ultra')).toBeDefined();
    expect(texts(waiting)).not.toContain('Mixtures');
  });

  it('leads from a paint to its words', () => {
    const lines = kitchenPlan.split('\n');
    const paint = scene.subjects['paint:lemon-yellow'];
    if (paint?.kind !== 'paint') throw new Error('There is no such paint.');
    const { line, start, end } = paint.location;
    expect(lines[line]?.slice(start, end)).toBe('lemon-yellow');
  });

  it('leaves the marks of other colours as they were when one changes', () => {
    const other = studioScene(kitchenPlan.replace('value 3', 'value 1'), 'palette', (palette) => palette);
    const changed = marksOf(scene, 'captions').filter(
      (mark) =>
        mark.subject?.startsWith('finding:') !== true &&
        JSON.stringify(markOf(other, mark.key)) !== JSON.stringify(mark),
    );
    const row = marksOf(scene, 'construction')
      .find(({ tip }) => tip === 'shelf.')
      ?.key.replace('wheel:', '');
    expect(changed.length).toBeGreaterThan(0);
    for (const { key } of changed) expect(key.startsWith(`${row}`), key).toBe(true);
  });

  it('has nothing to take hold of', () => {
    const { handling } = studioScene(kitchenPlan, 'palette', (palette) => palette, { handling: true });
    expect(handling).toBeUndefined();
  });
});

describe('the boards on paper', () => {
  it.each(['palette', 'sittings'] as const)('are printed with words that can be found: %s', async (view) => {
    const { plan } = worked(kitchenPlan);
    const { page } = pageOf(studioScene(kitchenPlan, view), plan, 'A4');
    const { pdf, missing } = await pdfOf(page, { theme: 'light', fonts: { ...roboto, more: [] } });
    expect(missing).toEqual([]);
    const { text } = await readPdf(pdf);
    for (const told of { palette: ['Mixtures', 'lemon-yellow'], sittings: ['Calendar', 'Mon 11 Jan 2027'] }[
      view
    ])
      expect(text).toContain(told);
  });
});

describe('a palette of names that try to be more', () => {
  const names = ['x'.repeat(400), 'مرحبا', '🎨🎨🎨', 'a‮b'];
  const paints = names.map((name) => `  paint "${name}" #804020`).join('\n');
  const plan = `canvas 40 x 30 cm\nobject a\n  shape circle 9 at (20, 15)\n  colour #804020\npalette\n${paints}\n  paint white PW6`;

  it.each([false, true])('stays on its sheet, narrow: %s', (isNarrow) => {
    const scene = studioScene(plan, 'palette', (palette: PaletteMeasure) => palette, { isNarrow });
    const { sheet } = scene;
    for (const mark of scene.layers.flatMap(({ marks }) => marks)) {
      if (mark.kind !== 'text') continue;
      const width = textWidth(mark.text, mark.size);
      const left =
        mark.anchor === 'start' ? mark.x : mark.anchor === 'end' ? mark.x - width : mark.x - width / 2;
      expect(left, mark.text).toBeGreaterThanOrEqual(sheet.x);
      expect(left + width, mark.text).toBeLessThanOrEqual(sheet.x + sheet.width);
    }
    const keys = scene.layers.flatMap(({ marks }) => marks.map(({ key }) => key));
    expect(new Set(keys).size).toBe(keys.length);
  });
});
