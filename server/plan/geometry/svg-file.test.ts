import { describe, expect, it } from 'vitest';
import { areaOf } from './regions.js';
import { reasonInWords } from '../../../grammar/index.js';
import { idsOfSvg, partOfSvg } from './svg-file.js';

function svg(inside: string, attributes = 'viewBox="0 0 200 100"'): string {
  return `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" ${attributes}>${inside}</svg>`;
}

function part(text: string, id: string | undefined = 'a') {
  const reading = partOfSvg(text, id);
  if (!reading.ok) throw new Error(reasonInWords(reading.reason));
  return reading;
}

function area(text: string, id?: string): number {
  const { rings, fillRule } = part(text, id).outline;
  return areaOf(rings, fillRule);
}

function reason(text: string, id: string | undefined = 'a'): string {
  const reading = partOfSvg(text, id);
  return reading.ok ? 'it was read' : reasonInWords(reading.reason);
}

describe('a part of an SVG file', () => {
  it.each([
    ['rect', '<rect id="a" x="10" y="20" width="30" height="40"/>', 1200],
    ['rect with round corners', '<rect id="a" width="30" height="40" rx="5"/>', 1200 - (4 - Math.PI) * 25],
    ['rect as wide as its rounding', '<rect id="a" width="40" height="40" rx="100"/>', Math.PI * 400],
    ['circle', '<circle id="a" cx="50" cy="50" r="20"/>', Math.PI * 400],
    ['ellipse', '<ellipse id="a" cx="50" cy="50" rx="20" ry="10"/>', Math.PI * 200],
    ['ellipse with one radius', '<ellipse id="a" rx="20"/>', Math.PI * 400],
    ['polygon', '<polygon id="a" points="0,0 10,0 10,10 0,10"/>', 100],
    ['open polyline', '<polyline id="a" points="0 0 10 0 10 10 0 10"/>', 100],
    ['path', '<path id="a" d="M0 0h10v10h-10z"/>', 100],
    ['path with a hole', '<path id="a" fill-rule="evenodd" d="M0 0h10v10h-10zM2 2h6v6h-6z"/>', 64],
    [
      'the same by style',
      '<g style="fill-rule: evenodd"><path id="a" d="M0 0h10v10h-10zM2 2h6v6h-6z"/></g>',
      64,
    ],
    ['size in % of the viewBox', '<rect id="a" width="50%" height="10%"/>', 1000],
    ['size in millimetres', '<rect id="a" width="25.4mm" height="1in"/>', 96 * 96],
    [
      'group with apart shapes',
      '<g id="a"><rect width="10" height="10"/><rect x="20" width="10" height="10"/></g>',
      200,
    ],
    [
      'overlapping shapes that run opposite ways',
      '<g id="a"><path d="M0 0h10v10h-10z"/><path d="M5 0v10h10v-10z"/></g>',
      150,
    ],
    [
      'hole beside a whole',
      '<g id="a"><path fill-rule="evenodd" d="M0 0h10v10h-10zM2 2h6v6h-6z"/><rect x="3" y="3" width="2" height="2"/></g>',
      68,
    ],
    [
      'hidden layer passed over',
      '<g id="a"><rect width="10" height="10"/><g style="display:none"><rect width="99" height="99"/></g></g>',
      100,
    ],
    [
      'script and text passed over',
      '<g id="a"><script>alert(1)</script><text>M</text><rect width="10" height="10"/></g>',
      100,
    ],
    ['use', '<defs><rect id="r" width="10" height="10"/></defs><use id="a" href="#r" x="5"/>', 100],
    ['use by xlink', '<defs><rect id="r" width="10" height="10"/></defs><use id="a" xlink:href="#r"/>', 100],
    [
      'use of a symbol',
      '<symbol id="r"><rect width="10" height="10"/></symbol><g id="a"><use href="#r"/></g>',
      100,
    ],
    [
      'scaled by itself and around',
      '<g transform="scale(2)"><rect id="a" transform="scale(3 1)" width="10" height="10"/></g>',
      1200,
    ],
    ['slanted', '<rect id="a" transform="skewX(30) skewY(10)" width="10" height="10"/>', 100],
    ['by matrix', '<rect id="a" transform="matrix(2 0 0 0.5, 7 8)" width="10" height="10"/>', 100],
  ])('%s', (_, inside, expected) => {
    expect(area(svg(inside)) / expected).toBeCloseTo(1, 2);
  });

  it('stands where the transforms around it put it', () => {
    const text = svg(
      '<g transform="translate(100 50)"><rect id="a" transform="rotate(90)" width="30" height="10"/></g>',
    );
    expect(part(text).outline.box).toEqual({ left: 90, top: 50, right: 100, bottom: 80 });
  });

  it('turns about a given point', () => {
    const text = svg('<rect id="a" transform="rotate(180 50 50)" x="40" y="40" width="30" height="10"/>');
    expect(part(text).outline.box).toEqual({ left: 30, top: 50, right: 60, bottom: 60 });
  });

  it('comes with the viewBox, or else with the size of the file', () => {
    const rect = '<rect id="a" width="1" height="1"/>';
    expect(part(svg(rect, 'viewBox="10,20 30 40"')).viewBox).toEqual({
      left: 10,
      top: 20,
      right: 40,
      bottom: 60,
    });
    expect(part(svg(rect, 'width="2in" height="96"')).viewBox).toEqual({
      left: 0,
      top: 0,
      right: 192,
      bottom: 96,
    });
    expect(part(svg(rect, 'width="100%"')).viewBox).toBeUndefined();
  });

  it('is the whole file when no id is given', () => {
    const reading = partOfSvg(
      svg('<rect width="10" height="10"/><circle cx="50" cy="50" r="10"/>'),
      undefined,
    );
    expect(reading.ok && areaOf(reading.outline.rings)).toBeCloseTo(100 + Math.PI * 100, 0);
  });

  it('is found in a file that gives SVG a prefix or no namespace', () => {
    expect(
      area('<s:svg xmlns:s="http://www.w3.org/2000/svg"><s:rect id="a" width="10" height="10"/></s:svg>'),
    ).toBeCloseTo(100);
    expect(area('<svg><rect id="a" width="10" height="10" tool:mark="1"/></svg>')).toBeCloseTo(100);
  });
});

describe('ids of an SVG file', () => {
  it('are those that can be taken', () => {
    const text = svg(
      '<defs id="d"><path id="p" d=""/></defs><g id="g"><text id="t"/><line id="l"/><use id="u"/></g><script id="s"/>',
    );
    expect(idsOfSvg(text)).toEqual(['p', 'g', 'u']);
    expect(idsOfSvg('<svg')).toEqual([]);
  });
});

describe('a file that cannot be taken says why', () => {
  const bomb = `<!DOCTYPE svg [<!ENTITY a "ha"><!ENTITY b "&a;&a;&a;&a;">]><svg><rect id="a" width="10"/>&b;</svg>`;
  const doubling = Array.from(
    { length: 15 },
    (_, n) => `<g id="n${n}"><use href="#n${n + 1}"/><use href="#n${n + 1}"/><use href="#n${n + 1}"/></g>`,
  ).join('');

  it.each([
    ['nothing', '', 'the file is empty'],
    ['no SVG', '<html/>', 'the file is not an SVG file'],
    ['broken off', '<svg><g>', 'the file is not well-formed SVG (line 1)'],
    [
      'entities of its own',
      bomb,
      'the file uses entities of its own (line 1); saving it as plain SVG removes them',
    ],
    ['nested too deep', `<svg>${'<g>'.repeat(100_000)}`, 'the file nests its groups more than 256 deep'],
    ['no such id', svg('<rect id="b"/>'), 'the file has no part with the id "a"'],
    ['a line', svg('<line id="a" x2="10"/>'), '"a" is a line, which has no area'],
    ['a text', svg('<text id="a">A</text>'), '"a" is not a shape or a group of shapes'],
    ['a script', svg('<script id="a">1</script>'), '"a" is not a shape or a group of shapes'],
    ['a rect without height', svg('<rect id="a" width="10"/>'), '"a" has no area to fill'],
    ['an empty group', svg('<g id="a"/>'), '"a" has no area to fill'],
    ['no number', svg('<rect id="a" width="NaN" height="10"/>'), 'width="NaN" of a rect is not a length'],
    ['infinite', svg('<rect id="a" width="1e999" height="10"/>'), 'width="1e999" of a rect is not a length'],
    ['a unit that depends on type', svg('<circle id="a" r="2em"/>'), 'r="2em" of a circle is not a length'],
    ['odd points', svg('<polygon id="a" points="0 0 1"/>'), 'the points of a polygon cannot be read'],
    [
      'points that are no numbers',
      svg('<polygon id="a" points="0 0 x y"/>'),
      'the points of a polygon cannot be read',
    ],
    [
      'huge points',
      svg('<polygon id="a" points="0 0 1e30 0 1 1"/>'),
      'a number of a polygon is too large to be drawn',
    ],
    [
      'a bad path',
      svg('<path id="a" d="M0 0 L"/>'),
      'a path in it cannot be read: a number is missing at its end',
    ],
    ['a bad transform', svg('<rect id="a" transform="spin(3)"/>'), 'a transform of it cannot be read'],
    [
      'a huge transform',
      svg('<rect id="a" transform="scale(1e300)"/>'),
      'a transform of it has a number too large to be drawn',
    ],
    [
      'a style that moves it',
      svg('<rect id="a" style="transform:scale(2)"/>'),
      'it is moved by a style, which is not understood',
    ],
    [
      'an inner viewBox',
      svg('<svg viewBox="0 0 1 1"><rect id="a" width="1" height="1"/></svg>'),
      'it lies in a svg with its own place or viewBox, which is not understood',
    ],
    [
      'use of another file',
      svg('<use id="a" href="other.svg#b"/>'),
      'it uses a shape of another file, which is not read',
    ],
    ['use of nothing', svg('<use id="a" href="#b"/>'), 'it uses "b", which is not in the file'],
    ['use of itself', svg('<use id="a" href="#a"/>'), 'it uses itself'],
    ['use of what is around it', svg('<g id="a"><use href="#a"/></g>'), 'it uses itself'],
    [
      'use in a circle',
      svg('<g id="a"><use href="#b"/></g><g id="b"><use href="#a"/></g>'),
      'it uses itself',
    ],
    [
      'use that multiplies',
      svg(`${doubling}<g id="n15"><rect width="1" height="1"/></g>`),
      'it repeats too many shapes',
    ],
  ])('%s', (name, text, expected) => {
    expect(reason(text, name === 'use that multiplies' ? 'n0' : 'a')).toBe(expected);
  });
});
