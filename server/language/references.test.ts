import { expect, test } from 'vitest';
import { openPlan } from './test-support.js';

const text = (content: string) => ({ ok: true, text: content }) as const;
const svg =
  '<svg xmlns="http://www.w3.org/2000/svg"><rect title=" id=x" id="door" width="4" height="3"/></svg>';
const around = {
  'file:///studio/base.mahl': text('object sky\npath sky\n'),
  'file:///studio/tram.svg': text(svg),
};

async function found(marked: string, withDefinition = true): Promise<readonly string[]> {
  const { service, uri, position } = openPlan(marked, undefined, around);
  const known = await service.surroundings();
  return service
    .references(uri, position, withDefinition, known)
    .map(
      ({ uri: file, range }) => `${file.replace(/.*\//u, '')} ${range.start.line}:${range.start.character}`,
    );
}

test('every place of a name, however it is spelt, with and without its definition', async () => {
  const plan = 'object Straße\npath straße, STRASSE\nworks stra|ße';
  expect(await found(plan)).toEqual(['plan.mahl 0:7', 'plan.mahl 1:5', 'plan.mahl 2:6']);
  expect(await found(plan, false)).toEqual(['plan.mahl 1:5', 'plan.mahl 2:6']);
});

test('across the plans that build on each other', async () => {
  const plan = 'based on "base.mahl"\nobject sky\n  value 3\ncue "x" carried by s|ky';
  expect(await found(plan)).toEqual(['plan.mahl 1:7', 'plan.mahl 3:19', 'base.mahl 0:7', 'base.mahl 1:5']);
});

test('another plan’s object of the same name is another', async () => {
  const { service, uri, position } = openPlan('object s|ky', undefined, around);
  service.open('file:///studio/other.mahl', 1, 'object sky');
  const known = await service.surroundings();
  expect(service.references(uri, position, true, known)).toHaveLength(1);
});

test('an heir that is open is found from the base', async () => {
  const { service, uri, position } = openPlan('object s|ky', undefined, around);
  service.open('file:///studio/heir.mahl', 1, 'based on "plan.mahl"\npath sky');
  const known = await service.surroundings();
  expect(service.references(uri, position, true, known).map((one) => one.uri)).toEqual([
    uri,
    'file:///studio/heir.mahl',
  ]);
});

test('a part of an SVG file: its element and every use', async () => {
  const plan =
    'object a\n  shape from "tram.svg" part "do|or"\nobject b\n  shape from "tram.svg" part "door"';
  expect(await found(plan)).toEqual(['tram.svg 0:64', 'plan.mahl 1:30', 'plan.mahl 3:30']);
  expect(await found(plan, false)).toEqual(['plan.mahl 1:30', 'plan.mahl 3:30']);
});

test.each([
  ['based on "base.mahl"\nwithout s|ky', 'base.mahl 0:7'],
  ['based on "base.mahl"\npath s|ky', 'base.mahl 0:7'],
  ['based on "ba|se.mahl"', 'base.mahl 0:0'],
  ['object a\n  shape from "tram.svg" part "do|or"', 'tram.svg 0:64'],
  ['object a\n  shape from "tr|am.svg" part "door"', 'tram.svg 0:0'],
])('definition beyond the plan: %s', async (marked, expected) => {
  const { service, uri, position } = openPlan(marked, undefined, around);
  const link = service.definition(uri, position, await service.surroundings());
  const { start } = link?.targetSelectionRange ?? {};
  expect(`${link?.targetUri.replace(/.*\//u, '')} ${start?.line}:${start?.character}`).toBe(expected);
});

test('the uses of a part are highlighted', () => {
  const plan =
    'object a\n  shape from "tram.svg" part "do|or"\nobject b\n  shape from "./tram.svg" part "door"\nobject c\n  shape from "tram.svg" part "roof"';
  const { service, uri, position } = openPlan(plan, undefined, around);
  expect(service.highlights(uri, position).map(({ range }) => range.start.line)).toEqual([1, 3]);
});

test('files outside the workspace are not asked for', async () => {
  const { service, uri, position } = openPlan('based on "../secret.mahl"\npath s|ky', undefined, {
    'file:///secret.mahl': text('object sky'),
  });
  expect(service.definition(uri, position, await service.surroundings())).toBeUndefined();
});

test('a name that is left out of the base is not the one of the same spelling here', () => {
  const lit = (marked: string): readonly number[] => {
    const { service, uri, position } = openPlan(marked);
    return service.highlights(uri, position).map(({ range }) => range.start.line);
  };
  const plan = 'based on "base.mahl"\nwithout sky\nobject sky\npath sky';
  expect(lit(plan.replace('path s', 'path s|'))).toEqual([2, 3]);
  expect(lit(plan.replace('without s', 'without s|'))).toEqual([1]);
});

test('a name in a line that stands where it does not belong is highlighted with the others', () => {
  const { service, uri, position } = openPlan('object sky\nworks s|ky');
  expect(service.highlights(uri, position).map(({ range }) => range.start.line)).toEqual([0, 1]);
});
