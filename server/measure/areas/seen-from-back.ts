import type { Ring } from '../../plan/geometry/outline.js';
import { GROUND } from '../borders/ground.js';
import type { VisibleAreas } from './areas.js';

/** Something that is told of an area as it is seen. */
export interface OfSeen {
  /** The index of its object, or `GROUND`. */
  readonly area: number;
  readonly visible: readonly Ring[];
}

/**
 * Something of the bare ground and of each object that is seen, from back to front. What there was before stays where
 * as much is seen of the same area at the same place of the list; with all of it the same, the list itself stays.
 *
 * @param order indices of the objects, from back to front
 */
export function fromBack<Own extends OfSeen>(
  areas: VisibleAreas,
  order: readonly number[],
  before: readonly Own[] | undefined,
  own: (area: number, visible: readonly Ring[]) => Own,
): readonly Own[] {
  const all: Own[] = [];
  const add = (area: number, visible: readonly Ring[]): void => {
    const earlier = before?.[all.length];
    all.push(earlier?.area === area && earlier.visible === visible ? earlier : own(area, visible));
  };
  add(GROUND, areas.bare);
  order.forEach((object, position) => {
    const visible = areas.layers[position]?.visible;
    if (visible && visible.length > 0) add(object, visible);
  });
  return before && isSameButFirst(all, before) ? before : all;
}

/** What stays bare follows from what is seen. */
function isSameButFirst<Own>(one: readonly Own[], other: readonly Own[]): boolean {
  return one.length === other.length && one.every((own, place) => place === 0 || own === other[place]);
}
