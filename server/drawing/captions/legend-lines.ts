import type { Colour } from '../../plan/colour/colour.js';
import { stepValue } from '../../plan/colour/value.js';
import { greyOf, hexOf } from '../picture/ink.js';
import { type LegendLine, swatchSign } from './legend.js';
import { pathMark } from '../marks.js';
import { circlePath, linePath } from '../path-data.js';
import { balanceInWords, balanceSign } from '../picture/balance-sign.js';
import { divisionDash } from '../picture/construction.js';
import { type Reading, glazedPaintOf, isUnplanned, paintOf, seenObjects } from '../views/reading.js';
import { counted } from '../../findings/words/words.js';
import { ribbonPath } from '../picture/ribbon.js';
import type { Ink, Mark, Stroke } from '../scene.js';
import { inWords } from '../../plan/problems.js';
import { percent, systemName } from './words.js';

export function groundGrey({ plan }: Reading): Colour {
  return greyOf(stepValue(plan.canvas.ground.step, plan.scale.steps));
}

export function focusLine({ plan }: Reading): readonly LegendLine[] {
  const { focus } = plan;
  if (focus === undefined) return [];
  const at =
    focus.crossing === undefined
      ? ''
      : `, ${focus.crossing.name} crossing of the ${systemName(focus.crossing.system)}`;
  const means = focus.winBy.map(({ value }) => value);
  const text = `focal point${at}${means.length === 0 ? '' : `, to win by ${inWords(means)}`}`;
  return [
    {
      key: 'focus',
      text,
      sign: (x, y, side) => {
        const middle = { x: x + side / 2, y: y + side / 2 };
        return [
          stroked('focus', circlePath(middle, 0.36 * side), { ink: 'ink', weight: 'medium' }),
          pathMark('legend:focus:dot', circlePath(middle, 0.09 * side), { fill: 'ink' }),
        ];
      },
    },
  ];
}

export function leadLine({ plan }: Reading): readonly LegendLine[] {
  if (plan.leads.length === 0) return [];
  return [
    {
      key: 'lead',
      text: `${plan.leads.length === 1 ? 'lead' : 'leads'}: ${inWords(plan.leads.map(({ name }) => name))}`,
      sign: (x, y, side) => {
        const across = [
          { x, y: y + 0.75 * side },
          { x: x + side, y: y + 0.3 * side },
        ];
        return [
          filled(
            'lead',
            ribbonPath(across, { start: 0.05 * side, end: 0.15 * side, head: 0.55 * side }),
            'ink',
          ),
        ];
      },
    },
  ];
}

/** One line for each system, so that several are told apart. */
export function divisionLines({ plan }: Reading): readonly LegendLine[] {
  return plan.divisions.flatMap(({ system, lines }, index): LegendLine[] => {
    if (lines.length === 0) return [];
    const key = `division:${index}`;
    return [
      {
        key,
        text: `division: ${systemName(system)}`,
        sign: (x, y, side) => [
          stroked(key, level(x, y + side / 2, side), {
            ink: 'ink',
            weight: 'fine',
            dash: divisionDash(index),
          }),
        ],
      },
    ];
  });
}

export function horizonLine({ plan }: Reading): readonly LegendLine[] {
  if (plan.horizon === undefined) return [];
  return [
    {
      key: 'horizon',
      text: 'horizon',
      sign: (x, y, side) => [
        stroked('horizon', level(x, y + side / 2, side), { ink: 'ink', weight: 'fine' }),
      ],
    },
  ];
}

/** Where the weight of the picture hangs. */
export function balanceLine(reading: Reading): readonly LegendLine[] {
  const words = balanceInWords(reading);
  if (words === undefined) return [];
  const { offset = 0 } = reading.measures.balance;
  return [
    {
      key: 'balance',
      text: words,
      sign: (x, y, side) =>
        balanceSign(
          'legend:balance',
          {
            x: x + side / 2,
            y: y + 0.1 * side,
            off: 0.3 * side * Math.sign(Math.round(100 * offset)),
            high: 0.62 * side,
            deep: 0.75 * side,
          },
          { fulcrum: 'quiet', plumb: 'ink' },
        ),
    },
  ];
}

export function groundLine(
  { plan, measures }: Reading,
  tone: Colour = plan.canvas.ground.colour,
): readonly LegendLine[] {
  const { ground } = plan.canvas;
  const { bareShare } = measures.values;
  if (bareShare <= 0) return [];
  return [
    {
      key: 'ground',
      text: `bare ground, ${percent(bareShare)}, step ${ground.step}${ground.role === undefined ? '' : `, ${ground.role}`}`,
      sign: swatchSign('ground', hexOf(tone)),
    },
  ];
}

export function hatchLine(reading: Reading): readonly LegendLine[] {
  const unplanned = seenObjects(reading).filter(({ object }) => isUnplanned(object));
  if (unplanned.length === 0) return [];
  return [
    {
      key: 'hatch',
      text: `hatched, ${percent(reading.measures.values.unplannedShare)}: no value or colour planned`,
      sign: (x, y, side) => {
        const slants = [0.25, 0.6, 0.95].map((part) => {
          const reach = part * side;
          return linePath([
            { x, y: y + reach },
            { x: x + reach, y },
          ]);
        });
        return [stroked('hatch', slants.join(''), { ink: 'ink', weight: 'fine' })];
      },
    },
  ];
}

/** A blue washed over a brown ground is not the blue of the plan, and a painter would wonder. */
export function washLine(reading: Reading): readonly LegendLine[] {
  const tinted = seenObjects(reading).some(({ object }) => object.colour !== undefined);
  return tinted ? [{ key: 'legend:wash', text: 'colours are washed thinly over the ground' }] : [];
}

/** More names than these would be a list, not a legend. */
const MOST_GLAZED = 6;

/** What is seen through glazes, beside the body colour of the largest. */
export function glazeLine(reading: Reading): readonly LegendLine[] {
  const glazed = seenObjects(reading).flatMap(({ object }) => {
    const seen = glazedPaintOf(object, reading);
    return seen === undefined ? [] : [{ name: object.name, body: paintOf(object, reading.plan), seen }];
  });
  const [first] = glazed;
  if (first === undefined) return [];
  const names = glazed.slice(0, MOST_GLAZED).map(({ name }) => name);
  const more = glazed.length - names.length;
  const all = inWords([...names, ...(more > 0 ? [`${counted(more)} more`] : [])]);
  return [
    {
      key: 'glaze',
      text: `glazed: ${all}, as the body colour is seen through the glaze`,
      sign: swatchSign('glaze', hexOf(first.body), hexOf(first.seen)),
    },
  ];
}

export function leftOutLine(leftOut: number, what: 'name' | 'number'): readonly LegendLine[] {
  if (leftOut === 0) return [];
  const text =
    leftOut === 1
      ? `one object has no room for its ${what}`
      : `${leftOut} objects have no room for a ${what}`;
  return [{ key: 'left out', text }];
}

export function stroked(key: string, d: string, stroke: Stroke): Mark {
  return pathMark(`legend:${key}`, d, { stroke });
}

function filled(key: string, d: string, fill: Ink): Mark {
  return pathMark(`legend:${key}`, d, { fill });
}

export function level(x: number, y: number, width: number): string {
  return linePath([
    { x, y },
    { x: x + width, y },
  ]);
}
