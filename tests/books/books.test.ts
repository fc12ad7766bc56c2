import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { format } from '../../grammar/index.js';
import { containsPoint } from '../../server/measure/areas/areas.js';
import { type Checked, checked, objectNamed } from '../support/plan.js';

/**
 * Pictures as old books describe them; each plan names its passage, and README.md says where measure and book differ.
 */
const folder = import.meta.dirname;
const names = readdirSync(folder).filter((name) => name.endsWith('.mahl'));

function textOf(name: string): string {
  return readFileSync(path.join(folder, `${name}.mahl`), 'utf8');
}

function rulesOf({ findings }: Checked): readonly string[] {
  return findings.filter(({ allowed }) => !allowed).map(({ rule }) => rule);
}

/** What an object weighs and turns by, and the part of the picture it is. */
function hangs({ plan, measures }: Checked, name: string) {
  const { index } = objectNamed(plan, name);
  const { weight, moment } = measures.balance.weights.find(({ object }) => object === index) ?? {
    weight: 0,
    moment: 0,
  };
  return { weight, moment, share: measures.objects[index]?.share ?? 0 };
}

function without(text: string, object: string): string {
  return text.replace(new RegExp(`^object {2}${object}\\b.*\\n(?: .*\\n)*`, 'mu'), '');
}

describe.each(names)('%s', (name) => {
  it('can be read, is formatted, and says where it is described', () => {
    const text = textOf(path.basename(name, '.mahl'));
    const { plan } = checked(text);
    expect(plan.problems.filter(({ severity }) => severity !== 'hint')).toEqual([]);
    expect(format(text)).toBe(text);
    const head = text.slice(0, text.indexOf('\nplan '));
    expect(head).toMatch(/\(1[789]\d\d\)/u);
    expect(head).toMatch(/where the books? (?:is|are) silent/u);
  });
});

// H. R. Poore, Pictorial Composition (1903), chapter III, balance of principality or isolation.
describe('Gérôme’s Death of Caesar', () => {
  const text = textOf('poore-death-of-caesar');
  const picture = checked(text);

  it('is balanced by one small figure at the edge', () => {
    const alone = checked(without(text, 'senator')).measures.balance.offset ?? 0;
    const offset = picture.measures.balance.offset ?? 1;
    expect(Math.abs(offset)).toBeLessThan(0.01);
    expect(Math.abs(alone)).toBeGreaterThan(2 * Math.abs(offset));
    expect(rulesOf(picture)).not.toContain('off balance');
  });

  it('has less of its balance from Caesar than from him, though Caesar is four times as large', () => {
    const caesar = hangs(picture, 'caesar');
    const senator = hangs(picture, 'senator');
    expect(caesar.share / senator.share).toBeGreaterThan(4);
    expect(Math.abs(senator.moment)).toBeGreaterThan(Math.abs(caesar.moment));
  });

  it('draws the eye to the conspirators, then to him, and hardly to Caesar', () => {
    const { plan, measures } = picture;
    const drawing = measures.emphasis.places.map(({ areas }) =>
      areas.map((area) => plan.objects[area]?.name),
    );
    expect(measures.emphasis.focal?.rank).toBe(1);
    expect(drawing[0]).toContain('conspirators');
    expect(drawing[1]).toContain('senator');
    expect(drawing.slice(0, 3).flat()).not.toContain('caesar');
  });

  it('counts for no more by his loneliness, where the book says that he does', () => {
    const company = `${text}\nobject  sleepers\n  shape   rectangle 4 x 9 at (132, 51)\n  value   7\n`;
    const crowded = hangs(checked(company), 'senator').weight;
    expect(crowded / hangs(picture, 'senator').weight).toBeCloseTo(1, 1);
  });
});

// E. M. Hurll, Jean François Millet (1900), chapter XII.
describe('Millet’s Gleaners', () => {
  const picture = checked(textOf('hurll-gleaners'));
  const { measures, plan } = picture;

  it('is a mound about the stack in the middle of the field', () => {
    const group = ['girl', 'matron', 'eldest'].map((name) => objectNamed(plan, name).outline.box);
    const middle =
      (Math.min(...group.map(({ left }) => left)) + Math.max(...group.map(({ right }) => right))) / 2;
    const stack = objectNamed(plan, 'stack').outline.box;
    expect(middle).toBeGreaterThan(stack.left);
    expect(middle).toBeLessThan(stack.right);
    expect(Math.abs(measures.balance.offset ?? 1)).toBeLessThan(0.05);
    expect(rulesOf(picture)).not.toContain('off balance');
  });

  it('has the stack faint and the women strong', () => {
    const stack = hangs(picture, 'stack').weight;
    for (const name of ['girl', 'matron', 'eldest']) {
      expect(hangs(picture, name).weight).toBeGreaterThan(10 * stack);
    }
  });

  it('lies in the noon: high in key, with small darks', () => {
    expect(measures.values.key).toBe('high');
    expect(measures.notan.tones.find(({ key }) => key === 'dark')?.share).toBeLessThan(0.15);
  });

  it('lies under a horizon that leaves the picture whole, above all three', () => {
    expect(rulesOf(picture)).not.toContain('halved picture');
    for (const { box } of measures.spacing.principals)
      expect(box.top).toBeGreaterThan(plan.horizon?.value ?? 0);
  });

  it('has no woman who leads, which the rule of one dominant object asks for', () => {
    expect(rulesOf(picture)).toContain('one dominant');
    expect(rulesOf(picture)).not.toContain('even count');
  });
});

// J. Burnet, A Treatise on Painting (1837), Light and Shade, page 33.
describe('Rembrandt’s shepherds', () => {
  const picture = checked(textOf('burnet-shepherds'));
  const { measures, plan } = picture;
  const tone = (key: string) => {
    const found = measures.notan.tones.find((candidate) => candidate.key === key);
    if (!found) throw new Error(`no tone ${key}`);
    return found;
  };

  it('has its shadow in one mass through the centre', () => {
    expect(tone('dark').largestOfTone).toBeGreaterThan(0.9);
    const shadow = measures.areas.layers[plan.coveringOrder.indexOf(objectNamed(plan, 'shadow').index)];
    const centre = { x: plan.canvas.width / 2, y: plan.canvas.height / 2 };
    expect(containsPoint(shadow?.visible ?? [], centre)).toBe(true);
    expect(measures.values.key).toBe('low');
  });

  it('has its principal light above, in one piece', () => {
    const [principal, ...others] = tone('light').pieces;
    expect(principal?.at.y).toBeLessThan(plan.canvas.height / 2);
    expect(tone('light').largestOfTone).toBeGreaterThan(0.8);
    for (const { at } of others) expect(at.y).toBeGreaterThan(plan.canvas.height / 2);
  });

  it('has scarce an eighth of light, which is enough', () => {
    // J. Reynolds, notes on Du Fresnoy, as Poore gives them in chapter X.
    expect(tone('light').share).toBeLessThan(1 / 8);
    expect(tone('light').share).toBeGreaterThan(1 / 12);
    expect(rulesOf(picture).filter((rule) => rule === 'spots' || rule === 'no leading tone')).toEqual([]);
  });
});

// J. Ruskin, The Elements of Drawing (1857), letter III, the laws of radiation and contrast.
describe('Turner’s Windsor', () => {
  const picture = checked(textOf('ruskin-windsor'));
  const { measures, plan } = picture;

  it('guides the eye up to the right, to the keep', () => {
    expect(measures.eyePath.leads).toHaveLength(3);
    for (const { arrival, missShare } of measures.eyePath.leads) {
      expect(arrival).toBeGreaterThan(270);
      expect(arrival).toBeLessThan(360);
      expect(missShare).toBeLessThan(0.02);
    }
    expect(rulesOf(picture)).not.toContain('lead past focus');
  });

  it('is led all from the left, where the trade asks for more sides', () => {
    const { left, bottom, right, top } = measures.eyePath.sides;
    expect([right, top]).toEqual([0, 0]);
    expect(left + bottom).toBeGreaterThan(0);
  });

  it('has its central object where they meet', () => {
    const dominants = measures.focus?.dominants ?? [];
    expect(dominants.map(({ object }) => plan.objects[object]?.name)).toEqual(['keep']);
    expect(dominants.every(({ holds }) => holds)).toBe(true);
    expect(measures.emphasis.focal?.rank).toBe(1);
    expect(rulesOf(picture)).not.toContain('dominant off focus');
  });
});
