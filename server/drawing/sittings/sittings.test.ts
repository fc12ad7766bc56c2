import fc from 'fast-check';
import svgpath from 'svgpath';
import { describe, expect, it } from 'vitest';
import { textWidth } from '../captions/text-width.js';
import { greyOf, hexOf } from '../picture/ink.js';
import type { PathMark, Scene } from '../scene.js';
import { markOf, marksOf, sceneOf } from '../test-plans.js';
import { kitchenPlan, studioScene } from '../test-studio.js';

const texts = (scene: Scene) =>
  scene.layers.flatMap(({ marks }) => marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])));

function path(scene: Scene, key: string): PathMark {
  const mark = markOf(scene, key);
  if (mark?.kind !== 'path') throw new Error(`No path with the key ${key}.`);
  return mark;
}

interface Extent {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** Round a path that is a rectangle, or one of lines and curves with all figures written in pairs. */
function extentOf({ d }: PathMark): Extent {
  const [, left, top, right, bottom] = /^M(-?[\d.]+) (-?[\d.]+)H(-?[\d.]+)V(-?[\d.]+)/.exec(d) ?? [];
  if (left !== undefined)
    return { left: Number(left), top: Number(top), right: Number(right), bottom: Number(bottom) };
  const figures: number[] = [];
  svgpath(d)
    .abs()
    .iterate((segment, index) => {
      // The corner of a small picture is where its outlines begin, not a part of them.
      if (index > 0) figures.push(...(segment.slice(1) as number[]));
    });
  const [xs, ys] = [0, 1].map((odd) => figures.filter((_, index) => index % 2 === odd)) as [
    number[],
    number[],
  ];
  return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
}

describe('the view of the sittings', () => {
  const scene = studioScene(kitchenPlan, 'sittings');
  const shown = (sitting: string) =>
    marksOf(scene, 'picture').flatMap(({ key }) =>
      key.startsWith(`sitting:${sitting}:object:`) ? [key.split(':object:')[1]] : [],
    );

  it('says how to begin where there are none', () => {
    const bare = sceneOf('canvas 40 x 30 cm', 'sittings');
    expect(texts(bare).join(' ')).toContain('No sittings yet. Begin with a line such as');
    expect(bare.description).toContain('No sittings yet.');
  });

  it('shows after each sitting what is painted so far, and nothing of what is not', () => {
    expect(shown('Lay in')).toEqual(['wall', 'jug']);
    expect(shown('Colour')).toEqual(['wall', 'jug', 'fruit']);
    expect(shown('Warm the fruit')).toEqual(['wall', 'jug', 'fruit']);
  });

  it('shows an underpainting in the grey of each value, and body colour over it', () => {
    // Five steps: step 2 is Munsell value 3, step 4 is 7.
    expect(path(scene, 'sitting:Lay in:object:jug').fill).toBe(hexOf(greyOf(3)));
    expect(path(scene, 'sitting:Lay in:object:wall').fill).toBe(hexOf(greyOf(7)));
    const drawn = studioScene(kitchenPlan, 'colour');
    expect(path(scene, 'sitting:Colour:object:jug').fill).toBe(path(drawn, 'object:jug').fill);
    expect(path(scene, 'sitting:Colour:object:wall').fill).toBe(hexOf(greyOf(7)));
  });

  it('lays a glaze over the body colour as a shape of its own, which can be left off', () => {
    const body = path(scene, 'sitting:Warm the fruit:object:fruit');
    const glaze = path(scene, 'glaze over sitting:Warm the fruit:object:fruit');
    expect(glaze.d).toBe(body.d);
    expect(glaze.fill).toBe('#a0661f');
    expect(markOf(scene, 'glaze over sitting:Colour:object:fruit')).toBeUndefined();
    const without = studioScene(kitchenPlan, 'sittings', (palette) => palette, { glazes: false });
    expect(markOf(without, 'glaze over sitting:Warm the fruit:object:fruit')).toBeUndefined();
  });

  it('draws round what is worked on, which can be gone to, and round nothing else', () => {
    expect(path(scene, 'sitting:Colour:object:fruit').subject).toBe('object:fruit');
    expect(path(scene, 'sitting:Colour:object:fruit').stroke?.weight).toBe('fine');
    expect(path(scene, 'sitting:Colour:object:wall').subject).toBeUndefined();
    expect(path(scene, 'sitting:Colour:object:wall').stroke?.weight).toBe('hair');
  });

  it('keeps what reaches off the canvas within its small picture', () => {
    const plan = `${kitchenPlan}sitting "Shelf" on 2027-02-20\n  works shelf\n`;
    const wide = studioScene(plan, 'sittings');
    const frame = extentOf(path(wide, 'sitting:Shelf:edge'));
    const shelf = extentOf(path(wide, 'sitting:Shelf:object:shelf'));
    const em = wide.em;
    expect(shelf.left).toBeGreaterThan(frame.left - 0.05 * em);
    expect(shelf.right).toBeLessThan(frame.right + 0.05 * em);
    expect(shelf.bottom).toBeLessThan(frame.bottom + 0.05 * em);
    // From 26 of 30 cm down to the lower edge.
    expect((shelf.top - frame.top) / (frame.bottom - frame.top)).toBeCloseTo(26 / 30, 2);
  });

  it('says under each picture its title, day with weekday, layer and fat', () => {
    expect(texts(scene)).toContain('1 Lay in');
    expect(texts(scene)).toContain('Mon 11 Jan 2027');
    expect(
      texts(scene)
        .map((text) => text.replace('\u00A0', ' '))
        .join(' '),
    ).toContain('underpainting, lean, 0 % fat');
    expect(scene.subjects['sitting:Lay in']).toMatchObject({ kind: 'sitting', name: 'Lay in' });
  });

  it('has a coat on its day, and hatches until it is dry', () => {
    const first = extentOf(path(scene, 'calendar:object:jug:0'));
    const second = extentOf(path(scene, 'calendar:object:jug:1'));
    const due = extentOf(path(scene, 'calendar:due'));
    // 11 and 13 January and the end of 1 March are 2 and 49 days apart.
    expect((due.left - first.left) / (second.left - first.left)).toBeCloseTo(50 / 2, 1);
    const drying = extentOf(path(scene, 'calendar:object:jug:1:drying'));
    expect(drying.left).toBeCloseTo(second.right, 2);
    expect(drying.right).toBeGreaterThan(drying.left);
    expect(path(scene, 'calendar:object:jug:1').tip).toMatch(/^Body colour on Wed 13 Jan 2027, dry on /);
  });

  it('has a band for days that are taken, and a row for what is worked on only', () => {
    const band = extentOf(path(scene, 'calendar:away:0'));
    const lead = extentOf(path(scene, 'calendar:sitting:0'));
    const due = extentOf(path(scene, 'calendar:due'));
    // From 11 January: 20 January is 9 days on, three days long, out of 50 to the end of 1 March.
    const across = (due.left - lead.left) / 50;
    expect((band.left - lead.left) / across).toBeCloseTo(9, 1);
    expect((band.right - band.left) / across).toBeCloseTo(3, 1);
    expect(markOf(scene, 'calendar:object:shelf:name')).toBeUndefined();
    expect(markOf(scene, 'calendar:object:fruit:name')).toBeDefined();
    expect(texts(scene)).toContain('Never worked on: shelf');
  });

  it('dashes a coat that is at odds with the one below it, and marks the finding there', () => {
    const hasty = kitchenPlan.replace('on 2027-02-08', 'on 2027-01-14');
    const early = studioScene(hasty, 'sittings');
    const coat = path(early, 'calendar:object:fruit:1');
    expect(coat.stroke).toMatchObject({ dash: 'dashed', ink: 'warning' });
    expect(early.legend.map(({ key }) => key)).toContain('conflict');
    expect(scene.legend.map(({ key }) => key)).not.toContain('conflict');
  });

  it('wraps many sittings into rows, and counts those that are too many', () => {
    const many = Array.from(
      { length: 30 },
      (_, index) => `sitting "Day ${index}" on 2028-01-${String(index + 1).padStart(2, '0')}\n  works jug\n`,
    ).join('');
    const long = studioScene(`${kitchenPlan}${many}`, 'sittings');
    const frames = marksOf(long, 'construction').filter(({ key }) => key.endsWith(':edge'));
    expect(frames).toHaveLength(24);
    expect(texts(long)).toContain('and nine more sittings');
    const tops = new Set(frames.map((mark) => (mark.kind === 'path' ? extentOf(mark).top : 0)));
    expect(tops.size).toBeGreaterThan(2);
  });

  it('leaves the pictures of other things as they were when one is moved', () => {
    const moved = studioScene(
      kitchenPlan.replace('circle 4 at (30, 22)', 'circle 4 at (31, 22)'),
      'sittings',
    );
    const changed = marksOf(scene, 'picture').filter(
      (mark) => JSON.stringify(markOf(moved, mark.key)) !== JSON.stringify(mark),
    );
    for (const { key } of changed) expect(key).toContain('object:fruit');
  });

  it('stays on its sheet whatever titles and names say', () => {
    const title = fc.string({ maxLength: 60 }).map((text) => text.replace(/["\r\n\\]/g, '') || 'x');
    fc.assert(
      fc.property(fc.array(title, { minLength: 1, maxLength: 8 }), fc.boolean(), (titles, isNarrow) => {
        const sittings = titles.map(
          (each, index) => `sitting "${each}" on 2027-03-0${index + 1}\n  works jug\n`,
        );
        const made = studioScene(`${kitchenPlan}${sittings.join('')}`, 'sittings', (palette) => palette, {
          isNarrow,
        });
        const marks = made.layers.flatMap((layer) => layer.marks);
        expect(new Set(marks.map(({ key }) => key)).size).toBe(marks.length);
        for (const mark of marks) {
          if (mark.subject !== undefined) expect(made.subjects).toHaveProperty([mark.subject]);
          if (mark.kind !== 'text' || mark.anchor !== 'start') continue;
          expect(mark.x + textWidth(mark.text, mark.size)).toBeLessThanOrEqual(
            made.sheet.x + made.sheet.width,
          );
        }
      }),
      { numRuns: 25 },
    );
  });
});
