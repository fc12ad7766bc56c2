import type { Side } from '../../../grammar/index.js';
import type { Point } from '../../plan/geometry/point.js';
import type { Plan } from '../../plan/plan.js';
import type { VisibleAreas } from '../areas/areas.js';
import type { BorderMeasure } from '../borders/borders.js';
import { type Exit, measureExits } from './exits.js';
import type { LeadAim } from './leads-aim.js';
import { anglesBetween, measureLeads, sidesOfLeads } from './leads.js';
import { keptOfObjects } from '../kept-lists.js';
import type { Memory } from '../memory.js';
import { measureStops, type Stop, type StopEmphasis } from './stops.js';

export type { Exit } from './exits.js';
export type { LeadAim } from './leads-aim.js';
export type { Stop } from './stops.js';

export type Corner = 'upper left' | 'upper right' | 'lower left' | 'lower right';

/** Where the eye is led, and where it can leave. */
export interface EyePathMeasure {
  /** In the order of `plan.leads`. */
  readonly leads: readonly LeadMeasure[];
  /**
   * Between the directions in which two leads arrive at the same place, degrees 0 to 180: each lead with the next one
   * round that place, so the two that are closest are among them.
   */
  readonly angles: readonly LeadAngle[];
  /** How many leads come in from each side; one from a corner counts at both. */
  readonly sides: Readonly<Record<Side, number>>;
  /** Strong borders that run out over the edge of the canvas with nothing to stop them, strongest first. */
  readonly exits: readonly Exit[];
  /** The stops of the path in their order. */
  readonly stops: readonly Stop[];
}

/** Indices into `plan.leads`, the lower one first. */
export interface LeadAngle {
  readonly one: number;
  readonly other: number;
  readonly degrees: number;
}

export interface LeadMeasure {
  readonly from:
    | { readonly kind: 'edge'; readonly side: Side }
    | { readonly kind: 'corner'; readonly corner: Corner }
    | { readonly kind: 'object'; readonly object: number }
    | { readonly kind: 'inside' };
  /** Canvas units along it. */
  readonly length: number;
  /**
   * Where what is seen of it ends: its last place, or where it leaves the edge of an object that carries it when no
   * further place is named, for from there on only the eye goes on.
   */
  readonly end: Point;
  /** The way it goes there: degrees, 0 to the right, 90 down. */
  readonly heading: number;
  /** The way it arrives where it aims, bridging what is not seen: degrees, 0 to the right, 90 down. */
  readonly arrival: number;
  /**
   * How far the line, carried on beyond its end, passes from the focal point, canvas units; missing without a focal
   * point.
   */
  readonly miss?: number;
  /** Part of the diagonal. */
  readonly missShare?: number;
  /** The place where it passes nearest. */
  readonly nearest?: Point;
  /** What it is drawn to aim at; missing for a lead to a mere place in a plan without a focal point. */
  readonly aim?: LeadAim;
  /**
   * How far the line, carried on beyond its end, passes what it aims at, canvas units: 0 when it runs into it, or into
   * what is seen of a dominant object at the focal point; missing when nothing is seen of what it aims at.
   */
  readonly passes?: number;
  /** Where it leaves the canvas when it is carried on beyond its end; missing when it ends off the canvas. */
  readonly leaves?: { readonly at: Point; readonly side: Side; readonly corner?: Corner };
}

/** What the eye path is measured on, beside the plan itself. */
export interface EyePathSources {
  readonly areas: VisibleAreas;
  readonly borders: Pick<BorderMeasure, 'stretches' | 'byFront'>;
  readonly emphasis: StopEmphasis;
}

/** How the eye is led through the picture, and where it can leave it. */
export function measureEyePath(
  plan: Plan,
  { areas, borders, emphasis }: EyePathSources,
  memory: Memory,
): EyePathMeasure {
  const { leads, coveringOrder, path, canvas } = plan;
  const roles = keptOfObjects('roles', plan, memory, ({ role }) => role);
  const led = memory.recall(
    'leads',
    '',
    [leads, areas, coveringOrder, path, plan.focus, canvas, roles],
    () => {
      const measured = measureLeads(plan, areas);
      return { leads: measured, angles: anglesBetween(plan, measured), sides: sidesOfLeads(measured) };
    },
  );
  const { width, height } = canvas;
  const focus = plan.focus?.at;
  return {
    ...led,
    exits: memory.recall('exits', '', [borders, width, height, focus?.x, focus?.y], () =>
      measureExits(plan.canvas, focus, borders),
    ),
    stops: measureStops(plan, areas, borders.stretches, emphasis),
  };
}
