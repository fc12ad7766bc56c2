import { describe, expect, it } from 'vitest';
import { files, objectNamed, planOf } from '../../../tests/support/plan.js';
import type { Plan } from '../../plan/plan.js';
import { textChanges, changedText } from '../text-changes.js';
import { focusEdit, moveEdit, planeEdit, roleEdit, sizeEdit, stepEdit } from '../edits.js';
import { edgesEdit } from './edges.js';
import { addLine, replace } from './edit.js';
import { moveEdits } from './sittings.js';
import { ownEdits } from './own.js';
import type { FixEdit } from '../finding.js';

const OVEN = `canvas 60 x 40 cm // as bought
focus  lower right
  win by value
colour ember #f0a23c discord
object wall
  shape rectangle (0, 0) to (60, 40)  // the whole
  value 1
object bread, minor
  shape outline (10, 10) (14, 10)
    (14, 14) // and back
    (10, 14)
  shape circle 2 at (20, 20)
  edges soft against wall
object door, dominant
  shape rectangle 9 x 6
  at focus
  colour ember
palette
  paint white PW6
sitting "Block in" on 2026-12-01
  works wall
  fat 10%
lead floor from (0, 40) to focus
`;

type Edit = (plan: Plan) => readonly FixEdit[] | undefined;

/** The text of the plan after the edits, without its first line; nothing where they can't be said in it. */
function said(own: string, edit: Edit): string | undefined {
  const text = `based on "oven.mahl"\n${own}`;
  const plan = planOf(text, files({ 'oven.mahl': OVEN }));
  const edits = ownEdits(plan, edit(plan) ?? []);
  if (!edits) return undefined;
  const lines = text.split('\n');
  const after = changedText(lines, textChanges({ edits }, lines, '\n')).text;
  // It says what was meant, and nothing in it is wrong.
  expect(planOf(after, files({ 'oven.mahl': OVEN })).problems).toEqual([]);
  return after.split('\n').slice(1).join('\n');
}

describe('what would change a base is said in the plan that builds on it', () => {
  const door = (plan: Plan) => objectNamed(plan, 'door');
  it.each<readonly [string, string, Edit, string]>([
    ['a value', '', (plan) => stepEdit(door(plan), 5), '\nobject  door\n  value   5\n'],
    [
      'a value that is there',
      'plan "x"\n',
      (plan) => stepEdit(objectNamed(plan, 'wall'), 3),
      'plan "x"\n\nobject  wall\n  value 3\n',
    ],
    [
      'a place',
      '',
      (plan) => moveEdit(plan, door(plan), 2, -1),
      '\nobject  door\n  at focus, 2 cm right, 1 cm up\n',
    ],
    [
      'a rectangle with its remark left behind',
      '',
      (plan) => moveEdit(plan, objectNamed(plan, 'wall'), 1, 0),
      '\nobject  wall\n  shape rectangle (1, 0) to (61, 40)\n',
    ],
    ['a size', '', (plan) => sizeEdit(plan, door(plan), 2), '\nobject  door\n  shape rectangle 18 x 12\n'],
    [
      'into the block that is there, as it is indented',
      'object door\n\tvalue 4\nobject peel\n',
      (plan) => moveEdit(plan, door(plan), 2, 0),
      'object door\n\tvalue 4\n\tat focus, 2 cm right\nobject peel\n',
    ],
    [
      'a line of its own as ever',
      'object door\n  value 4\n',
      (plan) => stepEdit(door(plan), 5),
      'object door\n  value 5\n',
    ],
    ['a part', '', (plan) => roleEdit(objectNamed(plan, 'bread'), 'secondary'), 'object bread, secondary\n'],
    [
      'a part behind the name that is there',
      'object bread\n',
      (plan) => roleEdit(objectNamed(plan, 'bread'), 'secondary'),
      'object bread, secondary\n',
    ],
    [
      'one of several shapes, with all of them',
      '',
      (plan) => {
        const [first] = objectNamed(plan, 'bread').node.children;
        const place = first?.children[0];
        if (place?.statement.kind !== 'points') return undefined;
        const [point] = place.statement.points;
        return point && [replace({ ...point, line: place.line, file: place.file ?? '' }, '(15, 15)')];
      },
      '\nobject  bread\n  shape outline (10, 10) (14, 10)\n    (15, 15)\n    (10, 14)\n  shape circle 2 at (20, 20)\n',
    ],
    [
      'edges against one thing',
      '',
      (plan) => edgesEdit(objectNamed(plan, 'bread'), 'lost', objectNamed(plan, 'wall')),
      '\nobject  bread\n  edges lost against wall\n',
    ],
    [
      'the focal point with what belongs to it',
      '',
      (plan) => focusEdit(plan, 'upper left'),
      '\nfocus   upper left\n  win by value\n',
    ],
    [
      'a colour and a lead, each wholly',
      '',
      (plan) => [
        ...plan.colours.map(({ colourLocation }) => replace(colourLocation, '#ff0000')),
        ...plan.leads.map(({ to }) => replace(to.location, 'door')),
      ],
      'colour ember #ff0000 discord\nlead floor from (0, 40) to door\n',
    ],
    [
      'a day',
      '',
      (plan) => moveEdits(plan, [{ sitting: 0, day: 20_800 }]),
      'sitting "Block in" on 2026-12-13\n',
    ],
    [
      'a day behind the title that is there',
      'sitting "Block in"\n  fat 20%\n',
      (plan) => moveEdits(plan, [{ sitting: 0, day: 20_800 }]),
      'sitting "Block in" on 2026-12-13\n  fat 20%\n',
    ],
    [
      'two objects',
      '',
      (plan) => [...stepEdit(door(plan), 4), ...planeEdit(objectNamed(plan, 'wall'), 'background')],
      '\nobject  door\n  value   4\n\nobject  wall\n  plane   background\n',
    ],
    ['nothing', 'plan "x"', () => [], 'plan "x"'],
  ])('%s', (_, own, edit, after) => {
    expect(said(own, edit)).toBe(after);
  });

  it('with the files that it names by their paths from here, and new lines where they belong', () => {
    const base = `canvas 60 x 40 cm
object peel
  shape from "../parts/tools.svg" part "peel"
  shape circle 3 at (9, 9)
sitting "One" on 2026-12-01
  photo "one.jpg"
    grey (3, 4)
`;
    const plan = planOf('based on "old/oven.mahl"', files({ 'old/oven.mahl': base, 'parts/tools.svg': '' }));
    const [, circle] = objectNamed(plan, 'peel').node.children;
    const photo = plan.sittings[0]?.node.children[0];
    if (circle?.statement.kind !== 'shape' || circle.statement.shape.form !== 'circle' || !photo)
      throw new Error('no circle or no photograph');
    const { across } = circle.statement.shape;
    expect(
      ownEdits(plan, [
        replace({ ...across, line: circle.line, file: circle.file ?? '' }, '5'),
        addLine(photo, 'corners', '(0, 0) (9, 0) (9, 9) (0, 9)'),
      ]),
    ).toEqual([
      {
        kind: 'add statement',
        text: 'object  peel\n  shape from "parts/tools.svg" part "peel"\n  shape circle 5 at (9, 9)',
      },
      {
        kind: 'add statement',
        text: 'sitting "One"\n  photo "old/one.jpg"\n    grey (3, 4)\n    corners (0, 0) (9, 0) (9, 9) (0, 9)',
      },
    ]);
  });

  it('in a row of plans, with the day of a sitting that stands in the farthest', () => {
    const rows = {
      'near.mahl': 'based on "far.mahl"\nsitting "One"\n  fat 5%\n',
      'far.mahl': 'canvas 60 x 40 cm\nsitting "One" on 2026-12-01\n  layer block-in\n',
    };
    const plan = planOf('based on "near.mahl"', files(rows));
    expect(ownEdits(plan, moveEdits(plan, [{ sitting: 0, day: 20_800 }]))).toEqual([
      { kind: 'add statement', text: 'sitting "One" on 2026-12-13' },
    ]);
  });

  it('but not what would stand beside it', () => {
    const plan = planOf('based on "oven.mahl"', files({ 'oven.mahl': `${OVEN}note "x"\ndivide golden\n` }));
    const note = plan.notes[0];
    expect(note && ownEdits(plan, [replace(note.location, '"y"')])).toBeUndefined();
    const [division] = plan.divisions;
    expect(division?.location && ownEdits(plan, [replace(division.location, 'thirds')])).toBeUndefined();
    const wall = objectNamed(plan, 'wall');
    expect(ownEdits(plan, [addLine(wall.node, 'note', '"z"')])).toEqual([
      { kind: 'add statement', text: 'object  wall\n  note    "z"' },
    ]);
  });
});
