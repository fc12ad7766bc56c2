import Color from 'colorjs.io';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseColour } from './colour.js';
import type { Lab } from './model.js';

function lab(text: string): Lab {
  const reading = parseColour(text);
  if (!reading.ok) throw new Error(`${text}: ${reading.reason}`);
  return reading.colour.lab;
}

function refusal(text: string): { readonly reason: string; readonly suggestion?: string } {
  const reading = parseColour(text);
  if (reading.ok) throw new Error(`${text} was read`);
  return reading;
}

/** CIELAB (D65) by colorjs.io, an independent library. */
function oracle(text: string): Lab {
  const [l, a, b] = new Color(text).to('lab-d65').coords;
  return [l ?? 0, a ?? 0, b ?? 0];
}

function expectNear(one: Lab, other: Lab, within: number): void {
  for (const index of [0, 1, 2] as const) expect(Math.abs(one[index] - other[index])).toBeLessThan(within);
}

const inRange = (min: number, max: number) =>
  fc.double({ min, max, noNaN: true }).map((x) => Number(x.toFixed(4)));
const call = (name: string, ...parts: readonly fc.Arbitrary<number | string>[]) =>
  fc.tuple(...parts).map((values) => `${name}(${values.join(' ')})`);
const percentage = inRange(0, 100).map((x) => `${x}%`);

describe('colours agree with an independent library', () => {
  test.each([
    ['hex', fc.integer({ min: 0, max: 0xffffff }).map((x) => `#${x.toString(16).padStart(6, '0')}`)],
    ['rgb', call('rgb', inRange(0, 255), inRange(0, 255), inRange(0, 255))],
    ['rgb in %', call('rgb', percentage, percentage, percentage)],
    ['hsl', call('hsl', inRange(0, 360), percentage, percentage)],
    // colorjs.io does not scale white and black that come to more than 100 %, as CSS asks.
    [
      'hwb',
      call(
        'hwb',
        inRange(0, 360),
        inRange(0, 50).map((x) => `${x}%`),
        inRange(0, 50).map((x) => `${x}%`),
      ),
    ],
  ])('%s to 0.001', (_name, texts) => {
    fc.assert(fc.property(texts, (text) => expectNear(lab(text), oracle(text), 1e-3)));
  });

  const spaces = ['srgb', 'srgb-linear', 'display-p3', 'a98-rgb', 'prophoto-rgb', 'rec2020'];
  const otherSpaces: readonly (readonly [string, fc.Arbitrary<string>])[] = [
    // The libraries round their matrices differently, which is felt near black; and far from D50's grey
    // a lightness near 100 leaves the bounds when adapted. So L* is 10 to 85 here.
    ['lab, which is D50', call('lab', inRange(10, 85), inRange(-80, 80), inRange(-80, 80))],
    ['lch, which is D50', call('lch', inRange(10, 85), inRange(0, 100), inRange(0, 360))],
    ['oklab', call('oklab', inRange(0.3, 0.9), inRange(-0.2, 0.2), inRange(-0.2, 0.2))],
    ['oklch', call('oklch', inRange(0.3, 0.9), inRange(0, 0.2), inRange(0, 360))],
    ...spaces.map((space): readonly [string, fc.Arbitrary<string>] => [
      `color(${space})`,
      call('color', fc.constant(space), inRange(0, 1), inRange(0, 1), inRange(0, 1)),
    ]),
  ];

  test.each(otherSpaces)('%s to 0.01', (_name, texts) => {
    fc.assert(fc.property(texts, (text) => expectNear(lab(text), oracle(text), 0.01)));
  });

  test.each(['rebeccapurple', 'Teal', 'SlateGrey', 'color(xyz 0.3 0.3 0.3)', 'color(xyz-d50 0.3 0.3 0.3)'])(
    '%s',
    (text) => {
      expectNear(lab(text), oracle(text), 0.01);
    },
  );
});

describe('ways to write the same colour', () => {
  test.each([
    [
      '#2f6f73',
      ['#2F6F73', '#2f6f73ff', 'rgb(47 111 115)', 'rgb(47, 111, 115)', 'RGBA(47, 111, 115, 1)', ' #2f6f73 '],
    ],
    [
      '#ff0000',
      [
        '#f00',
        '#f00f',
        'red',
        'hsl(0 100% 50%)',
        'hsl(360deg, 100%, 50%)',
        'hwb(0 0% 0%)',
        'rgb(300 -20 none)',
      ],
    ],
    ['white', ['#fff', 'N 10/', 'lab(100 0 0)', 'oklch(1 0 0)', 'color(srgb 1 1 1)']],
  ])('%s', (text, others) => {
    for (const other of others) expectNear(lab(other), lab(text), 1e-3);
  });

  test('the notation is kept as the painter wrote it', () => {
    const notation = (text: string) => {
      const reading = parseColour(text);
      return reading.ok ? reading.colour.notation : undefined;
    };
    expect(notation(' 7.5R 4/10 ')).toEqual({ kind: 'munsell', text: '7.5R 4/10' });
    expect(notation('#2F6F73')).toEqual({ kind: 'hex', text: '#2F6F73' });
    expect(notation('Teal')).toEqual({ kind: 'css', text: 'Teal' });
  });

  test('a text that was read before gives the same object', () => {
    expect(parseColour('#123456')).toBe(parseColour('#123456'));
  });
});

describe('what is refused, and what may have been meant', () => {
  test.each([
    ['#2f6f7380', '#2f6f73'],
    ['#26a8', '#26a'],
    ['rgb(47 111 115 / 40%)', 'rgb(47 111 115)'],
    ['rgba(47, 111, 115, 0.4)', 'rgb(47, 111, 115)'],
    ['lab(50 10 10 / none)', 'lab(50 10 10)'],
    ['transparent', undefined],
  ])('%s is see-through', (text, suggestion) => {
    expect(refusal(text).reason).toBe(
      'Paint is opaque, and this colour is see-through; thin it with a glaze instead.',
    );
    expect(refusal(text).suggestion).toBe(suggestion);
  });

  test.each([
    ['', 'A colour is missing.'],
    ['#12', 'A hex code has 3 or 6 digits after the #, and this has 2.'],
    ['#12345g', '“g” is no hex digit; those are 0 to 9 and a to f.'],
    ['color(display-p4 1 0 0)', /^color\(\) begins with the name of a colour space: srgb,/],
    ['color(srgb', 'A closing bracket is missing.'],
    ['rgb(1 2)', /three numbers are wanted/],
    ['lab(5x 2 3)', '“5x” is no number of a colour.'],
    ['color(srgb 3 3 3)', 'This would be lighter than white.'],
    ['color(srgb -1 -1 -1)', 'This would be darker than black.'],
    ['lab(50 1e9 0)', 'This would be stronger than any colour that can be seen.'],
    ['5R 5/1000', 'This would be stronger than any colour that can be seen.'],
    ['lch(50 1e999 0)', 'The numbers are too large for a colour.'],
    ['5R 12/4', 'Munsell value goes from 0 (black) to 10 (white), and this is 12.'],
    ['x'.repeat(300), 'This is too long to be a colour.'],
  ])('%s', (text, reason) => {
    expect(refusal(text).reason).toMatch(reason);
  });

  test.each([
    ['2f6f73', '#2f6f73'],
    ['5b4', '#5b4'],
    ['turquiose', 'turquoise'],
    ['orenge', 'orange'],
    ['rbg(1 2 3)', 'rgb(1 2 3)'],
    ['rgb(1 2 3', 'rgb(1 2 3)'],
    ['R 4/10', '5R 4/10'],
    ['burnt umber', undefined],
  ])('%s may have been meant as %s', (text, suggestion) => {
    expect(refusal(text).suggestion).toBe(suggestion);
  });
});

describe('whatever the text', () => {
  const fragments = fc.constantFrom(
    ...[
      '#',
      'rgb(',
      'color(',
      'lab(',
      ')',
      '/',
      ' ',
      ',',
      '%',
      'none',
      'deg',
      '-',
      '1e',
      '5R',
      'N',
      '4',
      '.',
      'srgb',
      '\n',
    ],
    ...['constructor', '__proto__', 'tostring', 'calc(', '\u0000', '😀', 'É'],
  );
  const texts = fc.oneof(
    fc.string({ unit: 'binary' }),
    fc.array(fragments, { maxLength: 12 }).map((parts) => parts.join('')),
  );

  test('reading never throws; a colour is finite, and a refusal says why', () => {
    fc.assert(
      fc.property(texts, (text) => {
        const reading = parseColour(text);
        if (reading.ok) expect(reading.colour.lab.every(Number.isFinite)).toBe(true);
        else expect(reading.reason).not.toBe('');
      }),
      { numRuns: 5000 },
    );
  });

  const slips = fc.oneof(
    fc
      .constantFrom('turquoise', 'orange', 'teal', 'rebeccapurple')
      .chain((name) => fc.nat(name.length - 1).map((at) => name.slice(0, at) + name.slice(at + 1))),
    fc
      .tuple(fc.constantFrom('rgb', 'rbg', 'lab', 'color', 'hlsa'), fc.array(fragments, { maxLength: 3 }))
      .map(([name, parts]) => `${name}(1 2 3 ${parts.join(' ')}`),
    fc
      .tuple(fc.nat(20), fc.constantFrom('R', 'RY', 'BP', 'X', 'N'), fc.nat(12))
      .map(([hue, family, value]) => {
        return `${hue || ''}${family} ${value}/3`;
      }),
  );

  test('a suggestion can be read', () => {
    let suggestions = 0;
    fc.assert(
      fc.property(slips, (text) => {
        const reading = parseColour(text);
        if (reading.ok || reading.suggestion === undefined) return;
        suggestions++;
        expect(parseColour(reading.suggestion).ok).toBe(true);
      }),
      { numRuns: 1000 },
    );
    expect(suggestions).toBeGreaterThan(100);
  });
});
