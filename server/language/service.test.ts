import { expect, test, vi } from 'vitest';
import { everything, openPlan, planUri } from './test-support.js';
import * as rules from '../findings/check.js';

test('a plan is computed when it is asked for, and once', () => {
  const { service, uri } = openPlan('canvas 40 x 30 cm\nobject tram');
  const snapshot = service.snapshot(uri);
  expect(snapshot?.plan.objects.map(({ name }) => name)).toEqual(['tram']);
  expect(service.snapshot(uri)).toBe(snapshot);
  expect(snapshot?.plan).toBe(service.snapshot(uri)?.plan);
});

test('a change makes a new snapshot, and the old one stays as it was', () => {
  const { service, uri } = openPlan('canvas 40 x 30 cm\nobject tram');
  const before = service.snapshot(uri);
  service.change(uri, 2, [
    { range: { start: { line: 1, character: 7 }, end: { line: 1, character: 11 } }, text: 'wall' },
  ]);
  expect(service.snapshot(uri)).toMatchObject({ version: 2, text: 'canvas 40 x 30 cm\nobject wall' });
  expect(before).toMatchObject({ version: 1, text: 'canvas 40 x 30 cm\nobject tram' });
  expect(before?.plan.objects[0]?.name).toBe('tram');
});

test('lines that an edit did not touch are not read again', () => {
  const { service, uri } = openPlan('canvas 40 x 30 cm\nobject tram');
  const canvas = service.snapshot(uri)?.tree.nodes[0]?.statement;
  service.change(uri, 2, [
    { range: { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } }, text: '\n' },
  ]);
  const moved = service.snapshot(uri)?.tree.nodes[0];
  expect(moved?.line).toBe(1);
  expect(moved?.statement).toBe(canvas);
});

test('places count UTF-16 code units', () => {
  const { service, uri } = openPlan('concept "🎨"\nplan "a"');
  service.change(uri, 2, [
    { range: { start: { line: 0, character: 9 }, end: { line: 0, character: 11 } }, text: 'ü' },
  ]);
  expect(service.snapshot(uri)?.text).toBe('concept "ü"\nplan "a"');
});

test('a plan is drawn anew when a part that it names arrives', async () => {
  const { service, uri, changed } = openPlan(
    'canvas 40 x 30 cm\nobject door\n  shape from "door.svg" part "d"',
    everything,
    {
      'file:///studio/door.svg': {
        ok: true,
        text: '<svg xmlns="http://www.w3.org/2000/svg"><rect id="d" width="4" height="3"/></svg>',
      },
    },
  );
  expect(service.snapshot(uri)?.plan.objects[0]?.waiting).toBe(true);
  expect(changed).toEqual([uri]);
  await new Promise(setImmediate);
  expect(changed).toEqual([uri, uri]);
  expect(service.snapshot(uri)?.plan.objects[0]).toMatchObject({ waiting: false });
  expect(service.snapshot(uri)?.plan.objects[0]?.outline.rings).toHaveLength(1);
  expect(service.snapshot(uri)?.version).toBe(1);
});

test('a file that is not there is a problem on its name', async () => {
  const { service, uri } = openPlan('canvas 40 x 30 cm\nobject door\n  shape from "door.svg"');
  service.diagnostics(uri);
  await new Promise(setImmediate);
  expect(service.diagnostics(uri)).toContainEqual(
    expect.objectContaining({
      code: 'unreadable-file',
      message: '`door.svg` cannot be read. There is no such file.',
    }),
  );
});

test('a drawing of each view', () => {
  const { service, uri } = openPlan(
    'plan "Tram"\ncanvas 40 x 30 cm\nobject tram\n  shape circle 10 at centre\n  value 2',
  );
  expect(service.scene(uri, 'notan')).toMatchObject({
    view: 'notan',
    title: expect.stringContaining('Tram') as string,
  });
});

test('a document that is not open is answered with nothing', () => {
  const { service, uri } = openPlan('canvas 40 x 30 cm');
  service.close(uri);
  const place = { line: 0, character: 0 };
  service.change(uri, 2, [{ text: 'plan "a"' }]);
  expect(service.snapshot(uri)).toBeUndefined();
  expect(service.scene(uri, 'drawing')).toBeUndefined();
  expect(service.diagnostics(uri)).toEqual([]);
  expect(service.completions(uri, place)).toEqual([]);
  expect(service.hover(uri, place)).toBeUndefined();
  expect(service.definition(uri, place)).toBeUndefined();
  expect(service.highlights(uri, place)).toEqual([]);
  expect(service.symbols(uri)).toEqual([]);
  expect(service.foldingRanges(uri)).toEqual([]);
  expect(service.colours(uri)).toEqual([]);
  expect(service.format(uri)).toEqual([]);
  expect(service.codeActions(uri, { start: place, end: place })).toEqual([]);
});

test('diagnostics are prepared a remedy at a time, and are the same without', () => {
  const text =
    'canvas 40 x 30 cm\nfocus (20, 15)\nbudget value dark 50%, light 10% within 2%\nobject tram\n  shape circle 10 at (12, 12)\n  value 5';
  const { service, uri } = openPlan(text);
  const steps = Array.from({ length: 20 }, () => service.prepareDiagnostics(uri));
  const findings = service.snapshot(uri)?.findings ?? [];
  expect(findings.length).toBeGreaterThan(3);
  expect(steps.filter(Boolean)).toHaveLength(findings.length);
  expect(service.diagnostics(uri)).toEqual(openPlan(text).service.diagnostics(uri));
  service.change(uri, 2, [{ text: 'canvas 40 x 30 cm\nfocus (20, 15)' }]);
  expect(service.prepareDiagnostics(uri)).toBe(true);
  service.close(uri);
  expect(service.prepareDiagnostics(uri)).toBe(false);
});

test('a fault in the rules leaves what is wrong with the text', () => {
  const fault = vi.spyOn(rules, 'check').mockImplementation(() => {
    throw new Error('a fault of ours');
  });
  const { service, failures } = openPlan('canvas 40 x 30 cm\nobjekt tram');
  expect(service.diagnostics(planUri).map(({ code }) => code)).toContain('unknown-word');
  expect(failures).toEqual(['findings: Error: a fault of ours']);
  fault.mockRestore();
});
