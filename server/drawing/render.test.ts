import { readFileSync, readdirSync } from 'node:fs';
import { getWindow, withWindow } from '@svgdotjs/svg.js';
import fc from 'fast-check';
import { SaxesParser } from 'saxes';
import { createHTMLWindow } from 'svgdom';
import { describe, expect, it } from 'vitest';
import { renderToText } from './headless.js';
import { type RenderOptions, render } from './render.js';
import { type Scene, type View, views } from './scene.js';
import { serialise } from './serialise.js';
import { doorwayPlan, sceneOf } from './test-plans.js';
import { themeNames, themes } from './theme.js';

const examples = new URL('../../examples/', import.meta.url);
const texts = readdirSync(examples)
  .filter((name) => name.endsWith('.mahl'))
  .map((name) => readFileSync(new URL(name, examples), 'utf8'));

/** Draws the scenes one after the other in one place, and gives what is there at the end. */
function drawnInTurn(scenes: readonly Scene[], options: RenderOptions): string {
  const [first, ...rest] = scenes;
  if (first === undefined) return '';
  return withWindow(createHTMLWindow(), (window) => {
    const drawing = render(window.document.documentElement, first, options);
    rest.forEach((scene) => drawing.update(scene));
    return serialise(drawing.svg.node);
  });
}

/** Every element with its attributes and text, read by a strict XML parser. */
function readStrictly(xml: string): { name: string; attributes: Record<string, string>; text: string }[] {
  const elements: { name: string; attributes: Record<string, string>; text: string }[] = [];
  const open: { text: string }[] = [];
  const parser = new SaxesParser();
  parser.on('error', (error) => {
    throw error;
  });
  parser.on('opentag', ({ name, attributes }) => {
    const element = { name, attributes: { ...(attributes as Record<string, string>) }, text: '' };
    elements.push(element);
    open.push(element);
  });
  parser.on('text', (text) => {
    const element = open.at(-1);
    if (element !== undefined) element.text += text;
  });
  parser.on('closetag', () => void open.pop());
  parser.write(xml).close();
  return elements;
}

describe('a patched drawing', () => {
  it('is the same as one drawn anew, whatever was there before', () => {
    const plans = [...texts, doorwayPlan, ''];
    const scene = fc.record({ text: fc.constantFrom(...plans), view: fc.constantFrom<View>(...views) });
    const options = fc.constantFrom<RenderOptions>(
      { theme: 'light' },
      { theme: 'editor', part: 'picture' },
      { theme: 'dark', part: 'plain' },
    );
    const known = new Map<string, Scene>();
    const composed = ({ text, view }: { readonly text: string; readonly view: View }): Scene => {
      const key = `${view} ${text}`;
      const made = known.get(key) ?? sceneOf(text, view);
      known.set(key, made);
      return made;
    };
    fc.assert(
      fc.property(fc.array(scene, { minLength: 2, maxLength: 4 }), options, (order, chosen) => {
        const scenes = order.map(composed);
        expect(drawnInTurn(scenes, chosen)).toBe(drawnInTurn(scenes.slice(-1), chosen));
      }),
      { numRuns: 20, seed: 1 },
    );
  });

  it('follows any change of the order of objects', () => {
    const [head = '', ...objects] = doorwayPlan.split(/(?=^object )/m);
    fc.assert(
      fc.property(fc.shuffledSubarray(objects), fc.shuffledSubarray(objects), (before, after) => {
        const scenes = [before, after].map((some) => sceneOf(head + some.join(''), 'drawing'));
        expect(drawnInTurn(scenes, { theme: 'light' })).toBe(
          drawnInTurn(scenes.slice(1), { theme: 'light' }),
        );
      }),
      { numRuns: 15, seed: 2 },
    );
  });

  it('keeps the nodes of what did not change', () => {
    withWindow(createHTMLWindow(), (window) => {
      const drawing = render(window.document.documentElement, sceneOf(doorwayPlan, 'values'), {
        theme: 'light',
      });
      const [sky] = drawing.nodesOf('object:sky');
      const [tram] = drawing.nodesOf('object:tram');
      const before = tram?.getAttribute('fill');
      drawing.update(sceneOf(doorwayPlan.replace('value 3', 'value 2'), 'values'));
      expect(drawing.nodesOf('object:sky')[0]).toBe(sky);
      expect(drawing.nodesOf('object:tram')[0]).toBe(tram);
      expect(tram?.getAttribute('fill')).not.toBe(before);
    });
  });

  it('leaves nothing behind when it is removed', () => {
    withWindow(createHTMLWindow(), (window) => {
      const page = window.document.documentElement;
      const before = page.childNodes.length;
      const drawing = render(page, sceneOf(doorwayPlan, 'drawing'), { theme: 'light' });
      expect(page.childNodes).toHaveLength(before + 1);
      drawing.remove();
      expect(page.childNodes).toHaveLength(before);
    });
  });
});

describe('an SVG file', () => {
  it.each(views)(
    'of %s opens by itself: sized, named, without scripts, styles or anything from outside',
    (view) => {
      const elements = readStrictly(renderToText(sceneOf(doorwayPlan, view), { theme: 'light' }));
      const [root] = elements;
      expect(root?.name).toBe('svg');
      expect(root?.attributes).toMatchObject({ xmlns: 'http://www.w3.org/2000/svg', role: 'img' });
      const names = new Set(elements.map(({ name }) => name));
      const ofBlur = ['feComponentTransfer', 'feFuncA', 'feGaussianBlur', 'feMerge', 'feMergeNode', 'filter'];
      const usual = ['clipPath', 'defs', 'desc', 'g', 'path', 'svg', 'text', 'title'];
      expect([...names].sort()).toEqual((view === 'squint' ? [...usual, ...ofBlur] : usual).sort());
      for (const { attributes } of elements) {
        for (const [name, value] of Object.entries(attributes)) {
          expect(name).not.toMatch(/^(on.*|style)$|href/);
          if (value.includes('url(')) expect(value).toMatch(/^url\(#mahl-(picture|blur)\)$/);
        }
      }
    },
  );

  it('has a title and a description that it names as its own', () => {
    const elements = readStrictly(renderToText(sceneOf(doorwayPlan, 'values'), { theme: 'dark' }));
    const labelled = elements[0]?.attributes['aria-labelledby']?.split(' ') ?? [];
    const said = labelled.map((id) => elements.find(({ attributes }) => attributes['id'] === id)?.text);
    expect(said[0]).toBe('The last tram: values in five steps');
    expect(said[1]).toContain('Dominant: tram.');
  });

  it('has no figure with more than three decimals', () => {
    for (const text of texts) {
      const svg = renderToText(sceneOf(text, 'drawing'), { theme: 'light' });
      expect(svg).not.toMatch(/\d\.\d{4}/);
      expect(svg).not.toMatch(/NaN|Infinity|\de[-+]\d/);
    }
  });

  it.each([
    'canvas 0.01 x 0.01 cm',
    'canvas 1 x 1000 cm',
    'canvas 1000 x 1 cm',
    'scale 11\n  group a 1, b 2, c 3, d 4',
    'focus (900, -900)\nhorizon 900',
    'lead a from (1, 1) to (1, 1)\nlead a from left edge through (1e8, 1e8) to (0, 0)',
    'object a\n  shape circle 0\nobject a\nobject b\n  shape path "M 0 0 L 10 0"',
    'object a\n  shape rectangle (-1e8, -1e8) to (1e8, 1e8)',
  ])('can be had of a plan that goes too far: %s', (text) => {
    for (const view of views) {
      const svg = renderToText(sceneOf(text, view), { theme: 'dark' });
      expect(readStrictly(svg).length).toBeGreaterThan(15);
      expect(svg).not.toMatch(/NaN|Infinity/);
    }
  });

  it.each(views)('holds the names of a hostile plan as text in the view %s', (view) => {
    const name = '<script>alert(1)</script>';
    const text = `${doorwayPlan
      .replaceAll('figure', name)
      .replaceAll('wires', `${name}-lead`)
      .replaceAll('"The last tram"', `"${name}"`)}path tram, ${name}\n`;
    const elements = readStrictly(renderToText(sceneOf(text, view), { theme: 'light' }));
    expect(elements.some(({ name: element }) => element === 'script')).toBe(false);
    expect(elements.find(({ name: element }) => element === 'title')?.text).toContain(name);
  });

  it('holds hostile text as text', () => {
    const hostile = '</text><script>alert(1)</script>&lt;"\u0007';
    const text = `plan "${hostile.replace('"', "'")}"\nobject ]]><svg/onload=x>\n  shape circle 9\n  at (20, 15)\n`;
    const elements = readStrictly(renderToText(sceneOf(text, 'drawing'), { theme: 'light' }));
    expect(elements.some(({ name }) => name === 'script')).toBe(false);
    expect(elements.find(({ name }) => name === 'title')?.text).toContain(
      "</text><script>alert(1)</script>&lt;'\uFFFD",
    );
  });

  it('does not let a name turn the direction of writing, and leaves names that run from the right', () => {
    const [title] = readStrictly(
      renderToText(sceneOf('plan "a\u202Etxt \u2067עץ\u2069"\n', 'drawing'), { theme: 'light' }),
    ).filter(({ name }) => name === 'title');
    expect(title?.text).toContain('a\uFFFDtxt \uFFFDעץ\uFFFD');
  });

  it('stays well formed whatever stands in the texts of a scene', () => {
    const base = sceneOf('', 'notan');
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 40 }), fc.boolean(), (words, half) => {
        const text = half ? `${words}\uD800` : words;
        const mark = { kind: 'text', key: text, text, tip: text, subject: text, x: 0, y: 0 } as const;
        const scene: Scene = {
          ...base,
          title: text,
          description: text,
          layers: [
            { name: 'names', marks: [{ ...mark, size: 1, anchor: 'start', face: 'text', ink: 'ink' }] },
          ],
        };
        expect(readStrictly(renderToText(scene, { theme: 'light' })).length).toBeGreaterThan(4);
      }),
      { numRuns: 40, seed: 3 },
    );
  });

  it('is drawn without a trace in the process, also when it fails', () => {
    const before = getWindow();
    renderToText(sceneOf(doorwayPlan, 'drawing'), { theme: 'light' });
    expect(getWindow()).toBe(before);
    const broken = { ...sceneOf('', 'drawing'), layers: null } as unknown as Scene;
    expect(() => renderToText(broken, { theme: 'light' })).toThrow();
    expect(getWindow()).toBe(before);
  });

  it('has ids of its own for each drawing on a page', () => {
    const svg = renderToText(sceneOf(doorwayPlan, 'drawing'), {
      theme: 'editor',
      idPrefix: 'left',
      role: 'group',
    });
    expect(svg).toContain('id="left-picture"');
    expect(svg).toContain('role="group"');
    expect(svg).toContain('var(--vscode-foreground)');
    expect(svg).not.toContain('mahl-');
  });
});

describe('themes', () => {
  /** WCAG 2.2, relative luminance and contrast ratio. */
  const contrast = (one: string, other: string): number => {
    const [a, b] = [one, other].map((hex) => {
      const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((at) => {
        const channel = parseInt(hex.slice(at, at + 2), 16) / 255;
        return channel <= 0.04045 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4;
      });
      return 0.2126 * red + 0.7152 * green + 0.0722 * blue + 0.05;
    }) as [number, number];
    return Math.max(a, b) / Math.min(a, b);
  };

  it.each(themeNames.filter((name) => name !== 'editor'))(
    '%s can be read: 4.5 to 1 for text, 3 to 1 for marks',
    (name) => {
      const theme = themes[name];
      for (const ink of ['ink', 'quiet', 'error', 'warning', 'hint'] as const) {
        expect(contrast(theme[ink], theme.sheet), ink).toBeGreaterThanOrEqual(4.5);
      }
      for (const fill of ['error', 'warning', 'hint'] as const) {
        expect(contrast(theme.onFinding, theme[fill]), fill).toBeGreaterThanOrEqual(4.5);
      }
      expect(contrast(theme.wanted, theme.track)).toBeGreaterThanOrEqual(3);
    },
  );
});
