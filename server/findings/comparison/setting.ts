import { compareFocus } from '../../measure/comparison/focus.js';
import { labDifference } from '../../plan/colour/difference.js';
import type { Canvas, Division, Plan } from '../../plan/plan.js';
import { inWords, plainNumber } from '../../plan/problems.js';
import { length } from '../words/words.js';
import { type Change, type Compared, changeOf, otherNow, places } from './change.js';
import { colourChange, colourText, LEAST_DIFFERENCE, moveInWords, said, sizeInWords } from './wording.js';

/** What differs in the canvas, its division and the centre of interest. */
export function settingChanges(compared: Compared): readonly Change[] {
  const [before, now] = [compared.earlier.plan, compared.later.plan];
  return [
    ...canvasChanges(before.canvas, now.canvas),
    ...divisionChanges(before, now),
    ...focusChanges(compared),
    ...horizonChanges(compared),
  ];
}

function canvasChanges(before: Canvas, now: Canvas): readonly Change[] {
  const where = places(before.location, now.location);
  const made = (of: 'support' | 'medium'): readonly Change[] =>
    changeOf(
      'canvas',
      [before[of], now[of]],
      {
        new: (text) => `The ${of} is said now: ${said(text)}.`,
        gone: (text) => `The ${of} is no longer said; it was ${said(text)}.`,
        changed: (text, old) => `The ${of} is ${said(text)} instead of ${said(old)}.`,
      },
      where,
    );
  const isGroundChanged = labDifference(before.ground.colour.lab, now.ground.colour.lab) >= LEAST_DIFFERENCE;
  const ground: readonly Change[] = isGroundChanged
    ? [
        {
          topic: 'canvas',
          kind: 'colour',
          message: `The ground is ${colourText(now.ground.colour)} instead of ${colourText(before.ground.colour)}: ${colourChange(before.ground.colour, now.ground.colour)}.`,
          figure: {
            from: 0,
            to: labDifference(before.ground.colour.lab, now.ground.colour.lab),
            unit: 'CIEDE2000',
          },
          ...places(before.ground.location, now.ground.location),
        },
      ]
    : [];
  return [
    ...otherNow(
      'canvas',
      [sizeInWords(before), sizeInWords(now)],
      (size, old) => `The canvas is ${size} instead of ${old}.`,
      where,
    ),
    ...made('support'),
    ...made('medium'),
    ...ground,
  ];
}

function divisionChanges(before: Plan, now: Plan): readonly Change[] {
  const named = ({ divisions }: Plan): string | undefined =>
    divisions.length === 0 ? undefined : inWords(divisions.map(divisionName));
  const own = ({ divisions }: Plan): string =>
    divisions
      .filter(({ system }) => system === 'own')
      .flatMap(({ lines }) => lines.flatMap(({ from, to }) => [from.x, from.y, to.x, to.y]))
      .map((figure) => plainNumber(figure, 3))
      .join(' ');
  const where = places(before.divisions[0]?.location, now.divisions[0]?.location);
  const changes = changeOf(
    'division',
    [named(before), named(now)],
    {
      new: (systems) => `The canvas is divided now: ${systems}.`,
      gone: (systems) => `The canvas is no longer divided; it was by ${systems}.`,
      changed: (systems, old) => `The canvas is divided by ${systems} instead of ${old}.`,
    },
    where,
  );
  const isOnlyOwn = changes.length === 0 && own(before) !== own(now) && sameSides(before, now);
  return isOnlyOwn
    ? [{ topic: 'division', kind: 'moved', message: 'Lines of the own division have moved.', ...where }]
    : changes;
}

function sameSides({ canvas: one }: Plan, { canvas: other }: Plan): boolean {
  return one.width === other.width && one.height === other.height;
}

function divisionName({ system }: Division): string {
  return system === 'own' ? 'lines of its own' : system === 'golden' ? 'the golden section' : system;
}

function focusChanges(compared: Compared): readonly Change[] {
  const [before, now] = [compared.earlier.plan.focus, compared.later.plan.focus];
  const where = places(before?.location, now?.location);
  const topic = 'centre of interest';
  if (before === undefined && now === undefined) return [];
  if (before === undefined) return [{ topic, kind: 'new', message: 'There is a focal point now.', ...where }];
  if (now === undefined)
    return [{ topic, kind: 'gone', message: 'There is no focal point any more.', ...where }];
  const move = compareFocus(before, now, compared.frame);
  const way = move === undefined ? '' : moveInWords(move, compared.frame);
  const crossing = now.crossing === undefined ? '' : `, to the crossing ${now.crossing.name}`;
  const moved: readonly Change[] =
    move === undefined || way === ''
      ? []
      : [{ topic, kind: 'moved', message: `The focal point is moved ${way}${crossing}.`, move, ...where }];
  const means = (of: typeof now): string | undefined =>
    of.winBy.length === 0 ? undefined : inWords(of.winBy.map(({ value }) => value));
  return [
    ...moved,
    ...changeOf(
      topic,
      [means(before), means(now)],
      {
        new: (by) => `The focal point is to win by ${by}.`,
        gone: (by) => `It is no longer said what the focal point is to win by; it was ${by}.`,
        changed: (by, old) => `The focal point is to win by ${by} instead of ${old}.`,
      },
      places(before.winBy[0]?.location ?? before.location, now.winBy[0]?.location ?? now.location),
    ),
  ];
}

function horizonChanges({ earlier, later, frame }: Compared): readonly Change[] {
  const [before, now] = [earlier.plan.horizon, later.plan.horizon];
  const where = places(before?.location, now?.location);
  if (before === undefined && now === undefined) return [];
  if (before === undefined || now === undefined)
    return changeOf(
      'division',
      [before && 'horizon', now && 'horizon'],
      {
        new: () => `There is a horizon now, ${length(now?.value ?? 0, frame.canvas)} from the top.`,
        gone: () => 'There is no horizon any more.',
        changed: () => '',
      },
      where,
    );
  const down = now.value - before.value * frame.matrix.d;
  const way = moveInWords({ right: 0, down }, frame);
  return way === ''
    ? []
    : [
        {
          topic: 'division',
          kind: 'moved',
          message: `The horizon is moved ${way}.`,
          move: { right: 0, down },
          ...where,
        },
      ];
}
