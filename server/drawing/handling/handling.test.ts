import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import type { ReadFile } from '../../plan/plan.js';
import { compose } from '../compose.js';
import type { Handling } from './handles.js';
import { markOf, worked } from '../test-plans.js';

function handlingIn(text: string, readFile?: ReadFile): Handling {
  const { plan, measures, findings } = worked(text, readFile);
  const { handling } = compose(plan, measures, findings, 'values', { handling: true });
  if (!handling) throw new Error('no handling');
  return handling;
}

const PLAN = `canvas 24 x 18 in
divide thirds, own
  uprights 6
  levels 1/2
focus (12, 5)
scale 5
colour Teal #2f6f73
colour coal teal
sketch "scan.png"
  corners (3%, 4%) (97%, 3%) (98%, 96%) (20, 900)
  opacity 40%
object wall
  shape rectangle (0, 0) to (24, 6)
  colour coal
object roof
  shape outline (4, 4) (8, 1) (12, 4)
  value 2.5
  colour #aabbcc
object nothing
lead kerb from left edge through (2, 3) to focus
`;

describe('what can be taken hold of', () => {
  const { grips, guides, tones, colours, painted, unit, sketch } = handlingIn(PLAN);

  it('are objects with a shape, points, the focal point, leads and their places', () => {
    expect(grips.map(({ key, name, kind }) => [key, name, kind])).toEqual([
      ['object:wall', 'wall', 'object'],
      ['object:roof', 'roof', 'object'],
      ['object:roof:point:1', 'point 1 of roof', 'point'],
      ['object:roof:point:2', 'point 2 of roof', 'point'],
      ['object:roof:point:3', 'point 3 of roof', 'point'],
      ['focus', 'focal point', 'focus'],
      ['lead:kerb', 'lead kerb', 'lead'],
      ['lead:kerb:from', 'start of lead kerb', 'lead place'],
      ['lead:kerb:through:1', 'middle place of lead kerb', 'lead place'],
      ['lead:kerb:to', 'end of lead kerb', 'lead place'],
    ]);
    expect(grips[1]?.at).toEqual({ x: 8, y: 2.5 });
  });

  it('has guides, among them the focal point, which is on no crossing', () => {
    expect(guides.lines).toHaveLength(6);
    expect(guides.crossings.map(({ name }) => name)).toEqual([
      'thirds upper left',
      'thirds lower left',
      'thirds upper right',
      'thirds lower right',
      'own middle left',
      'focal point',
    ]);
    expect(guides.crossings[4]?.at).toEqual({ x: 6, y: 9 });
    const onCrossing = handlingIn(PLAN.replace('focus (12, 5)', 'focus upper left of thirds'));
    expect(onCrossing.guides.crossings.map(({ name }) => name)).not.toContain('focal point');
  });

  it('says the greys of the scale as the values are drawn, the colours, and how objects are painted', () => {
    const { plan, measures, findings } = worked(PLAN.replace('value 2.5', 'value 2'));
    const scene = compose(plan, measures, findings, 'values');
    expect(tones).toHaveLength(5);
    expect(markOf(scene, 'object:roof')).toMatchObject({ fill: tones[1] });
    expect(colours).toEqual([
      { name: 'Teal', hex: '#2f6f73' },
      { name: 'coal', hex: '#2f6f73' },
    ]);
    expect(painted).toEqual({
      'object:wall': { step: expect.any(Number), colour: { name: 'coal' } },
      'object:roof': { step: 2.5, colour: { hex: '#aabbcc' } },
      'object:nothing': {},
    });
    expect(unit).toBe('in');
  });

  it('tells of the sketch where it lies', () => {
    expect(sketch).toMatchObject({ file: 'scan.png', opacity: 0.4 });
    expect(sketch?.corners[0]?.across).toEqual({ value: 0.03, in: 'parts' });
    expect(sketch?.corners[3]).toEqual({
      across: { value: 20, in: 'pixels' },
      down: { value: 900, in: 'pixels' },
    });
    expect(handlingIn(PLAN.replace('  opacity 40%\n', '')).sketch?.opacity).toBe(0.5);
    expect(handlingIn('object jug\n').sketch).toBeUndefined();
  });

  it('tells no more points than a page can hold', () => {
    const points = Array.from({ length: 1_500 }, (_, n) => `(${n % 30}, ${Math.floor(n / 30) % 20})`).join(
      ' ',
    );
    const many = handlingIn(`object a\n  shape outline ${points}\nobject b\n  shape smooth ${points}\n`);
    expect(many.grips.filter(({ kind }) => kind === 'point')).toHaveLength(2_000);
    expect(many.grips.filter(({ kind }) => kind === 'object')).toHaveLength(2);
  });

  it('says of what has a place that can’t be told why it can’t be moved', () => {
    const lost = handlingIn('canvas 40 x 30 cm\nobject jug\n  shape circle 9\n  at middle left of thirds\n');
    expect(lost.grips.find(({ key }) => key === 'object:jug')?.fixed).toBe(
      'Where `jug` lies can’t be told from its `at`: mend that, and it can be moved.',
    );
  });

  it('tells nothing unless it is asked for', () => {
    const { plan, measures, findings } = worked(PLAN);
    expect(compose(plan, measures, findings, 'values').handling).toBeUndefined();
  });

  const folder = path.resolve(import.meta.dirname, '../../../examples');
  it.each(readdirSync(folder).filter((name) => name.endsWith('.mahl')))(
    'has keys of its own in %s',
    (name) => {
      const textOf = (file: string) => readFileSync(path.join(folder, file), 'utf8');
      const { grips: held } = handlingIn(textOf(name), (file) => ({ ok: true, text: textOf(file) }));
      expect(held.length).toBeGreaterThan(5);
      expect(new Set(held.map(({ key }) => key)).size).toBe(held.length);
      for (const { at } of held) expect([at.x, at.y].every(Number.isFinite)).toBe(true);
    },
  );
});
