import { describe, expect, it } from 'vitest';
import { comparedScenes } from '../server/drawing/comparison/scenes.js';
import { sceneChange } from '../server/drawing/scene-change.js';
import { doorwayPlan, worked } from '../server/drawing/test-plans.js';
import { wallCard } from '../server/drawing/wall/card.js';
import { comparePlans } from '../server/findings/comparison/compare.js';
import { type FromPage, receiveFromPage, receiveInPage, type ToPage } from './preview/messages.js';
import { stillLife } from './preview/still-life.js';
import {
  type FromPage as FromPictures,
  readFromPage,
  readInPage,
  type ToPage as ToPictures,
} from './side-by-side/messages.js';

/** One message of each kind: the type checker asks for a kind that is missing. */
type OneOfEach<M extends { readonly type: string }> = {
  readonly [T in M['type']]: Extract<M, { readonly type: T }>;
};

const location = { line: 2, start: 0, end: 4 };
const change = { kind: 'move', grip: 'object:bowl', to: { x: 12.5, y: 7 } } as const;

const fromPage: OneOfEach<FromPage> = {
  ready: { type: 'ready' },
  again: { type: 'again' },
  view: { type: 'view', view: 'notan' },
  reveal: { type: 'reveal', version: 3, location },
  distance: { type: 'distance', millimetres: 3_000 },
  sitting: { type: 'sitting', sitting: 1 },
  under: { type: 'under', sitting: 1 },
  room: { type: 'room', isNarrow: true },
  restart: { type: 'restart' },
  export: { type: 'export' },
  copy: { type: 'copy' },
  copied: { type: 'copied', isCopied: true },
  raster: { type: 'raster', id: 1, png: Uint8Array.of(1) },
  example: { type: 'example', version: 3 },
  try: { type: 'try', id: 1, version: 3, change },
  write: { type: 'write', id: 1, version: 3, change },
  step: { type: 'step', to: 'undo' },
};

const toPage: OneOfEach<ToPage> = {
  scene: { type: 'scene', epoch: 1, version: 3, scene: stillLife },
  'scene change': {
    type: 'scene change',
    epoch: 2,
    version: 4,
    change: sceneChange({ ...stillLife, subjects: {}, layers: stillLife.layers.slice(0, 2) }, stillLife),
  },
  findings: {
    type: 'findings',
    version: 3,
    findings: [{ code: 'even-count', severity: 'warning', message: 'Two objects.', location }],
  },
  mark: { type: 'mark', version: 3, line: 4 },
  view: { type: 'view', view: 'notan' },
  server: { type: 'server', state: 'running' },
  gone: { type: 'gone' },
  'read only': { type: 'read only' },
  'come back': { type: 'come back', isFirst: true },
  sketch: { type: 'sketch', file: 'a.png', read: { ok: true, bytes: Uint8Array.of(1) } },
  tried: { type: 'tried', id: 1, version: 3, scene: stillLife },
  'tried change': {
    type: 'tried change',
    id: 1,
    version: 3,
    epoch: 1,
    change: sceneChange({ ...stillLife, subjects: {} }, stillLife),
  },
  rasterise: { type: 'rasterise', id: 1, svg: '<svg/>', width: 20, goesTo: 'file' },
  copy: { type: 'copy' },
  written: { type: 'written', id: 1, version: 4 },
  refused: { type: 'refused', id: 1, reason: 'It is on the horizon.', isStale: false },
};

const plan = worked(doorwayPlan);
const scenes = comparedScenes(comparePlans(plan, plan), 'drawing');
const side = { name: 'a.mahl', scene: scenes.later, widthMillimetres: 800 };
const { strips, ...card } = wallCard(plan, 'drawing', 0);

const fromPictures: OneOfEach<FromPictures> = {
  ready: { type: 'ready' },
  view: { type: 'view', view: 'notan' },
  open: { type: 'open', index: 2 },
};

const toPictures: OneOfEach<ToPictures> = {
  comparison: {
    type: 'comparison',
    view: 'drawing',
    earlier: side,
    later: side,
    changes: [{ topic: 'objects', message: 'It is moved.', isPlaced: true }],
    remarks: [],
  },
  wall: { type: 'wall', title: 'Wall', view: 'colour', names: ['a.mahl'], left: 0 },
  card: {
    type: 'card',
    index: 0,
    card: { ...card, strips: strips.map((strip) => ({ ...strip, parts: [...strip.parts] })) },
  },
  unreadable: { type: 'unreadable', index: 0, reason: 'It is gone.' },
  nothing: { type: 'nothing', reason: 'It is gone.' },
};

const isTaken = {
  'from the page of a preview': (data: unknown) => receiveFromPage(data).ok,
  'to the page of a preview': (data: unknown) => receiveInPage(data).ok,
  'from a page with pictures side by side': (data: unknown) => readFromPage(data) !== undefined,
  'to a page with pictures side by side': (data: unknown) => readInPage(data) !== undefined,
} as const;
type Way = keyof typeof isTaken;

const samples: Readonly<Record<Way, Readonly<Record<string, { readonly type: string }>>>> = {
  'from the page of a preview': fromPage,
  'to the page of a preview': toPage,
  'from a page with pictures side by side': fromPictures,
  'to a page with pictures side by side': toPictures,
};

/** More than any message may hold, and nothing to look at but its length. */
const tooMuch = 'x'.repeat(201_000_000);

/** No field of a message may hold any of these. */
const never: readonly unknown[] = [
  undefined,
  10n,
  {},
  [[]],
  new Date(0),
  new Map(),
  Number.NaN,
  Infinity,
  -1,
];

/** Objects and lists anywhere in a message that are written with names and places alone. */
function partsOf(value: unknown): readonly object[] {
  if (typeof value !== 'object' || value === null || ArrayBuffer.isView(value)) return [];
  return [value, ...Object.values(value).flatMap(partsOf)];
}

/** A message with one part of it replaced. */
function withPart(message: unknown, part: object, instead: unknown): unknown {
  if (message === part) return instead;
  if (typeof message !== 'object' || message === null || ArrayBuffer.isView(message)) return message;
  if (Array.isArray(message)) return message.map((entry: unknown) => withPart(entry, part, instead));
  return Object.fromEntries(
    Object.entries(message).map(([key, entry]) => [key, withPart(entry, part, instead)]),
  );
}

/** With a key as JSON has it, which an assignment would take for the prototype. */
function withKey(part: object, key: string): unknown {
  const copy: object = Array.isArray(part) ? [...(part as readonly unknown[])] : { ...part };
  return Object.defineProperty(copy, key, { value: { isForged: true }, enumerable: true });
}

function forgeries(message: { readonly type: string }): readonly (readonly [what: string, data: unknown])[] {
  const fields = Object.keys(message);
  const objects = partsOf(message).filter((part) => !Array.isArray(part));
  return [
    ...fields.flatMap((field) =>
      never.map((value) => [`${field}: ${String(value)}`, { ...message, [field]: value }] as const),
    ),
    ...fields.map(
      (field) =>
        [
          `no ${field}`,
          Object.fromEntries(Object.entries(message).filter(([key]) => key !== field)),
        ] as const,
    ),
    ...['more', '__proto__', 'constructor', 'prototype', 'toString'].map(
      (key) => [`the key ${key}`, withKey(message, key)] as const,
    ),
    ...objects.map((part) => ['more within', withPart(message, part, withKey(part, 'isForged'))] as const),
    ...objects.map((part) => ['a part as a number', withPart(message, part, 10n)] as const),
    ['a list of it', [message]],
    ['its JSON', JSON.stringify(message)],
    ['itself within', Object.assign({ ...message }, { self: message })],
    ['another kind of letters', { ...message, type: message.type.toUpperCase() }],
    ['too much of it', { ...message, more: tooMuch }],
    ['too much under a name', { ...message, [tooMuch]: 1 }],
  ];
}

const each = Object.entries(samples).flatMap(([way, kinds]) =>
  Object.entries(kinds).map(([kind, message]) => [kind, way as Way, message] as const),
);

describe('a message', () => {
  it.each(each)('%s %s is taken as it should be', (_kind, way, message) => {
    expect(isTaken[way](message)).toBe(true);
  });

  it.each(each)('%s %s is refused when it is forged', (_kind, way, message) => {
    const taken = forgeries(message).filter(([, data]) => isTaken[way](data));
    expect(taken.map(([what]) => what)).toEqual([]);
    expect(({} as Record<string, unknown>)['isForged']).toBeUndefined();
  });

  it.each(Object.keys(isTaken) as Way[])('of no kind that there is %s is refused', (way) => {
    for (const type of ['__proto__', 'constructor', 'toString', '', 'eval', null, 1, ['ready'], undefined])
      expect(isTaken[way]({ type })).toBe(false);
    for (const data of [undefined, null, 1, 'ready', [], new Error('ready'), Symbol('ready'), () => 1])
      expect(isTaken[way](data)).toBe(false);
  });

  it('%s that goes the other way is refused, but for what both say', () => {
    const crossed = (one: Way, other: Way) =>
      Object.entries(samples[one]).flatMap(([kind, message]) => (isTaken[other](message) ? [kind] : []));
    expect(crossed('to the page of a preview', 'from the page of a preview')).toEqual(['view', 'copy']);
    expect(crossed('from the page of a preview', 'to the page of a preview')).toEqual(['view', 'copy']);
    expect(crossed('to a page with pictures side by side', 'from a page with pictures side by side')).toEqual(
      [],
    );
    expect(crossed('from a page with pictures side by side', 'to a page with pictures side by side')).toEqual(
      [],
    );
  });

  it('that holds itself is counted to an end', () => {
    for (const way of Object.keys(isTaken) as Way[]) {
      if (way.startsWith('to')) continue;
      const message: Record<string, unknown> = { type: 'raster', id: 1, png: null };
      message['self'] = message;
      expect(isTaken[way](message)).toBe(false);
    }
  });
});
