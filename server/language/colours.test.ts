import { expect, test } from 'vitest';
import { openPlan } from './test-support.js';

const text = `canvas 40 x 30 cm
  ground #804020
colour rust 7.5R 4/10
object tram
  colour rust
object wall
  colour rgb(0 128 255)
palette
  paint madder full #aa2030, tint #e8a0b0 at 1 to 9
`;

test('every colour that is written out, and no name', () => {
  const { service, uri } = openPlan(text);
  const written = service.colours(uri).map(({ range }) => {
    const line = text.split('\n')[range.start.line] ?? '';
    return line.slice(range.start.character, range.end.character);
  });
  expect(written).toEqual(['#804020', '7.5R 4/10', 'rgb(0 128 255)', '#aa2030', '#e8a0b0']);
});

test('in parts of one, as the protocol has them', () => {
  const { service, uri } = openPlan(text);
  const { red, green, blue, alpha } = service.colours(uri)[2]?.color ?? {};
  expect(red).toBeCloseTo(0, 6);
  expect(green).toBeCloseTo(128 / 255, 6);
  expect(blue).toBeCloseTo(1, 6);
  expect(alpha).toBe(1);
});

test('a picked colour is written as the one before it', () => {
  const { service, uri } = openPlan(text);
  const [ground, rust] = service.colours(uri);
  const picked = { red: 1, green: 1, blue: 1, alpha: 1 };
  const labels = (found: typeof ground) =>
    found && service.colourPresentations(uri, found.range, picked).map(({ label }) => label);
  expect(labels(ground)?.[0]).toBe('#ffffff');
  expect(labels(rust)?.[0]).toBe('N 10.0/');
  expect(ground && service.colourPresentations(uri, ground.range, picked)[0]?.textEdit?.range).toEqual(
    ground?.range,
  );
});

test.each([
  ['object sky\n  colour teal\n  glaze 5B 4/4', '5B'],
  ['palette\n  paint madder full 7.5R 4/10', '7.5R'],
  ['palette\n  paint madder full #aa2030, tint 5RP 8/4 at 1 to 9', '5RP'],
  ['canvas 40 x 30 cm\n  ground N 6/', 'N 6/'],
])('a Munsell colour can be picked wherever colours are written, and stays one: %j', (plan, written) => {
  const { service, uri } = openPlan(plan);
  const lines = plan.split('\n');
  const found = service
    .colours(uri)
    .find(({ range }) => lines[range.start.line]?.slice(range.start.character).startsWith(written));
  if (found === undefined) throw new Error('it has no swatch');
  const [first] = service.colourPresentations(uri, found.range, found.color);
  expect(first?.label).toMatch(/^(?:N|\d+(?:\.\d+)?[A-Z]+) ?\d+(?:\.\d+)?\//u);
});
