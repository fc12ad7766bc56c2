import { type Side, t } from '../../../grammar/index.js';
import type { LeadMeasure } from '../../measure/eye-path/eye-path.js';
import { measureLead } from '../../measure/eye-path/leads.js';
import { aimsOf, type Aims } from '../../measure/eye-path/leads-aim.js';
import { wayOut } from '../../measure/eye-path/leads-edge.js';
import type { Measures } from '../../measure/measures.js';
import { type Point, distance } from '../../plan/geometry/point.js';
import type { Canvas, Lead, LeadPlace, Plan } from '../../plan/plan.js';
import { plainNumber } from '../../plan/problems.js';
import { replace } from '../edits/edit.js';
import type { Fix } from '../finding.js';
import { isOff } from '../limits.js';
import { quoted } from '../words/words.js';

/** Degrees that a lead is turned by at most for a piece of advice. */
const MOST_DEGREES = 60;
/** With more leads than so many nothing is tried out: all are measured anew for each trial. */
const MOST_LEADS = 60;

/** A lead as it would be after a change of the text, with all leads measured anew. */
export interface LeadTrial {
  readonly leads: readonly Lead[];
  readonly measured: readonly LeadMeasure[];
  /** What changes, as an order. */
  readonly advice: string;
  readonly fix: Fix;
}

/**
 * The smallest turn of one of the leads, in whole degrees about where it ends, that `mends`: by its last bend, or by
 * where it starts when it has none; of two as small, the one that takes that place farther from any corner. None when
 * objects carry them, when no turn of up to 60 degrees will do, or when there are too many leads to try.
 */
export function smallestTurn(
  plan: Plan,
  measures: Measures,
  indices: readonly number[],
  mends: (trial: LeadTrial) => boolean,
): LeadTrial | undefined {
  if (plan.leads.length > MOST_LEADS) return undefined;
  const aims = aimsOf(plan, measures.areas);
  for (let degrees = 1; degrees <= MOST_DEGREES; degrees++) {
    for (const index of indices) {
      const mending = [degrees, -degrees]
        .flatMap((turn) => turned(plan, measures, index, turn, aims) ?? [])
        .filter(mends)
        .sort((one, other) => fromCorner(other, index, plan.canvas) - fromCorner(one, index, plan.canvas));
      if (mending[0]) return mending[0];
    }
  }
  return undefined;
}

/** A lead that comes in at another place of the edge of the canvas, straight to where it aims. */
export function startedAt(
  plan: Plan,
  measures: Measures,
  index: number,
  start: { readonly side: Side; readonly at: Point },
): LeadTrial | undefined {
  const lead = plan.leads[index];
  if (!lead?.from || lead.along || plan.leads.length > MOST_LEADS) return undefined;
  const moved = ontoEdge(start, plan.canvas);
  const last = lead.through.at(-1) ?? lead.from;
  const location = { ...lead.from.location, end: last.location.end };
  const bends = lead.through.length > 0;
  return trialOf(
    plan,
    measures,
    index,
    { ...lead, points: [moved.at, lead.to.at], through: [] },
    {
      advice: bends
        ? t(
            'Let {0} come in over another edge: write `from {1}` instead of its bends.',
            quoted(lead.name),
            moved.words,
          )
        : t('Let {0} come in over another edge: write `from {1}`.', quoted(lead.name), moved.words),
      fix: {
        title: t('Let {0} come in from {1}', quoted(lead.name), moved.words),
        edits: [replace(location, moved.words)],
      },
    },
    aimsOf(plan, measures.areas),
  );
}

function turned(
  plan: Plan,
  measures: Measures,
  index: number,
  degrees: number,
  aims: Aims,
): LeadTrial | undefined {
  const lead = plan.leads[index];
  const end = lead?.points.at(-1);
  const pivot = lead && (lead.through.at(-1) ?? lead.from);
  if (!lead || !end || !pivot || lead.along || lead.points.length !== lead.through.length + 2)
    return undefined;
  const moved =
    lead.through.length > 0
      ? bend(pivot, end, degrees, plan.canvas)
      : start(pivot, end, degrees, plan.canvas);
  if (!moved) return undefined;
  const points = lead.points.with(-2, moved.at);
  const name = quoted(lead.name);
  const turn = Math.abs(degrees);
  return trialOf(
    plan,
    measures,
    index,
    { ...lead, points },
    {
      advice:
        lead.through.length > 0
          ? t('Move the last bend of {0} to `{1}`, which turns it by {2}°.', name, moved.words, turn)
          : t('Let {0} start at `{1}`, which turns it by {2}°.', name, moved.words, turn),
      fix: {
        title: t('Turn {0} by {1}°', name, turn),
        edits: [replace(pivot.location, moved.words)],
      },
    },
    aims,
  );
}

function trialOf(
  { leads, canvas }: Plan,
  { eyePath }: Measures,
  index: number,
  lead: Lead,
  told: Pick<LeadTrial, 'advice' | 'fix'>,
  aims: Aims,
): LeadTrial {
  return {
    leads: leads.with(index, lead),
    measured: eyePath.leads.with(index, measureLead(lead, canvas, aims)),
    ...told,
  };
}

/** From the place that was moved to the nearest corner, canvas units. */
function fromCorner({ leads }: LeadTrial, index: number, { width, height }: Canvas): number {
  const place = leads[index]?.points.at(-2);
  if (!place) return 0;
  return Math.hypot(Math.min(place.x, width - place.x), Math.min(place.y, height - place.y));
}

interface MovedPlace {
  readonly at: Point;
  readonly words: string;
}

/** A bend turned about the end of its lead; none when that takes it off the canvas. */
function bend({ at }: LeadPlace, end: Point, degrees: number, canvas: Canvas): MovedPlace | undefined {
  const radians = (degrees * Math.PI) / 180;
  const [cos, sin] = [Math.cos(radians), Math.sin(radians)];
  const [dx, dy] = [at.x - end.x, at.y - end.y];
  const moved = writtenPlace({ x: end.x + dx * cos - dy * sin, y: end.y + dx * sin + dy * cos }, canvas);
  return isOff(moved.at, canvas) ? undefined : moved;
}

/** A start at the edge of the canvas turned about the end of its lead, and still at the edge. */
function start({ at }: LeadPlace, end: Point, degrees: number, canvas: Canvas): MovedPlace | undefined {
  const back = Math.atan2(at.y - end.y, at.x - end.x) + (degrees * Math.PI) / 180;
  if (distance(at, end) === 0) return undefined;
  const edge = wayOut(end, { x: Math.cos(back), y: Math.sin(back) }, canvas);
  return edge && ontoEdge(edge, canvas);
}

/** The nearest whole part in a hundred of an edge. */
function ontoEdge(place: { readonly side: Side; readonly at: Point }, { width, height }: Canvas): MovedPlace {
  const { side, at } = place;
  const isLevel = side === 'top' || side === 'bottom';
  const part = Math.round((isLevel ? at.x / width : at.y / height) * 100);
  const along = ((isLevel ? width : height) * part) / 100;
  const across = side === 'right' ? width : side === 'bottom' ? height : 0;
  return {
    at: isLevel ? { x: along, y: across } : { x: across, y: along },
    words: `${side} edge at ${part}%`,
  };
}

/** A place as a plan writes it, to a millimetre or a tenth of another unit, and where that is. */
export function writtenPlace({ x, y }: Point, { unit }: Canvas): MovedPlace {
  const decimals = unit === 'm' ? 3 : unit === 'mm' ? 0 : 1;
  const [across, down] = [plainNumber(x, decimals), plainNumber(y, decimals)];
  return { at: { x: Number(across), y: Number(down) }, words: `(${across}, ${down})` };
}
