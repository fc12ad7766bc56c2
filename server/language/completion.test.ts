import { CompletionItemKind, InsertTextFormat, type CompletionItem } from 'vscode-languageserver-types';
import { describe, expect, test } from 'vitest';
import { parse, statements, type Block } from '../../grammar/index.js';
import { snippets } from './snippets.js';
import { everything, nothing, openPlan } from './test-support.js';

const picture = `canvas 40 x 30 cm
divide thirds
colour teal #2f6f73 dominant
colour rust 7.5R 4/10 complement
object sky
  colour teal
object tram, dominant
  value 3
palette
  paint ultra PB29, warm
`;

function complete(marked: string, abilities = everything): readonly CompletionItem[] {
  const { service, uri, position, failures } = openPlan(marked, abilities);
  const items = service.completions(uri, position);
  expect(failures).toEqual([]);
  return items;
}

const labels = (marked: string): readonly string[] => complete(marked).map(({ label }) => label);

describe('statements', () => {
  test('at the left margin, those of a plan', () => {
    expect(labels('|')).toContain('object');
    expect(labels('|')).not.toContain('plane');
  });

  test('indented, those of the block', () => {
    expect(labels('object sky\n  |')).toEqual(expect.arrayContaining(['plane', 'shape', 'value', 'colour']));
    expect(labels('object sky\n  |')).not.toContain('canvas');
    expect(labels('focus upper right\n  |')).toEqual(['win by']);
    expect(labels('sitting "a"\n  photo "a.jpg"\n    |')).toEqual(['corners', 'grey']);
  });

  test('under a line that is misspelt, those that it was to hold', () => {
    expect(labels('objekt sky\n  |')).toContain('plane');
  });

  test('a blank line in a block belongs to it', () => {
    expect(labels('object sky\n\n  // far away\n  |')).toContain('plane');
  });

  test('the second word of a keyword takes the first one along', () => {
    expect(complete('focus upper right\n  win b|')).toMatchObject([
      { label: 'win by', textEdit: { range: { start: { line: 1, character: 2 }, end: { character: 7 } } } },
    ]);
  });

  test('each says what it means and how it is written', () => {
    const canvas = complete('|').find(({ label }) => label === 'canvas');
    expect(canvas).toMatchObject({ kind: CompletionItemKind.Keyword, detail: 'canvas WIDTH x HEIGHT UNIT' });
    expect(canvas?.documentation).toMatchObject({ kind: 'markdown' });
  });

  test('snippets for a client that can take them, plain words for one that can’t', () => {
    const canvas = (items: readonly CompletionItem[]) => items.find(({ label }) => label === 'canvas');
    expect(canvas(complete('|'))).toMatchObject({ insertTextFormat: InsertTextFormat.Snippet });
    expect(canvas(complete('|', nothing))).toMatchObject({
      documentation: { kind: 'plaintext' },
      textEdit: { newText: 'canvas' },
    });
    expect(canvas(complete('|', nothing))).not.toHaveProperty('insertTextFormat');
  });
});

describe('a snippet with what stands in its places is a statement that reads', () => {
  const filled = (snippet: string): string =>
    snippet.replace(/\$\{\d+\|([^,|]*)[^}]*\}/gu, '$1').replace(/\$\{\d+:([^}]*)\}/gu, '$1');
  const openings: Readonly<Record<Block, string>> = {
    plan: '',
    canvas: 'canvas 40 x 30 cm\n\t',
    divide: 'divide own\n\t',
    focus: 'focus upper right\n\t',
    scale: 'scale 5\n\t',
    object: 'object a\n\t',
    shape: 'object a\n\tshape outline (0, 0) (1, 1)\n\t\t',
    palette: 'palette\n\t',
    sitting: 'sitting "a"\n\t',
    photo: 'sitting "a"\n\tphoto "a.jpg"\n\t\t',
    sketch: 'sketch "a.png"\n\t',
  };
  test.each(Object.entries(snippets))('%s', (kind, snippet) => {
    const block = statements.find((entry) => entry.kind === kind)?.in[0] ?? 'plan';
    expect(parse(openings[block] + filled(snippet)).problems).toEqual([]);
  });
});

describe('what follows', () => {
  test.each([
    ['divide |', ['golden', 'thirds', 'two to three', 'root 5']],
    ['divide golden, |', ['thirds']],
    ['divide two |', ['to three']],
    ['focus |', ['upper right', 'left edge', 'upper left corner', 'centre']],
    ['divide golden, root 5\nfocus |', ['upper right', 'upper right of root 5']],
    ['divide armature\nfocus |', ['middle left', 'crossing 5 1']],
    ['focus upper |', ['left', 'centre', 'right']],
    ['focus upper right of |', ['thirds', 'rabatment']],
    ['focus upper right\n  win by value, |', ['colour', 'edges']],
    ['canvas |', ['figure 20', 'A3', '16 x 20 in']],
    ['canvas 1|', ['16 x 20 in']],
    ['canvas 40 x 30 |', ['cm', 'in']],
    ['canvas figure 20 |', ['upright', 'landscape']],
    ['canvas 18 x 24 in |', ['upright', 'landscape']],
    ['focus upper right, 3 |', ['cm', 'left']],
    ['scale 7\n\nobject a\n  value |', ['1', '7']],
    ['budget |', ['value', 'colour']],
    ['budget value |', ['dark', 'middle', 'light']],
    ['scale 5\n  group deep 1-2, high 3-5\nbudget value |', ['deep', 'high']],
    ['budget value dark 30%, |', ['middle']],
    ['budget colour dominant 70% |', ['within']],
    ['object a\n  shape |', ['rectangle', 'outline', 'from']],
    ['object a\n  shape outline (0, 0) |', ['focus', 'centre']],
    ['object a\n  shape outline (0, 0) (1, 1)\n    |', ['focus', 'centre']],
    ['object a, |', ['dominant', 'secondary']],
    ['object a\n  plane |', ['background']],
    ['object a\n  edges soft |', ['against']],
    ['object a\n  mirror |', ['left to right']],
    ['object a\n  shape rectangle |', ['upper left corner']],
    ['object a\n  shape rectangle upper left |', ['to']],
    ['object a\n  shape rectangle 3 x 4 |', ['cm', 'at']],
    ['object a\n  repeat 3 |', ['every']],
    ['object a\n  repeat 3 every (1, 2) |', ['turning', 'resized']],
    ['lead a along top |', ['edge of']],
    ['lead a |', ['from', 'along']],
    ['lead a from left edge at 20% |', ['through', 'to']],
    ['lead a from (0, 0) to |', ['focus']],
    ['cue "bells" |', ['carried by']],
    ['sitting "a"\n  layer |', ['body colour', 'glaze']],
    ['sitting "a"\n  layer body |', ['colour']],
    ['palette\n  paint white PW6, |', ['warm']],
    ['wheel |', ['painters', 'munsell']],
    ['allow |', ['value budget', 'even count']],
    ['rule hidden object |', ['warning', 'limit']],
  ])('%s', (marked, expected) => {
    expect(labels(marked)).toEqual(expect.arrayContaining(expected));
  });

  test.each([
    ['path sky, |'],
    ['cue "bells" carried by |'],
    ['object a\n  edges soft against |'],
    ['object a\n  at |'],
    ['lead a along |'],
    ['sitting "a"\n  works |'],
    ['allow hidden object for |'],
    ['focus centre of |'],
  ])('objects: %s', (marked) => {
    expect(labels(picture + marked)).toEqual(expect.arrayContaining(['sky', 'tram']));
  });

  test('colours come with their hex code, for which editors show a swatch', () => {
    expect(complete(`${picture}object wall\n  colour |`)).toMatchObject([
      {
        label: 'teal',
        kind: CompletionItemKind.Color,
        detail: 'dominant',
        documentation: '#2f6f73 8.9BG 4.2/4.3',
      },
      { label: 'rust', kind: CompletionItemKind.Color },
    ]);
  });

  test('crossings are those of the plan’s own division', () => {
    expect(complete(`${picture}focus |`)).toContainEqual(
      expect.objectContaining({ label: 'upper right', detail: 'crossing of thirds' }),
    );
  });

  test('a focal point is not placed by itself', () => {
    expect(labels(`${picture}focus |`)).not.toContain('focus');
    expect(labels(`${picture}object x\n  at |`)).toContain('focus');
  });

  test('what a list has already is not offered for it once more', () => {
    expect(labels(`${picture}budget colour dominant 70%, |`)).not.toContain('dominant');
    expect(labels('focus upper right\n  win by value, |')).not.toContain('value');
    expect(labels(`${picture}sitting "a"\n  works SKY, |`)).toEqual(['tram']);
    expect(labels(`${picture}path sky, |`)).toContain('sky');
  });

  test('the name of a rule takes the place of all its words', () => {
    const [first] = complete('allow value b|');
    expect(first?.textEdit).toMatchObject({ range: { start: { character: 6 }, end: { character: 13 } } });
  });

  test.each([
    ['obj|ect jug', 'object', '', 'ect'],
    ['|object jug', 'colour', '', 'object'],
    ['focus upper right\n  wi|n by value', 'win by', '  ', 'n by'],
    ['focus upper right\n  wi|n  value', 'win by', '  ', 'n'],
    ['divide ro|ot 2', 'golden', 'divide ', 'ot'],
    ['object sky\n  value |3// far', '4', '  value ', '3'],
    ['allow even c|ount because "so"', 'rival', 'allow ', 'ount'],
    ['allow ev|en count because "so"', 'even count', 'allow ', 'en count'],
    [
      'cue "bells"\nallow forgotten cue for "be|lls" because "so"',
      'bells',
      'allow forgotten cue for "',
      'lls',
    ],
  ])(
    '%j: an offer takes the place of the whole word where the painter wants that',
    (marked, label, kept, rest) => {
      const edit = complete(marked).find((one) => one.label === label)?.textEdit;
      expect(edit).toHaveProperty('replace');
      const { line, character } = openPlan(marked).position;
      const place = (end: number) => ({
        start: { line, character: kept.length },
        end: { line, character: end },
      });
      expect(edit).toMatchObject({ insert: place(character), replace: place(character + rest.length) });
    },
  );

  test('a client that knows but one kind of edit is given what stands before the caret', () => {
    const [first] = complete('obj|ect jug', nothing);
    expect(first?.textEdit).toMatchObject({ range: { start: { character: 0 }, end: { character: 3 } } });
  });

  test('a step that is begun', () => {
    expect(labels('scale 11\nobject a\n  value 1|')).toEqual(['1', '10', '11']);
  });

  test('steps keep their order', () => {
    const steps = complete('scale 11\nobject a\n  value |');
    expect(
      steps.toSorted((a, b) => (a.sortText ?? '').localeCompare(b.sortText ?? '')).map(({ label }) => label),
    ).toEqual(Array.from({ length: 11 }, (_, index) => String(index + 1)));
  });

  test('parts of an SVG file, once it has been read', async () => {
    const marked = 'object a\n  shape from "Tram.svg" part "d|';
    const files = {
      'file:///studio/Tram.svg': {
        ok: true,
        text: '<svg><!-- <g id="old"/> --><g id="door"/><path id=\'roof\'/></svg>',
      },
    } as const;
    const { service, uri, position } = openPlan(marked, everything, files);
    service.completions(uri, position);
    await new Promise(setImmediate);
    expect(service.completions(uri, position).map(({ label }) => label)).toEqual(['door', 'roof']);
  });

  test('files that the plan names already', () => {
    expect(labels('object a\n  shape from "tram.svg"\nobject b\n  shape from "|')).toEqual(['tram.svg']);
  });
});

test.each([
  'object a // |',
  'note "a quiet |',
  'plan "a"|',
  'path a,|',
  'canvas 45|',
  'budget value dark 30%|',
  'object |',
  'scale |',
  'nonsense |',
  'plane |',
  'canvas 40 x |',
  'object a\n  at (3, |',
  'object a, minor |',
  'sitting "a" on |',
  'colour teal #2f6f73 dominant |',
])('nothing: %s', (marked) => {
  expect(labels(marked)).toEqual([]);
});

test('a position outside the text is taken for the nearest inside', () => {
  const { service, uri } = openPlan('canvas 40 x 30 cm\n');
  expect(service.completions(uri, { line: 90, character: 90 }).length).toBeGreaterThan(10);
  expect(service.completions(uri, { line: -1, character: -1 }).length).toBeGreaterThan(10);
});

test('a Colour Index name is offered behind the name of a paint, and found by what painters call it', () => {
  const { service, uri, position } = openPlan('palette\n  paint deep ultra|');
  const offered = service.completions(uri, position);
  const ultramarine = offered.find(({ label }) => label === 'PB29');
  expect(ultramarine).toMatchObject({
    detail: 'ultramarine blue, transparent',
    filterText: 'PB29 ultramarine blue',
  });
  expect(ultramarine?.documentation).toMatch(/^#[0-9a-f]{6}$/);
  expect(offered.filter(({ label }) => label === 'PBr7')).toHaveLength(1);
});

test('a colour or paint is offered with its hex code first, which editors show as a swatch', () => {
  const plan = 'colour teal #2f6f73\npalette\n  paint madder PR83 full #aa2030\n';
  for (const line of ['  mother |', 'object sky\n  colour |', 'object sky\n  glaze |']) {
    const { service, uri, position } = openPlan(plan + line);
    const colours = service
      .completions(uri, position)
      .filter(({ kind }) => kind === CompletionItemKind.Color);
    expect(colours.length).toBeGreaterThan(0);
    for (const { documentation } of colours) expect(documentation).toMatch(/^#[0-9a-f]{6}/u);
  }
});
