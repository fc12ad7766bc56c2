import { readFile } from 'node:fs/promises';
import { expect, test } from 'vitest';
import { everyPlan } from '../../tests/support/plans.js';
import { classify } from '../../grammar/index.js';
import { openPlan } from './test-support.js';

/**
 * Where nothing is told: a line that could not be read, or has no place in the plan, means nothing yet, and its
 * diagnostic says why.
 */
const readme = await readFile(new URL('../../grammar/README.md', import.meta.url), 'utf8');
const examples = [...readme.matchAll(/^```mahl\n([\s\S]*?)^```$/gm)].map(([, text = ''], index) => ({
  name: `example ${index + 1} of the reference`,
  text,
}));

/** The words of a plan about which nothing is told. */
function untold(text: string): readonly string[] {
  const { service, uri, failures } = openPlan(text.replaceAll('|', ''));
  const snapshot = service.snapshot(uri);
  if (snapshot === undefined) throw new Error('the plan is open');
  const { tree, lines } = snapshot;
  const passed = new Set([...tree.problems, ...tree.detached].map(({ line }) => line));
  const gaps = classify(tree)
    .filter((token) => token.class !== 'comment' && !passed.has(token.line))
    .filter(({ line, start, end }) => {
      // In the middle of a word, so that the one before it does not answer.
      const hover = service.hover(uri, { line, character: Math.floor((start + end) / 2) });
      const isAbout =
        hover?.range !== undefined && hover.range.start.character < end && hover.range.end.character > start;
      const words =
        typeof hover?.contents === 'object' && 'value' in hover.contents ? hover.contents.value : '';
      return !isAbout || words.trim() === '';
    })
    .map(({ line, start, end }) => `${line + 1}: ${lines[line]?.slice(start, end)}`);
  expect(failures).toEqual([]);
  return gaps;
}

test.each([...(await everyPlan()), ...examples])('something is told of every word of $name', ({ text }) => {
  expect(untold(text)).toEqual([]);
});

const told = (marked: string): string => {
  const { service, uri, position } = openPlan(marked);
  const contents = service.hover(uri, position)?.contents;
  return typeof contents === 'object' && 'value' in contents ? contents.value.replaceAll('\\', '') : '';
};

test.each([
  ['object sky\n  value |4', 'Step 4 of 5, of which 1 is the darkest: Munsell value 7.'],
  ['canvas 80 x 50 cm\nobject sky\n  at (|20, 40%)', '20 cm across, 25 % of the width.'],
  ['canvas 80 x 50 cm\nobject sky\n  at (20, |40%)', '20 cm down, 40 % of the height.'],
  ['canvas 80 x 50 cm\nobject sky\n  at focus, |5 mm left', '0.5 cm across, 0.6 % of the width.'],
  ['canvas 80 x 50 cm\ndivide own\n  levels 1/|2', '25 cm down, 50 % of the height.'],
  ['sitting "a" on 2026-|12-01', 'Tuesday 1 December 2026'],
  ['object sky, |dominant', 'The principal of the picture'],
  ['colour teal #2f6f73 |dominant', 'The colour that is to hold most of the picture.'],
  ['object sky\n  plane |middle', 'The plane between background and foreground.'],
  ['object sky\n  edges |lost', 'the two run into each other'],
  ['sitting "a" on 2026-02-|31', 'There is no such day in the calendar.'],
  ['object a\n  repeat 4 every (5, -0|.5)', '0.5 cm up, 1.7 % of the height.'],
  ['sitting "a"\n  layer body col|our', 'Body colour: opaque paint, the main layer.'],
  ['grid ev|ery 10 cm', 'How long each side of a square is.'],
  ['budget col|our dominant 70%', 'How much of the picture the colours of each role are to hold.'],
  ['budget colour domi|nant 70%', 'The colour that is to hold most of the picture.'],
  ['based on "a.mahl"\npath no|body', 'it may come from the plan that it is based on'],
  ['based on "a.mahl"\nwithout no|body', 'A name of the plan that this one is based on.'],
  ['based on "a.mahl"\nwithout j|ug\nobject jug', 'A name of the plan that this one is based on.'],
  ['without no|body', 'This plan is based on no other from which this could be left out.'],
  ['palette\n  paint sea PB2|9', 'PB29: ultramarine blue, by its number in the Colour Index.'],
  ['palette\n  paint sea PB9|99', 'PB999: the number of its pigment in the Colour Index.'],
  ['palette\n  paint glow PO2|0', 'It holds cadmium.'],
  ['palette\n  paint gl|ow PO20', 'Read the maker’s safety data sheet first, and keep to local rules'],
  ['palette\n  paint um|ber PBr7, warm', 'In oil a thin film is dry to the touch in about 5 days'],
  ['canvas 30 x 40 cm\n  medium linse|ed oil', 'Rags with drying oil heat by themselves'],
  ['object jug\nsitting "Bl|ock in" on 2027-03-01\n  works jug', 'Monday 1 March 2027.'],
  [
    'object jug\nsitting "a" on 2027-03-01\n  works jug\n  layer block|-in, lean',
    'Block-in: 5 % of oil or medium added',
  ],
  ['object jug\nsitting "a" on 2027-03-01\n  works jug\ndu|e 2027-04-01', 'dry to the touch on 6 March 2027'],
  [
    'object jug\nsitting "a|" on 2027-03-01\n  works jug\ndue 2027-04-01',
    'put off until Saturday 27 March 2027, by 26 days',
  ],
  ['path no|body', 'Nothing in this plan has this name.'],
])('%j', (marked, expected) => {
  expect(told(marked)).toMatch(
    new RegExp(expected.replace(/[.()]/gu, '\\$&').replace('Tuesday ', 'Tuesday,? '), 'u'),
  );
});

test('what a statement tells itself is not told of its length once more', () => {
  expect(told('canvas 80 x 5|0 cm')).not.toContain('100 % of the height');
  expect(told('horizon 4|0%').match(/40 %/gu)).toHaveLength(1);
  expect(told('grid every 1|0 cm')).not.toContain('10 cm.');
});

test('a place in a sketch is none on the canvas', () => {
  expect(told('sketch "a.png"\n  corners (1|00, 0) (900, 0) (900, 600) (0, 600)')).not.toContain('across');
});
