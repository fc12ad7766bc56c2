import { length, percent } from '../../findings/words/words.js';
import { stopScale } from '../../measure/eye-path/stop-scale.js';
import type { LeadMeasure } from '../../measure/eye-path/eye-path.js';
import type { Measures } from '../../measure/measures.js';
import type { Canvas, Plan } from '../../plan/plan.js';
import { inWords, plainNumber } from '../../plan/problems.js';
import type { Snapshot } from '../snapshot.js';
import type { Style } from '../style.js';
import { type Paragraphs, prose } from './paragraphs.js';
import { areaName } from '../../measure/areas/area-words.js';

/** Where a lead comes from, how long it is and how near it passes the focal point; nothing for a lead that the plan does not have. */
export function leadFigures({ plan, measures }: Snapshot, key: string, style: Style): Paragraphs {
  const index = plan.leads.findIndex((candidate) => candidate.key === key);
  const lead = plan.leads[index];
  const measured = measures.eyePath.leads[index];
  if (lead === undefined || measured === undefined) return [];
  return [
    `${style.strong(lead.name)}: ${prose(origin(plan, measured), style)}${style.text(`, ${length(measured.length, plan.canvas)} long`)}`,
    ...aim(measured, plan.canvas).map((words) => style.text(words)),
    ...meetings(plan, measures, index).map((words) => prose(words, style)),
  ];
}

function origin(plan: Plan, { from }: LeadMeasure): string {
  switch (from.kind) {
    case 'edge':
      return `comes in from the ${from.side}`;
    case 'corner':
      return `comes in from the ${from.corner} corner`;
    case 'object':
      return `starts at ${areaName(plan, from.object)}`;
    case 'inside':
      return 'starts inside the picture';
  }
}

function aim({ miss, missShare }: LeadMeasure, canvas: Canvas): readonly string[] {
  if (miss === undefined || missShare === undefined) return [];
  return missShare < 0.0005
    ? ['It runs into the focal point.']
    : [
        `Carried on, it passes the focal point by ${length(miss, canvas)} (${percent(missShare)} of the diagonal).`,
      ];
}

/** ``It arrives at 57° to `fence`.`` */
function meetings({ leads }: Plan, { eyePath }: Measures, index: number): readonly string[] {
  const others = eyePath.angles.flatMap(({ one, other, degrees }) =>
    one !== index && other !== index
      ? []
      : [`${plainNumber(degrees, 0)}° to \`${leads[one === index ? other : one]?.name ?? ''}\``],
  );
  return others.length === 0 ? [] : [`It arrives at ${inWords(others)}.`];
}

/** The stops of the path in order, each with its emphasis beside that of the focal point. */
export function pathFigures({ plan, measures }: Snapshot, style: Style): Paragraphs {
  const { stops } = measures.eyePath;
  if (stops.length === 0) return [];
  const { strength: most, of } = stopScale(measures);
  return [
    style.list(
      stops.map(({ object, strength }) =>
        prose(
          `${areaName(plan, object)}: ${most > 0 ? `${percent(strength / most)} of the emphasis of the ${of}` : 'no emphasis'}`,
          style,
        ),
      ),
    ),
  ];
}

/** The height of the horizon as a part of the canvas. */
export function horizonFigures({ plan }: Snapshot, style: Style): Paragraphs {
  const { horizon, canvas } = plan;
  if (horizon === undefined) return [];
  return [
    style.text(
      `${length(horizon.value, canvas)} from the top, ${percent(horizon.value / canvas.height)} of the height.`,
    ),
  ];
}
