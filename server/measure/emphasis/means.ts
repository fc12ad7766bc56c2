import { distanceToOutline, type VisibleAreas } from '../areas/areas.js';
import { type Edges, type Means, t } from '../../../grammar/index.js';
import type { Plan } from '../../plan/plan.js';
import { plainNumber } from '../../plan/problems.js';
import { type BorderMeasure, GROUND } from '../borders/borders.js';
import { SHARPNESS } from '../borders/contrast.js';
import type { Centre } from './centre.js';
import type { Seen } from './emphasis.js';
import type { Peak } from './places.js';
import { labelMap } from '../areas/label-map.js';
import { type KeptBustle, type SeenPart, bustleRound, detailRound } from './means-round.js';
import { sharpnessRound } from './means-sharpness.js';
import type { Memory } from '../memory.js';
import { runsAcross, wholeOf } from '../areas/parts.js';
import { meeting, areaName } from '../areas/area-words.js';

/** Whether the focal point has one of the means by which a place wins the eye. All are heuristics. */
export interface MeansMeasure {
  readonly means: Means;
  /** Where the plan says that it is to win by this; missing when it does not say so. */
  readonly stated: boolean;
  /**
   * The figure at the focal point and the one it has to match or pass elsewhere; their meaning is the means' own.
   *
   * - `value`: borders gathered within 8 % of the diagonal, length in diagonals x sharpness x dV / 10, at the strongest
   *   place near and the strongest elsewhere; holds when the other is no more than a tenth stronger. A softened
   *   contrast is less of one.
   * - `colour`: the same with dab / 100.
   * - `edges`: mean sharpness of the borders that have contrast, by length, within 8 % and in the rest of the
   *   picture; where there are none within 8 %, that of the edges of the object there which are one with it; holds
   *   when it is the higher.
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
  /** The two figures as a painter reads them: `edges are firm there (0.68) and softer elsewhere (0.41)`. */
  readonly inWords: string;
  /** For value and colour the two areas that meet at the strongest place elsewhere. */
  readonly areas?: readonly [number, number];
}

/** What is gathered by one kind of contrast. */
interface Compared {
  readonly there: Peak;
  /** The strongest place elsewhere. */
  readonly elsewhere: Peak | undefined;
}

export interface MeansInput {
  readonly centre: Centre;
  readonly seenThere: readonly SeenPart[];
  readonly value: Compared;
  readonly colour: Compared;
}

const EVERY_MEANS: readonly Means[] = ['value', 'colour', 'edges', 'detail', 'scale', 'isolation'];
const EDGES: readonly Edges[] = ['hard', 'firm', 'soft', 'lost'];
/** Part by which a place elsewhere may be stronger in value or colour. */
const TENTH = 0.1;
const ROUNDING = 1e-9;
/** Part of the diagonal by which the focal point may miss a border through rounding and lie on it. */
const ON_BORDER = 1e-6;

/** What is told of them is worked out when it is read, in the language that is spoken then. */
type Figures = Omit<MeansMeasure, 'means' | 'stated' | 'inWords'> & { readonly tell: () => string };

/** All six means in the order of the trade's list, for a plan whose focal point lies on the canvas. */
export function measureMeans(
  plan: Plan,
  seen: Seen,
  input: MeansInput,
  memory: Memory,
): readonly MeansMeasure[] {
  return EVERY_MEANS.map((means) => {
    const { tell, ...found } = figures(means, plan, seen, input, memory);
    return {
      means,
      stated: plan.focus?.winBy.some(({ value }) => value === means) ?? false,
      ...found,
      get inWords() {
        return tell();
      },
    };
  });
}

function figures(means: Means, plan: Plan, seen: Seen, input: MeansInput, memory: Memory): Figures {
  switch (means) {
    case 'value':
      return contrast(plan, 'value', input.value);
    case 'colour':
      return contrast(plan, 'colour', input.colour);
    case 'edges':
      return edges(plan, seen.borders, input, memory);
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
  const holds = there.strength > ROUNDING && most <= there.strength * (1 + TENTH + ROUNDING);
  return {
    there: there.strength,
    elsewhere: most,
    holds,
    tell: () => {
      if (there.strength <= ROUNDING)
        return of === 'value'
          ? t('there is no contrast of value there')
          : t('there is no contrast of colour there');
      if (!elsewhere)
        return of === 'value'
          ? t('there is contrast of value only there')
          : t('there is contrast of colour only there');
      const compared = comparedWithThat(there.strength / most);
      const met = meeting(plan, elsewhere.areas);
      return of === 'value'
        ? t('its contrast of value is {0} at the strongest place elsewhere, where {1}', compared, met)
        : t('its contrast of colour is {0} at the strongest place elsewhere, where {1}', compared, met);
    },
    ...(elsewhere ? { areas: elsewhere.areas } : {}),
  };
}

function edges(plan: Plan, borders: BorderMeasure, { centre }: MeansInput, memory: Memory): Figures {
  const { focus, canvas } = plan;
  const inputs = [borders, focus?.at.x, focus?.at.y, canvas.diagonal, ...[...centre].flat()];
  const { there, elsewhere, isOfDominant } = memory.recall('means edges', '', inputs, () =>
    sharpnessRound(plan, borders, centre),
  );
  const [dominant = GROUND] = centre.keys();
  return {
    there,
    elsewhere,
    holds: there > elsewhere + ROUNDING,
    tell: () => {
      if (there === 0) return t('there is no border with contrast there');
      const told = [edgeWord(there), plainNumber(there), comparedEdges(there, elsewhere)] as const;
      return isOfDominant
        ? t('the edges of {3} are {0} ({1}) and {2}', ...told, areaName(plan, dominant))
        : t('edges are {0} there ({1}) and {2}', ...told);
    },
  };
}

/** The word of the plan's own whose sharpness is nearest. */
function edgeWord(sharpness: number): string {
  const word = EDGES.reduce((nearest, edges) =>
    Math.abs(SHARPNESS[edges] - sharpness) < Math.abs(SHARPNESS[nearest] - sharpness) ? edges : nearest,
  );
  switch (word) {
    case 'hard':
      return t('hard');
    case 'firm':
      return t('firm');
    case 'soft':
      return t('soft');
    case 'lost':
      return t('lost');
  }
}

function comparedEdges(there: number, elsewhere: number): string {
  if (plainNumber(there) === plainNumber(elsewhere)) return t('the same elsewhere');
  if (elsewhere === 0) return t('none with contrast are elsewhere');
  return there > elsewhere
    ? t('softer elsewhere ({0})', plainNumber(elsewhere))
    : t('harder elsewhere ({0})', plainNumber(elsewhere));
}

function detail(plan: Plan, { shares }: Seen, seenThere: readonly SeenPart[]): Figures {
  const { there, elsewhere } = detailRound(plan, seenThere, shares);
  return {
    there,
    elsewhere,
    holds: there > elsewhere + ROUNDING,
    tell: () => comparedDetail(there, elsewhere),
  };
}

/** `richer there (0.7) than elsewhere (0.4)`; figures that are written alike are told as alike. */
function comparedDetail(there: number, elsewhere: number): string {
  const [here, other] = [plainNumber(there), plainNumber(elsewhere)];
  if (here === other) return t('detail is as rich elsewhere as there ({0})', here);
  return there > elsewhere
    ? t('detail is richer there ({0}) than elsewhere ({1})', here, other)
    : t('detail is poorer there ({0}) than elsewhere ({1})', here, other);
}

function scale(plan: Plan, seen: Seen, centre: Centre, memory: Memory): Figures {
  const { shares, parts } = seen;
  const size = (objects: Iterable<number>) =>
    [...objects].reduce((sum, object) => sum + (shares[object] ?? 0), 0);
  const here = centre.size > 0 ? new Set(centre.keys()) : seenAtFocus(plan, seen, memory);
  const there = size(here);
  let next: { readonly object: number; readonly share: number } | undefined;
  for (const { index: object, plane, outline } of plan.objects) {
    if (here.has(object) || plane === 'background' || runsAcross(outline.box, plan.canvas)) continue;
    const share = size(wholeOf(parts, object));
    if (share > (next?.share ?? 0)) next = { object, share };
  }
  const [first] = here;
  const elsewhere = next?.share ?? 0;
  return {
    there,
    elsewhere,
    holds: there > 0 && elsewhere <= there + ROUNDING,
    tell: () => {
      const largest =
        next && t('{0}, the largest other, {1}', areaName(plan, next.object), percent(next.share));
      if (first === undefined)
        return largest === undefined
          ? t('no object is seen there')
          : t('no object is seen there, and {0}', largest);
      return largest === undefined
        ? t('{0} takes {1} of the picture', areaName(plan, first), percent(there))
        : t('{0} takes {1} of the picture and {2}', areaName(plan, first), percent(there), largest);
    },
  };
}

/** The object seen at the focal point with what it is a part of, and all that lies on that. */
function seenAtFocus(plan: Plan, { areas, parts }: Seen, memory: Memory): ReadonlySet<number> {
  let object =
    onBorderAtFocus(plan, areas) ?? (plan.focus && labelMap(plan, areas, memory).areaAt(plan.focus.at));
  if (object === undefined || object < 0) return new Set();
  for (let whole: number | undefined = object; whole !== undefined && whole >= 0;) {
    object = whole;
    whole = parts.findIndex((some) => some.includes(object as number));
  }
  return new Set(wholeOf(parts, object));
}

/** Of objects whose borders meet just at the focal point the one in front: rounding may not say which is seen there. */
function onBorderAtFocus(
  { canvas, coveringOrder, focus, objects }: Plan,
  areas: VisibleAreas,
): number | undefined {
  if (!focus) return undefined;
  const { x, y } = focus.at;
  const slack = canvas.diagonal * ON_BORDER;
  return coveringOrder.findLast((object, position) => {
    const box = objects[object]?.outline.box;
    const visible = areas.layers[position]?.visible;
    if (!box || !visible) return false;
    const isNear =
      x >= box.left - slack && x <= box.right + slack && y >= box.top - slack && y <= box.bottom + slack;
    return isNear && distanceToOutline(visible, focus.at) <= slack;
  });
}

function isolation(plan: Plan, borders: BorderMeasure, { centre }: MeansInput, memory: Memory): Figures {
  const { focus, canvas } = plan;
  const around = [focus?.at.x, focus?.at.y, canvas.diagonal, ...centre.keys()];
  const kept = memory.recall('bustle', '', around, (): KeptBustle => new WeakMap());
  const { there, elsewhere } = memory.recall('means isolation', '', [borders, ...around], () =>
    bustleRound(
      plan,
      borders.byFront.map(({ stretches }) => stretches),
      centre,
      kept,
    ),
  );
  return {
    there,
    elsewhere,
    holds: isQuiet({ there, elsewhere }),
    tell: () =>
      elsewhere === 0
        ? t('nothing else has a border')
        : there === 0
          ? t('nothing else has a border in the ring round it')
          : busyWords(there / elsewhere),
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

/** `66 % of that`, `as great as`, `2.5 times that`: above the whole, per cent are hard to read. */
function comparedWithThat(ratio: number): string {
  if (Math.round(100 * ratio) < 100) return t('{0} of that', percent(ratio));
  const times = plainNumber(ratio, 1);
  return times === '1' ? t('as great as') : t('{0} times that', times);
}

/** `58 % as busy`, `as busy`, `1.9 times as busy` */
function busyWords(ratio: number): string {
  if (Math.round(100 * ratio) < 100)
    return t(
      'the ring round it is {0} as busy with borders of other things as the whole picture',
      percent(ratio),
    );
  const times = plainNumber(ratio, 1);
  return times === '1'
    ? t('the ring round it is as busy with borders of other things as the whole picture')
    : t('the ring round it is {0} times as busy with borders of other things as the whole picture', times);
}

function percent(share: number): string {
  return `${plainNumber(share * 100, share < 0.1 ? 1 : 0)} %`;
}
