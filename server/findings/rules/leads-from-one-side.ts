import { type Side, t } from '../../../grammar/index.js';
import type { LeadMeasure } from '../../measure/eye-path/eye-path.js';
import { anglesBetween, sidesOfStart } from '../../measure/eye-path/leads.js';
import { distance, type Point } from '../../plan/geometry/point.js';
import type { Measures } from '../../measure/measures.js';
import type { Canvas, Lead, Plan } from '../../plan/plan.js';
import { inWords } from '../../plan/problems.js';
import type { Rule } from '../finding.js';
import { type LeadTrial, startedAt, writtenPlace } from '../advice/lead-turns.js';
import { counted, quoted } from '../words/words.js';

/** Degrees by which a lead from elsewhere has to keep off the others. */
const APART = 20;
/** Leads that are tried from elsewhere, the last ones first. */
const MOST_TRIED = 10;
/** Parts of an edge at which a lead may come in. */
const PARTS = [0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8];
const SIDES: readonly Side[] = ['left', 'right', 'top', 'bottom'];
const OPPOSITE: Readonly<Record<Side, Side>> = { left: 'right', right: 'left', top: 'bottom', bottom: 'top' };

export const leadsFromOneSide: Rule = {
  id: 'leads from one side',
  severity: 'hint',
  chapter: 'eye path',
  limit: { value: 2, unit: 'number', of: 'leads' },
  perObject: false,
  summary: 'All leads come in from the same side.',
  explanation:
    'When everything points one way, the eye is pushed through the picture and out at the other side. One line from elsewhere turns it back. A lead from a corner comes from both of its sides; one that starts inside the picture counts for the sides on which it starts, seen from where it aims.',
  formula:
    'limit leads or more, at least one over an edge of the canvas, and one side from which all of them come',
  source: 'common practice, no source',
  check: (plan, measures, limit) => {
    const { leads } = measures.eyePath;
    if (leads.length < Math.max(2, limit)) return [];
    const side = sideOfAll(plan.leads, leads);
    const first = plan.leads[0];
    if (!side || !first || leads.every((lead) => sidesOfStart(lead).length === 0)) return [];
    const trial = better(plan, measures, side);
    const names = plan.leads.slice(0, 4).map(({ name }) => quoted(name));
    return [
      {
        message:
          plan.leads.length === 2
            ? t(
                'Both leads, {0}, come in {1}, and nothing leads in from elsewhere.',
                inWords(names),
                fromSide(side),
              )
            : t(
                'All {0} leads come in {1}, and nothing leads in from elsewhere.',
                counted(plan.leads.length),
                fromSide(side),
              ),
        advice: trial ? trial.advice : adviceWithout(plan, side),
        location: first.location,
        related: plan.leads
          .slice(1, 4)
          .map(({ location }) => ({ location, message: t('From the same side.') })),
        ...(trial ? { fix: trial.fix } : {}),
      },
    ];
  },
};

/** The side from which every lead comes; of two, as for leads from one corner, the longer edge. */
function sideOfAll(leads: readonly Lead[], measured: readonly LeadMeasure[]): Side | undefined {
  return SIDES.find((side) =>
    measured.every((measure, index) => comesFrom(leads[index], measure).includes(side)),
  );
}

function comesFrom(lead: Lead | undefined, measure: LeadMeasure): readonly Side[] {
  const entered = sidesOfStart(measure);
  const [start, end] = [lead?.points[0], lead?.points.at(-1)];
  if (entered.length > 0 || !start || !end) return entered;
  return SIDES.filter((side) => {
    switch (side) {
      case 'left':
        return start.x < end.x;
      case 'right':
        return start.x > end.x;
      case 'top':
        return start.y < end.y;
      case 'bottom':
        return start.y > end.y;
    }
  });
}

/**
 * One of the leads brought in over another edge, the opposite one if it can be, by the shortest way that is well
 * apart from the others.
 */
function better(plan: Plan, measures: Measures, side: Side): LeadTrial | undefined {
  const others = SIDES.filter((other) => other !== side && other !== OPPOSITE[side]);
  const last = plan.leads.map((_, index) => index).slice(-MOST_TRIED);
  for (const index of last.reverse()) {
    for (const from of [OPPOSITE[side], ...others]) {
      const aim = plan.leads[index]?.to.at ?? { x: 0, y: 0 };
      const places = PARTS.map((part) => placeOn(plan.canvas, from, part));
      for (const at of places.sort((one, other) => distance(one, aim) - distance(other, aim))) {
        const trial = startedAt(plan, measures, index, { side: from, at });
        if (trial && isBetter(plan, trial, index)) return trial;
      }
    }
  }
  return undefined;
}

function isBetter(plan: Plan, { leads, measured }: LeadTrial, index: number): boolean {
  const apart = anglesBetween({ ...plan, leads }, measured).every(
    ({ one, other, degrees }) => degrees >= APART || (one !== index && other !== index),
  );
  return apart && sideOfAll(leads, measured) === undefined;
}

function placeOn({ width, height }: Canvas, side: Side, part: number): Point {
  switch (side) {
    case 'left':
      return { x: 0, y: height * part };
    case 'right':
      return { x: width, y: height * part };
    case 'top':
      return { x: width * part, y: 0 };
    case 'bottom':
      return { x: width * part, y: height };
  }
}

function adviceWithout(plan: Plan, side: Side): string {
  return t(
    'Add a lead {0}, such as `{1}`.',
    fromSide(OPPOSITE[side]),
    `from ${OPPOSITE[side]} edge at 40% to ${aimWords(plan)}`,
  );
}

/** The focal point, or where the first lead aims in a plan without one. */
function aimWords({ focus, objects, leads, canvas }: Plan): string {
  const to = leads[0]?.to;
  if (focus || !to) return 'focus';
  const aimed = to.names === 'object' ? objects[to.object] : undefined;
  return aimed?.name ?? writtenPlace(to.at, canvas).words;
}

function fromSide(side: Side): string {
  switch (side) {
    case 'left':
      return t('from the left');
    case 'right':
      return t('from the right');
    case 'top':
      return t('from above');
    case 'bottom':
      return t('from below');
  }
}
