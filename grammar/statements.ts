import type { StatementKind } from './syntax.js';

/** Where a statement can stand: at the left margin, or indented under one of these. */
export type Block = 'plan' | BlockStatement;

export type BlockStatement =
  'canvas' | 'divide' | 'focus' | 'scale' | 'object' | 'shape' | 'palette' | 'sitting' | 'photo' | 'sketch';

export interface StatementEntry {
  readonly kind: StatementKind;
  /** The words that open the line; empty for a line of points, which has none. */
  readonly words: readonly string[];
  /** Name of the rule in the grammar that reads the line. */
  readonly rule: string;
  readonly in: readonly Block[];
  /** What it says, in one line. */
  readonly meaning: string;
  /** How it is written; `NAME`, `PLACE` and other capitals stand for what the painter fills in. */
  readonly form: string;
  /** What holds where the statement is left out. */
  readonly byDefault?: string;
}

/**
 * Every statement of the language. Dispatch, messages about misplaced lines, completion and the tests of the
 * reference all read this one table.
 */
export const statements: readonly StatementEntry[] = [
  {
    kind: 'mahl',
    words: ['mahl'],
    rule: 'mahl',
    in: ['plan'],
    meaning: 'The version of the language the plan is written in.',
    form: 'mahl 1',
    byDefault: 'version 1',
  },
  {
    kind: 'plan',
    words: ['plan'],
    rule: 'plan',
    in: ['plan'],
    meaning: 'The title of the picture and, if you like, who paints it.',
    form: 'plan "TITLE" by "NAME"',
  },
  {
    kind: 'based on',
    words: ['based', 'on'],
    rule: 'basedOn',
    in: ['plan'],
    meaning: 'Begins from another plan; what is written here goes before what is written there.',
    form: 'based on "FILE.mahl"',
  },
  {
    kind: 'without',
    words: ['without'],
    rule: 'without',
    in: ['plan'],
    meaning: 'Leaves out objects, colours, leads or paints of the plan this one is based on.',
    form: 'without NAME, NAME',
  },
  {
    kind: 'concept',
    words: ['concept'],
    rule: 'concept',
    in: ['plan'],
    meaning: 'What the picture is about, in one sentence.',
    form: 'concept "SENTENCE"',
  },
  {
    kind: 'mood',
    words: ['mood'],
    rule: 'mood',
    in: ['plan'],
    meaning: 'The mood, in free words to the end of the line.',
    form: 'mood WORDS',
  },
  {
    kind: 'cue',
    words: ['cue'],
    rule: 'cue',
    in: ['plan'],
    meaning:
      'Something seen, heard or felt on the spot that the picture must keep, and the objects that carry it.',
    form: 'cue "SENTENCE" carried by NAME, NAME',
  },
  {
    kind: 'avoid',
    words: ['avoid'],
    rule: 'avoid',
    in: ['plan'],
    meaning: 'What the picture must not become.',
    form: 'avoid "SENTENCE"',
  },
  {
    kind: 'note',
    words: ['note'],
    rule: 'note',
    in: ['plan', 'canvas', 'object', 'sitting'],
    meaning: 'A remark that is kept with what it stands under.',
    form: 'note "SENTENCE"',
  },
  {
    kind: 'canvas',
    words: ['canvas'],
    rule: 'canvas',
    in: ['plan'],
    meaning: 'The size of the canvas, width first. Its unit is the unit of every bare number in the plan.',
    form: 'canvas WIDTH x HEIGHT UNIT',
    byDefault: '40 x 30 cm, with a warning',
  },
  {
    kind: 'support',
    words: ['support'],
    rule: 'support',
    in: ['canvas'],
    meaning: 'What is painted on, in free words.',
    form: 'support WORDS',
  },
  {
    kind: 'ground',
    words: ['ground'],
    rule: 'ground',
    in: ['canvas'],
    meaning: 'The colour the canvas is toned with, and its part in the colour budget.',
    form: 'ground COLOUR ROLE',
    byDefault: 'white',
  },
  {
    kind: 'medium',
    words: ['medium'],
    rule: 'medium',
    in: ['canvas', 'sitting'],
    meaning: 'What the paint is bound or thinned with, in free words.',
    form: 'medium WORDS',
  },
  {
    kind: 'divide',
    words: ['divide'],
    rule: 'divide',
    in: ['plan'],
    meaning:
      'How the canvas is divided. The first named is the one that `upper right` and the like refer to.',
    form: 'divide SYSTEM, SYSTEM',
    byDefault: 'golden',
  },
  {
    kind: 'uprights',
    words: ['uprights'],
    rule: 'uprights',
    in: ['divide'],
    meaning: 'Upright lines of your own division, from the left; `1/3` is a third of the width.',
    form: 'uprights LENGTH, LENGTH',
  },
  {
    kind: 'levels',
    words: ['levels'],
    rule: 'levels',
    in: ['divide'],
    meaning: 'Level lines of your own division, from the top; `1/3` is a third of the height.',
    form: 'levels LENGTH, LENGTH',
  },
  {
    kind: 'focus',
    words: ['focus'],
    rule: 'focus',
    in: ['plan'],
    meaning: 'The centre of interest.',
    form: 'focus PLACE',
    byDefault: 'not stated, with a hint',
  },
  {
    kind: 'win by',
    words: ['win', 'by'],
    rule: 'winBy',
    in: ['focus'],
    meaning: 'By what the centre of interest is to win over the rest.',
    form: 'win by value, colour, edges',
  },
  {
    kind: 'horizon',
    words: ['horizon'],
    rule: 'horizon',
    in: ['plan'],
    meaning: 'The height of the horizon, from the top.',
    form: 'horizon LENGTH',
  },
  {
    kind: 'scale',
    words: ['scale'],
    rule: 'scale',
    in: ['plan'],
    meaning: 'The number of steps of the value scale; step 1 is the darkest.',
    form: 'scale STEPS',
    byDefault: '5',
  },
  {
    kind: 'group',
    words: ['group'],
    rule: 'group',
    in: ['scale'],
    meaning: 'Which steps count as dark, middle and light.',
    form: 'group dark 1-2, middle 3, light 4-5',
    byDefault: 'dark 1-2, middle 3, light 4-5; thirds of the scale for other numbers of steps',
  },
  {
    kind: 'planes',
    words: ['planes'],
    rule: 'planes',
    in: ['scale'],
    meaning: 'How values change from the foreground to the background.',
    form: 'planes lighten with distance',
  },
  {
    kind: 'budget',
    words: ['budget'],
    rule: 'budget',
    in: ['plan'],
    meaning: 'How much of the picture each value group, step or colour role is to cover.',
    form: 'budget value dark 30%, middle 45%, light 25% within 5%',
    byDefault: 'colour: dominant 70%, complement 20%, discord 10% within 5% where roles are in use',
  },
  {
    kind: 'wheel',
    words: ['wheel'],
    rule: 'wheel',
    in: ['plan'],
    meaning: 'The colour wheel on which complements are looked for.',
    form: 'wheel painters',
    byDefault: 'painters',
  },
  {
    kind: 'colour definition',
    words: ['colour'],
    rule: 'colourDefinition',
    in: ['plan'],
    meaning: 'Gives a colour a name and a part in the colour budget.',
    form: 'colour NAME COLOUR ROLE',
  },
  {
    kind: 'object',
    words: ['object'],
    rule: 'object',
    in: ['plan'],
    meaning: 'A thing or shape of the picture; those written first lie behind.',
    form: 'object NAME, ROLE',
  },
  {
    kind: 'plane',
    words: ['plane'],
    rule: 'plane',
    in: ['object'],
    meaning: 'How near the object is.',
    form: 'plane background',
    byDefault: 'middle',
  },
  {
    kind: 'shape',
    words: ['shape'],
    rule: 'shape',
    in: ['object'],
    meaning: 'The outline of the object; several shapes in one object are taken together.',
    form: 'shape outline PLACE PLACE PLACE',
  },
  {
    kind: 'points',
    words: [],
    rule: 'points',
    in: ['shape'],
    meaning: 'Further points of the outline above.',
    form: 'PLACE PLACE PLACE',
  },
  {
    kind: 'at',
    words: ['at'],
    rule: 'at',
    in: ['object'],
    meaning: 'Where the object stands, and which of its own places stands there.',
    form: 'at PLACE by bottom',
    byDefault: 'where the shape says; by its middle',
  },
  {
    kind: 'size',
    words: ['size'],
    rule: 'size',
    in: ['object'],
    meaning: 'The size of the object, width first.',
    form: 'size WIDTH x HEIGHT',
  },
  {
    kind: 'size along',
    words: ['size'],
    rule: 'size',
    in: ['object'],
    meaning: 'The width or height of the object; its proportion is kept.',
    form: 'size LENGTH high',
  },
  {
    kind: 'turn',
    words: ['turn'],
    rule: 'turn',
    in: ['object'],
    meaning: 'Turns the object about its middle, clockwise.',
    form: 'turn 15 degrees',
  },
  {
    kind: 'mirror',
    words: ['mirror'],
    rule: 'mirror',
    in: ['object'],
    meaning: 'Mirrors the object about its middle.',
    form: 'mirror left to right',
  },
  {
    kind: 'resize',
    words: ['resize'],
    rule: 'resize',
    in: ['object'],
    meaning: 'Makes the object larger or smaller about its middle; two shares count for width and height.',
    form: 'resize 80%',
  },
  {
    kind: 'repeat',
    words: ['repeat'],
    rule: 'repeat',
    in: ['object'],
    meaning: 'Repeats the object, each time moved, turned and resized a little further.',
    form: 'repeat TIMES every (X, Y) turning 10 degrees resized 90%',
  },
  {
    kind: 'colour',
    words: ['colour'],
    rule: 'colour',
    in: ['object'],
    meaning: 'The colour of the object: a name given above, or a colour as such.',
    form: 'colour NAME',
  },
  {
    kind: 'glaze',
    words: ['glaze'],
    rule: 'glaze',
    in: ['object'],
    meaning: 'A transparent colour over the object.',
    form: 'glaze COLOUR',
  },
  {
    kind: 'value',
    words: ['value'],
    rule: 'value',
    in: ['object'],
    meaning: 'The step of the value scale the object is painted in.',
    form: 'value STEP',
    byDefault: "the step nearest to its colour's own value",
  },
  {
    kind: 'edges',
    words: ['edges'],
    rule: 'edges',
    in: ['object'],
    meaning: 'How sharp its edges are, everywhere or against the objects named.',
    form: 'edges soft against NAME, NAME',
    byDefault: 'firm',
  },
  {
    kind: 'detail',
    words: ['detail'],
    rule: 'detail',
    in: ['object'],
    meaning: 'How much detail it gets.',
    form: 'detail fine',
    byDefault: 'some',
  },
  {
    kind: 'lead',
    words: ['lead'],
    rule: 'lead',
    in: ['plan'],
    meaning: 'A line that leads the eye, from place to place or along an object.',
    form: 'lead NAME from PLACE through PLACE to PLACE',
  },
  {
    kind: 'path',
    words: ['path'],
    rule: 'path',
    in: ['plan'],
    meaning: 'The order in which the eye is to travel.',
    form: 'path NAME, NAME, NAME',
  },
  {
    kind: 'palette',
    words: ['palette'],
    rule: 'palette',
    in: ['plan'],
    meaning: 'The paints of this picture.',
    form: 'palette',
  },
  {
    kind: 'paint',
    words: ['paint'],
    rule: 'paint',
    in: ['palette'],
    meaning:
      'A tube: its colour index, or its masstone and a tint you have painted out, and whether it leans warm or cool.',
    form: 'paint NAME PB29, warm',
  },
  {
    kind: 'mother',
    words: ['mother'],
    rule: 'mother',
    in: ['palette'],
    meaning: 'The paint that goes into every mixture.',
    form: 'mother NAME',
  },
  {
    kind: 'film',
    words: ['film'],
    rule: 'film',
    in: ['palette', 'sitting'],
    meaning: 'How thick the paint is laid.',
    form: 'film 0.15 mm',
  },
  {
    kind: 'tube',
    words: ['tube'],
    rule: 'tube',
    in: ['palette'],
    meaning: 'What one tube holds.',
    form: 'tube 37 ml',
  },
  {
    kind: 'sitting',
    words: ['sitting'],
    rule: 'sitting',
    in: ['plan'],
    meaning: 'One session of work, and its day.',
    form: 'sitting "TITLE" on YYYY-MM-DD',
  },
  {
    kind: 'works',
    words: ['works'],
    rule: 'works',
    in: ['sitting'],
    meaning: 'The objects worked on.',
    form: 'works NAME, NAME',
  },
  {
    kind: 'layer',
    words: ['layer'],
    rule: 'layer',
    in: ['sitting'],
    meaning: 'Which layer is painted, lean or fat.',
    form: 'layer body colour, lean',
  },
  {
    kind: 'fat',
    words: ['fat'],
    rule: 'fat',
    in: ['sitting'],
    meaning: 'The share of medium in the paint.',
    form: 'fat 10%',
  },
  {
    kind: 'task',
    words: ['task'],
    rule: 'task',
    in: ['sitting'],
    meaning: 'What is to be done, and what is not.',
    form: 'task "SENTENCE"',
  },
  {
    kind: 'photo',
    words: ['photo'],
    rule: 'photo',
    in: ['sitting'],
    meaning: 'A photograph of the canvas after the sitting.',
    form: 'photo "FILE.jpg"',
  },
  {
    kind: 'corners',
    words: ['corners'],
    rule: 'corners',
    in: ['photo', 'sketch'],
    meaning:
      'Where the four corners of the canvas lie in the picture, in its pixels or per cent: upper left, upper right, lower right, lower left.',
    form: 'corners (X, Y) (X, Y) (X, Y) (X, Y)',
  },
  {
    kind: 'grey',
    words: ['grey'],
    rule: 'grey',
    in: ['photo'],
    meaning: 'A place in the photograph that is a neutral grey.',
    form: 'grey (X, Y)',
  },
  {
    kind: 'sketch',
    words: ['sketch'],
    rule: 'sketch',
    in: ['plan'],
    meaning: 'A scanned sketch that is shown under the drawing.',
    form: 'sketch "FILE.png"',
  },
  {
    kind: 'opacity',
    words: ['opacity'],
    rule: 'opacity',
    in: ['sketch'],
    meaning: 'How strongly the sketch shows.',
    form: 'opacity 40%',
  },
  {
    kind: 'due',
    words: ['due'],
    rule: 'due',
    in: ['plan'],
    meaning: 'The day the picture must be ready.',
    form: 'due YYYY-MM-DD',
  },
  {
    kind: 'away',
    words: ['away'],
    rule: 'away',
    in: ['plan'],
    meaning: 'A day, or days, without painting.',
    form: 'away YYYY-MM-DD to YYYY-MM-DD',
  },
  {
    kind: 'grid',
    words: ['grid'],
    rule: 'grid',
    in: ['plan'],
    meaning: 'The grid for carrying the drawing over to the canvas: a number of squares, or their size.',
    form: 'grid COLUMNS x ROWS',
  },
  {
    kind: 'allow',
    words: ['allow'],
    rule: 'allow',
    in: ['plan', 'object'],
    meaning: 'Sets a finding aside, with the reason; under an object, for that object.',
    form: 'allow FINDING for NAME because "SENTENCE"',
  },
  {
    kind: 'rule',
    words: ['rule'],
    rule: 'rule',
    in: ['plan'],
    meaning: 'Changes how severe a finding is, or its limit.',
    form: 'rule FINDING warning limit 40%',
  },
];

const blocks: ReadonlySet<string> = new Set(statements.flatMap((entry) => entry.in));

const byBlockAndWord = new Map<string, StatementEntry>();
for (const entry of statements) {
  for (const block of entry.in) {
    const key = `${block}/${entry.words[0] ?? ''}`;
    if (!byBlockAndWord.has(key)) byBlockAndWord.set(key, entry);
  }
}

/** Whether other statements can be indented under this one. */
export function opensBlock(kind: StatementKind | 'plan'): kind is BlockStatement {
  return kind !== 'plan' && blocks.has(kind);
}

/** The statement that `word` (in canonical form) opens in `block`; `''` stands for a line of points. */
export function statementIn(block: Block, word: string): StatementEntry | undefined {
  return byBlockAndWord.get(`${block}/${word}`);
}

/** Every statement that can stand in `block`, in the order of the reference. */
export function statementsIn(block: Block): readonly StatementEntry[] {
  return statements.filter((entry) => entry.in.includes(block));
}

/** Every statement that `word` opens anywhere. */
export function statementsOpenedBy(word: string): readonly StatementEntry[] {
  return statements.filter((entry) => entry.words[0] === word);
}
