import { expect, test } from 'vitest';
import { nextTurn } from './turns.js';
import { openPlan } from './test-support.js';

const PAINTS = [
  'PW6',
  'PY151',
  'PY83',
  'PY42',
  'PO34',
  'PR170',
  'PR101',
  'PR122',
  'PB15:2',
  'PB15:4',
  'PG7',
  'PBk7',
];

/** A picture of 60 objects in 60 colours, and a palette of 12 paints. */
function crowded(): string {
  const objects = Array.from({ length: 60 }, (_, index) => {
    const [column, row] = [index % 10, Math.floor(index / 10)];
    return [
      `object  tile${index}`,
      `  shape   rectangle (${column * 8}, ${row * 8}) to (${column * 8 + 8}, ${row * 8 + 8})`,
      `  colour  ${(index % 20) * 5}R ${3 + row}/${2 + (column % 4)}`.replace(/ (\d+)R/, (_, hue: string) =>
        Number(hue) % 10 === 0 ? ' 5R' : ` ${Number(hue) / 10}R`,
      ),
    ].join('\n');
  });
  return [
    'canvas  80 x 48 cm',
    ...objects,
    'palette',
    ...PAINTS.map((index, at) => `  paint   p${at} ${index}`),
  ].join('\n');
}

/** Works until nothing is left; gives the number of pieces. */
function mixedThrough(service: { mixFurther(uri: string): boolean }, uri: string): number {
  let pieces = 0;
  while (service.mixFurther(uri)) pieces++;
  return pieces;
}

test('mixtures come beside the typing: a plan is there without them first, and told to be another when it has them', () => {
  const { service, uri, changed, failures } = openPlan(crowded());
  const before = service.snapshot(uri);
  expect(before?.measures.palette?.paints).toHaveLength(12);
  expect(before?.measures.palette?.mixing).toBeUndefined();
  expect(changed).toEqual([uri]);
  expect(mixedThrough(service, uri)).toBeGreaterThan(20);
  expect(changed).toEqual([uri, uri]);
  const after = service.snapshot(uri);
  expect(after).not.toBe(before);
  expect(after?.version).toBe(before?.version);
  expect(after?.measures.palette?.mixing?.ofObjects.every((swatch) => swatch !== undefined)).toBe(true);
  expect(service.mixFurther(uri)).toBe(false);
  expect(failures).toEqual([]);
});

test('what neither paints nor colours have to do with leaves the mixtures as they are', () => {
  const { service, uri } = openPlan(crowded());
  mixedThrough(service, uri);
  const mixtures = () =>
    service.snapshot(uri)?.measures.palette?.mixing?.swatches.map(({ mixture }) => mixture?.parts);
  const before = mixtures();
  const at = { line: 0, character: 0 };
  service.change(uri, 2, [{ range: { start: at, end: at }, text: 'plan    "Tiles"\n' }]);
  expect(mixtures()).toEqual(before);
  expect(service.mixFurther(uri)).toBe(false);
});

test('another colour among them is found in a few pieces, of the same table of mixtures', () => {
  const { service, uri, text } = openPlan(crowded());
  const all = mixedThrough(service, uri);
  const line = text.split('\n').findIndex((one) => one.startsWith('  colour'));
  const length = text.split('\n')[line]?.length ?? 0;
  const range = { start: { line, character: 10 }, end: { line, character: length } };
  service.change(uri, 2, [{ range, text: '#5b7fa3' }]);
  void service.snapshot(uri)?.measures;
  expect(mixedThrough(service, uri)).toBeLessThan(all / 4);
  expect(service.snapshot(uri)?.measures.palette?.mixing).toBeDefined();
});

test('a plan of the same paints begins with what is known of them', () => {
  const { service, uri, text } = openPlan(crowded());
  const all = mixedThrough(service, uri);
  service.open('file:///studio/other.mahl', 1, text.replace('tile7', 'stone'));
  expect(mixedThrough(service, 'file:///studio/other.mahl')).toBeLessThan(all / 4);
});

test('a closed plan, and one without a palette, have nothing to be mixed', async () => {
  const { service, uri } = openPlan(crowded());
  expect(service.mixFurther(uri)).toBe(true);
  service.close(uri);
  expect(service.mixFurther(uri)).toBe(false);
  service.open(uri, 2, 'canvas  40 x 30 cm');
  expect(service.mixFurther(uri)).toBe(false);
  await new Promise<void>((resolve) => nextTurn(resolve));
});

test('a change that is only tried has its mixtures at once', () => {
  const { service, uri, text } = openPlan(crowded());
  mixedThrough(service, uri);
  const tried = service.snapshot(uri)?.readInstead(text.replace('tile3', 'brick'));
  expect(tried?.measures.palette?.mixing).toBeDefined();
  expect(service.mixFurther(uri)).toBe(false);
});

test.each([
  ['palette\nobject jug', 'The picture has no colours yet that could be mixed from it.'],
  [
    'palette\nobject jug\n  shape rectangle (1, 1) to (9, 9)\n  value 3',
    'No paint of it is known that mixtures could be worked out from.',
  ],
  [
    'palette\n  paint smoke\nobject jug\n  shape rectangle (1, 1) to (9, 9)\n  value 3',
    'No paint of it is known that mixtures could be worked out from.',
  ],
])('a palette that nothing can be mixed from does not promise that all can be: %j', (lines, expected) => {
  const { service, uri } = openPlan(`${lines}\ncanvas 40 x 30 cm`);
  mixedThrough(service, uri);
  const { contents } = service.hover(uri, { line: 0, character: 3 }) ?? {};
  expect(JSON.stringify(contents)).toContain(expected);
});
