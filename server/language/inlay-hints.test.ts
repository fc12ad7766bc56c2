import { describe, expect, test } from 'vitest';
import { everyPlan } from '../../tests/support/plans.js';
import { hintKinds, usualHints, readHintSettings, type HintKind } from './hint-settings.js';
import { everything, nothing, openPlan } from './test-support.js';

const text = `canvas 100 x 50 cm
  ground #808080
divide golden
focus upper right
scale 5
  group dark 1-3, light 4-5
budget value dark 30%, light 70%
colour teal #2f6f73 dominant
object wall
  plane background
  shape rectangle (0, 0) to (100, 50)
  value 4
object door
  shape rectangle 20 x 10
  at focus, 5 cm left
  colour teal
object hidden
  plane background
  shape rectangle (60, 20) to (61, 21)
  at (10, 10)
  value 2
`;
const whole = { start: { line: 0, character: 0 }, end: { line: 30, character: 0 } };

function told(kinds: readonly HintKind[], source = text, range = whole): readonly string[] {
  const { service, uri } = openPlan(source);
  const off = readHintSettings(Object.fromEntries(hintKinds.map((kind) => [kind, false])));
  while (service.mixFurther(uri));
  service.hintsChanged({ ...off, ...Object.fromEntries(kinds.map((kind) => [kind, true])) });
  const lines = source.split('\n');
  return service
    .inlayHints(uri, range)
    .map(
      ({ position: { line, character }, label }) =>
        `${lines[line]?.slice(0, character).trim()} [${typeof label === 'string' ? label : ''}]`,
    );
}

test('the measured share beside each share of a budget', () => {
  // The door and the speck are the dark: 20 x 10 and 1 x 1 of 100 x 50.
  expect(told(['budget'])).toEqual([
    'budget value dark 30% [is 4 %]',
    'budget value dark 30%, light 70% [is 96 %]',
  ]);
});

test('how much of each object and colour is seen', () => {
  expect(told(['visible'])).toEqual([
    'colour teal [4 %]',
    'object wall [96 %]',
    'object door [4 %]',
    'object hidden [under 0.1 %]',
  ]);
  const behind = `${text}object front\n  plane foreground\n  shape rectangle (0, 0) to (100, 50)\n`;
  expect(told(['visible'], behind)).toContain('object door [not seen]');
});

test('the step that a colour comes to where no value is stated', () => {
  const hints = told(['value']);
  expect(hints.map((hint) => hint.replace(/ \[.*/u, ''))).toEqual(['ground #808080', 'colour teal']);
  const { service, uri } = openPlan(text);
  const step = service.snapshot(uri)?.plan.objects[1]?.step ?? Number.NaN;
  expect(hints[1]).toBe(`colour teal [value ${Math.round(step * 10) / 10}]`);
});

test('how many squares a transfer grid comes to, where its spacing is given', () => {
  expect(told(['places'], 'canvas 64 x 45 cm\ngrid every 10 cm\n')).toEqual([
    'grid every 10 cm [7 × 5 squares]',
  ]);
  expect(told(['places'], 'canvas 64 x 45 cm\ngrid 6 x 4\n')).toEqual([]);
});

test('where places in words lie, not those in coordinates', () => {
  // The golden section of 100 and 50 from the right and from the top.
  expect(told(['places'])).toEqual([
    'focus upper right [61.8 cm across, 19.1 cm down]',
    'at focus, 5 cm left [56.8 cm across, 19.1 cm down]',
  ]);
});

test('what the colour of an object is mixed of, and when a sitting is dry', () => {
  const painted = `${text}palette
  paint white PW6
  paint sea PB15:4
  paint gold PY151
sitting "Flat" on 2027-03-01
  works door
  layer body colour
`;
  expect(told(['mixtures'], painted).find((hint) => hint.startsWith('colour'))).toMatch(
    /^colour teal \[\d+\s(?:white|sea|gold) : \d+\s(?:white|sea|gold).*\]$/u,
  );
  expect(told(['mixtures'])).toEqual([]);
  // Benzimidazolone yellow takes eight days in a thin film, white and phthalocyanine five.
  expect(told(['drying'], painted)).toEqual(['sitting "Flat" on 2027-03-01 [dry on 9 March 2027]']);
});

test('of the lines asked for alone', () => {
  const range = { start: { line: 8, character: 0 }, end: { line: 14, character: 0 } };
  expect(told(['visible', 'places', 'budget'], text, range)).toEqual([
    'object wall [96 %]',
    'object door [4 %]',
    'at focus, 5 cm left [56.8 cm across, 19.1 cm down]',
  ]);
});

test('each with a sentence about it, set as the client can take it', () => {
  const tooltips = (abilities = everything) => {
    const { service, uri } = openPlan(text, abilities);
    return service.inlayHints(uri, whole).map(({ tooltip }) => tooltip);
  };
  expect(tooltips().every((tooltip) => typeof tooltip === 'object' && tooltip.kind === 'markdown')).toBe(
    true,
  );
  expect(tooltips(nothing)).toContainEqual({
    kind: 'plaintext',
    value: 'dark: 30 % wanted, within 5 %; 4 % measured, too little.',
  });
});

test('every plan can be asked, and its hints stand in their lines', async () => {
  for (const { name, text: plan } of await everyPlan()) {
    const { service, uri } = openPlan(plan.replaceAll('|', ''));
    const lines = service.snapshot(uri)?.lines ?? [];
    const end = { line: lines.length, character: 0 };
    const hints = service.inlayHints(uri, { start: whole.start, end });
    expect(hints.length, name).toBeGreaterThan(0);
    for (const { position } of hints)
      expect(position.character, name).toBeLessThanOrEqual(lines[position.line]?.length ?? -1);
  }
});

describe('settings', () => {
  test('a kind that is off is not shown, and a change is told to the client', () => {
    expect(told([])).toEqual([]);
    expect(readHintSettings({ budget: false })).toEqual({ ...usualHints, budget: false });
  });
  test.each([undefined, null, 'no', [], { places: 'yes' }])('all are shown when it is %j', (value) => {
    expect(readHintSettings(value)).toEqual(usualHints);
  });
});
