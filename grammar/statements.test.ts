import { describe, expect, it } from 'vitest';
import {
  opensBlock,
  parse,
  statements,
  statementsIn,
  statementsOpenedBy,
  type Node,
  type StatementKind,
} from './index.js';
import { statementIn } from './statements.js';

/** Lines that a statement of each block can stand under. */
const homes: Readonly<Record<string, string>> = {
  plan: '',
  canvas: 'canvas A3\n  ',
  divide: 'divide own\n  ',
  focus: 'focus centre\n  ',
  scale: 'scale 5\n  ',
  object: 'object tram\n  ',
  shape: 'object tram\n  shape outline (1, 2)\n    ',
  palette: 'palette\n  ',
  sitting: 'sitting "one"\n  ',
  photo: 'sitting "one"\n  photo "a.jpg"\n    ',
  sketch: 'sketch "a.png"\n  ',
};

function innermost(nodes: readonly Node[]): StatementKind | undefined {
  const node = nodes.at(-1);
  return node && (innermost(node.children) ?? node.statement.kind);
}

/** Every way of writing each statement. */
const forms: Readonly<Record<StatementKind, readonly string[]>> = {
  mahl: ['mahl 1'],
  plan: ['plan "T"', 'plan "T" by "Name"'],
  'based on': ['based on "a.mahl"'],
  without: ['without a, b'],
  concept: ['concept "a"'],
  mood: ['mood quiet, then relief', 'mood "quiet"'],
  cue: ['cue "a"', 'cue "a" carried by b, c'],
  avoid: ['avoid "a"'],
  note: ['note "a"'],
  canvas: [
    'canvas 80 x 50 cm',
    'canvas 16 in x 20 in',
    'canvas 18 x 24 in landscape',
    'canvas figure 20 upright',
    'canvas A3, landscape',
  ],
  support: ['support linen, oil primed', 'support "linen"'],
  ground: ['ground #b9a48a', 'ground #b9a48a neutral', 'ground teal dominant'],
  medium: ['medium oil'],
  divide: ['divide golden, thirds', 'divide two to three', 'divide root 5', 'divide own', 'divide rabatment'],
  uprights: ['uprights 20%, 1/2, 31 cm'],
  levels: ['levels 2/3'],
  focus: [
    'focus upper right',
    'focus upper right of thirds',
    'focus (50, 19)',
    'focus tram, 3 cm left, 2 cm up',
  ],
  'win by': ['win by value, colour, edges, detail, scale, isolation'],
  horizon: ['horizon 40%', 'horizon 12 cm'],
  scale: ['scale 5'],
  group: ['group dark 1-2, middle 3, light 4-5', 'group dark 1 to 2'],
  planes: ['planes lighten with distance', 'planes darken with distance'],
  budget: [
    'budget value dark 30%, middle 45%, light 25% within 5%',
    'budget value 1 10%, 2 20%',
    'budget colour dominant 70%, complement 20%, discord 10%, within 4%',
  ],
  wheel: ['wheel painters', 'wheel munsell'],
  'colour definition': ['colour teal #2f6f73 dominant', 'colour rust 7.5R 4/10', 'color ash N5/'],
  object: ['object tram', 'object tram, dominant', 'object tram secondary'],
  plane: ['plane background', 'plane middle', 'plane foreground'],
  shape: [
    'shape rectangle (0, 0) to (80, 22)',
    'shape rectangle 20 x 12',
    'shape rectangle 20 x 12 cm at top of tower',
    'shape ellipse 8 x 5',
    'shape ellipse 8 x 5 at (3, 4)',
    'shape circle 8',
    'shape circle 8 cm at focus',
    'shape outline (1, 2) focus (3, 4)',
    'shape smooth (1, 2), 3 cm left, (3, 4)',
    'shape path "M 0 0 L 1 1"',
    'shape from "a.svg"',
    'shape from "a.svg" part "door"',
  ],
  points: ['(1, 2) (3, 4)', 'focus tower', 'upper left of thirds, 2 cm up'],
  at: ['at focus', 'at top of tower', 'at (20, 40) by bottom', 'at focus by upper left'],
  size: ['size 12 x 20 cm', 'size 40% x 30%'],
  'size along': ['size 30 cm high', 'size 40% wide'],
  turn: ['turn 15 degrees', 'turn 15°', 'turn 15', 'turn -1 degree'],
  mirror: ['mirror left to right', 'mirror top to bottom'],
  resize: ['resize 80%', 'resize 120% x 80%'],
  repeat: ['repeat 5 every (4, 0)', 'repeat 5 every (4, 0) turning 10 degrees resized 90%'],
  colour: ['colour rust', 'colour #abc', 'colour rgb(1 2 3)'],
  glaze: ['glaze rust', 'glaze 7.5R 4/10'],
  value: ['value 3', 'value 2.5'],
  edges: ['edges hard', 'edges soft against sky, road'],
  detail: ['detail fine', 'detail some', 'detail little'],
  lead: [
    'lead wires from left edge at 20% through (20, 14) to focus',
    'lead kerb along top edge of road from (1, 2) through (3, 4) (5, 6), (7, 8) to tram',
    'lead kerb along road to tram',
    'lead kerb from (1, 2) to (3, 4)',
  ],
  path: ['path gate, lane, door'],
  palette: ['palette'],
  paint: [
    'paint white',
    'paint white PW6',
    'paint ultra PB29, warm',
    'paint red PR108:1 cool',
    'paint rose full #7a1030 tint #e8a0b0 at 1 to 9',
  ],
  mother: ['mother ultra'],
  film: ['film 0.15 mm'],
  tube: ['tube 37 ml'],
  sitting: ['sitting "T"', 'sitting "T" on 2026-12-01'],
  works: ['works sky, tram'],
  layer: ['layer block-in', 'layer body colour, lean', 'layer Body Color fat', 'layer glaze'],
  fat: ['fat 10%'],
  task: ['task "a"'],
  photo: ['photo "f.jpg"'],
  corners: ['corners (1, 2) (3, 4) (5, 6) (7, 8)'],
  grey: ['grey (1%, 2%)', 'gray (1, 2)'],
  sketch: ['sketch "f.png"'],
  opacity: ['opacity 40%'],
  due: ['due 2027-03-01'],
  away: ['away 2026-12-24', 'away 2026-12-24 to 2027-01-02'],
  grid: ['grid 6 x 4', 'grid every 10 cm'],
  allow: [
    'allow even count because "a"',
    'allow hidden object for a, b because "c"',
    'allow cue not carried for "a" because "b"',
  ],
  rule: [
    'rule hidden object hint',
    'rule hidden object warning, limit 40%',
    'rule complement off opposite limit 40 degrees',
    'rule complement off opposite limit 40°',
    'rule path order limit 2',
  ],
};

describe('every statement', () => {
  const written = statements.flatMap(({ kind, in: blocks }) =>
    blocks.flatMap((block) => forms[kind].map((form) => ({ kind, block, form }))),
  );

  it.each(written)('$form, in $block, is read as $kind', ({ kind, block, form }) => {
    const { nodes, problems, detached } = parse(`${homes[block] ?? ''}${form}`);
    expect(problems).toEqual([]);
    expect(detached).toEqual([]);
    expect(innermost(nodes)).toBe(kind);
  });

  it('is in the table once', () => {
    const kinds = statements.map((entry) => entry.kind);
    expect(new Set(kinds).size).toBe(kinds.length);
    expect(new Set(kinds)).toEqual(new Set(Object.keys(forms)));
  });
});

describe('the table', () => {
  it('finds a statement by its block and opening word', () => {
    expect(statementIn('plan', 'colour')?.kind).toBe('colour definition');
    expect(statementIn('object', 'colour')?.kind).toBe('colour');
    expect(statementIn('canvas', 'colour')).toBeUndefined();
    expect(statementIn('shape', '')?.kind).toBe('points');
  });

  it('lists the statements of a block and those of a word', () => {
    expect(statementsIn('photo').map((entry) => entry.kind)).toEqual(['corners', 'grey']);
    expect(statementsOpenedBy('size').map((entry) => entry.kind)).toEqual(['size', 'size along']);
  });

  it('knows which statements others stand under', () => {
    expect(
      statements
        .map((entry) => entry.kind)
        .filter(opensBlock)
        .sort(),
    ).toEqual(
      [
        'canvas',
        'divide',
        'focus',
        'object',
        'palette',
        'photo',
        'scale',
        'shape',
        'sitting',
        'sketch',
      ].sort(),
    );
  });
});
