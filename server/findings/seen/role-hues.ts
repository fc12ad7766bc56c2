import { type ColourRole, said, t } from '../../../grammar/index.js';
import type { Measures } from '../../measure/measures.js';
import type { Colour } from '../../plan/colour/colour.js';
import { hueName, hueOn, turn } from '../../plan/colour/hue.js';
import { type Rewritten, turnedUntil } from '../../plan/colour/hue-turn.js';
import { toMunsell } from '../../plan/colour/munsell.js';
import type { Location, Plan } from '../../plan/plan.js';
import { plainNumber } from '../../plan/problems.js';
import { replace } from '../edits/edit.js';
import type { RuleFinding } from '../finding.js';
import { counted, quoted } from '../words/words.js';
import { byLook } from './look.js';

/** A colour that is seen, has a hue, and has a role: a named one, or the ground. */
export interface ColourInRole {
  /** `` `rust` `` or `The ground`, to begin a sentence with. */
  readonly name: string;
  readonly isGround?: boolean;
  readonly colour: Colour;
  readonly hueDegrees: number;
  /** Where its colour is written. */
  readonly location: Location;
  /** The objects that carry it. */
  readonly objects: readonly number[];
}

/** The colours of a role that are seen and have a hue, in an order that follows from their look, the ground last. */
export function coloursInRole(plan: Plan, measures: Measures, role: ColourRole): readonly ColourInRole[] {
  const { hues, areas, objects } = measures;
  const carriers = new Map<number, number[]>();
  for (const { index, colour } of plan.objects) {
    const named = colour?.named;
    if (named === undefined || colour?.role !== role || (objects[index]?.share ?? 0) === 0) continue;
    const known = carriers.get(named);
    if (known) known.push(index);
    else carriers.set(named, [index]);
  }
  const named = hues.colours
    .flatMap(({ colour: index, hueDegrees }): ColourInRole[] => {
      const colour = plan.colours[index];
      if (colour?.role !== role) return [];
      return [
        {
          name: quoted(colour.name),
          colour: colour.colour,
          hueDegrees,
          location: colour.colourLocation,
          objects: carriers.get(index) ?? [],
        },
      ];
    })
    .sort((one, other) => byLook(one.colour, other.colour));
  const { ground } = plan.canvas;
  const hueDegrees = hues.ground?.hueDegrees;
  if (ground.role !== role || !ground.location || hueDegrees === undefined || areas.bareShare === 0)
    return named;
  return [
    ...named,
    {
      name: t('The ground'),
      isGround: true,
      colour: ground.colour,
      hueDegrees,
      location: ground.location,
      objects: [],
    },
  ];
}

/** `yellow-orange`, or `7.5YR` on Munsell's circle. */
export function hueWords(hueDegrees: number, { wheel }: Pick<Plan, 'wheel'>): string {
  return said(hueName(hueDegrees, wheel));
}

/** `on the painters’ wheel` */
export function onWheel({ wheel }: Pick<Plan, 'wheel'>): string {
  switch (wheel) {
    case 'painters':
      return t('on the painters’ wheel');
    case 'munsell':
      return t('on Munsell’s circle');
  }
}

/** An angle outside a limit, with as many places as it takes to see that it is. */
export function degreesOutside(angle: number, isOutside: (rounded: number) => boolean): string {
  for (const decimals of [0, 1, 2]) {
    const rounded = Number(angle.toFixed(decimals));
    if (isOutside(rounded)) return `${rounded}°`;
  }
  return `${plainNumber(angle, 3)}°`;
}

export function degrees(angle: number): string {
  return `${plainNumber(angle, 0)}°`;
}

/** A colour of less Munsell chroma is a tint near white or a near grey: turned to another hue it hardly changes. */
const HUE_TELLS_FROM = 3;

/**
 * What to do with a colour whose hue is in the wrong place: turned the least that keeps the rule, value and chroma
 * kept, written as the painter wrote it. A near grey is not turned but called what it is.
 *
 * @param way the hues to try, from the nearest that may keep the rule to one that surely does
 * @param keeps whether the rule is kept with this hue
 */
export function turnAdvice(
  { colour, name, isGround, location, hueDegrees }: ColourInRole,
  plan: Plan,
  way: { readonly start: number; readonly end: number },
  keeps: (hueDegrees: number) => boolean,
): Pick<RuleFinding, 'advice' | 'fix'> {
  const { chroma } = toMunsell(colour);
  if (chroma < HUE_TELLS_FROM) {
    return {
      advice: t(
        'With chroma {0} it is nearly a grey, in which another hue hardly shows: call it neutral, or choose a colour of chroma {1} or more near {2}.',
        plainNumber(Math.floor(chroma * 10) / 10),
        HUE_TELLS_FROM,
        hueWords(way.end, plan),
      ),
    };
  }
  const turned = turnedUntil(colour, plan.wheel, way, keeps);
  const hue = turned && hueOn(turned.colour, plan.wheel);
  if (!turned || hue === undefined) return { advice: t('Turn it towards {0}.', hueWords(way.end, plan)) };
  return {
    advice: turnWords(hueDegrees, hue, way.end, plan, turned.text, chromaChange(colour, turned)),
    fix: {
      title: isGround
        ? t('Turn the ground to `{0}`', turned.text)
        : t('Turn {0} to `{1}`', name, turned.text),
      edits: [replace(location, turned.text)],
    },
  };
}

/** Where a hue is turned, in words: a turn within what has one name is told by what it goes towards. */
function turnWords(
  fromDegrees: number,
  toDegrees: number,
  endDegrees: number,
  plan: Plan,
  written: string,
  chroma: ChromaChange | undefined,
): string {
  const [from, to, end] = [
    hueWords(fromDegrees, plan),
    hueWords(toDegrees, plan),
    hueWords(endDegrees, plan),
  ] as const;
  if (from !== to)
    return chroma
      ? t(
          'Turn it to {0}: `{1}` has the same value, and chroma {2} instead of {3}, the most that a screen shows there.',
          to,
          written,
          chroma.after,
          chroma.before,
        )
      : t('Turn it to {0}: `{1}` has the same value and chroma.', to, written);
  if (end === to)
    return chroma
      ? t(
          'Turn it a little: `{0}` has the same value, and chroma {1} instead of {2}, the most that a screen shows there.',
          written,
          chroma.after,
          chroma.before,
        )
      : t('Turn it a little: `{0}` has the same value and chroma.', written);
  return chroma
    ? t(
        'Turn it a little towards {0}: `{1}` has the same value, and chroma {2} instead of {3}, the most that a screen shows there.',
        end,
        written,
        chroma.after,
        chroma.before,
      )
    : t('Turn it a little towards {0}: `{1}` has the same value and chroma.', end, written);
}

/** Chromas that differ by less look the same. */
const SAME_CHROMA = 0.5;

/** Munsell chromas as they are told. */
interface ChromaChange {
  readonly before: string;
  readonly after: string;
}

/** Nothing where the chroma looks the same. */
function chromaChange(colour: Colour, turned: Rewritten): ChromaChange | undefined {
  const before = toMunsell(colour).chroma;
  const after = toMunsell(turned.colour).chroma;
  if (Math.abs(before - after) < SAME_CHROMA) return undefined;
  return { before: plainNumber(before, 1), after: plainNumber(after, 1) };
}

/** Which way round a hue lies from another the shorter way: 1 onward, -1 backward. */
export function sideOf(hueDegrees: number, fromDegrees: number): 1 | -1 {
  return turn(hueDegrees - fromDegrees) <= 180 ? 1 : -1;
}

/** The largest area of the dominant colour, to point at. */
export function dominantCarrier(plan: Plan, { colours }: Measures): NonNullable<RuleFinding['related']> {
  const most = colours.roles.find(({ role }) => role === 'dominant')?.objects[0];
  const object = most && plan.objects[most.object];
  return object
    ? [
        {
          location: object.location,
          message: t('{0} carries most of the dominant colour.', quoted(object.name)),
        },
      ]
    : [];
}

/**
 * Findings of the worst three of what breaks a rule, with how many more there are told with the third. `broken` runs
 * from the worst; only what is told is worked out.
 */
export function worstThree<Broken>(
  broken: readonly Broken[],
  tell: (one: Broken) => RuleFinding,
): readonly RuleFinding[] {
  const more = broken.length - MOST_TOLD;
  return broken.slice(0, MOST_TOLD).map((one, index) => {
    const finding = tell(one);
    if (index < MOST_TOLD - 1 || more <= 0) return finding;
    return {
      ...finding,
      message: `${finding.message} ${more === 1 ? t('So is one more.') : t('So are {0} more.', counted(more))}`,
    };
  });
}

const MOST_TOLD = 3;
