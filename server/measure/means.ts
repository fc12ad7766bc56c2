import type { Means } from '../../grammar/index.js';
import type { Point } from '../plan/geometry/point.js';
import type { Plan } from '../plan/plan.js';
import { plainNumber } from '../plan/problems.js';
import { type BorderMeasure, type BorderStretch, GROUND } from './borders.js';
import type { Seen } from './emphasis.js';
import { REACH, counted, fieldGrid, middleOf } from './emphasis-field.js';
import type { Peak } from './emphasis-places.js';
import type { VisibleAreas } from './areas.js';
import { labelMap } from './label-map.js';
import type { Memory } from './memory.js';
import { runsAcross, wholeOf } from './parts.js';

/** Whether the focal point has one of the means by which a place wins the eye. All are heuristics. */
export interface MeansMeasure {
  readonly means: Means;
  /** Where the plan says that it is to win by this; missing when it does not say so. */
  readonly stated: boolean;
  /**
   * The figure at the focal point and the one it has to match or pass elsewhere; their meaning is the means' own.
   *
   * - `value`: borders gathered within 8 % of the diagonal, length in diagonals x dV / 10, at the strongest place near
   *   and the strongest elsewhere; holds when the other is no more than a tenth stronger.
   * - `colour`: the same with dab / 100.
   * - `edges`: mean sharpness of the borders that have contrast, by length, within 8 % and in the rest of the
   *   picture; holds when it is the higher.
   * - `detail`: mean detail by area (fine 1, some 0.5, little and bare ground 0), as for edges.
   * - `scale`: part of the picture that the object there takes with all that lies on it, and the largest other one
   *   that is not in the background and does not run to two sides of the canvas; holds when no other is larger.
   * - `isolation`: length in diagonals x pull of the borders that others than the object there make in the ring from
   *   8 to 20 % round the point, by the ring's area in squared diagonals, and the same of the whole picture; holds
   *   when the ring's is the lower.
   */
  readonly there: number;
  readonly elsewhere: number;
  readonly holds: boolean;
  /** The two figures as a painter reads them: `detail of 0.7 there and 0.4 elsewhere, where fine is 1`. */
  readonly inWords: string;
  /** For value and colour the two areas that meet at the strongest place elsewhere. */
  readonly areas?: readonly [number, number];
}

/** A part of the picture in which one area is seen. */
export interface SeenPart {
  /** Index of the object, or `GROUND`. */
  readonly area: number;
  readonly share: number;
}

/** What is gathered by one kind of contrast. */
interface Compared {
  readonly there: Peak;
  /** The strongest place elsewhere. */
  readonly elsewhere: Peak | undefined;
}

export interface MeansInput {
  /** The objects that make up the centre of interest. */
  readonly centre: ReadonlySet<number>;
  readonly seenThere: readonly SeenPart[];
  readonly value: Compared;
  readonly colour: Compared;
}

const EVERY_MEANS: readonly Means[] = ['value', 'colour', 'edges', 'detail', 'scale', 'isolation'];
const DETAIL = { fine: 1, some: 0.5, little: 0 } as const;
/** Part by which a place elsewhere may be stronger in value or colour. */
const TENTH = 0.1;
/** Parts of the diagonal. */
const RING = { from: REACH, to: 0.2 } as const;
const ROUNDING = 1e-9;

type Figures = Omit<MeansMeasure, 'means' | 'stated'>;

/** All six means in the order of the trade's list, for a plan whose focal point lies on the canvas. */
export function measureMeans(
  plan: Plan,
  seen: Seen,
  input: MeansInput,
  memory: Memory,
): readonly MeansMeasure[] {
  return EVERY_MEANS.map((means) => ({
    means,
    stated: plan.focus?.winBy.some(({ value }) => value === means) ?? false,
    ...figures(means, plan, seen, input, memory),
  }));
}

function figures(means: Means, plan: Plan, seen: Seen, input: MeansInput, memory: Memory): Figures {
  switch (means) {
    case 'value':
      return contrast(plan, 'value', input.value);
    case 'colour':
      return contrast(plan, 'colour', input.colour);
    case 'edges':
      return edges(plan, seen.borders, memory);
    case 'detail':
      return detail(plan, seen, input.seenThere);
    case 'scale':
      return scale(plan, seen, input.centre, memory);
    case 'isolation':
      return isolation(plan, seen.borders, input, memory);
  }
}

function contrast(plan: Plan, of: 'value' | 'colour', { there, elsewhere }: Compared): Figures {
  const most = elsewhere?.strength ?? 0;
  const holds = there.strength > 0 && most <= there.strength * (1 + TENTH + ROUNDING);
  return {
    there: there.strength,
    elsewhere: most,
    holds,
    inWords: inWords(),
    ...(elsewhere ? { areas: elsewhere.areas } : {}),
  };

  function inWords(): string {
    if (there.strength === 0) return `there is no contrast of ${of} there`;
    if (!elsewhere) return `there is contrast of ${of} only there`;
    const where = meeting(plan, elsewhere.areas);
    return `its contrast of ${of} is ${percent(there.strength / most)} of that at the strongest place elsewhere, ${where}`;
  }
}

/** `where roof meets sky`. */
function meeting(plan: Plan, [front, behind]: readonly [number, number]): string {
  return `where ${nameOf(plan, front)} meets ${nameOf(plan, behind)}`;
}

function nameOf(plan: Plan, area: number): string {
  const object = plan.objects[area];
  return object ? `\`${object.name}\`` : 'the bare ground';
}

function edges(plan: Plan, borders: BorderMeasure, memory: Memory): Figures {
  const { focus, canvas } = plan;
  const inputs = [borders, focus?.at.x, focus?.at.y, canvas.diagonal];
  const { there, elsewhere } = memory.recall('means edges', '', inputs, () =>
    sharpnessRound(plan, borders.stretches),
  );
  return {
    there,
    elsewhere,
    holds: there > elsewhere + ROUNDING,
    inWords:
      there === 0
        ? 'there is no border with contrast there'
        : `edges of ${plainNumber(there)} there and ${plainNumber(elsewhere)} elsewhere, where hard is 1 and lost 0.1`,
  };
}

/** Mean sharpness of the borders that have contrast, at the focal point and elsewhere; 0 where there are none. */
export function sharpnessRound(
  { focus, canvas }: Plan,
  stretches: readonly BorderStretch[],
): { readonly there: number; readonly elsewhere: number } {
  const inside = { sharpness: 0, length: 0 };
  const outside = { sharpness: 0, length: 0 };
  for (const { at, length, sharpness, pull } of stretches) {
    if (pull === 0 || !focus) continue;
    const part = counted(apart(at, focus.at), canvas.diagonal);
    inside.sharpness += part * length * sharpness;
    inside.length += part * length;
    outside.sharpness += (1 - part) * length * sharpness;
    outside.length += (1 - part) * length;
  }
  return {
    there: ratio(inside.sharpness, inside.length),
    elsewhere: ratio(outside.sharpness, outside.length),
  };
}

function detail(plan: Plan, { shares }: Seen, seenThere: readonly SeenPart[]): Figures {
  const { there, elsewhere } = detailRound(plan, seenThere, shares);
  return {
    there,
    elsewhere,
    holds: there > elsewhere + ROUNDING,
    inWords: `detail of ${plainNumber(there)} there and ${plainNumber(elsewhere)} elsewhere, where fine is 1 and little 0`,
  };
}

/** Mean detail by area, at the focal point and elsewhere. */
export function detailRound(
  { objects }: Plan,
  seenThere: readonly SeenPart[],
  shares: readonly number[],
): { readonly there: number; readonly elsewhere: number } {
  const detailOf = (area: number) => DETAIL[objects[area]?.detail ?? 'little'];
  const share = seenThere.reduce((sum, part) => sum + part.share, 0);
  const inside = seenThere.reduce((sum, part) => sum + part.share * detailOf(part.area), 0);
  const all = shares.reduce((sum, part, object) => sum + part * detailOf(object), 0);
  return { there: ratio(inside, share), elsewhere: Math.max(0, ratio(all - inside, 1 - share)) };
}

/** What is seen within 8 % of the diagonal of the focal point, parts of the picture, by the map of labels. */
export function seenRound(plan: Plan, areas: VisibleAreas, memory: Memory): readonly SeenPart[] {
  const { canvas } = plan;
  const at = plan.focus?.at ?? { x: 0, y: 0 };
  const map = labelMap(plan, areas, memory);
  return memory.recall('seen round focus', '', [map, at.x, at.y, canvas.diagonal], () => {
    // Counted from `GROUND` up.
    const counts = new Int32Array(plan.objects.length - GROUND);
    const { columns, rows, labels } = map;
    for (let row = 0; row < rows; row++) {
      const down = ((row + 0.5) / rows) * canvas.height - at.y;
      const across = Math.sqrt((REACH * canvas.diagonal) ** 2 - down ** 2);
      if (!(across > 0)) continue;
      const column = (x: number) => Math.ceil((x / canvas.width) * columns - 0.5);
      const from = row * columns + Math.max(0, column(at.x - across));
      const to = row * columns + Math.min(columns, column(at.x + across));
      for (let cell = from; cell < to; cell++) {
        const place = (labels[cell] as number) - GROUND;
        counts[place] = (counts[place] as number) + 1;
      }
    }
    return [...counts]
      .flatMap((count, place) => (count > 0 ? { area: place + GROUND, share: count / labels.length } : []))
      .sort((one, other) => other.share - one.share || one.area - other.area);
  });
}

function scale(plan: Plan, seen: Seen, centre: ReadonlySet<number>, memory: Memory): Figures {
  const { shares, parts } = seen;
  const size = (objects: Iterable<number>) =>
    [...objects].reduce((sum, object) => sum + (shares[object] ?? 0), 0);
  const here = centre.size > 0 ? centre : seenAtFocus(plan, seen, memory);
  const there = size(here);
  let next: { readonly object: number; readonly share: number } | undefined;
  for (const { index: object, plane, outline } of plan.objects) {
    if (here.has(object) || plane === 'background' || runsAcross(outline.box, plan.canvas)) continue;
    const share = size(wholeOf(parts, object));
    if (share > (next?.share ?? 0)) next = { object, share };
  }
  const [first] = here;
  const elsewhere = next?.share ?? 0;
  const largest = next ? `${nameOf(plan, next.object)}, the largest other, ${percent(next.share)}` : '';
  return {
    there,
    elsewhere,
    holds: there > 0 && elsewhere <= there + ROUNDING,
    inWords:
      first === undefined
        ? `no object is seen there${next ? `, and ${largest}` : ''}`
        : `${nameOf(plan, first)} takes ${percent(there)} of the picture${next ? ` and ${largest}` : ''}`,
  };
}

/** The object seen at the focal point with what it is a part of, and all that lies on that. */
function seenAtFocus(plan: Plan, { areas, parts }: Seen, memory: Memory): ReadonlySet<number> {
  let object = plan.focus && labelMap(plan, areas, memory).areaAt(plan.focus.at);
  if (object === undefined || object < 0) return new Set();
  for (let whole: number | undefined = object; whole !== undefined && whole >= 0;) {
    object = whole;
    whole = parts.findIndex((some) => some.includes(object as number));
  }
  return new Set(wholeOf(parts, object));
}

function isolation(plan: Plan, borders: BorderMeasure, { centre }: MeansInput, memory: Memory): Figures {
  const { focus, canvas } = plan;
  const inputs = [borders, focus?.at.x, focus?.at.y, canvas.diagonal, ...centre];
  const { there, elsewhere } = memory.recall('means isolation', '', inputs, () =>
    bustleRound(plan, borders.stretches, centre),
  );
  return {
    there,
    elsewhere,
    holds: isQuiet({ there, elsewhere }),
    inWords:
      elsewhere === 0
        ? 'nothing else has a border'
        : `the ring round it is ${percent(there / elsewhere)} as busy with borders of other things as the whole picture`,
  };
}

/** Whether the ring round the focal point is less busy than the picture. */
export function isQuiet({
  there,
  elsewhere,
}: {
  readonly there: number;
  readonly elsewhere: number;
}): boolean {
  return there === 0 || there < elsewhere - ROUNDING;
}

/** How busy the ring round the focal point is with borders of others than the object there, and the whole picture. */
export function bustleRound(
  { focus, canvas }: Plan,
  stretches: readonly BorderStretch[],
  centre: ReadonlySet<number>,
): { readonly there: number; readonly elsewhere: number } {
  const { diagonal } = canvas;
  const grid = fieldGrid(canvas);
  const at = focus?.at ?? { x: 0, y: 0 };
  let [ring, all] = [0, 0];
  for (const { at: place, front, behind, length, pull } of stretches) {
    if (centre.has(front) || centre.has(behind)) continue;
    all += (length * pull) / diagonal;
    if (isInRing(apart(place, at) / diagonal)) ring += (length * pull) / diagonal;
  }
  let cells = 0;
  const count = grid.columns * grid.rows;
  for (let cell = 0; cell < count; cell++) {
    if (isInRing(apart(middleOf(grid, cell), at) / diagonal)) cells++;
  }
  const area = (canvas.width * canvas.height) / diagonal ** 2;
  return { there: ratio(ring, (area * cells) / count), elsewhere: ratio(all, area) };
}

/** Whether a distance from the focal point, in diagonals, lies in the ring that isolation looks at. */
export function isInRing(away: number): boolean {
  return away > RING.from && away <= RING.to;
}

/** The distance of two places by a plain root, many times quicker than the careful one. */
function apart(one: Point, other: Point): number {
  const [dx, dy] = [one.x - other.x, one.y - other.y];
  return Math.sqrt(dx * dx + dy * dy);
}

function ratio(part: number, whole: number): number {
  return whole > ROUNDING ? part / whole : 0;
}

function percent(share: number): string {
  return `${plainNumber(share * 100, share < 0.1 ? 1 : 0)} %`;
}
