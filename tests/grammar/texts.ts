import fc from 'fast-check';

/** Lines that are right, nearly right, or in the wrong place, in several spellings. */
const lines = [
  'mahl 1',
  'plan "The oven door" by "M."',
  'plan "no end',
  'mood tired, warm // note',
  'mood "tired"',
  'cue "heat" carried by door and oven',
  'canvas 80x50 cm',
  'canvas figure 20 upright',
  'ground #8a6a4f neutral',
  'support linen,  oil primed',
  'divide golden, root 5 two to three',
  'divide own',
  'uprights 20%, 1/2 44 cm',
  'focus upper right of thirds, 3 cm left',
  'focus (12 -8)',
  'win by value, colour',
  'scale 5',
  'group dark 1-2, middle 3 light 4 – 5',
  'budget value dark 30%, middle 45 %, light 25%  within 5%',
  'budget colour dominant 70, rest 30%',
  'colour rust 7.5R 4/10',
  'COLOR ash N 6/ Dominant',
  'object door, dominant',
  'object тень',
  'object door domnant',
  'plane middle',
  'shape outline (1, 2) (3,4)focus',
  'shape smooth (1, 2), 3 cm up, (5, 6)',
  'shape rectangle 9 x 6 at focus',
  'shape path "M 0 0"',
  '(7, 8) top of door',
  'at left side of oven at 30%, 1 cm left by top',
  'repeat 4 every (5, -0.5) turning 6 degrees resized 95%',
  'value 3',
  'edges lost against wall floor',
  'lead kerb along top edge of road from (1, 2) through (3, 4) (5, 6) to door',
  'lead kerb through (1, 2)',
  'palette',
  'paint rose PR108:1, warm',
  'paint rose full #7a1030 tint #e8a0b0 at 1 to 9',
  'sitting "one" on 2026-12-01',
  'works wall, oven',
  'photo "a.jpg"',
  'corners (1, 2) (3, 4) (5, 6) (7, 8)',
  'grey (3%, 4%)',
  'allow even count for a, b because "so"',
  'rule hidden object warning limit 40%',
  'objct sky',
  '// a remark',
  '//',
  '',
  '   ',
  '???',
  '(',
  '"',
];

const indentations = ['', '', '  ', '  ', '    ', '\t', ' ', '      ', '\t  ', '        '];

/** One line as somebody may have typed it. */
export const typedLine: fc.Arbitrary<string> = fc
  .oneof(
    { weight: 8, arbitrary: fc.tuple(fc.constantFrom(...indentations), fc.constantFrom(...lines)) },
    { weight: 1, arbitrary: fc.tuple(fc.constantFrom(...indentations), fc.string({ unit: 'binary' })) },
    {
      weight: 2,
      arbitrary: fc.tuple(
        fc.constantFrom(...indentations),
        fc
          .array(fc.constantFrom(...lines.flatMap((line) => line.split(' '))), { maxLength: 8 })
          .map((words) => words.join(' ')),
      ),
    },
  )
  .map(([indentation, line]) => indentation + line);

/** A plan as somebody may have typed it, with any of the line endings. */
export const typedPlan: fc.Arbitrary<string> = fc
  .tuple(fc.array(typedLine, { maxLength: 30 }), fc.constantFrom('\n', '\r\n', '\r'))
  .map(([typed, ending]) => typed.join(ending));

/** Any text at all, lone surrogates and control characters included. */
export const anyText: fc.Arbitrary<string> = fc
  .array(fc.integer({ min: 0, max: 0xffff }), { maxLength: 200 })
  .map((units) => String.fromCharCode(...units));
