import type { ObjectPair } from '../../measure/comparison/pairs.js';
import { passedObjects } from '../../measure/comparison/order.js';
import type { PlanObject } from '../../plan/plan.js';
import { inWords, plainNumber } from '../../plan/problems.js';
import { percent, quoted, someOf } from '../words/words.js';
import { planeWords } from '../words/tones.js';
import { type Change, type Compared, places } from './change.js';
import { colourChanges, lookChanges, type Make, valueChanges } from './object-looks.js';
import { noteChanges } from './texts.js';
import { LEAST_SHARE, moveInWords, shareInWords } from './wording.js';

/** What became of the objects: those that weigh most first, of one object all that changed. */
export function objectChanges(compared: Compared): readonly Change[] {
  const { earlier, later, objects } = compared;
  const shareOf = (index: number): number => later.measures.objects[index]?.share ?? 0;
  const come = objects.come.flatMap((index) => later.plan.objects[index] ?? []);
  const gone = objects.gone.flatMap((index) => earlier.plan.objects[index] ?? []);
  const both = objects.pairs.flatMap((pair) => {
    const [before, now] = [earlier.plan.objects[pair.earlier], later.plan.objects[pair.later]];
    return before === undefined || now === undefined ? [] : [{ pair, before, now }];
  });
  const passed = passedObjects(earlier.plan, later.plan, objects.pairs);
  const told = [
    ...both.map(({ pair, before, now }) => ({
      role: now.role ?? before.role,
      share: Math.max(shareOf(now.index), earlier.measures.objects[before.index]?.share ?? 0),
      changes: pairChanges(pair, before, now, compared, passed.get(now.index) ?? []),
    })),
    ...come.map((object) => ({
      role: object.role,
      share: shareOf(object.index),
      changes: [comeChange(object, compared)],
    })),
    ...gone.map((object) => ({
      role: object.role,
      share: earlier.measures.objects[object.index]?.share ?? 0,
      changes: [goneChange(object, compared)],
    })),
  ];
  return told
    .sort((one, other) => rank(one.role) - rank(other.role) || other.share - one.share)
    .flatMap(({ changes }) => changes);
}

function rank(role: PlanObject['role']): number {
  return role === 'dominant' ? 0 : role === 'secondary' ? 1 : 2;
}

function comeChange(object: PlanObject, { later }: Compared): Change {
  const share = later.measures.objects[object.index]?.share ?? 0;
  return {
    topic: 'objects',
    kind: 'new',
    message: `${quoted(object.name)}${roleInWords(object.role)} is new, in the ${planeWords(object.plane)}: ${seen(share)}.`,
    object: object.name,
    later: object.location,
  };
}

function goneChange(object: PlanObject, { earlier }: Compared): Change {
  const share = earlier.measures.objects[object.index]?.share ?? 0;
  const was = share > 0 ? `it covered ${percent(share)} of the picture` : 'nothing was seen of it';
  return {
    topic: 'objects',
    kind: 'gone',
    message: `${quoted(object.name)}${roleInWords(object.role)} is gone; ${was}.`,
    object: object.name,
    earlier: object.location,
  };
}

function roleInWords(role: PlanObject['role']): string {
  return role === undefined || role === 'minor' ? '' : `, ${role},`;
}

function seen(share: number): string {
  return share > 0 ? `it covers ${percent(share)} of the picture` : 'nothing is seen of it';
}

function pairChanges(
  pair: ObjectPair,
  before: PlanObject,
  now: PlanObject,
  compared: Compared,
  passed: readonly { readonly object: number; readonly isInFront: boolean }[],
): readonly Change[] {
  const name = quoted(now.name);
  const about = { object: now.name, ...places(before.location, now.location) };
  const change = (kind: Change['kind'], message: string, more: Partial<Change> = {}): Change => ({
    topic: 'objects',
    kind,
    message,
    ...about,
    ...more,
  });
  const renamed =
    pair.knownBy === undefined
      ? []
      : [
          change(
            'renamed',
            `${quoted(before.name)} is called ${name} now: it is known by ${
              pair.knownBy === 'same place'
                ? 'its outline, which lies where it lay'
                : 'its outline and its colour, which are the same'
            }.`,
          ),
        ];
  const [role, wasRole] = [now.role ?? 'minor', before.role ?? 'minor'];
  const roles = role === wasRole ? [] : [change('changed', `${name} is ${role} now; it was ${wasRole}.`)];
  const plane =
    now.plane === before.plane
      ? []
      : [
          change(
            'order',
            `${name} is in the ${planeWords(now.plane)} instead of the ${planeWords(before.plane)}.`,
          ),
        ];
  return [
    ...renamed,
    ...roles,
    ...shapeChanges(pair, compared, name, change),
    ...plane,
    ...orderChanges(compared, name, passed, change),
    ...valueChanges(before, now, compared, name, change),
    ...colourChanges(before, now, compared, name, change),
    ...lookChanges(before, now, compared, name, about),
    ...noteChanges(name, before.notes, now.notes, { object: now.name }),
  ];
}

function shapeChanges(
  { outline, earlier: was, later: is }: ObjectPair,
  { earlier, later, frame }: Compared,
  name: string,
  change: Make,
): readonly Change[] {
  const [before, now] = [earlier.plan.objects[was], later.plan.objects[is]];
  const shapes = places(before?.shapeLocation ?? before?.location, now?.shapeLocation ?? now?.location);
  const share = later.measures.objects[is]?.share ?? 0;
  const old = earlier.measures.objects[was]?.share ?? 0;
  const differs = Math.abs(share - old) >= LEAST_SHARE;
  const figure = { from: old, to: share, unit: 'part of the picture' } as const;
  const covers = differs ? `: it covers ${shareInWords(share, old)}` : '';
  const { move, turn, scale, isReshaped } = outline;
  const way = move === undefined ? '' : moveInWords(move, frame);
  const moved =
    move === undefined || way === ''
      ? []
      : [change('moved', `${name} is moved ${way}.`, { move, ...shapes })];
  const turned =
    turn === undefined
      ? []
      : [
          change(
            'turned',
            `${name} is turned by ${plainNumber(Math.abs(turn), Math.abs(turn) < 10 ? 1 : 0)}° ${turn > 0 ? 'clockwise' : 'anticlockwise'}.`,
            { figure: { from: 0, to: turn, unit: 'degrees' }, ...shapes },
          ),
        ];
  const sized =
    scale === undefined
      ? []
      : [change('sized', `${name} is ${sizeInWords(scale)}${covers}.`, { figure, ...shapes })];
  const reshaped = isReshaped
    ? [change('reshaped', `${name} has another shape${covers}.`, { figure, ...shapes })]
    : [];
  const isSeenOnly = scale === undefined && !isReshaped && differs;
  const more = share > old;
  const shown = isSeenOnly
    ? [
        change(
          more ? 'more seen' : 'less seen',
          `${more ? 'More' : 'Less'} is seen of ${name}: ${shareInWords(share, old)}.`,
          { figure },
        ),
      ]
    : [];
  return [...moved, ...turned, ...sized, ...reshaped, ...shown];
}

/** `larger, 1.3 times as wide and as high`, `wider, 1.2 times` */
function sizeInWords({ across, down }: { readonly across: number; readonly down: number }): string {
  const times = (factor: number) => `${plainNumber(factor, 2)} times`;
  if (Math.abs(across - down) < 0.005)
    return `${across > 1 ? 'larger' : 'smaller'}, ${times(across)} as wide and as high`;
  return inWords([
    ...(Math.abs(across - 1) < 0.005 ? [] : [`${times(across)} as wide`]),
    ...(Math.abs(down - 1) < 0.005 ? [] : [`${times(down)} as high`]),
  ]);
}

const MOST_PASSED = 3;

function orderChanges(
  { later }: Compared,
  name: string,
  passed: readonly { readonly object: number; readonly isInFront: boolean }[],
  change: Make,
): readonly Change[] {
  const named = (isInFront: boolean): readonly string[] =>
    passed
      .filter((each) => each.isInFront === isInFront)
      .map(({ object }) => quoted(later.plan.objects[object]?.name ?? ''));
  const [over, under] = [named(true), named(false)];
  return [
    ...(over.length === 0
      ? []
      : [change('order', `${name} lies in front of ${someOf(over, MOST_PASSED)} now.`)]),
    ...(under.length === 0
      ? []
      : [change('order', `${name} lies behind ${someOf(under, MOST_PASSED)} now.`)]),
  ];
}
