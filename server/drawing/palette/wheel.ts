import type { PaletteMeasure } from '../../measure/mixing/mixing.js';
import { labChroma } from '../../plan/colour/model.js';
import type { Colour, Lab } from '../../plan/colour/colour.js';
import { computedColour } from '../../plan/colour/model.js';
import { munsellHueDegrees } from './hues.js';
import type { Point } from '../../plan/geometry/point.js';
import { BOLD_WIDTH, fitted, textWidth } from '../captions/text-width.js';
import { pathMark, textMark } from '../marks.js';
import { circlePath, linePath, polygonPath, rectanglePath } from '../path-data.js';
import { boxAround, grown, overlap } from '../picture/boxes.js';
import { hexOf } from '../picture/ink.js';
import { placeLabel } from '../picture/labels.js';
import { triangle } from '../picture/signs.js';
import type { Box, Face, Hex, Mark } from '../scene.js';
import type { Reading } from '../views/reading.js';
import { outlineOfReach } from './outline.js';
import { swatchKeys, swatchNames } from './words.js';

/** What is drawn on the wheel, and where things are on it. */
export interface WheelDrawn {
  readonly shapes: readonly Mark[];
  readonly construction: readonly Mark[];
  readonly names: readonly Mark[];
  readonly taken: readonly Box[];
  /** The place of an object's colour. */
  readonly placeOf: (object: number) => Point | undefined;
  /** How many colours and paints have no room for their names. */
  readonly leftOut: number;
  /** C*ab between one ring and the next. */
  readonly ringStep: number;
}

const RIM_SEGMENTS = 36;
const RIM_EMS = 0.45;
/** A wheel of a few greys is not blown up to fill the place. */
const LEAST_CHROMA = 30;
const LABEL_EMS = 0.8;
const LONGEST_LABEL_EMS = 9;
/** How far from its sign a name may stand. */
const REACHES_EMS = [0.15, 0.6, 1.2, 2];
/** Names of more colours than these would hide the wheel; those beyond the palette come first, then the largest. */
const MOST_NAMED = 14;

/**
 * The wheel of hue and chroma: CIELAB seen from above, a* to the right and b* upward, greys in the middle. On it the
 * outline of what the palette reaches, its paints as squares, the colours of the picture as discs, and as triangles
 * those that it does not reach.
 */
export function drawWheel(reading: Reading, palette: PaletteMeasure, box: Box): WheelDrawn {
  const { em } = reading.layout;
  const { mixing } = palette;
  const swatches = mixing?.swatches ?? [];
  const strongest = Math.max(
    LEAST_CHROMA,
    ...(mixing?.reach ?? []).filter(Number.isFinite),
    ...palette.paints.flatMap(({ full }) => (full === undefined ? [] : [labChroma(full.lab)])),
    ...swatches.map(({ wanted }) => labChroma(wanted.lab)),
  );
  const ringStep = strongest > 60 ? 40 : 20;
  const outer = 10 * Math.ceil((1.06 * strongest) / 10);
  const middle = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  const rim = box.width / 2 - 0.15 * em;
  const radius = rim - RIM_EMS * em;
  const at = (hueDegrees: number, chroma: number): Point => {
    const angle = (hueDegrees * Math.PI) / 180;
    const out = (radius * chroma) / outer;
    return { x: middle.x + out * Math.cos(angle), y: middle.y - out * Math.sin(angle) };
  };
  const placeIn = ([, a, b]: Lab): Point => ({
    x: middle.x + (radius * a) / outer,
    y: middle.y - (radius * b) / outer,
  });

  const beyond = new Set(mixing?.beyond ?? []);
  const keys = swatchKeys(swatches.map(({ wanted }) => hexOf(wanted)));
  const names = swatchNames(swatches, reading.plan);
  const paints = paintMarks(reading, palette, placeIn);
  const colours = swatches.flatMap(({ wanted, mixture, objects, isGround }, index) => {
    const place = placeIn(wanted.lab);
    const subject =
      reading.subjects.objects[objects[0] ?? -1] ??
      (isGround && reading.subjects.all['ground'] !== undefined ? 'ground' : undefined);
    const key = `wheel:${keys[index]}`;
    const isBeyond = beyond.has(index);
    const size = isBeyond ? 0.52 * em : 0.36 * em;
    const sign = pathMark(key, isBeyond ? triangle(place, size) : circlePath(place, size), {
      fill: hexOf(wanted),
      stroke: { ink: 'ink', weight: isBeyond ? 'medium' : 'fine' },
      subject,
      tip: `${names[index] ?? ''}${isBeyond ? ', beyond the palette' : ''}.`,
    });
    const nearest =
      isBeyond && mixture !== undefined
        ? [
            pathMark(`${key}:nearest`, linePath([place, placeIn(mixture.colour.lab)]), {
              stroke: { ink: 'ink', weight: 'fine', dash: 'dashed' },
            }),
          ]
        : [];
    return [{ place, sign, nearest, name: names[index] ?? '', key, subject, size, face: 'text' as const }];
  });

  const signs = [...paints, ...colours];
  const taken = signs.map(({ place, size }) => boxAround(place, { width: 2.1 * size, height: 2.1 * size }));
  const written = hueWords(at, outer, em, taken);
  taken.push(...written.map(({ box: each }) => each));
  const named = new Set(
    [...colours.keys()]
      .sort((one, other) => Number(beyond.has(other)) - Number(beyond.has(one)) || one - other)
      .slice(0, MOST_NAMED)
      .map((index) => colours[index]?.key),
  );
  const told = signs.filter(({ key }) => named.has(key) || paints.some((paint) => paint.key === key));
  const labels = told.flatMap(({ place, name, key, subject, size, face }): Mark[] => {
    const text = fitted(name, LABEL_EMS * em, LONGEST_LABEL_EMS * em);
    if (text === '') return [];
    const width = textWidth(text, LABEL_EMS * em) * (face === 'strong' ? BOLD_WIDTH : 1) + 0.1 * em;
    const extent = { width, height: 1.05 * LABEL_EMS * em };
    const label = placeLabel(
      extent,
      [place],
      REACHES_EMS.map((reach) => 1.25 * size + reach * em),
      taken,
      box,
    );
    if (label === undefined) return [];
    taken.push(label);
    const nearest = {
      x: Math.min(label.x + label.width, Math.max(label.x, place.x)),
      y: Math.min(label.y + label.height, Math.max(label.y, place.y)),
    };
    const isNear = Math.hypot(nearest.x - place.x, nearest.y - place.y) < 2 * size + 0.3 * em;
    return [
      ...(isNear
        ? []
        : [
            pathMark(`${key}:leader`, linePath([place, nearest]), {
              stroke: { ink: 'ink', weight: 'hair' },
              subject,
            }),
          ]),
      textMark(`${key}:name`, text, label.x + width / 2, label.y + 0.8 * LABEL_EMS * em, {
        size: LABEL_EMS * em,
        ink: 'ink',
        halo: 'mount',
        face,
        anchor: 'middle',
        subject,
      }),
    ];
  });

  return {
    shapes: [
      ...rimMarks(middle, radius, rim),
      pathMark('wheel', circlePath(middle, radius), {
        fill: 'mount',
        stroke: { ink: 'rule', weight: 'hair' },
      }),
      ...reachMarks(outlineOfReach(mixing?.reach ?? []), at),
      ...ringMarks(middle, radius, outer, ringStep),
    ],
    construction: [
      ...colours.flatMap(({ nearest }) => nearest),
      ...paints.map(({ sign }) => sign),
      ...colours.map(({ sign }) => sign),
    ],
    names: [...written.map(({ mark }) => mark), ...labels],
    taken: taken.map((each) => grown(each, 0.05 * em)),
    placeOf: (object) => {
      const lab = swatches[mixing?.ofObjects[object] ?? -1]?.wanted.lab;
      return lab === undefined ? undefined : placeIn(lab);
    },
    leftOut: signs.length - labels.filter(({ kind }) => kind === 'text').length,
    ringStep,
  };
}

interface Sign {
  readonly place: Point;
  readonly sign: Mark;
  readonly name: string;
  readonly key: string;
  readonly subject: string | undefined;
  /** From its middle to its edge. */
  readonly size: number;
  readonly face: Face;
}

function paintMarks(
  { plan, subjects, layout: { em } }: Reading,
  { paints }: PaletteMeasure,
  placeIn: (lab: Lab) => Point,
): readonly Sign[] {
  return paints.flatMap(({ full }, index): Sign[] => {
    const paint = plan.palette?.paints[index];
    const subject = subjects.paints[index];
    if (full === undefined || paint === undefined || subject === undefined) return [];
    const place = placeIn(full.lab);
    const size = 0.42 * em;
    const key = `wheel:${subject}`;
    const sign = pathMark(key, rectanglePath(boxAround(place, { width: 2 * size, height: 2 * size })), {
      fill: hexOf(full),
      stroke: { ink: 'ink', weight: 'medium' },
      subject,
    });
    return [{ place, sign, name: paint.name, key, subject, size, face: 'strong' }];
  });
}

/** Hues round the rim, so that a place on the wheel is read without counting degrees. */
function rimMarks(middle: Point, inner: number, outer: number): readonly Mark[] {
  const step = 360 / RIM_SEGMENTS;
  const along = (degrees: number, radius: number): Point => {
    const angle = (degrees * Math.PI) / 180;
    return { x: middle.x + radius * Math.cos(angle), y: middle.y - radius * Math.sin(angle) };
  };
  return Array.from({ length: RIM_SEGMENTS }, (_, index) => {
    // A little wider than its part, which closes the hair of light between neighbours.
    const from = (index - 0.53) * step;
    const to = (index + 0.53) * step;
    const ring = [
      along(from, inner),
      along(from, outer),
      along(index * step, outer),
      along(to, outer),
      along(to, inner),
      along(index * step, inner),
    ];
    return pathMark(`wheel:rim:${index}`, polygonPath(ring), { fill: rimTone(index * step) });
  });
}

function rimTone(hueDegrees: number): Hex {
  const angle = (hueDegrees * Math.PI) / 180;
  const tone: Colour = computedColour([66, 36 * Math.cos(angle), 36 * Math.sin(angle)]);
  return hexOf(tone);
}

function ringMarks(middle: Point, radius: number, outer: number, step: number): readonly Mark[] {
  const rings = Array.from({ length: Math.ceil(outer / step) - 1 }, (_, index) => (index + 1) * step);
  return [
    ...rings.map((chroma) =>
      pathMark(`wheel:ring:${chroma}`, circlePath(middle, (radius * chroma) / outer), {
        stroke: { ink: 'rule', weight: 'hair' },
      }),
    ),
    pathMark('wheel:middle', circlePath(middle, 0.006 * radius), { fill: 'quiet' }),
  ];
}

function reachMarks(
  reach: readonly number[],
  at: (hueDegrees: number, chroma: number) => Point,
): readonly Mark[] {
  if (reach.length < 3 || !reach.every(Number.isFinite)) return [];
  const ring = reach.map((chroma, index) => at((360 * index) / reach.length, chroma));
  return [
    pathMark('wheel:reach', polygonPath(ring), {
      fill: 'track',
      stroke: { ink: 'ink', weight: 'fine' },
      tip: 'What the palette reaches.',
    }),
  ];
}

/** The names of the hues just inside the rim, near where Munsell has them, clear of what is there. */
function hueWords(
  at: (hueDegrees: number, chroma: number) => Point,
  outer: number,
  em: number,
  taken: readonly Box[],
): readonly { readonly mark: Mark; readonly box: Box }[] {
  const size = 0.72 * em;
  const middle = at(0, 0);
  return munsellHueDegrees.flatMap(({ name, hueDegrees }) => {
    const width = textWidth(name, size);
    const places = [0, 8, -8, 16, -16].map((turn) => {
      const edge = at(hueDegrees + turn, outer);
      const whole = Math.hypot(edge.x - middle.x, edge.y - middle.y);
      // So far in that the corner of the word nearest to the rim is clear of it.
      const inward = (0.5 * em + (0.5 * width * Math.abs(edge.x - middle.x)) / whole) / whole;
      const place = {
        x: edge.x + (middle.x - edge.x) * inward,
        y: edge.y + (middle.y - edge.y) * inward,
      };
      return { place, box: boxAround(place, { width, height: size }) };
    });
    const free = places.find(({ box }) => !taken.some((other) => overlap(box, other)));
    if (free === undefined) return [];
    const mark = textMark(`wheel:hue:${name}`, name, free.place.x, free.place.y + 0.33 * size, {
      size,
      ink: 'quiet',
      face: 'note',
      halo: 'mount',
      anchor: 'middle',
    });
    return [{ mark, box: free.box }];
  });
}
