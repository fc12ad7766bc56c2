import { containsPoint } from '../../measure/areas/areas.js';
import type { Measures } from '../../measure/measures.js';
import type { Ring } from '../../plan/geometry/outline.js';
import type { Plan, PlanObject } from '../../plan/plan.js';
import { hasFault } from '../limits.js';

/** A border between two objects of the background that runs level from side to side. */
export interface LevelBorder {
  /** Canvas units from the top. */
  readonly level: number;
  readonly above: PlanObject;
  readonly below: PlanObject;
}

/** Where along the border it is asked whether it is seen; at the middles of so many equal parts of the width. */
const PLACES = 9;
/** Part of the height that the two sides are looked at beside the border. */
const BESIDE = 0.001;
/** An edge that falls or rises less is level; part of the height. */
const LEVEL = 1e-6;

/**
 * The borders of the background that run level across the whole canvas within two heights and are seen over more
 * than half of its width, from top to bottom. Only what is certain counts: one straight edge that reaches from side to
 * side, and two objects, on different steps where both have one.
 */
export function levelBorders(
  plan: Plan,
  measures: Measures,
  from: number,
  to: number,
): readonly LevelBorder[] {
  const { canvas } = plan;
  const background = plan.objects.filter(
    (object) => object.plane === 'background' && !hasFault(plan, object),
  );
  const levels = background.flatMap(({ outline }) => {
    const { left, right, top, bottom } = outline.box;
    if (left > 0 || right < canvas.width) return [];
    return [top, bottom].filter(
      (level) => level >= from && level <= to && hasEdge(outline.rings, level, plan),
    );
  });
  if (levels.length === 0) return [];
  const seenParts = visibleParts(plan, measures);
  const borders: LevelBorder[] = [];
  for (const level of [...new Set(levels)].sort((one, other) => one - other)) {
    const above = mostSeen(plan, seenParts, background, level - BESIDE * canvas.height);
    const below = mostSeen(plan, seenParts, background, level + BESIDE * canvas.height);
    if (!above || !below || above === below) continue;
    if (above.step !== undefined && above.step === below.step) continue;
    // Edges that all but meet are one border.
    if (!borders.some((known) => known.above === above && known.below === below)) {
      borders.push({ level, above, below });
    }
  }
  return borders;
}

/** What is seen of every object, by its index. */
function visibleParts(plan: Plan, { areas }: Measures): ReadonlyMap<number, readonly Ring[]> {
  return new Map(
    plan.coveringOrder.map((object, position) => [object, areas.layers[position]?.visible ?? []]),
  );
}

/** Whether a shape has a straight edge on a level that reaches over the whole canvas. */
function hasEdge(rings: readonly Ring[], level: number, { canvas }: Plan): boolean {
  const isOn = (y: number): boolean => Math.abs(y - level) <= LEVEL * canvas.height;
  return rings.some((ring) => {
    for (let at = 0; at < ring.length; at += 2) {
      const [x = 0, y = 0] = [ring[at], ring[at + 1]];
      const [nextX = 0, nextY = 0] = [ring[(at + 2) % ring.length], ring[(at + 3) % ring.length]];
      if (isOn(y) && isOn(nextY) && Math.min(x, nextX) <= 0 && Math.max(x, nextX) >= canvas.width)
        return true;
    }
    return false;
  });
}

/** The one of the objects that is seen along more than half of a level. */
function mostSeen(
  { canvas }: Plan,
  seenParts: ReadonlyMap<number, readonly Ring[]>,
  objects: readonly PlanObject[],
  y: number,
): PlanObject | undefined {
  return objects.find(({ index, outline: { box } }) => {
    if (box.top > y || box.bottom < y || box.right - box.left < canvas.width / 2) return false;
    const visible = seenParts.get(index) ?? [];
    let seen = 0;
    for (let place = 0; place < PLACES; place++) {
      if (containsPoint(visible, { x: ((place + 0.5) / PLACES) * canvas.width, y })) seen++;
    }
    return seen > PLACES / 2;
  });
}
