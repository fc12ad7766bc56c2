import { stopScale } from '../../measure/eye-path/stop-scale.js';
import type { Corner, LeadMeasure } from '../../measure/eye-path/eye-path.js';
import { distance } from '../../plan/geometry/point.js';
import { counted, length } from '../../findings/words/words.js';
import type { Plan } from '../../plan/plan.js';
import type { Side } from '../../../grammar/index.js';
import { pathMark, textMark } from '../marks.js';
import { linePath, polygonPath, rectanglePath } from '../path-data.js';
import { HIT, areaName, misses } from '../picture/path-signs.js';
import { ribbonPath } from '../picture/ribbon.js';
import type { Reading } from '../views/reading.js';
import type { LegendLine } from './legend.js';
import { stroked } from './legend-lines.js';
import { inWords } from '../../plan/problems.js';
import { andMore, partOrTimes, percent } from './words.js';

const MOST_LEADS = 8;
const MOST_STOPS = 9;
const MOST_EXITS = 6;

/** The leads with where they come from and how they meet the focal point, the stops in order, and the ways out. */
export function pathLines(reading: Reading): readonly LegendLine[] {
  return [...leadLines(reading), ...sidesLine(reading), ...stopLines(reading), ...exitLines(reading)];
}

function leadLines(reading: Reading): readonly LegendLine[] {
  const { leads } = reading.plan;
  const measured = reading.measures.eyePath.leads;
  const shown = leads.slice(0, MOST_LEADS).map(({ key, name }, index): LegendLine => {
    const measure = measured[index];
    const text = measure === undefined ? name : `${name}${leadInWords(measure, reading.plan)}`;
    const past = measure !== undefined && misses(measure, reading.plan);
    const id = `lead:${key}`;
    return {
      key: id,
      text,
      sign: (x, y, side) => {
        const end = { x: x + (past ? 0.62 : 1) * side, y: y + (past ? 0.48 : 0.3) * side };
        const line = [{ x, y: y + 0.75 * side }, end];
        const widths = { start: 0.08 * side, end: 0.2 * side, head: 0.5 * side };
        return [
          pathMark(`legend:${id}`, ribbonPath(line, widths), { fill: 'ink' }),
          ...(past
            ? [
                stroked(`${id}:on`, linePath([end, { x: x + 1.1 * side, y: y + 0.26 * side }]), {
                  ink: 'ink',
                  weight: 'fine',
                  dash: 'dashed',
                }),
              ]
            : []),
        ];
      },
    };
  });
  const more = leads.length - MOST_LEADS;
  return [...shown, ...(more > 0 ? [{ key: 'leads:more', text: andMore(more, 'lead', 'leads') }] : [])];
}

/** `, from the left edge, runs into the focal point` */
function leadInWords(measure: LeadMeasure, plan: Plan): string {
  const from = ((): string => {
    const start = measure.from;
    switch (start.kind) {
      case 'edge':
        return `, from the ${start.side} edge`;
      case 'corner':
        return `, from the ${start.corner} corner`;
      case 'object':
        return `, from ${plan.objects[start.object]?.name ?? ''}`;
      case 'inside':
        return '';
    }
  })();
  const { aim, passes } = measure;
  if (aim === undefined || passes === undefined || !Number.isFinite(passes)) return from;
  const what = aim.kind === 'object' ? (plan.objects[aim.object]?.name ?? '') : 'the focal point';
  const { canvas } = plan;
  if (misses(measure, plan))
    return `${from}: passes ${what} by ${length(passes, canvas)}, ${percent(passes / canvas.diagonal)} of the diagonal`;
  // It may pass the point itself by and still run into what dominates there.
  const beside = aim.kind === 'focus' && (measure.miss ?? 0) > HIT * canvas.diagonal;
  const met = beside ? `what dominates at ${what}` : what;
  const on = drawnOutAt(measure, canvas);
  return on === undefined ? `${from}: runs into ${met}` : `${from}: crosses ${met} and goes on to ${on}`;
}

/** Where a lead that is drawn to the very edge leaves the picture, in words. */
function drawnOutAt({ end, leaves }: LeadMeasure, { diagonal }: Plan['canvas']): string | undefined {
  if (leaves === undefined || distance(end, leaves.at) > HIT * diagonal) return undefined;
  return leaves.corner === undefined ? `the ${leaves.side} edge` : `the ${leaves.corner} corner`;
}

const CAME_FROM = [
  'left',
  'right',
  'top',
  'bottom',
  'upper left',
  'upper right',
  'lower left',
  'lower right',
] as const;
const SIDE_WORDS: Readonly<Record<Side, string>> = {
  left: 'the left',
  right: 'the right',
  top: 'above',
  bottom: 'below',
};

/** How many leads come in where, each told once. */
function sidesLine({ measures }: Reading): readonly LegendLine[] {
  const counts = new Map<Side | Corner, number>();
  for (const { from } of measures.eyePath.leads) {
    const place = from.kind === 'edge' ? from.side : from.kind === 'corner' ? from.corner : undefined;
    if (place !== undefined) counts.set(place, 1 + (counts.get(place) ?? 0));
  }
  if (counts.size === 0) return [];
  const text = inWords(
    CAME_FROM.flatMap((place) => {
      const count = counts.get(place);
      return count === undefined ? [] : [`${counted(count)} from ${placeInWords(place)}`];
    }),
  );
  return [
    {
      key: 'sides',
      text: `leads come in over the edge: ${text}`,
      sign: (x, y, side) => [
        pathMark(
          'legend:sides',
          polygonPath([
            { x: x + 0.9 * side, y: y + 0.5 * side },
            { x: x + 0.2 * side, y: y + 0.15 * side },
            { x: x + 0.2 * side, y: y + 0.85 * side },
          ]),
          { fill: 'ink' },
        ),
      ],
    },
  ];
}

function placeInWords(place: Side | Corner): string {
  switch (place) {
    case 'left':
    case 'right':
    case 'top':
    case 'bottom':
      return SIDE_WORDS[place];
    case 'upper left':
    case 'upper right':
    case 'lower left':
    case 'lower right':
      return `the ${place} corner`;
  }
}

function stopLines(reading: Reading): readonly LegendLine[] {
  const { plan, measures } = reading;
  const { stops } = measures.eyePath;
  const scale = stopScale(measures);
  const lines = stops.slice(0, MOST_STOPS).map(({ object, strength, isSeen }, index): LegendLine => {
    const pull = scale.strength > 0 ? `, ${partOrTimes(strength / scale.strength)}` : '';
    const name = plan.objects[object]?.name ?? '';
    return numberedLine(`stop:${index + 1}`, index + 1, `${name}${isSeen ? pull : ', which is not seen'}`);
  });
  if (lines.length > 0)
    lines.unshift({
      key: 'stops',
      text: `stops of the path, with their pull as a part of the ${scale.of === 'focal point' ? 'focal point’s' : 'strongest one’s'}`,
      sign: (x, y, side) => [
        stroked(
          'stops',
          linePath([
            { x, y: y + side / 2 },
            { x: x + side, y: y + side / 2 },
          ]),
          {
            ink: 'ink',
            weight: 'medium',
            dash: 'dotted',
          },
        ),
      ],
    });
  const more = stops.length - MOST_STOPS;
  return [...lines, ...(more > 0 ? [{ key: 'stops:more', text: andMore(more, 'stop', 'stops') }] : [])];
}

/** A line with a number on a square, as it stands in the picture. */
export function numberedLine(key: string, count: number, text: string): LegendLine {
  return {
    key,
    text,
    sign: (x, y, side) => [
      pathMark(
        `legend:${key}`,
        rectanglePath({ x: x + 0.04 * side, y: y + 0.04 * side, width: 0.92 * side, height: 0.92 * side }),
        {
          fill: 'ink',
        },
      ),
      textMark(`legend:${key}:number`, String(count), x + side / 2, y + 0.76 * side, {
        size: (count > 9 ? 0.6 : 0.72) * side,
        ink: 'mount',
        face: 'strong',
        anchor: 'middle',
      }),
    ],
  };
}

function exitLines(reading: Reading): readonly LegendLine[] {
  const { exits } = reading.measures.eyePath;
  const { objects } = reading.plan;
  const lines = exits.slice(0, MOST_EXITS).map(({ side, corner, areas, heading }, index): LegendLine => {
    const where = corner === undefined ? `the ${side} edge` : `the ${corner} corner`;
    const key = `exit:${index + 1}`;
    return {
      key,
      text: `a way out at ${where}, between ${areas.map((area) => areaName(area, objects)).join(' and ')}`,
      sign: (x, y, size) => {
        const angle = (heading * Math.PI) / 180;
        const middle = { x: x + size / 2, y: y + size / 2 };
        const at = (along: number, across: number) => ({
          x: middle.x + size * (along * Math.cos(angle) - across * Math.sin(angle)),
          y: middle.y + size * (along * Math.sin(angle) + across * Math.cos(angle)),
        });
        return [
          stroked(`${key}:shaft`, linePath([at(-0.5, 0), at(0.05, 0)]), { ink: 'ink', weight: 'heavy' }),
          pathMark(`legend:${key}`, polygonPath([at(0.5, 0), at(-0.05, -0.3), at(-0.05, 0.3)]), {
            fill: 'ink',
          }),
        ];
      },
    };
  });
  const more = exits.length - MOST_EXITS;
  return [...lines, ...(more > 0 ? [{ key: 'exits:more', text: andMore(more, 'way out', 'ways out') }] : [])];
}
