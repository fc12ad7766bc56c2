import { marked, said, t } from '../../../grammar/index.js';
import { cornerWords } from '../../findings/words/sides.js';
import { length, percent, quoted } from '../../findings/words/words.js';
import { stopScale } from '../../measure/eye-path/stop-scale.js';
import type { LeadMeasure } from '../../measure/eye-path/eye-path.js';
import type { Measures } from '../../measure/measures.js';
import type { Canvas, Plan } from '../../plan/plan.js';
import { inWords, plainNumber } from '../../plan/problems.js';
import type { Snapshot } from '../snapshot.js';
import type { Style } from '../style.js';
import { type Paragraphs, prose, woven } from './paragraphs.js';
import { areaName } from '../../measure/areas/area-words.js';

/**
 * Where a lead comes from, how long it is and how near it passes the focal point; nothing for a lead that the plan does
 * not have.
 */
export function leadFigures({ plan, measures }: Snapshot, key: string, style: Style): Paragraphs {
  const index = plan.leads.findIndex((candidate) => candidate.key === key);
  const lead = plan.leads[index];
  const measured = measures.eyePath.leads[index];
  if (lead === undefined || measured === undefined) return [];
  return [
    `${style.strong(lead.name)}: ${woven(
      marked('{0}, {1} long'),
      style,
      prose(origin(plan, measured), style),
      style.text(length(measured.length, plan.canvas)),
    )}`,
    ...aim(measured, plan.canvas).map((words) => style.text(words)),
    ...meetings(plan, measures, index).map((words) => prose(words, style)),
  ];
}

function origin(plan: Plan, { from }: LeadMeasure): string {
  switch (from.kind) {
    case 'edge':
      return said(fromSides[from.side]);
    case 'corner':
      return t('comes in from the {0} corner', cornerWords(from.corner));
    case 'object':
      return t('starts at {0}', areaName(plan, from.object));
    case 'inside':
      return t('starts inside the picture');
  }
}

const fromSides = {
  left: marked('comes in from the left'),
  right: marked('comes in from the right'),
  top: marked('comes in from the top'),
  bottom: marked('comes in from the bottom'),
} as const;

function aim({ miss, missShare }: LeadMeasure, canvas: Canvas): readonly string[] {
  if (miss === undefined || missShare === undefined) return [];
  return missShare < 0.0005
    ? [t('It runs into the focal point.')]
    : [
        t(
          'Carried on, it passes the focal point by {0} ({1} of the diagonal).',
          length(miss, canvas),
          percent(missShare),
        ),
      ];
}

/** ``It arrives at 57° to `fence`.`` */
function meetings({ leads }: Plan, { eyePath }: Measures, index: number): readonly string[] {
  const others = eyePath.angles.flatMap(({ one, other, degrees }) =>
    one !== index && other !== index
      ? []
      : [t('{0}° to {1}', plainNumber(degrees, 0), quoted(leads[one === index ? other : one]?.name ?? ''))],
  );
  return others.length === 0 ? [] : [t('It arrives at {0}.', inWords(others))];
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
          most > 0
            ? said(emphasisOf[of], areaName(plan, object), percent(strength / most))
            : t('{0}: no emphasis', areaName(plan, object)),
          style,
        ),
      ),
    ),
  ];
}

const emphasisOf = {
  'focal point': marked('{0}: {1} of the emphasis of the focal point'),
  'strongest stop': marked('{0}: {1} of the emphasis of the strongest stop'),
} as const;

/** The height of the horizon as a part of the canvas. */
export function horizonFigures({ plan }: Snapshot, style: Style): Paragraphs {
  const { horizon, canvas } = plan;
  if (horizon === undefined) return [];
  return [
    style.text(
      t(
        '{0} from the top, {1} of the height.',
        length(horizon.value, canvas),
        percent(horizon.value / canvas.height),
      ),
    ),
  ];
}
