import type { StrongPlace } from '../../measure/emphasis/emphasis.js';
import type { Point } from '../../plan/geometry/point.js';
import { partOrTimes } from '../captions/words.js';
import { pathMark } from '../marks.js';
import { number } from '../path-data.js';
import { bands } from '../picture/bands.js';
import { constructionBoxes, focusMarks } from '../picture/construction.js';
import { contourRings, ringArea, smoothRingPath } from '../picture/contours.js';
import { hexOf, lineOn, mix } from '../picture/ink.js';
import { Labels } from '../picture/labels.js';
import { areaName, plateSide, numberPlate } from '../picture/path-signs.js';
import { quietShapes, quietTone } from '../picture/quiet.js';
import type { Mark } from '../scene.js';
import { type PictureMarks, type Reading, seenObjects } from './reading.js';

/** Lighter than the lightest band, so that the shading is read in one order from bare to strongest. */
export const EMPHASIS_GREYS = { darkest: 8.8, lightest: 9.6 } as const;

/** Weaker places than this part of the strongest, and more of them than so many, are left out. */
const WEAKEST_PLACE = 0.25;
const MOST_PLACES = 6;
/** Part of the canvas below which a patch of shading is a speck that says nothing. */
const SPECK = 0.0008;
const LABEL_SIZE_EMS = 0.8;

/** Where the picture draws the eye, shaded from weak to strong like a relief, its strong places numbered by rank. */
export function drawEmphasis(reading: Reading): PictureMarks {
  const { layout } = reading;
  const { em } = layout;
  const tone = quietTone(reading, EMPHASIS_GREYS);
  const ground = tone(undefined);
  const { kept } = constructionBoxes(reading);
  const labels = new Labels(reading, tone, kept);
  const line = hexOf(mix(ground, lineOn(ground), 0.8));
  const size = LABEL_SIZE_EMS * em;

  const places = rankedPlaces(reading).map((place) => ({
    ...place,
    at: labels.standing(place.at, plateSide(em), [0, 0.3 * em, em]),
  }));
  const numbers = places.flatMap(({ rank, at, areas, share, focal }) => [
    ...numberPlate(`place:${rank}`, rank, at, em, ground, {
      subject: subjectOf(areas, reading),
      tip: focal ? 'The focal point’s own place.' : placeInWords(areas, share, reading),
    }),
    ...labels.write(`place:${rank}:share`, partOrTimes(share), {
      size,
      face: 'strong',
      places: [at],
      reaches: [0.75 * em, 1.1 * em, 1.8 * em],
      subject: subjectOf(areas, reading),
    }),
  ]);
  const contours = contoursOf(reading);
  const levels = contours.flatMap(({ key, from, rings }) => {
    const longest = rings.reduce<readonly Point[]>(
      (best, ring) => (ring.length > best.length ? ring : best),
      [],
    );
    // Small and slanting: a figure on a contour belongs to the line, not to a place.
    return labels.write(`${key}:level`, String(Math.round(100 * from)), {
      size: 0.85 * size,
      face: 'note',
      places: longest,
      reaches: [0],
    });
  });

  return {
    shapes: quietShapes(reading, EMPHASIS_GREYS),
    construction: [
      ...contours.flatMap(({ key, colour, rings }): Mark[] => {
        const d = rings.map(smoothRingPath).join('');
        if (d === '') return [];
        return [
          pathMark(key, d, {
            fill: hexOf(colour),
            fillRule: 'evenodd',
            stroke: { ink: hexOf(mix(colour, lineOn(colour), 0.45)), weight: 'hair' },
          }),
        ];
      }),
      ...seenObjects(reading).map(({ rings, subject }) =>
        pathMark(`${subject}:line`, rings.map(ringPath).join(''), {
          stroke: { ink: line, weight: 'hair' },
          subject,
        }),
      ),
      ...focusMarks(reading, tone),
    ],
    names: [...levels, ...numbers],
    taken: labels.taken,
    leftOut: 0,
  };
}

/** A strong place stands for what is in front there. */
function subjectOf([front]: StrongPlace['areas'], { subjects }: Reading): string | undefined {
  return subjects.objects[front];
}

type Place = Pick<StrongPlace, 'at' | 'strength' | 'areas'>;

/** A strong place as it is numbered, with its strength as a part of the focal point's, or of the strongest. */
export interface RankedPlace extends Place {
  readonly rank: number;
  readonly share: number;
  /** It is the focal point's own. */
  readonly focal: boolean;
}

/**
 * The strong places that are shown, strongest first. What belongs to the centre of interest is one of them, with the
 * strength at the focal point: a peak of its own beside the point does not outshine it.
 */
export function rankedPlaces(reading: Reading): readonly RankedPlace[] {
  const { places, focal } = reading.measures.emphasis;
  const own = focal !== undefined && focal.strength > 0 ? focal : undefined;
  const all = [
    ...(own === undefined ? [] : [{ ...placeOf(own), focal: true }]),
    ...(focal?.elsewhere ?? places).map((place) => ({ ...placeOf(place), focal: false })),
  ].sort((one, other) => other.strength - one.strength);
  const strongest = all[0]?.strength ?? 0;
  const whole = own?.strength ?? strongest;
  return all
    .filter(
      ({ strength, focal: isFocal }) => isFocal || (strength > 0 && strength >= WEAKEST_PLACE * strongest),
    )
    .slice(0, MOST_PLACES)
    .map((place, index) => ({ ...place, rank: index + 1, share: place.strength / whole }));
}

function placeOf({ at, strength, areas }: Place): Place {
  return { at, strength, areas };
}

function contoursOf(reading: Reading) {
  const { field } = reading.measures.emphasis;
  const { canvas } = reading.plan;
  return bands.map((band, index) => ({
    ...band,
    key: `band:${index + 1}`,
    rings:
      field.strongest > 0
        ? contourRings(field, band.from * field.strongest, canvas).filter(
            (ring) => ringArea(ring) >= SPECK * canvas.width * canvas.height,
          )
        : [],
  }));
}

/** `Tram and doorway: 84 % of the focal point’s pull.` */
function placeInWords(areas: StrongPlace['areas'], share: number, reading: Reading): string {
  const between = areas.map((area) => areaName(area, reading.plan.objects)).join(' against ');
  const whole = reading.measures.emphasis.focal === undefined ? 'the strongest place’s' : 'the focal point’s';
  const part = partOrTimes(share);
  return `${between}: ${part}${part.endsWith('%') ? ' of' : ''} ${whole} pull.`;
}

function ringPath(ring: ArrayLike<number>): string {
  let d = '';
  for (let i = 0; i + 1 < ring.length; i += 2) {
    d += `${i === 0 ? 'M' : 'L'}${number(ring[i] ?? 0)} ${number(ring[i + 1] ?? 0)}`;
  }
  return d === '' ? '' : `${d}Z`;
}
