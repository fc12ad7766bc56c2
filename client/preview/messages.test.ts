import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as v from 'valibot';
import { sceneChange } from '../../server/drawing/scene-change.js';
import { exceeds, pageState, pageStateSchema, receiveFromPage, receiveInPage } from './messages.js';
import { stillLife } from './still-life.js';

const scene = { type: 'scene', epoch: 1, version: 3, scene: stillLife };
const sceneChanged = {
  type: 'scene change',
  epoch: 2,
  version: 4,
  change: sceneChange({ ...stillLife, subjects: {} }, stillLife),
};
const location = { line: 2, start: 0, end: 4 };
const moved = { kind: 'move', grip: 'object:bowl', to: { x: 12.5, y: 7 } };
const drawn = (count: number) => ({
  kind: 'new line',
  form: 'outline',
  points: Array.from({ length: count }, (_, x) => ({ x, y: 0 })),
});
const change = (made: object) => ({ type: 'write', id: 1, version: 3, change: made });

describe('what the page accepts', () => {
  it('takes a scene, findings, the line of the cursor and states', () => {
    const finding = { code: 'even-count', severity: 'warning', message: 'Two objects.', location };
    for (const message of [
      scene,
      { type: 'findings', version: 3, findings: [finding] },
      sceneChanged,
      { type: 'mark', version: 3, line: 4 },
      { type: 'mark', version: 3, line: null },
      { type: 'view', view: 'notan' },
      { type: 'server', state: 'stopped' },
      { type: 'gone' },
      { type: 'read only' },
      { type: 'come back', isFirst: true },
      { type: 'sketch', file: 'scan.png', read: { ok: true, bytes: Uint8Array.of(1, 2) } },
      { type: 'sketch', file: 'scan.png', read: { ok: false, reason: 'There is no such file.' } },
      { type: 'tried', id: 4, version: 3, scene: stillLife },
      { type: 'written', id: 5, version: 4 },
      { type: 'refused', id: 6, reason: 'It is on the horizon.', isStale: false },
    ]) {
      expect(receiveInPage(message)).toEqual({ ok: true, message });
    }
  });

  it.each([
    ['a view that does not exist', { ...stillLife, view: 'sideways' }],
    ['a distance out of reason', seenFrom(2_000_000)],
    ['a distance that is no number', seenFrom(Number.NaN)],
    ['an infinite place', { ...stillLife, sheet: { ...stillLife.sheet, x: Number.POSITIVE_INFINITY } }],
    ['an ink that is neither colour nor token', withMark({ fill: 'url(https://example.org/x)' })],
    ['path data with other characters', withMark({ d: 'M0 0" onload="alert(1)' })],
    ['an attribute that no mark has', withMark({ onclick: 'alert(1)' })],
  ])('refuses a scene with %s', (_what, bad) => {
    expect(receiveInPage({ ...scene, scene: bad })).toEqual({ ok: false, reason: 'malformed' });
  });

  it.each([
    ['keeps what was before the first', [{ kept: [-1, 2] }]],
    ['keeps half of something', [{ kept: [0, 1.5] }]],
    ['keeps and makes in one', [{ kept: [0, 1], made: [] }]],
    [
      'makes a mark that runs something',
      [{ made: [{ kind: 'path', key: 'a', d: 'M0 0', onclick: 'alert(1)' }] }],
    ],
  ])('refuses a change of a scene that %s', (_what, marks) => {
    const change = { ...sceneChanged.change, layers: [{ name: 'picture', marks }] };
    expect(receiveInPage({ ...sceneChanged, change })).toEqual({ ok: false, reason: 'malformed' });
  });

  it('refuses a view that does not exist', () => {
    expect(receiveInPage({ type: 'view', view: 'sideways' })).toEqual({ ok: false, reason: 'malformed' });
  });

  it.each([
    ['data:image/png;base64,AAAA', true],
    ['data:image/jpeg;base64,/9j/', true],
    ['https://example.org/a.png', false],
    ['data:image/svg+xml;base64,AAAA', false],
    ['data:image/png;base64,"><script>', false],
    ['file:///etc/passwd', false],
    ['javascript:alert(1)', false],
  ])('takes a picture that is written out, and nothing that leads elsewhere: %s', (href, ok) => {
    const picture = { kind: 'image', key: 'a', box: { x: 0, y: 0, width: 1, height: 1 }, href };
    const drawn = { ...stillLife, layers: [{ name: 'picture', marks: [picture] }] };
    expect(receiveInPage({ ...scene, scene: drawn }).ok).toBe(ok);
  });

  function seenFrom(distanceMillimetres: number): unknown {
    return { ...stillLife, viewing: { distanceMillimetres, usualMillimetres: 1_500, unit: 'm' } };
  }

  function withMark(change: object): unknown {
    const mark = { kind: 'path', key: 'a', d: 'M0 0h1', fill: '#000000', ...change };
    return { ...stillLife, layers: [{ name: 'picture', marks: [mark] }] };
  }
});

describe('what the extension accepts', () => {
  it('takes what a page asks for', () => {
    for (const message of [
      { type: 'ready' },
      { type: 'view', view: 'values' },
      { type: 'reveal', version: 3, location },
      { type: 'distance', millimetres: 3_000 },
      { type: 'distance', millimetres: null },
      { type: 'room', isNarrow: true },
      { type: 'sitting', sitting: 2 },
      { type: 'sitting', sitting: null },
      { type: 'under', sitting: 0 },
      { type: 'under', sitting: null },
      { type: 'restart' },
      { type: 'example', version: 3 },
      { type: 'try', id: 1, version: 3, change: moved },
      { type: 'write', id: 2, version: 3, change: drawn(200) },
      { type: 'step', to: 'undo' },
    ]) {
      expect(receiveFromPage(message)).toEqual({ ok: true, message });
    }
  });

  it.each([
    ['of an unknown type', { type: 'open', uri: 'file:///etc/passwd' }, 'unknown'],
    ['without a type', { version: 1 }, 'unknown'],
    ['that is no object', 'ready', 'unknown'],
    ['that is nothing', null, 'unknown'],
    ['with more than is asked for', { type: 'ready', and: 'more' }, 'malformed'],
    [
      'with a place before the text',
      { type: 'reveal', version: 3, location: { ...location, line: -1 } },
      'malformed',
    ],
    [
      'with a place that ends before it begins',
      { type: 'reveal', version: 3, location: { line: 0, start: 4, end: 2 } },
      'malformed',
    ],
    ['with a view that does not exist', { type: 'view', view: 'sideways' }, 'malformed'],
    ['with a sitting before the first', { type: 'sitting', sitting: -1 }, 'malformed'],
    ['with a file in place of a sitting', { type: 'under', sitting: '../secret.jpg' }, 'malformed'],
    ['with a room in words', { type: 'room', isNarrow: 'narrow' }, 'malformed'],
    ['with a distance of nothing', { type: 'distance', millimetres: 0 }, 'malformed'],
    ['with a distance out of reason', { type: 'distance', millimetres: 2_000_000 }, 'malformed'],
    ['with a distance that is no number', { type: 'distance', millimetres: Number.NaN }, 'malformed'],
    ['with a distance in words', { type: 'distance', millimetres: '3000' }, 'malformed'],
    ['with half a version', { type: 'reveal', version: 3.5, location }, 'malformed'],
    ['with a change of no known kind', change({ kind: 'delete', subject: 'object:bowl' }), 'malformed'],
    ['with a change to nowhere', change({ ...moved, to: { x: Number.NaN, y: 0 } }), 'malformed'],
    ['with a change far beyond the picture', change({ ...moved, to: { x: 1e9, y: 0 } }), 'malformed'],
    ['with a change that has more than is asked for', change({ ...moved, text: 'x' }), 'malformed'],
    ['with a line of too many points', change(drawn(201)), 'malformed'],
    ['with a line of one point', change(drawn(1)), 'malformed'],
    ['with a step to somewhere else', { type: 'step', to: 'saveAll' }, 'malformed'],
    ['that is too large', { type: 'view', view: 'x'.repeat(3_000) }, 'too large'],
    ['with too many entries', { type: 'ready', list: Array.from({ length: 3_000 }, () => 0) }, 'too large'],
  ])('refuses one %s', (_what, data, reason) => {
    expect(receiveFromPage(data)).toEqual({ ok: false, reason });
  });

  it('answers whatever it is given', () => {
    fc.assert(
      fc.property(fc.anything(), (data) => {
        const received = receiveFromPage(data);
        expect(received.ok ? received.message.type : received.reason).toBeTypeOf('string');
      }),
    );
  });
});

describe('the size of a message', () => {
  it('counts characters and entries, however deep', () => {
    expect(exceeds({ a: ['bcd'] }, 8)).toBe(false);
    expect(exceeds({ a: ['bcd'] }, 6)).toBe(true);
    const deep = Array.from({ length: 50 }).reduce<unknown>((inner) => [inner], 'x');
    expect(exceeds(deep, 40)).toBe(true);
    expect(exceeds(deep, 60)).toBe(false);
  });
});

describe('what the page keeps', () => {
  const kept = {
    uri: 'file:///a.mahl',
    view: 'notan' as const,
    distanceMillimetres: 2_000,
    snaps: false,
    zoom: { factor: 2.5, x: 0.25, y: 1 },
    hidden: ['names' as const, 'leads' as const],
    sketch: 0.3,
  };

  it('can be read again, also as earlier versions kept it', () => {
    expect(v.parse(pageStateSchema, JSON.parse(JSON.stringify(kept)))).toEqual(kept);
    const { uri, view, distanceMillimetres } = kept;
    for (const old of [
      { uri, view },
      { uri, view, distanceMillimetres },
    ]) {
      expect(v.parse(pageStateSchema, old)).toEqual(old);
    }
  });

  it('goes from one plan to another, without what is as it is from the first', () => {
    expect(pageState('file:///b.mahl', kept)).toEqual({ ...kept, uri: 'file:///b.mahl' });
    const first = { view: 'drawing' as const, zoom: undefined, hidden: [], sketch: undefined };
    expect(pageState('file:///b.mahl', first)).toEqual({ uri: 'file:///b.mahl', view: 'drawing' });
  });

  it.each([
    ['a zoom out of reason', { zoom: { factor: 400, x: 0, y: 0 } }],
    ['a part over the whole', { sketch: 1.5 }],
    ['a layer that there is not', { hidden: ['picture'] }],
  ])('is refused with %s', (_what, change) => {
    expect(v.safeParse(pageStateSchema, { ...kept, ...change }).success).toBe(false);
  });
});
