import { expect, it } from 'vitest';
import { parse } from '../../../grammar/index.js';
import type { Plan, ReadFile } from '../plan.js';
import { resolvePlan } from '../resolve.js';
import { toldBy } from '../test-support.js';
import { facts } from './test-support.js';

/** Reads plans by their paths. */
function readerOf(files: Readonly<Record<string, string>>): ReadFile {
  return (path) => {
    const text = files[path];
    return text === undefined ? { ok: false, reason: 'There is no such file.' } : { ok: true, text };
  };
}

function planOn(base: string, own: string): Plan {
  return resolvePlan(parse(`based on "oven.mahl"\n${own}`), { readFile: readerOf({ 'oven.mahl': base }) });
}

const OVEN = `plan "The oven door"
canvas 60 x 40 cm
  ground #8a6a4f
divide golden
focus lower right
  win by value
scale 5
budget value dark 60%, light 10%
budget colour dominant 65%
cue "the door ticking" carried by door, oven
colour soot #2b2a2e dominant
colour ember #f0a23c discord
object wall
  plane background
  shape rectangle (0, 0) to (60, 40)
  colour soot
  value 1
object oven, secondary
  shape rectangle (27, 10) to (52, 40)
  value 2
  edges soft
  edges lost against wall, door
object door, dominant
  shape rectangle 9 x 6
  at focus
  colour ember
  value 5
object loaf
  shape circle 4
  at top of oven
lead shelf from left edge to oven
lead floor from lower left corner to focus
path door, oven, loaf
palette
  paint white PW6
  paint ultra PB29
  mother ultra
sitting "Block in" on 2026-12-01
  works wall, oven
  layer block-in
sitting "Door" on 2026-12-08
  works door
  layer detail
`;

/** The facts that a plan changes of its base: those that are gone with `-`, the new ones with `+`, in their order. */
function changes(base: string, own: string): readonly string[] {
  const before = facts(resolvePlan(parse(base)));
  const plan = planOn(base, own);
  const after = facts(plan);
  return [
    ...before.filter((fact) => !after.includes(fact)).map((fact) => `- ${fact}`),
    ...after.filter((fact) => !before.includes(fact)).map((fact) => `+ ${fact}`),
    ...toldBy(plan),
  ];
}

it.each<{ readonly does: string; readonly own: string; readonly changed: readonly string[] }>([
  { does: 'is the base where it says nothing of its own', own: '', changed: [] },
  { does: 'has its own title', own: 'plan "By day"', changed: ['- title The oven door', '+ title By day'] },
  {
    does: 'moves an object by one line',
    own: 'object door\n  at (10, 10)',
    changed: [
      '- object door, dominant, middle, 32.6 21.7 41.6 27.7, #f0a23c, 5, firm',
      '+ object door, dominant, middle, 5.5 7.0 14.5 13.0, #f0a23c, 5, firm',
    ],
  },
  {
    does: 'changes the part, plane and edges of an object and leaves the rest',
    own: 'object oven, minor\n  plane foreground\n  edges hard against door\n  edges firm',
    changed: [
      '- object oven, secondary, middle, 27.0 10.0 52.0 40.0, -, 2, soft, lost against wall door',
      '+ object oven, minor, foreground, 27.0 10.0 52.0 40.0, -, 2, firm, hard against door, lost against wall',
    ],
  },
  {
    does: 'gives an object another shape, and what stands by it follows',
    own: 'object oven\n  shape rectangle (30, 20) to (50, 40)',
    changed: [
      '- object oven, secondary, middle, 27.0 10.0 52.0 40.0, -, 2, soft, lost against wall door',
      '- object loaf, -, middle, 37.5 8.0 41.5 12.0, -, -, firm',
      '- lead shelf 0 20, 40 25',
      '+ object oven, secondary, middle, 30.0 20.0 50.0 40.0, -, 2, soft, lost against wall door',
      '+ object loaf, -, middle, 38.0 18.0 42.0 22.0, -, -, firm',
      '+ lead shelf 0 20, 40 30',
    ],
  },
  {
    does: 'has another canvas with all that belongs to it',
    own: 'canvas 60 x 50 cm',
    changed: [
      '- canvas 60 x 40',
      '- ground #8a6a4f',
      '- focus 37.1, 24.7 by value',
      '- object door, dominant, middle, 32.6 21.7 41.6 27.7, #f0a23c, 5, firm',
      '- lead shelf 0 20, 40 25',
      '- lead floor 0 40, 37 25',
      '+ canvas 60 x 50',
      '+ ground #f3efe6',
      '+ focus 37.1, 30.9 by value',
      '+ object door, dominant, middle, 32.6 27.9 41.6 33.9, #f0a23c, 5, firm',
      '+ lead shelf 0 25, 40 25',
      '+ lead floor 0 50, 37 31',
    ],
  },
  {
    does: 'is divided in its own way alone',
    own: 'divide thirds',
    changed: [
      '- divide golden',
      '- focus 37.1, 24.7 by value',
      '- object door, dominant, middle, 32.6 21.7 41.6 27.7, #f0a23c, 5, firm',
      '- lead floor 0 40, 37 25',
      '+ divide thirds',
      '+ focus 40.0, 26.7 by value',
      '+ object door, dominant, middle, 35.5 23.7 44.5 29.7, #f0a23c, 5, firm',
      '+ lead floor 0 40, 40 27',
    ],
  },
  {
    does: 'has another budget of one kind',
    own: 'budget colour dominant 50%',
    changed: ['- colour budget dominant 0.65', '+ colour budget dominant 0.5'],
  },
  {
    does: 'has a colour anew, with the part it had, and new ones behind',
    own: 'colour steel #667788\ncolour ember #ff8800',
    changed: [
      '- colour ember #f0a23c discord',
      '- object door, dominant, middle, 32.6 21.7 41.6 27.7, #f0a23c, 5, firm',
      '+ colour ember #ff8800 discord',
      '+ colour steel #667788',
      '+ object door, dominant, middle, 32.6 21.7 41.6 27.7, #ff8800, 5, firm',
    ],
  },
  {
    does: 'has leads, path and cues anew',
    own: 'lead floor from (0, 0) to (10, 10)\npath loaf\ncue "the door  TICKING" carried by loaf',
    changed: [
      '- cue the door ticking by door, oven',
      '- lead floor 0 40, 37 25',
      '- path door, oven, loaf',
      '+ cue the door  TICKING by loaf',
      '+ lead floor 0 0, 10 10',
      '+ path loaf',
    ],
  },
  {
    does: 'has a paint anew in its place, another mother, and new paints behind',
    own: 'palette\n  paint rose PV19\n  paint white PW4\n  mother rose',
    changed: [
      '- paint white PW6',
      '- mother ultra',
      '+ paint white PW4',
      '+ paint rose PV19',
      '+ mother rose',
    ],
  },
  {
    does: 'puts a sitting off and works on more in another',
    own: 'sitting "Block in" on 2026-12-02\nsitting "Door"\n  works door, loaf\nsitting "Last"\n  works loaf',
    changed: [
      '- sitting Block in 2026-12-01 wall oven block-in',
      '- sitting Door 2026-12-08 door detail',
      '+ sitting Block in 2026-12-02 wall oven block-in',
      '+ sitting Door 2026-12-08 door loaf detail',
      '+ sitting Last - loaf -',
    ],
  },
  {
    does: 'has new objects in front',
    own: 'object peel\n  shape rectangle 2 x 20 at oven',
    changed: ['+ object peel, -, middle, 38.5 15.0 40.5 35.0, -, -, firm'],
  },
  {
    does: 'leaves an object out, and all that is said by it',
    own: 'without oven',
    changed: [
      '- cue the door ticking by door, oven',
      '- object oven, secondary, middle, 27.0 10.0 52.0 40.0, -, 2, soft, lost against wall door',
      '- object loaf, -, middle, 37.5 8.0 41.5 12.0, -, -, firm',
      '- lead shelf 0 20, 40 25',
      '- path door, oven, loaf',
      '- sitting Block in 2026-12-01 wall oven block-in',
      '+ cue the door ticking by door',
      '+ object loaf, -, middle, 28.0 18.0 32.0 22.0, -, -, firm',
      '+ path door, loaf',
      '+ sitting Block in 2026-12-01 wall block-in',
      'With `oven` goes what `oven.mahl` says by it: the place of `loaf` and the lead `shelf`.',
    ],
  },
  {
    does: 'leaves a colour, a lead and a paint out',
    own: 'without ember, floor\nwithout Ultra',
    changed: [
      '- colour ember #f0a23c discord',
      '- object door, dominant, middle, 32.6 21.7 41.6 27.7, #f0a23c, 5, firm',
      '- lead floor 0 40, 37 25',
      '- paint ultra PB29',
      '- mother ultra',
      '+ object door, dominant, middle, 32.6 21.7 41.6 27.7, -, 5, firm',
      '+ mother none',
      'With `ember` goes what `oven.mahl` says by it: the colour of `door`.',
      'With `Ultra` goes what `oven.mahl` says by it: what goes into every mixture.',
    ],
  },
  {
    does: 'begins an object anew, in front of the others, and what is said of it stands',
    own: 'without oven\nobject oven\n  shape rectangle (30, 20) to (50, 40)',
    changed: [
      '- object oven, secondary, middle, 27.0 10.0 52.0 40.0, -, 2, soft, lost against wall door',
      '- object loaf, -, middle, 37.5 8.0 41.5 12.0, -, -, firm',
      '- lead shelf 0 20, 40 25',
      '+ object loaf, -, middle, 38.0 18.0 42.0 22.0, -, -, firm',
      '+ object oven, -, middle, 30.0 20.0 50.0 40.0, -, -, firm',
      '+ lead shelf 0 20, 40 30',
    ],
  },
  {
    does: 'drops a sitting that has nothing left to work on',
    own: 'without door',
    changed: [
      '- cue the door ticking by door, oven',
      '- object oven, secondary, middle, 27.0 10.0 52.0 40.0, -, 2, soft, lost against wall door',
      '- object door, dominant, middle, 32.6 21.7 41.6 27.7, #f0a23c, 5, firm',
      '- path door, oven, loaf',
      '- sitting Door 2026-12-08 door detail',
      '+ cue the door ticking by oven',
      '+ object oven, secondary, middle, 27.0 10.0 52.0 40.0, -, 2, soft, lost against wall',
      '+ path oven, loaf',
    ],
  },
  {
    does: 'refers to what it left out, which is an error as for any unknown name',
    own: 'without loaf\nlead crumbs from loaf to focus',
    changed: [
      '- object loaf, -, middle, 37.5 8.0 41.5 12.0, -, -, firm',
      '- path door, oven, loaf',
      '+ path door, oven',
      'There is no object called `loaf` in this plan.',
    ],
  },
  {
    does: 'leaves out what the base has not',
    own: 'without ovenn, x',
    changed: [
      '`oven.mahl` has no object, colour, lead or paint called `ovenn` that could be left out. Did you mean `oven`?',
      '`oven.mahl` has no object, colour, lead or paint called `x` that could be left out.',
    ],
  },
])('a plan that builds on another $does', ({ own, changed }) => {
  expect(changes(OVEN, own)).toEqual(changed);
});
