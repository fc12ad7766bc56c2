import type { ColourRole } from '../../../grammar/index.js';
import type { Colour } from '../../plan/colour/colour.js';
import { hueDistance, hueName, hueOn, type Wheel } from '../../plan/colour/hue.js';
import { toMunsell } from '../../plan/colour/munsell.js';
import { temperatureOf, type Temperature, warmthOf } from '../../plan/colour/hue-warmth.js';
import type { Plan, PlanObject } from '../../plan/plan.js';
import type { VisibleAreas } from '../areas/areas.js';
import { GROUND } from '../borders/borders.js';
import { seenChromas, type SeenChroma } from './chroma.js';
import { areaShareBesideOpposite, roleHues, type SeenHue } from './roles.js';
import { type Carried, carried } from '../carried.js';
import { keptObjects } from '../kept-lists.js';
import type { Memory } from '../memory.js';

/**
 * Hues on the plan's wheel and what they do: complement and discords, warm and cool, chroma. Angles are degrees of that
 * wheel.
 */
export interface HueMeasure {
  readonly wheel: Wheel;
  /** Area-weighted mean hue of each role in use that has one. */
  readonly roles: readonly RoleHue[];
  /** Every named colour that is seen and has a hue, in the order of `plan.colours`. */
  readonly colours: readonly ColourHue[];
  /** The colour of each object, in the order of `plan.objects`; missing for one without. */
  readonly objects: readonly (AreaHue | undefined)[];
  /** The ground that the plan states, whether it is seen or not. */
  readonly ground?: AreaHue;
  readonly temperature: TemperatureMeasure;
  /** All that has a colour and is seen of 0.2 % of the picture or more, strongest chroma first. */
  readonly chromas: readonly SeenChroma[];
  /**
   * The first of `chromas`, missing when all are greys; of several that can't be told apart, the one nearest to the
   * focal point.
   */
  readonly strongestChroma?: {
    /** Or `GROUND`. */
    readonly object: number;
    /** Munsell chroma. */
    readonly chroma: number;
    /** From the focal point to what is seen of it, part of the diagonal; missing without a focal point. */
    readonly fromFocus?: number;
  };
  /**
   * Munsell's area advice for the dominant colours and their complement. Later studies do not bear it out. Missing
   * when one of the two is not seen or has no hue.
   */
  readonly areaAdvice?: {
    /** Of the two together. */
    readonly dominantWanted: number;
    readonly dominantMeasured: number;
  };
}

export interface RoleHue {
  readonly role: ColourRole;
  /**
   * The mean of its hues, each weighted by its visible area and its chroma as painted: the greyer a colour, the less
   * it has of its hue, and the mean does not jump when one turns to grey.
   */
  readonly hueDegrees: number;
  readonly name: string;
  /** Area-weighted means as painted, Munsell; greys of the role count. */
  readonly value: number;
  readonly chroma: number;
  /** Area-weighted mean of value x chroma. */
  readonly strength: number;
}

export interface ColourHue {
  /** Index into `plan.colours`. */
  readonly colour: number;
  readonly hueDegrees: number;
  readonly name: string;
  /** Munsell chroma as the colour is written. */
  readonly chroma: number;
  /** From the dominant's mean hue, 0 to 180; missing without a dominant hue. */
  readonly fromDominant?: number;
}

/** What the colour of one area is. */
export interface AreaHue {
  /** Missing for a neutral. */
  readonly hueDegrees?: number;
  /** Munsell chroma as painted. */
  readonly chroma: number;
  readonly temperature: Temperature;
  /** 1 for the warmest hue, -1 for the coolest; missing for a neutral. Chroma plays no part in it. */
  readonly warmth?: number;
}

/** Parts of the picture. What has no colour, and a ground that the plan does not state, is in none of them. */
export interface TemperatureMeasure {
  readonly warm: number;
  readonly cool: number;
  readonly neutral: number;
}

/**
 * What the hues of a plan do. `shares` are the visible shares in the order of `plan.objects`; bare ground counts where
 * it is seen. A colour keeps its hue at every value it is painted at, so hues are those of the colours as written.
 */
export function measureHues(
  plan: Plan,
  areas: VisibleAreas,
  shares: readonly number[],
  memory: Memory,
): HueMeasure {
  const { wheel, canvas } = plan;
  const all = keptObjects(plan, memory);
  const { results: objects } = memory.recall(
    'hues of objects',
    wheel,
    [all],
    (last: HuesOfObjects | undefined) =>
      carried(all, last, ({ colour, chroma }) =>
        colour ? areaHue(colour.colour, wheel, chroma?.reached) : undefined,
      ),
  );
  const ground = canvas.ground.location ? areaHue(canvas.ground.colour, wheel) : undefined;
  const seen: SeenHue[] = [];
  const see = (area: number, share: number, hue: AreaHue | undefined): void => {
    if (hue && share > 0) seen.push({ area, share, hue });
  };
  for (const { index } of plan.objects) see(index, shares[index] ?? 0, objects[index]);
  see(GROUND, areas.bareShare, ground);
  const temperature = { warm: 0, cool: 0, neutral: 0 };
  for (const { share, hue } of seen) temperature[hue.temperature] += share;
  const roles = roleHues(plan, seen);
  const dominant = roles.find(({ role }) => role === 'dominant');
  const complement = roles.find(({ role }) => role === 'complement');
  const chromas = seenChromas(plan, areas, seen, memory);
  const [strongest] = chromas;
  const hueOf = (area: number): number | undefined => (area === GROUND ? ground : objects[area])?.hueDegrees;
  return {
    wheel,
    roles: roles.map(({ share: _, ...role }) => role),
    colours: colourHues(plan, shares, dominant?.hueDegrees),
    objects,
    ...(ground ? { ground } : {}),
    temperature,
    chromas,
    ...(strongest && hueOf(strongest.area) !== undefined
      ? {
          strongestChroma: {
            object: strongest.area,
            chroma: strongest.chroma,
            ...(strongest.fromFocus === undefined ? {} : { fromFocus: strongest.fromFocus }),
          },
        }
      : {}),
    ...(dominant && complement
      ? {
          areaAdvice: {
            dominantWanted: areaShareBesideOpposite(dominant.strength, complement.strength),
            dominantMeasured: dominant.share / (dominant.share + complement.share),
          },
        }
      : {}),
  };
}

type HuesOfObjects = Carried<PlanObject, AreaHue | undefined>;

interface OwnHue {
  readonly hueDegrees: number | undefined;
  readonly warmth: number | undefined;
  /** Munsell chroma as written. */
  readonly chroma: number;
}

/** Colours are shared by all that are written alike, so their hues are worked out once. */
const known: Readonly<Record<Wheel, WeakMap<Colour, OwnHue>>> = {
  painters: new WeakMap(),
  munsell: new WeakMap(),
};

function ownHue(colour: Colour, wheel: Wheel): OwnHue {
  const own = known[wheel].get(colour) ?? {
    hueDegrees: hueOn(colour, wheel),
    warmth: warmthOf(colour),
    chroma: toMunsell(colour).chroma,
  };
  known[wheel].set(colour, own);
  return own;
}

/** `painted` is the Munsell chroma it is painted at, that of the colour itself unless given. */
function areaHue(colour: Colour, wheel: Wheel, painted?: number): AreaHue {
  const { hueDegrees, warmth, chroma: own } = ownHue(colour, wheel);
  const chroma = painted ?? own;
  if (hueDegrees !== undefined && warmth !== undefined) {
    return { hueDegrees, chroma, temperature: temperatureOf(warmth, chroma), warmth };
  }
  return {
    ...(hueDegrees === undefined ? {} : { hueDegrees }),
    chroma,
    temperature: temperatureOf(warmth, chroma),
    ...(warmth === undefined ? {} : { warmth }),
  };
}

function colourHues(
  { colours, objects, wheel }: Plan,
  shares: readonly number[],
  dominantDegrees: number | undefined,
): readonly ColourHue[] {
  const seen = new Set(
    objects.flatMap(({ index, colour }) => ((shares[index] ?? 0) > 0 ? (colour?.named ?? []) : [])),
  );
  return colours.flatMap(({ colour }, index): ColourHue[] => {
    if (!seen.has(index)) return [];
    const { hueDegrees, chroma } = ownHue(colour, wheel);
    if (hueDegrees === undefined) return [];
    return [
      {
        colour: index,
        hueDegrees,
        name: hueName(hueDegrees, wheel),
        chroma,
        ...(dominantDegrees === undefined ? {} : { fromDominant: hueDistance(hueDegrees, dominantDegrees) }),
      },
    ];
  });
}
