import { describe, expect, it } from 'vitest';
import { isKind, parse, walk, type Node, type Statement } from './index.js';

function only(text: string): Statement {
  const { nodes, problems } = parse(text);
  expect(problems).toEqual([]);
  return last(nodes).statement;
}

/** The statement of `line` as it stands under `parent`. */
function under(parent: string, line: string): Statement {
  const { nodes, problems } = parse(`${parent}\n  ${line}`);
  expect(problems).toEqual([]);
  return last(last(nodes).children).statement;
}

function last(nodes: readonly Node[]): Node {
  const node = nodes.at(-1);
  if (node === undefined) throw new Error('there is no node');
  return node;
}

/** The tree as an indented list of kinds. */
function outline(text: string): readonly string[] {
  const kinds: string[] = [];
  walk(parse(text).nodes, (node, parents) => {
    kinds.push(`${'  '.repeat(parents.length)}${node.statement.kind} ${node.line}-${node.lastLine}`);
  });
  return kinds;
}

describe('the tree', () => {
  it('follows the indentation', () => {
    const text = 'sitting "one"\n  works sky\n\n  photo "a.jpg"\n    grey (1, 2)\n  // end\nobject sky\n';
    expect(outline(text)).toEqual([
      'sitting 0-4',
      '  works 1-1',
      '  photo 3-4',
      '    grey 4-4',
      'object 6-6',
    ]);
  });

  it('counts columns from the start of the line, in UTF-16 code units', () => {
    const statement = under('object tram', 'edges soft against 𝒜b');
    expect(statement).toMatchObject({
      start: 2,
      end: 24,
      keyword: { text: 'edges', start: 2, end: 7 },
      edges: { choice: 'soft', start: 8, end: 12 },
      against: [{ text: '𝒜b', start: 21, end: 24 }],
    });
  });

  it('reads LF, CRLF and CR alike, and drops a byte order mark', () => {
    const lines = ['plan "Tram"', 'object sky', '  value 4', ''];
    const expected = parse(lines.join('\n'));
    expect(parse(lines.join('\r\n'))).toEqual(expected);
    expect(parse(lines.join('\r'))).toEqual(expected);
    expect(parse(`\ufeff${lines.join('\n')}`)).toEqual(expected);
    expect(expected.lineCount).toBe(4);
  });

  it('keeps comments apart, and none inside quotes', () => {
    const tree = parse('concept "see http://example.org" // a link  \n// alone');
    expect(tree.problems).toEqual([]);
    expect(tree.comments).toEqual([
      { line: 0, start: 33, end: 42, text: '// a link' },
      { line: 1, start: 0, end: 8, text: '// alone' },
    ]);
  });

  it('keeps what stands under a broken line, apart from the plan', () => {
    const tree = parse('objct sky\n  value 4\nobject road');
    expect(tree.nodes.map((node) => node.statement.kind)).toEqual(['object']);
    expect(tree.detached.map((node) => node.statement.kind)).toEqual(['value']);
    expect(tree.problems).toHaveLength(1);
  });

  it('keeps the part of a statement that could be read', () => {
    const tree = parse('object sky, domnant\n  value 4');
    expect(tree.nodes[0]).toMatchObject({ statement: { kind: 'object', name: { text: 'sky' } } });
    expect(tree.nodes[0]?.children).toHaveLength(1);
  });
});

describe('words', () => {
  it('reads keywords in any case and American spellings, and keeps them as written', () => {
    expect(only('COLOR teal #2F6F73 Dominant')).toMatchObject({
      kind: 'colour definition',
      keyword: { text: 'COLOR' },
      role: { choice: 'dominant' },
    });
    expect(under('sitting "a"\n photo "b"', '  gray (1, 2)').kind).toBe('photo');
    expect(only('focus center')).toMatchObject({ at: { base: { kind: 'spot', spot: 'centre' } } });
  });

  it.each(['value', 'to', 'x', 'Türe', 'ὁδός', 'дом-2', 'm', 'girl’s-hat', 'हिन्दी', '山'])(
    'takes %s for a name',
    (name) => {
      expect(only(`object ${name}`)).toMatchObject({ name: { text: name } });
    },
  );

  it('reads sentences in either kind of quotes, with escapes', () => {
    expect(only('concept "a \\"b\\" \\\\"')).toMatchObject({ text: { value: 'a "b" \\' } });
    expect(only('concept “a "b" c”')).toMatchObject({ text: { value: 'a "b" c' } });
  });

  it('reads free words to the end of the line', () => {
    expect(only('mood quiet, (then) 50%: relief!  // later')).toMatchObject({
      text: { value: 'quiet, (then) 50%: relief!', start: 5, end: 31 },
    });
    expect(only('mood "quiet" // later')).toMatchObject({ text: { value: 'quiet' } });
    expect(only('mood "quiet", then "loud"')).toMatchObject({ text: { value: '"quiet", then "loud"' } });
  });

  it('reads lists with commas, with `and`, or without', () => {
    const names = [{ text: 'sky' }, { text: 'road' }, { text: 'tram' }];
    for (const list of ['sky, road, tram', 'sky road tram', 'sky, road and tram', 'sky, road, and tram']) {
      expect(only(`path ${list}`)).toMatchObject({ stops: names });
    }
  });
});

describe('numbers', () => {
  it.each([
    ['12', { value: 12, fraction: false }],
    ['.5', { value: 0.5, fraction: false }],
    ['-3 cm', { value: -3, unit: 'cm', fraction: false }],
    ['1/3', { value: 1 / 3, fraction: true }],
    ['7 1/2 in', { value: 7.5, unit: 'in', fraction: false }],
    ['7½ in', { value: 7.5, unit: 'in', fraction: false }],
    ['40%', { value: 40, unit: '%', fraction: false }],
  ])('reads the length %s', (text, length) => {
    expect(only(`horizon ${text}`)).toMatchObject({ at: length });
  });

  it('reads fractions wherever a number or a share stands', () => {
    expect(under('object a', 'turn -22 1/2 degrees')).toMatchObject({ degrees: { value: -22.5 } });
    expect(under('object a', 'value 2½')).toMatchObject({ step: { value: 2.5 } });
    expect(only('budget value dark 33 1/3% within ½%')).toMatchObject({
      shares: [{ share: { percent: 33 + 1 / 3 } }],
      within: { percent: 0.5 },
    });
  });

  it.each(['80 x 50 cm', '80x50 cm', '80 × 50cm', '80 cm x 50 cm', '80 cm X 50'])(
    'reads the extent %s',
    (text) => {
      expect(only(`canvas ${text}`)).toMatchObject({
        size: {
          by: 'extent',
          extent: { width: { value: 80, unit: 'cm' }, height: { value: 50, unit: 'cm' } },
        },
      });
    },
  );

  it('reads ranges with a hyphen or an en dash', () => {
    for (const range of ['1-2', '1 - 2', '1–2']) {
      expect(under('scale 5', `group dark ${range}`)).toMatchObject({
        groups: [{ name: { text: 'dark' }, from: { value: 1 }, to: { value: 2 } }],
      });
    }
  });
});

describe('colours', () => {
  it.each([
    ['#2f6f73', 'hex'],
    ['#fff', 'hex'],
    ['rgb(47 111 115)', 'css'],
    ['OKLCH(0.6 0.1 200 / 1)', 'css'],
    ['7.5R 4/10', 'munsell'],
    ['N 5/', 'munsell'],
    ['N5/', 'munsell'],
    ['rust', 'name'],
  ])('reads %s as %s', (text, kind) => {
    expect(under('object tram', `colour ${text}`)).toMatchObject({ colour: { kind, text } });
  });
});

describe('places', () => {
  it.each([
    ['(12, 40%)', { kind: 'coordinates', at: { x: { value: 12 }, y: { value: 40, unit: '%' } } }],
    ['upper right', { kind: 'spot', spot: 'upper right' }],
    ['top left corner', { kind: 'corner', spot: 'upper left' }],
    ['upper right of thirds', { kind: 'spot', of: { kind: 'system', system: 'thirds' } }],
    ['upper right of two to three', { kind: 'spot', of: { kind: 'system', system: 'two to three' } }],
    ['upper right of root 5', { kind: 'spot', of: { kind: 'system', system: 'root 5' } }],
    ['upper right of tower', { kind: 'spot', of: { kind: 'name', name: { text: 'tower' } } }],
    ['middle of tower', { kind: 'spot', spot: 'centre' }],
    ['crossing 2 1 of own', { kind: 'crossing', column: { value: 2 }, row: { value: 1 } }],
    ['left edge at 20%', { kind: 'edge', side: 'left', along: { value: 20, unit: '%' } }],
    ['top edge of road at 3 cm', { kind: 'edge', side: 'top', of: { text: 'road' } }],
    ['top of tower', { kind: 'edge', side: 'top', of: { text: 'tower' } }],
    ['left side of tower', { kind: 'edge', side: 'left', of: { text: 'tower' } }],
    ['focus', { kind: 'focus' }],
    ['tower', { kind: 'object', name: { text: 'tower' } }],
    ['top', { kind: 'object', name: { text: 'top' } }],
  ])('reads %s', (text, base) => {
    expect(under('object door', `at ${text}`)).toMatchObject({ place: { base } });
  });

  it('reads how far from it', () => {
    expect(only('focus upper right, 3 cm left, 2 up')).toMatchObject({
      at: {
        moves: [
          { amount: { value: 3, unit: 'cm' }, direction: 'left' },
          { amount: { value: 2 }, direction: 'up' },
        ],
      },
    });
  });

  it('reads which of its own places an object is set down by', () => {
    expect(under('object door', 'at (20, 40) by bottom')).toMatchObject({ by: { choice: 'lower centre' } });
    expect(under('object door', 'at focus by upper left')).toMatchObject({ by: { choice: 'upper left' } });
  });
});

describe('points on further lines', () => {
  it('belong to the outline above', () => {
    const text = 'object road\n  shape smooth (1, 2)\n    (3, 4) (5, 6)\n    focus, 2 left\n    tower';
    const shape = parse(text).nodes[0]?.children[0];
    expect(parse(text).problems).toEqual([]);
    expect(shape?.children.map((node) => isKind(node, 'points') && node.statement.points.length)).toEqual([
      2, 1, 1,
    ]);
  });

  it('are misplaced under a shape that has no points', () => {
    const { problems } = parse('object road\n  shape circle 8\n    (3, 4)');
    expect(problems).toMatchObject([{ line: 2, code: 'misplaced statement' }]);
  });
});

describe('reading again', () => {
  const before = 'plan "Tram"\nobject sky\n  value 4\nobject road\n  value 2\n';

  it('reuses the statements of lines that did not change', () => {
    const old = parse(before);
    const tree = parse(before.replace('value 4', 'value 3'), old);
    expect(tree.nodes[0]?.statement).toBe(old.nodes[0]?.statement);
    expect(tree.nodes[1]?.children[0]?.statement).not.toBe(old.nodes[1]?.children[0]?.statement);
    expect(tree.nodes[2]?.children[0]?.statement).toBe(old.nodes[2]?.children[0]?.statement);
  });

  it('reuses them when lines move', () => {
    const old = parse(before);
    const tree = parse(`// a new first line\n${before}`, old);
    expect(tree.nodes[1]?.statement).toBe(old.nodes[1]?.statement);
    expect(tree.nodes[1]?.line).toBe(2);
  });

  it('reads the same words anew in another block', () => {
    const text = 'object sky\n  colour teal\ncolour teal #123456';
    const old = parse(text);
    const edited = text.replace('object sky', 'sketch "a"').replace('colour teal #', '  colour teal #');
    expect(parse(edited, old)).toEqual(parse(edited));
  });
});
